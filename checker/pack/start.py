"""START.md: the first thing that somebody reads who has unpacked a pack."""

_PAGE = """# Crystal to Reaction

This is the course as a folder: the exercises, the command that checks them{lessons_too}. It works on Windows, macOS and Linux; where
a command differs, it is written twice.

**1. Read.** {read}

**2. Install,** once. You need Python 3.11 or newer (https://www.python.org/downloads). Open a terminal in this folder and type:

Windows:

    py -m venv .venv
    .venv\\Scripts\\pip install -c constraints.txt -e .

macOS and Linux:

    python3 -m venv .venv
    .venv/bin/pip install -c constraints.txt -e .

**3. Try,** as often as you like:

Windows:

    .venv\\Scripts\\checker try

macOS and Linux:

    .venv/bin/checker try

It names the first exercise, the file to write it in, and the lesson that teaches it. Edit the files in `exercises`, nothing else, and
try again. The other commands begin like that one:

    checker try resonance       one exercise; or a function's name, a file, a unit: checker try 03
    checker hint resonance      a hint; then 2 and 3 for more
    checker read resonance      its lesson, in the browser
    checker see resonance       what your own function does, before anybody judges it
    checker hear tone           one exercise as a sound, where there is one to hear
    checker hear                your own receiver, as far as it has come
    checker try --later tone    set one aside; try --now tone takes it up again
    checker restore resonance   the empty exercise again, if you have lost the file or spoilt it

When you are done, hand in the folder `exercises`, or a zip of it.

The figures you are checked against here are for practice. Your instructor marks with others.
"""


def start_page(with_site: bool, address: str) -> str:
    """The text of START.md, for a pack with the site in it, with its address, or with neither."""
    if with_site:
        read = "Open `site/index.html` with a double click. Begin with the safety page, then unit 00; nothing of it needs a network."
    elif address:
        read = f"The lessons, with their sounds and the bench, are at {address}: begin with the safety page, then unit 00."
    else:
        read = "The lessons did not come with this pack: ask whoever gave it to you where they are."
    return _PAGE.format(lessons_too=", and the lessons" if with_site else "", read=read)

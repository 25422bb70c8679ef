"""Hostile submissions by their shape, not their code: links, pipes, zips and names that a reader could stumble over.

Each function lays one out in the folder of a class, beside a file called `secret` that no member may read; it returns the
submission's own name there, or that and a function that ends what it started.
"""

import os
import stat
import threading
import zipfile
from pathlib import Path

from tests.checker.corpus import HONEST

RESONANCE = "exercises/unit03_tuned_circuit/resonance.py"
WRONG = "def resonant_frequency(inductance, capacitance):\n    return 42.0\n"


def _put(path, text=WRONG):
    os.makedirs(os.path.dirname(path), exist_ok=True)
    with open(path, "wb") as file:
        file.write(text if isinstance(text, bytes) else text.encode())


def _zip(path, entries, packing=zipfile.ZIP_DEFLATED):
    with zipfile.ZipFile(path, "w", packing) as archive:
        for entry, data in entries:
            archive.writestr(entry, data)


def soft_link(folder, secret):
    """Tries: to have a secret read through a symbolic link in place of an exercise.
    Verdict: not attempted.
    Says: is a link
    """
    (folder / "Rufus" / "exercises/unit03_tuned_circuit").mkdir(parents=True)
    (folder / "Rufus" / RESONANCE).symlink_to(secret)
    return "Rufus"


def linked_folder(folder, secret):
    """Tries: to have a secret read through a folder that is a link.
    Verdict: not attempted.
    Says: unit03_tuned_circuit is a link
    """
    outside = secret.parent / "outside"
    _put(outside / "resonance.py", secret.read_bytes())
    (folder / "Rufus" / "exercises").mkdir(parents=True)
    (folder / "Rufus" / "exercises" / "unit03_tuned_circuit").symlink_to(outside)
    return "Rufus"


def linked_submission(folder, secret):
    """Tries: to hand in a link to everything.
    Verdict: not attempted.
    Says: a link to somewhere else
    """
    (folder / "Rufus").symlink_to(secret.parent)
    return "Rufus"


def linked_zip(folder, secret):
    """Tries: to have a secret zip read through a link.
    Verdict: not attempted.
    Says: a link to somewhere else
    """
    _zip(secret.parent / "outside.zip", [(RESONANCE, secret.read_bytes())])
    (folder / "Rufus.zip").symlink_to(secret.parent / "outside.zip")
    return "Rufus.zip"


def hard_link(folder, secret):
    """Tries: to have a secret read through a hard link in place of an exercise.
    Verdict: not attempted.
    Says: hard link
    """
    (folder / "Rufus" / "exercises/unit03_tuned_circuit").mkdir(parents=True)
    os.link(secret, folder / "Rufus" / RESONANCE)
    return "Rufus"


def zip_slip(folder, secret):
    """Tries: to have a zip unpacked over files outside, by names that climb.
    Verdict: not attempted.
    Says: points out of the zip
    """
    _zip(folder / "Rufus.zip", [(f"../../{RESONANCE}", WRONG), ("..\\..\\resonance.py", WRONG)])
    return "Rufus"


def zip_slip_from_the_root(folder, secret):
    """Tries: to have a zip unpacked over files outside, by names that begin at the root.
    Verdict: not attempted.
    Says: points out of the zip
    """
    _zip(folder / "Rufus.zip", [("/tmp/left-by-a-submission/resonance.py", WRONG)])
    return "Rufus"


def zip_with_a_link(folder, secret):
    """Tries: to have a link unpacked from a zip, and followed.
    Verdict: not attempted.
    Says: points out of the zip
    """
    link = zipfile.ZipInfo(RESONANCE)
    link.external_attr = (stat.S_IFLNK | 0o777) << 16
    _zip(folder / "Rufus.zip", [(link, str(secret))])
    return "Rufus"


def zip_bomb(folder, secret):
    """Tries: to fill the memory with one file of a zip.
    Verdict: not attempted.
    Says: is larger than 256 kB
    """
    _zip(folder / "Rufus.zip", [(RESONANCE, bytes(200 << 20))])
    return "Rufus"


def zip_of_many_bombs(folder, secret):
    """Tries: to fill the memory with very many files that are each just small enough.
    Verdict: wrong.
    Says: More than 8 MB in all
    """
    _zip(folder / "Rufus.zip", ((f"{number:04}/resonance.py", b"#" * (255 << 10)) for number in range(1000)))
    return "Rufus"


def zip_bomb_in_another_packing(folder, secret):
    """Tries: to fill the memory by a packing whose reader unpacks all at once.
    Verdict: not attempted.
    Says: packed in an unusual way
    """
    _zip(folder / "Rufus.zip", [(RESONANCE, bytes(100 << 20))], zipfile.ZIP_BZIP2)
    return "Rufus"


def zip_that_lies_about_its_size(folder, secret):
    """Tries: to have more unpacked than the zip says that there is.
    Verdict: not attempted or wrong.
    """
    _zip(folder / "Rufus.zip", [(RESONANCE, bytes(50 << 20))])
    data = (folder / "Rufus.zip").read_bytes()
    (folder / "Rufus.zip").write_bytes(data.replace((50 << 20).to_bytes(4, "little"), (100).to_bytes(4, "little")))
    return "Rufus"


def zip_spoilt_inside(folder, secret):
    """Tries: to stop the run with a zip whose contents do not unpack.
    Verdict: not attempted.
    Says: cannot be unpacked
    """
    _zip(folder / "Rufus.zip", [(RESONANCE, os.urandom(1000).hex())])
    data = bytearray((folder / "Rufus.zip").read_bytes())
    data[30 + len(RESONANCE) :][:200]
    data[30 + len(RESONANCE) : 30 + len(RESONANCE) + 200] = b"\xff" * 200
    (folder / "Rufus.zip").write_bytes(data)
    return "Rufus"


def overlong_path(folder, secret):
    """Tries: to stop the run with a path longer than the system allows.
    Verdict: not attempted.
    Says: more than 12 deep
    """
    here = os.open(folder, os.O_RDONLY)
    for name in ("Rufus", *["n" * 250] * 30):
        os.mkdir(name, dir_fd=here)
        inner = os.open(name, os.O_RDONLY, dir_fd=here)
        os.close(here)
        here = inner
    os.close(os.open("resonance.py", os.O_CREAT | os.O_WRONLY, dir_fd=here))
    os.close(here)
    return "Rufus"


def endless_name(folder, secret):
    """Tries: to spoil tables with the longest name that the system allows.
    Verdict: wrong.
    """
    _put(folder / ("R" * 255) / RESONANCE)
    return "R" * 255


def odd_file_names(folder, secret):
    """Tries: to spoil a terminal with the names of its files, where they are named.
    Verdict: wrong.
    Says: Two files for
    """
    for name in ("a\x1b[2J\u202e\n<b>", "=cmd|' ", os.fsdecode(b"b\xff\xfe")):
        _put(folder / "Rufus" / name / "resonance.py")
    _put(folder / "Rufus" / "resonance.py\n")
    return "Rufus"


def name_that_is_no_text(folder, secret):
    """Tries: to stop the run with a member's name that is not UTF-8.
    Verdict: wrong.
    """
    _put(folder / os.fsdecode(b"Rufus \xff\xfe") / RESONANCE)
    return os.fsdecode(b"Rufus \xff\xfe")


def two_names_that_look_alike(folder, secret):
    """Tries: to have its marks take the place of another member's whose name looks the same.
    Verdict: wrong.
    """
    _put(folder / "Zoe\u200b Honest" / RESONANCE)
    return "Zoe\u200b Honest"


def pipe_for_a_file(folder, secret):
    """Tries: to have the reader wait for ever on a pipe.
    Verdict: not attempted.
    Says: not an ordinary file
    """
    (folder / "Rufus" / "exercises/unit03_tuned_circuit").mkdir(parents=True)
    os.mkfifo(folder / "Rufus" / RESONANCE)
    return "Rufus"


def pipe_for_a_zip(folder, secret):
    """Tries: to have the reader wait for ever on a pipe that is called a zip.
    Verdict: not attempted.
    Says: not an ordinary file
    """
    os.mkfifo(folder / "Rufus.zip")
    return "Rufus"


def folder_for_a_file(folder, secret):
    """Tries: to stop the run with a folder that is called like an exercise.
    Verdict: not attempted.
    """
    (folder / "Rufus" / RESONANCE).mkdir(parents=True)
    return "Rufus"


def too_many_files(folder, secret):
    """Tries: to keep the reader busy with very many files.
    Verdict: not attempted.
    Says: More than 5,000 files
    """
    (folder / "Rufus").mkdir()
    for number in range(5_100):
        os.close(os.open(folder / "Rufus" / f"{number}", os.O_CREAT))
    return "Rufus"


def too_large_a_file(folder, secret):
    """Tries: to fill the memory with one file, which takes no room on a disk.
    Verdict: not attempted.
    Says: is larger than 256 kB
    """
    _put(folder / "Rufus" / RESONANCE)
    os.truncate(folder / "Rufus" / RESONANCE, 1 << 40)
    return "Rufus"


def encoding_that_raises(folder, secret):
    """Tries: to stop the run with an encoding that can only fail.
    Verdict: not attempted.
    Says: is not text in UTF-8
    """
    _put(folder / "Rufus" / RESONANCE, "# coding: undefined\n" + WRONG)
    return "Rufus"


def encoding_of_half_characters(folder, secret):
    """Tries: to stop the run with characters that cannot be written anywhere, through an encoding that makes them.
    Verdict: raised or wrong.
    """
    _put(folder / "Rufus" / RESONANCE, "# coding: unicode_escape\n" + WRONG.replace("42.0", "'\\\\ud800'  # \\ud800"))
    return "Rufus"


def no_text_at_all(folder, secret):
    """Tries: to stop the run with a program for the machine in place of text.
    Verdict: not attempted or raised.
    """
    _put(folder / "Rufus" / RESONANCE, b"\x7fELF\x02\x01\x01\x00" + bytes(range(256)) * 4)
    return "Rufus"


def name_with_terminal_codes(folder, secret):
    """Tries: to clear the instructor's terminal and change its title with a member's name.
    Verdict: wrong.
    """
    name = "Rufus\x1b[2J\x1b]0;owned\x07\r\n\x9b31m\u202e"
    _put(folder / name / RESONANCE)
    return name


def name_with_html(folder, secret):
    """Tries: to run a script in the instructor's browser with a member's name.
    Verdict: wrong.
    """
    name = "Rufus <img src=x onerror=alert(1)><script>alert(2)<\u2215script>&amp;\"'"
    _put(folder / name / RESONANCE)
    return name


def name_that_is_a_formula(folder, secret):
    """Tries: to run a formula in the instructor's spreadsheet with a member's name.
    Verdict: wrong.
    """
    name = '=HYPERLINK("http:\u2215\u2215127.0.0.1","Rufus"),+1;-1|@SUM(1)'
    _put(folder / name / RESONANCE)
    return name


def swapped_while_it_is_read(folder, secret):
    """Tries: to have a secret read by changing file and folder into links to it, again and again, while they are read.
    Verdict: not attempted or wrong.
    """
    unit, outside, stopped = folder / "Rufus/exercises/unit03_tuned_circuit", secret.parent / "swapped-in", threading.Event()
    _put(outside / "resonance.py", secret.read_bytes())
    _put(unit / "resonance.py")
    aside, link = unit.with_name("aside"), unit.with_name("link")
    link.symlink_to(outside)

    def swap():
        while not stopped.is_set():
            for one, other in ((unit, aside), (link, unit), (unit, link), (aside, unit)):
                os.rename(one, other)
            (unit / "draft").symlink_to(secret)
            os.rename(unit / "draft", unit / "resonance.py")
            _put(unit / "draft")
            os.rename(unit / "draft", unit / "resonance.py")

    swapping = threading.Thread(target=swap)
    swapping.start()
    return "Rufus", lambda: (stopped.set(), swapping.join())


SHAPES = {
    name: made
    for name, made in list(globals().items())
    if callable(made) and getattr(made, "__module__", "") == __name__ and not name.startswith("_")
}


def secret_in(folder: Path) -> Path:
    """A right answer that nobody in the class has: whoever gets marks for it has read it."""
    secret = folder / "secret"
    secret.write_text(HONEST)
    return secret

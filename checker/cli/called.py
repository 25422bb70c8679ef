"""How this program was called, so that every command that a message prints can be typed as it stands."""

import os
import re
import shlex
import shutil
import sys
from pathlib import Path


def called_as() -> str:
    """The beginning of a command line that calls this program again from here: `checker`, `.venv/bin/checker`, `python -m checker`.

    Windows is given backward strokes and no .exe; what has a space in it is put in quotes.
    """
    program = Path(sys.argv[0])
    if program.parts[-2:] == ("checker", "__main__.py"):
        return f"{_from_here(Path(sys.orig_argv[0]))} -m checker"
    program = program.with_suffix("") if program.suffix.lower() == ".exe" else program
    return _from_here(program) if program.name == "checker" else "checker"


def beside(name: str) -> str:
    """How another program of the same Python is called from here: `.venv/bin/pip`."""
    return _from_here(Path(sys.executable).with_name(name))


def quoted(text: str) -> str:
    """A text as one word of a command line, for the shells of this system."""
    if os.name == "nt":  # neither of its shells takes the other's single quotes; no file there has a double one in its name
        return f'"{text}"' if re.search(r"[^\w.\\/:-]", text) or not text else text
    return shlex.quote(text)


def _from_here(program: Path) -> str:
    """A program by its name if that finds it, else by where it stands."""
    found = shutil.which(program.name)
    if program.name == str(program) or (found and _same(Path(found), program)):
        return program.name
    try:
        shown = os.path.relpath(program)
    except ValueError:  # on another drive of Windows
        shown = str(program)
    shown = min(shown, str(program), key=len)
    return f'"{shown}"' if " " in shown else shown


def _same(one: Path, other: Path) -> bool:
    """Whether two paths are one program, its .exe or not."""
    return os.path.normcase(one.with_suffix("")) == os.path.normcase(other.absolute().with_suffix(""))

"""What the commands share: exit codes, a usage error, how wide the terminal is, where a student's exercises are."""

import argparse
import shutil
import sys
from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path

from ..course import CHECKOUT, ROOT
from ..faults import Problem
from ..pack.originals import keep_originals
from ..pack.stubs import write_stubs
from ..report.text import WIDTH
from .called import called_as

DONE, NOT_YET, USAGE_ERROR, INTERRUPTED = 0, 1, 2, 130


class UsageError(Problem):
    """A command cannot be carried out as asked; the text says why and what to do."""


@dataclass(frozen=True)
class Command:
    """One command: its name, a line of help, its arguments, and what it does; `run` returns the exit code."""

    name: str
    help: str
    add_arguments: Callable[[argparse.ArgumentParser], None]
    run: Callable[[argparse.Namespace], int]


def terminal_width() -> int:
    return max(40, shutil.get_terminal_size((WIDTH, 24)).columns)


def add_folder_argument(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("--folder", type=Path, help="where your exercises are (default: ./exercises or the one above)")


def exercises_folder(asked: Path | None, start: bool = False) -> Path:
    """The folder of the student's exercises, made if need be once that is agreed.

    Parameters
    ----------
    asked : Path or None
        As the command line names it; None: the nearest folder called exercises, from here upwards, or, in a checkout or
        a student pack, the one that came with it.
    start : bool
        Whether it was agreed beforehand that a folder is made.

    Raises
    ------
    UsageError
        If there is none and nobody has agreed to make one.
    """
    folder = asked or _nearest_exercises()
    if folder is None and CHECKOUT:
        folder = ROOT / "exercises"
    if folder is not None and folder.exists():
        if not folder.is_dir():
            raise UsageError(f"{folder} is not a folder: name the one that your exercises are in.")
        keep_originals(folder)
        return folder
    new = folder or Path("exercises")
    if start or _confirm(f"There is no folder {new} yet. Make it, with every exercise to be filled in? [y/n] "):
        write_stubs(new)
        return new
    at = "" if asked is None else f" --folder {asked}"
    raise UsageError(
        f"There is no folder {new} here: {called_as()} try --start{at} makes it, with every exercise to be filled in."
    )


def _nearest_exercises() -> Path | None:
    for above in (Path.cwd(), *Path.cwd().parents):
        if above.name == "exercises" or (above / "exercises").is_dir():
            return above if above.name == "exercises" else above / "exercises"
    return None


def _confirm(question: str) -> bool:
    """Whether a person at the terminal says yes; where nobody can be asked, no."""
    if not (sys.stdin and sys.stdin.isatty() and sys.stderr.isatty()):
        return False
    print(question, end="", file=sys.stderr, flush=True)
    return sys.stdin.readline().strip().lower() in ("y", "yes")

"""`checker term`: a file for a course over a term, to begin with; and one looked through."""

import argparse
import os
from pathlib import Path

from ..report.text import Line
from ..term.new import BESIDE, FILE, ROSTER, ROSTER_FILE
from ..term.reading import read_term
from .called import called_as
from .common import DONE, Command, UsageError
from .terminal import show


def add_arguments(parser: argparse.ArgumentParser) -> None:
    parser.add_argument(
        "what", choices=("new", "check"), help="new writes a term's file with a roster; check looks through one"
    )
    parser.add_argument(
        "file", metavar="FILE.toml", nargs="?", type=Path, default=Path(BESIDE), help=f"default: {BESIDE}, here"
    )


def run(options: argparse.Namespace) -> int:
    return _new(options.file) if options.what == "new" else _check(options.file)


def _new(file: Path) -> int:
    """Write the file, and a roster where there is none. Whatever is there is never written over."""
    try:
        _write_new(file, FILE)
    except FileExistsError:
        raise UsageError(f"{file} is there already and was left as it is: name another file, or edit that one.") from None
    lines = [f"Written: {os.path.relpath(file)}"]
    try:
        _write_new(file.parent / ROSTER, ROSTER_FILE)
        lines[0] += f" and {os.path.relpath(file.parent / ROSTER)}"
    except FileExistsError:
        pass
    at = "" if file == Path(BESIDE) else f" {file}"
    show([Line(lines[0], "bold"), Line("Edit them, then:"), Line(f"  {called_as()} term check{at}")])
    return DONE


def _write_new(file: Path, text: str) -> None:
    with open(file, "x", encoding="utf-8", newline="\n") as opened:
        opened.write(text)


def _check(file: Path) -> int:
    term = read_term(file)
    people = f"{len(term.roster)} on the roster" if term.roster else "no roster"
    show([Line(f"{term.title}, {term.club}: {people}.")])
    for work in term.works:
        due = f", due {work.due:%Y-%m-%d %H:%M}" if work.due else ""
        show([Line(f"  {work.name}: {len(work.paths)} exercise{'s' * (len(work.paths) != 1)}{due}")])
    return DONE


COMMAND = Command("term", "a file for a course over a term: roster, pieces of work, what late costs", add_arguments, run)

"""`checker pack`: what to hand out to students."""

import argparse
from pathlib import Path

from ..course import SEALED
from ..pack.contents import write_pack
from ..report.text import Line
from .common import DONE, Command, UsageError
from .terminal import show


def add_arguments(parser: argparse.ArgumentParser) -> None:
    parser.add_argument(
        "where",
        metavar="FILE.zip",
        type=Path,
        nargs="?",
        default=Path("student-pack.zip"),
        help="the zip to write (default: student-pack.zip); a name without .zip makes a folder",
    )


def run(options: argparse.Namespace) -> int:
    if SEALED:
        raise UsageError("This is a student pack already; packs are made from the whole course.")
    show([Line(f"The student pack is in {write_pack(options.where)}. It holds no reference code and nothing of your seed.")])
    return DONE


COMMAND = Command("pack", "write the student pack: exercises and checker, no reference code", add_arguments, run)

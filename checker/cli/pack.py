"""`checker pack`: what to hand out to students."""

import argparse
from pathlib import Path

from ..course import SEALED
from ..pack.contents import write_pack
from ..pack.lessons import site_address, site_folder
from ..report.text import Line, wrap
from .common import DONE, Command, UsageError, terminal_width
from .guide import from_here
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
    parser.add_argument(
        "--site", metavar="DIR", type=Path, help="the built site that goes with it (default: course/site, if it is there)"
    )


def run(options: argparse.Namespace) -> int:
    if SEALED:
        raise UsageError("This is a student pack already; packs are made from the whole course.")
    if options.site and not (options.site / "index.html").is_file():
        raise UsageError(f"{options.site} is no built site: it has no index.html. Build it, or leave --site out.")
    site, address = options.site or site_folder(), site_address()
    where = write_pack(options.where, site, address)
    show([Line(f"The student pack is in {where}. It holds no reference code and nothing of your seed.")])
    show(wrap(_about_lessons(site, address), terminal_width()))
    return DONE


def _about_lessons(site: Path | None, address: str) -> str:
    if site:
        return f"The lessons go with it, from {from_here(site)}, without WAV files and print editions."
    if address:
        return f"It says that the lessons are at {address}, and does not bring them: build the site first if it should."
    return (
        "No lessons go with it: build the site first (mkdocs build -f course/mkdocs.yml), or write its address into course/club.toml, "
        'as address = "https://…".'
    )


COMMAND = Command("pack", "write the student pack: exercises, checker and lessons, no reference code", add_arguments, run)

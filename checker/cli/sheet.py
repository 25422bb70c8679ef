"""`checker sheet`: a design sheet from a builder's file."""

import argparse
import os
from pathlib import Path

from ..course import SEALED
from ..report.text import Line
from .common import DONE, Command, UsageError
from .terminal import show


def add_arguments(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("file", metavar="FILE.toml", type=Path, help="such as checker/examples/sheets/orla_quill_reaction.toml")
    parser.add_argument("--into", metavar="PAGE.html", type=Path, help="the page to write (default: FILE's name, here)")
    parser.add_argument("--pdf", action="store_true", help="print it too, by a Chromium on this machine")


def run(options: argparse.Namespace) -> int:
    if SEALED:
        raise UsageError(
            "This is a student pack, without the physics that a sheet is made with: sheets are made with the whole course."
        )
    from .. import sheet  # late: a student pack has no checker/sheet

    try:
        page = options.into or Path(f"{options.file.stem}.html")
        if page.exists() and options.file.exists() and page.samefile(options.file):
            raise UsageError(f"{page} is the file itself: name another page with --into.")
        sheet.write_sheet(sheet.work_out(sheet.read_parts(options.file)), page)
        show([Line(f"Open in a browser, and print:  {os.path.relpath(page)}", "bold")])
        if options.pdf:
            show([Line(f"As a PDF:  {os.path.relpath(sheet.print_sheet(page, page.with_suffix('.pdf')))}")])
    except sheet.SheetFault as fault:
        raise UsageError(str(fault)) from None
    return DONE


COMMAND = Command("sheet", "a design sheet to print, from a builder's file", add_arguments, run)

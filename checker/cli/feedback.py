"""`checker feedback`: what goes back to the members, a file for each."""

import argparse
import os
import zipfile
from collections.abc import Iterator
from datetime import date
from pathlib import Path

from ..files import open_replacement
from ..marks.run import STORE
from ..marks.standing import ClassMarks
from ..marks.store import open_store
from ..report.feedback import Feedback, feedback_for, mail_draft
from ..report.text import Line, wrap
from ..term.term import HIDDEN, SHOWN
from ..text import display_name
from .called import called_as
from .common import DONE, NOT_YET, Command, UsageError, terminal_width
from .terminal import show


def add_arguments(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("--work", metavar="NAME", help="what goes back is about this piece of work alone (default: all)")
    parser.add_argument("--into", metavar="DIR", type=Path, default=Path("marks"), help="where the marks are (default: marks)")
    parser.add_argument("--to", metavar="FOLDER", type=Path, help="where the files go (default: feedback in DIR)")
    parser.add_argument("--zip", action="store_true", help="one zip of them in place of a folder")
    parser.add_argument(
        "--mail", metavar="YOUR-ADDRESS", help="drafts of letters too, for a mail program to open; none is sent"
    )
    parser.add_argument(
        "--values",
        choices=(SHOWN, HIDDEN),
        help="whether the values at which an answer fails go back too (default: as the term's file says; without one, shown)",
    )


def run(options: argparse.Namespace) -> int:
    if not (options.into / STORE).is_file():
        raise UsageError(
            f"There are no marks in {options.into} yet. Run {called_as()} mark first, or name the folder with --into."
        )
    if options.mail and options.mail.count("@") != 1:
        raise UsageError(
            f"--mail wants your own address, such as wren@saltmarsh.example: {display_name(options.mail)} is none."
        )
    with open_store(options.into / STORE) as store:
        if store.latest_run() is None:
            raise UsageError(f"There are no marks in {options.into} yet: the run in it was not finished.")
        marks = ClassMarks(store)
        title, term = marks.about().title, marks.term
        paths = _paths_of(options.work, marks) if options.work else None
        values = options.values or (term.values if term else SHOWN)
        going = feedback_for(marks, title, date.today(), values == HIDDEN, paths)
    files, unsent = {}, []
    for one in going:
        files |= {
            f"{one.file}.html": one.page.encode("utf-8", "replace"),
            f"{one.file}.txt": one.text.encode("utf-8", "replace"),
        }
        if options.mail:
            try:
                files[f"{one.file}.eml"] = mail_draft(one, title, options.mail)
            except ValueError:
                unsent.append(one.member.name)
    to = options.to or options.into / "feedback"
    written = _write_zip(files, to.with_name(f"{to.name}.zip")) if options.zip else _write_folder(files, to)
    show(list(_said(going, written, values, unsent)))
    return NOT_YET if unsent else DONE


def _paths_of(name: str, marks: ClassMarks) -> tuple[str, ...]:
    if (work := marks.work(name)) is None:
        known = ", ".join(work.name for work in marks.works if work.name) or "none"
        raise UsageError(f"No piece of work called {display_name(name)} was marked: there is {known}.")
    return work.paths


def _write_folder(files: dict[str, bytes], folder: Path) -> Path:
    folder.mkdir(parents=True, exist_ok=True)
    for name, data in files.items():
        with open_replacement(folder / name, "wb") as file:
            file.write(data)
    return folder


def _write_zip(files: dict[str, bytes], path: Path) -> Path:
    path.parent.mkdir(parents=True, exist_ok=True)
    with open_replacement(path, "wb") as file, zipfile.ZipFile(file, "w", zipfile.ZIP_DEFLATED) as archive:
        for name, data in files.items():
            archive.writestr(name, data)
    return path


def _said(going: list[Feedback], written: Path, values: str, unsent: list[str]) -> Iterator[Line]:
    yield Line(f"Feedback for {len(going)} member{'s' * (len(going) != 1)}:  {os.path.relpath(written)}", "bold")
    shown = "go back with it" if values == SHOWN else "are left out: what is wrong is said in words"
    yield from wrap(f"The values at which an answer fails {shown}.", terminal_width())
    if unsent:
        yield from wrap(f"No letter to {', '.join(unsent)}: there is no address on the roster.", terminal_width())


COMMAND = Command("feedback", "what goes back: a page and a text for each member, drafts of letters", add_arguments, run)

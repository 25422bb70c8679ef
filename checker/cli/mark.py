"""`checker mark`: a folder of submissions in; marks, reports and tables out."""

import argparse
import json
import os
import sys
from collections.abc import Iterator, Sequence
from datetime import date
from fractions import Fraction
from pathlib import Path

from ..core import SET, WHAT_WAS_SET
from ..course import PATHS, SEALED, UNITS, find
from ..judging.verdict import NOT_ATTEMPTED, NOT_HANDED_IN, NOT_JUDGED, NOT_READ, marks_text
from ..marks.details import RunDetails
from ..marks.marksheet import Mark, MemberMarks, marks_to_data
from ..marks.run import STORE, ClassMarks, Request, mark_class, require_containment
from ..marks.store import open_store
from ..report.text import Line, wrap
from ..submissions.members import MOST_SAID, find_submissions
from .called import called_as, quoted
from .common import DONE, NOT_YET, Command, UsageError, terminal_width
from .results import left_out_lines, write_results
from .tables import show_table, with_progress
from .terminal import show


def add_arguments(parser: argparse.ArgumentParser) -> None:
    parser.add_argument(
        "folder",
        metavar="FOLDER",
        type=Path,
        help="holds a folder, a .zip or a .tar.gz for each member: Python files called like the exercises, or with all functions of one, "
        "notebooks, and archives of these; what is not read is named with the reason",
    )
    parser.add_argument("--only", metavar="EXERCISE", nargs="+", help="mark only these exercises")
    parser.add_argument(
        "--path",
        choices=tuple(SET),
        default="all",
        help="what was set: the core, with its exercises marked by what the core asks of them, the further exercises, or all (default)",
    )
    parser.add_argument(
        "--seed", type=int, help="the number that draws the inputs (default: the last run's; at first, a new one)"
    )
    parser.add_argument(
        "--into",
        metavar="DIR",
        type=Path,
        default=Path("marks"),
        help="where marks, reports and tables go (default: marks). In them a 0 is a wrong answer; what was not handed in, not read, "
        "not judged or not set is said in words or left empty",
    )
    parser.add_argument(
        "--class",
        dest="title",
        metavar="NAME",
        help="the class's name on reports and tables (default: as last time; at first, the course's)",
    )
    parser.add_argument(
        "--club", metavar="NAME", help="the club or school, for the tables (default: as last time; at first, the Circle's)"
    )
    parser.add_argument(
        "--school-year",
        metavar=("FIRST", "LAST"),
        nargs=2,
        type=date.fromisoformat,
        help="first and last day, such as 2026-09-01 2027-07-31, for school systems "
        "(default: as last time; at first, this calendar year)",
    )
    parser.add_argument(
        "--names",
        metavar="PATTERN",
        help="how a platform made the names of the folders, such as {name}_{number}_submission: in braces name, or given and family, once; "
        "number, as often as need be; any, once (default: as last time; at first, and with '', the names as they are)",
    )
    parser.add_argument("--jobs", type=int, metavar="N", help="how many members at a time (default: one for each processor)")
    parser.add_argument("--cluster", metavar="ADDRESS", default="", help="mark on the Dask cluster with this scheduler")
    parser.add_argument("--uncontained", action="store_true", help="go on where this system cannot shut submissions in")
    parser.add_argument("--json", action="store_true", help="print data instead of the table")


def run(options: argparse.Namespace) -> int:
    if SEALED:
        raise UsageError(
            "This is a student pack: it can only practise. Marks are made with the whole course, under the instructor's seed."
        )
    if options.jobs is not None and options.jobs < 1:
        raise UsageError("--jobs wants a number of 1 or more.")
    if options.school_year and not options.school_year[0] < options.school_year[1]:
        raise UsageError("--school-year wants its first day and then its last: these two are the wrong way round.")
    proof = None if options.cluster else require_containment(options.uncontained)
    asked = {find(name) for name in options.only} if options.only else set(PATHS)
    paths = [path for path in SET[options.path] if path in asked]
    if not paths:
        raise UsageError(f"None of these exercises is on the {options.path} path: leave --path out, or name others.")
    request = Request(
        options.folder,
        paths,
        options.seed,
        options.jobs,
        options.cluster,
        options.uncontained,
        options.title,
        options.club,
        options.school_year,
        options.path,
        options.names,
    )
    find_submissions(options.folder, options.names or "")  # before anything is written
    if proof:
        print(proof, file=sys.stderr)
    options.into.mkdir(parents=True, exist_ok=True)
    with open_store(options.into / STORE) as store:
        run = mark_class(request, store, lambda marked, total: with_progress(marked, total, lambda one: one.member.name))
        page, left_out = write_results(store, run, options.into)
        marks = ClassMarks(store, run)
        if options.json:
            print(json.dumps([marks_to_data(member) for member in marks], indent=1))
        else:
            about = store.about_run(run)
            show_table(*marks_table(marks, paths))
            show(
                [
                    Line(""),
                    *_remarks(marks, about),
                    *left_out_lines(left_out),
                    *_what_was_written(page, about.seed, next(iter(marks)).name, paths[0].rpartition("/")[2]),
                ]
            )
        doubts = any(member.not_judged or member.problems for member in marks)
        return NOT_YET if left_out or doubts else DONE


_NO_SUM = {NOT_JUDGED: "?", NOT_READ: "!", NOT_ATTEMPTED: "0", NOT_HANDED_IN: "–"}


def marks_table(marks: ClassMarks | Sequence[MemberMarks], paths: Sequence[str]) -> tuple[list[str], list[list[str]]]:
    """(headings, rows): a column for each unit and the total."""
    units = [unit for unit in UNITS if any(path.startswith(unit.folder) for path in paths)]
    rows = []
    for member in marks:
        by_unit = [[mark for mark in member.marks if mark.exercise.startswith(unit.folder)] for unit in units]
        star = "*" if any(mark.override for mark in member.marks) else ""
        star += "!" if NOT_READ in member.without_mark else ""
        star += "?" if member.not_judged else ""
        rows.append([member.name, *map(_sum_text, by_unit), f"{marks_text(member.amount)} of {member.of}{star}"])
    return ["in unit", *(str(int(unit.number)) for unit in units), "marks"], rows


def _sum_text(marks: Sequence[Mark]) -> str:
    """The sum of some marks; a sign where there is no answer among them, for the worst reason; nothing where none was set."""
    for kind, sign in _NO_SUM.items():
        if not any(mark.is_counted for mark in marks) and any(mark.verdict.kind == kind for mark in marks):
            return sign
    return marks_text(sum((mark.amount for mark in marks), Fraction(0))) if marks else ""


def _remarks(marks: ClassMarks, about: RunDetails) -> Iterator[Line]:
    if about.path != "all":
        yield from wrap(WHAT_WAS_SET[about.path], terminal_width())
    for member in marks:
        for problem in member.said:
            yield from wrap(f"{member.name}: {problem}", terminal_width())
    if any(member.without_mark.get(NOT_HANDED_IN) for member in marks):
        yield Line("  – nothing handed in; 0 is what was handed in and earned nothing")
    if any(NOT_READ in member.without_mark for member in marks):
        yield from wrap(
            "! with exercises of which something may have been handed in that was not read: the sentences above say what, and why.",
            terminal_width(),
        )
    if any(mark.override for member in marks for mark in member.marks):
        yield Line("  * with a mark set by hand")
    not_judged = [(member.name, mark.exercise, mark.verdict) for member in marks for mark in member.marks if not mark.is_judged]
    if not_judged:
        yield Line("  ? with exercises that are not judged yet:")
    for name, path, verdict in not_judged[:MOST_SAID]:
        yield from wrap(f"{name}, {path.rpartition('/')[2]}: {verdict.findings[0].says}", terminal_width())
    if len(not_judged) > MOST_SAID:
        yield Line(f"  and {len(not_judged) - MOST_SAID} more like these.")
    for path, fault in about.not_compared:
        yield from wrap(
            f"{path.rpartition('/')[2]} was not compared between members: a fault of the checker's ({fault}).", terminal_width()
        )
    alike = len(about.alike)
    if alike:
        pairs = f"{alike} pairs of submissions are" if alike > 1 else "One pair of submissions is"
        wrong = sum(bool(pair.wrong_on) for pair in about.alike)
        how = f", {wrong if wrong < alike else ''}{' ' * (wrong < alike)}with the same wrong answers" if wrong else ""
        yield from wrap(
            f"{pairs} nearly alike{how}; the class page lays them side by side, for you to judge.", terminal_width()
        )


def amend_command(into: Path, member: str, name: str) -> str:
    """The command that sets a mark by hand, to be copied where `mark` was run."""
    where = "" if into == Path("marks") else f" --into {quoted(os.fspath(into))}"
    ends = "-- " if member.startswith("-") else ""  # of the options: what follows is a name
    because, by = quoted("Shown on the bench"), quoted("Wren Dalby")
    return f"{called_as()} amend{where} --because {because} --by {by} {ends}{quoted(member)} {name} 9"


def _what_was_written(page: Path, seed: int, first: str, name: str) -> Iterator[Line]:
    folder = os.path.relpath(page.parent)
    yield Line(f"Open in a browser:  {os.path.relpath(page)}", "bold")
    yield Line("  the class, and a report for each member")
    yield Line(f"For other programs:  marks.csv, oneroster.zip and junit.xml in {folder}")
    yield Line(f"Kept in {folder}/{STORE} (seed {seed}): a rerun marks only what changed.")
    yield Line("Try next:")
    yield Line(f"  {amend_command(page.parent, first, name)}")
    yield Line(f"  {called_as()} try {name}      as a student does")
    yield Line(f"  {called_as()} pack      what to hand out to students")


COMMAND = Command("mark", "mark a folder of submissions, a folder or a zip for each member", add_arguments, run)

"""`checker mark`: a folder of submissions in; marks, reports and tables out."""

import argparse
import json
import os
import sys
from collections.abc import Iterator, Sequence
from datetime import date, datetime
from difflib import get_close_matches
from fractions import Fraction
from pathlib import Path

from ..core import SET, WHAT_WAS_SET
from ..course import PATHS, SEALED, UNITS, exercises_named
from ..judging.verdict import NOT_ATTEMPTED, NOT_HANDED_IN, NOT_JUDGED, NOT_READ, marks_text
from ..marks.details import RunDetails
from ..marks.marksheet import Mark, MemberMarks, marks_to_data, why_no_sum
from ..marks.run import STORE, Request, mark_class, require_containment
from ..marks.standing import ClassMarks, changes, set_aside_name
from ..marks.store import open_store
from ..report.text import Line, wrap
from ..submissions.members import MOST_SAID, find_submissions
from ..term.new import BESIDE
from ..term.reading import read_term
from ..term.term import Term, Work
from ..text import display_name
from .called import called_as, quoted
from .common import DONE, NOT_YET, Command, UsageError, terminal_width
from .results import left_out_lines, write_results
from .tables import show_table, with_progress
from .terminal import show

MOST_NAMED = 4  # exercises of one member


def add_arguments(parser: argparse.ArgumentParser) -> None:
    parser.add_argument(
        "folder",
        metavar="FOLDER",
        type=Path,
        help="holds a folder, a .zip or a .tar.gz for each member: Python files called like the exercises, or with all functions of one, "
        "notebooks, and archives of these; what is not read is named with the reason",
    )
    parser.add_argument("--only", metavar="EXERCISE", nargs="+", help="mark only these exercises, or units by their number")
    parser.add_argument("--work", metavar="NAME", help="the piece of work of the term that is marked")
    parser.add_argument("--term", metavar="FILE.toml", type=Path, help=f"the term (default: {BESIDE} beside FOLDER or in it)")
    parser.add_argument(
        "--received",
        metavar="WHEN",
        type=datetime.fromisoformat,
        help="when all of these were handed in, such as 2026-10-05 or 2026-10-05T18:30 (default: when the files were last changed)",
    )
    parser.add_argument(
        "--fresh", action="store_true", help="begin anew; what was marked before is kept in a folder of its own, beside DIR"
    )
    parser.add_argument(
        "--path",
        choices=tuple(SET),
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
    term = _term_for(options)
    work = _work_for(options, term)
    proof = None if options.cluster else require_containment(options.uncontained)
    path = work.path if work else options.path or "all"
    asked = {one for name in options.only for one in exercises_named(name)} if options.only else set(PATHS)
    paths = work.paths if work else [one for one in SET[path] if one in asked]
    if not paths:
        raise UsageError(f"None of these exercises is on the {path} path: leave --path out, or name others.")
    names = options.names if options.names is not None else (term.names or None) if term else None
    year = (term.begins, term.ends) if term and term.begins and term.ends else None
    request = Request(
        options.folder,
        paths,
        options.seed,
        options.jobs,
        options.cluster,
        options.uncontained,
        options.title or (term.title if term else None),
        options.club or (term.club if term else None),
        options.school_year or year,
        path,
        names,
        work,
        options.received,
    )
    find_submissions(options.folder, names or "")  # before anything is written
    if proof:
        print(proof, file=sys.stderr)
    if options.fresh and (kept := _set_aside(options.into)):
        print(f"What was marked before is kept in {kept}.", file=sys.stderr)
    options.into.mkdir(parents=True, exist_ok=True)
    with open_store(options.into / STORE) as store:
        if term:
            store.put_term(term)
        before = _amounts(ClassMarks(store)) if store.latest_run() is not None else {}
        run = mark_class(request, store, lambda marked, total: with_progress(marked, total, lambda one: one.member.name))
        page, left_out = write_results(store, options.into)
        marks = ClassMarks(store)
        if options.json:
            print(json.dumps([marks_to_data(member) for member in marks], indent=1))
        else:
            about, seed = marks.about(), store.about_run(run).seed
            show_table(*marks_table(marks, marks.paths))
            show(
                [
                    Line(""),
                    *_what_changed(before, marks),
                    *_about_the_term(marks, store.names_in(run), work),
                    *_remarks(marks, about),
                    *left_out_lines(left_out),
                    *_what_was_written(page, seed, next(iter(marks)).name, paths[0].rpartition("/")[2]),
                ]
            )
        doubts = any(member.not_judged or member.problems for member in marks)
        return NOT_YET if left_out or doubts else DONE


def _term_for(options: argparse.Namespace) -> Term | None:
    """The term of a file: the one that is named, or the one found beside the folder or in it, or the one that is remembered."""
    if options.term:
        return read_term(options.term)
    beside = (options.folder.absolute().parent / BESIDE, options.folder / BESIDE)
    if found := next((file for file in beside if file.is_file()), None):
        return read_term(Path(os.path.relpath(found)))
    if options.fresh or not (options.into / STORE).is_file():
        return None
    with open_store(options.into / STORE) as store:
        return store.term()


def _work_for(options: argparse.Namespace, term: Term | None) -> Work | None:
    """The piece of work that is named; None where exercises are."""
    if not options.work:
        return None
    if options.only or options.path:
        raise UsageError("--work says which exercises are marked: leave --only and --path out.")
    if term is None:
        raise UsageError(
            f"There is no term's file beside {options.folder}: name one with --term, or write one by {called_as()} term new."
        )
    if not (work := term.work(options.work)):
        names = ", ".join(work.name for work in term.works) or "none"
        raise UsageError(f"The term has no piece of work called {display_name(options.work)}: it has {names}.")
    return work


def _set_aside(into: Path) -> Path | None:
    """Give the folder of the marks so far another name, beside the one that is begun; None where there is none."""
    if not into.exists():
        return None
    kept = into.with_name(set_aside_name(into.name, date.today().isoformat(), os.listdir(into.absolute().parent)))
    into.rename(kept)
    return kept


Amounts = dict[str, dict[str, Fraction]]


def _amounts(marks: ClassMarks) -> Amounts:
    """The mark on each exercise, by who it is."""
    return {member.identity: {mark.exercise: mark.amount for mark in member.marks} for member in marks}


def _what_changed(before: Amounts, marks: ClassMarks) -> Iterator[Line]:
    """Who was marked before and has other marks now, on what was marked then."""
    if not before:
        return
    found = list(changes(before, marks))
    for change in found[:MOST_SAID]:
        names = ", ".join(path.rpartition("/")[2] for path in change.exercises[:MOST_NAMED])
        more = f" and {len(change.exercises) - MOST_NAMED} more" if len(change.exercises) > MOST_NAMED else ""
        yield from wrap(
            f"{change.name}: {marks_text(change.before)} before, {marks_text(change.now)} now, by {names}{more}.",
            terminal_width(),
        )
    if len(found) > MOST_SAID:
        yield Line(f"  and {len(found) - MOST_SAID} more whose marks changed.")
    if not found:
        yield Line("  Nobody's marks of before have changed.")


def _about_the_term(marks: ClassMarks, handed_in: Sequence[tuple[str, str]], work: Work | None) -> Iterator[Line]:
    """Who has handed in nothing for the piece of work, who is not on the roster, and who is late."""
    pieces = [(member, one) for member in marks for one in member.works if work and one.work.name == work.name]
    if marks.term and marks.term.roster:
        missing = [member.name for member, one in pieces if member.person and not one.handed_in]
        strangers = [_with_a_guess(name[0], marks.term) for name in handed_in if not marks.term.person(*name)]
        for said, names in (("Nothing handed in by", missing), ("Not on the roster, and marked", strangers)):
            if names:
                more = f" and {len(names) - MOST_SAID} more" if len(names) > MOST_SAID else ""
                yield from wrap(f"{said}: {', '.join(names[:MOST_SAID])}{more}.", terminal_width())
        if strangers:
            yield from wrap(
                "Whoever hands in under another name: give it in the roster, in a column called also.", terminal_width()
            )
    late = [f"{member.name}, {one.work.name}: {one.lateness.says}" for member, one in pieces if one.lateness.is_late]
    for says in late[:MOST_SAID]:
        yield from wrap(f"{says}.", terminal_width())
    if len(late) > MOST_SAID:
        yield Line(f"  and {len(late) - MOST_SAID} more late.")


def _with_a_guess(name: str, term: Term) -> str:
    """A name that is not on the roster, with the one there that is nearly the same."""
    near = get_close_matches(name, [person.name for person in term.roster], n=1, cutoff=0.8)
    return f"{name} ({near[0]}?)" if near else name


_NO_SUM = {NOT_JUDGED: "?", NOT_READ: "!", NOT_ATTEMPTED: "0", NOT_HANDED_IN: "–"}


def marks_table(marks: ClassMarks | Sequence[MemberMarks], paths: Sequence[str]) -> tuple[list[str], list[list[str]]]:
    """(headings, rows): a column for each unit and the total."""
    units = [unit for unit in UNITS if any(path.startswith(unit.folder) for path in paths)]
    rows = []
    for member in marks:
        by_unit = [[mark for mark in member.marks if mark.exercise.startswith(unit.folder)] for unit in units]
        star = "*" if any(mark.override for mark in member.marks) else ""
        star += "!" if NOT_READ in member.without_mark and not member.why_none else ""
        star += "?" if member.not_judged and not member.why_none else ""
        rows.append([member.name, *map(_sum_text, by_unit), f"{_sum_text(member.marks)} of {member.of}{star}"])
    return ["in unit", *(str(int(unit.number)) for unit in units), "marks"], rows


def _sum_text(marks: Sequence[Mark]) -> str:
    """The sum of some marks; a sign where there is no answer among them; nothing where none was set."""
    if kind := why_no_sum(marks):
        return _NO_SUM[kind]
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
    ends = "-- " if member.startswith("-") else ""  # of the options: what follows is a name
    because, by = quoted("Shown"), quoted("Wren Dalby")
    return f"{called_as()} amend{_of(into)} --because {because} --by {by} {ends}{quoted(member)} {name} 9"


def _of(into: Path) -> str:
    """The option by which a command finds these marks."""
    return "" if into == Path("marks") else f" --into {quoted(os.fspath(into))}"


def _what_was_written(page: Path, seed: int, first: str, name: str) -> Iterator[Line]:
    folder = os.path.relpath(page.parent)
    yield Line(f"Open in a browser:  {os.path.relpath(page)}", "bold")
    yield Line("  the class, and a report for each member")
    yield Line(f"For other programs:  marks.csv, sums.csv, oneroster.zip and junit.xml in {folder}")
    yield Line(f"Kept in {folder}/{STORE} (seed {seed}): a rerun marks only what changed.")
    yield Line("Try next:")
    yield Line(f"  {amend_command(page.parent, first, name)}")
    yield Line(f"  {called_as()} try {name}      as a student does")
    yield Line(f"  {called_as()} feedback{_of(page.parent)}      what goes back to the members")
    yield Line(f"  {called_as()} pack      what to hand out to students")


COMMAND = Command("mark", "mark a folder of submissions, a folder or a zip for each member", add_arguments, run)

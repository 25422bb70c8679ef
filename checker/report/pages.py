"""Reports as HTML: each page one file that needs no other and no network.

What members wrote may say anything. Every text is escaped where it is put into a page, characters that do not show are
written out, and the pages forbid all requests and all scripts, but for one on the class page that is known by its hash: it sorts
and filters, and nothing is missing without it.
"""

from base64 import b64encode
from collections import Counter
from collections.abc import Collection, Sequence
from datetime import date, datetime
from functools import cache
from hashlib import sha256
from itertools import groupby
from pathlib import Path
from typing import NamedTuple

import jinja2
from markupsafe import Markup

from ..core import path_of
from ..course import Unit, load_exercise, unit_of
from ..faults import attempt
from ..files import open_replacement
from ..judging.explanations import lent_sentences
from ..judging.verdict import (
    NOT_ATTEMPTED,
    NOT_HANDED_IN,
    NOT_JUDGED,
    NOT_READ,
    PASSED,
    UNFINISHED,
    WITHOUT_MARK,
    WRONG,
    Verdict,
    marks_text,
)
from ..marks.marksheet import Mark, MemberMarks, override_sentence, work_override_sentence
from ..submissions.likeness import Alike
from ..templates import environment
from ..term.lateness import percent
from ..text import ended
from .names import report_names
from .over_time import OverTime, named, term_share
from .summary import Summary
from .text import PART_NAMES

SYMBOLS = {PASSED: "✓", WRONG: "✗", UNFINISHED: "…", NOT_ATTEMPTED: "–", NOT_HANDED_IN: "○", NOT_READ: "⊘", NOT_JUDGED: "?"}
NO_ANSWER = "!"
COLUMNS_ON_PAPER = 28  # of exercises, on A4 held upright
EXPLAINED = {
    NOT_ATTEMPTED: "not attempted: handed in as it was given out",
    NOT_HANDED_IN: "not handed in",
    NOT_READ: "not read: the member’s page says what was handed in, and why not",
    NOT_JUDGED: "not judged, by a fault of the checker’s: the next run tries again",
}


# What the class page can be asked for, by the note of a cell.
SHOWN = {
    "by hand": "a mark set by hand",
    "no answer": "code that gave no answer",
    NOT_READ: "something not read",
    NOT_HANDED_IN: "something not handed in",
    NOT_ATTEMPTED: "something not attempted",
    NOT_JUDGED: "something not judged",
}


class Row(NamedTuple):
    """A member's row in the class table; `has` are the notes of its cells that can be asked for, with bars between them."""

    name: str
    file: str
    total: tuple[str, str]
    of: int
    cells: tuple[tuple[str, str], ...]
    has: str


def write_reports(
    members: Collection[MemberMarks],
    paths: Sequence[str],
    folder: Path,
    marked: date,
    alike: Sequence[Alike] = (),
    title: str = "Crystal to Reaction",
    what_was_set: str = "",
) -> Path:
    """Write a report for each member, and a page for the class that leads to them.

    Parameters
    ----------
    members : collection of MemberMarks
        Gone through twice: for the names, then for the rest.
    paths : sequence of str
        The exercises marked, in the course's order.
    folder : Path
        Made if it is not there; reports of an earlier run are replaced, nothing else is touched.
    marked : date
    alike : sequence of Alike
        Submissions to be looked at side by side.
    title : str
        Above every page.
    what_was_set : str
        A sentence about it, where that is not the whole course.

    Returns
    -------
    Path
        Of the class page.

    Raises
    ------
    OSError
        If a file cannot be written.
    """
    files = [f"members/{name}.html" for name in report_names([member.name for member in members])]
    (folder / "members").mkdir(parents=True, exist_ok=True)
    common = {"course": title, "marked": marked, "what_was_set": what_was_set}
    summary, over_time, rows, work_rows = Summary(paths), OverTime(), [], []
    for member, file in zip(members, files, strict=True):
        page, fault = attempt(_member_page, common, member)
        _write(folder / file, page or _render("fault.html", common | {"name": member.name, "fault": fault}))
        summary.add(member)
        over_time.add(member.works)
        share = term_share(member.works)
        work_rows.append((member.name, file, named(member.works), "–" if share is None else percent(share)))
        rows.append(_row(member, file, paths))
    if alike:
        _write(folder / "alike.html", _render("alike.html", common | {"alike": alike}))
    units = [(unit, list(of_unit)) for unit, of_unit in groupby(paths, key=unit_of)]
    notes = {note for row in rows for _, note in row.cells}
    about_class = common | {
        "signs": {kind: SYMBOLS[kind] for kind in WITHOUT_MARK if kind in notes},
        "not_set": any(not text for row in rows for text, _ in row.cells),
        "notes": [note for note in SHOWN if note in notes],
        "place_of": {path: place for place, path in enumerate(paths)},
        "summary": summary,
        "over_time": list(over_time.works.values()),
        "work_rows": work_rows,
        "rows": rows,
        "units": units,
        "sheets": _sheets(units),
        "alike": alike,
    }
    _write(folder / "index.html", _render("class.html", about_class))
    return folder / "index.html"


def _by_kind_and_unit(member: MemberMarks) -> dict:
    """What a member's page wants to know: the marks to look at, how many of the other kinds, the marks by unit."""
    kinds = Counter(mark.verdict.kind for mark in member.marks)
    return {
        "to_look_at": [mark for mark in member.marks if mark.verdict.kind not in (PASSED, NOT_ATTEMPTED, NOT_HANDED_IN)],
        "passed": kinds[PASSED],
        "unread": member.without_mark.get(NOT_READ, 0),
        "by_path": [
            (path, sum(mark.verdict.kind == PASSED for mark in marks), len(marks))
            for path in ("core", "further")
            if (marks := [mark for mark in member.marks if path_of(mark.exercise) == path])
        ],
        "by_unit": [(unit, list(marks)) for unit, marks in groupby(member.marks, key=lambda mark: unit_of(mark.exercise))],
    }


def _row(member: MemberMarks, file: str, paths: Sequence[str]) -> Row:
    cells = _cells(member, paths)
    has = "|".join(note for note in SHOWN if any(note == of_cell for _, of_cell in cells))
    total = (SYMBOLS[member.why_none], member.why_none) if member.why_none else (member.text, "")
    return Row(member.name, file, total, member.of, cells, has)


def _sheets(units: Sequence[tuple[Unit, list[str]]]) -> list[list[tuple[Unit, list[str]]]]:
    """The units in groups whose exercises find room side by side on a sheet of paper."""
    sheets: list[list[tuple[Unit, list[str]]]] = [[]]
    for unit, paths in units:
        if sheets[-1] and sum(len(of_one) for _, of_one in sheets[-1]) + len(paths) > COLUMNS_ON_PAPER:
            sheets.append([])
        sheets[-1].append((unit, paths))
    return sheets


def _cells(member: MemberMarks, paths: Sequence[str]) -> tuple[tuple[str, str], ...]:
    """For each exercise the mark as text, and what else the class table shows of it: (text, note)."""
    marks = {mark.exercise: mark for mark in member.marks}
    return tuple(_cell(marks.get(path)) for path in paths)


def _cell(mark: Mark | None) -> tuple[str, str]:
    if mark is None:
        return "", ""
    if mark.override:
        return marks_text(mark.amount), "by hand"
    if not mark.is_counted:
        return SYMBOLS[mark.verdict.kind], mark.verdict.kind
    no_answer = mark.verdict.kind not in SYMBOLS
    return marks_text(mark.amount), "no answer" if no_answer else "full" if mark.amount == mark.of else ""


def _member_page(common: dict, member: MemberMarks) -> str:
    return _render("member.html", common | {"member": member, **_by_kind_and_unit(member)})


def member_page(member: MemberMarks, title: str, marked: date) -> str:
    """A member's report as a page of its own."""
    return _member_page({"course": title, "marked": marked, "what_was_set": ""}, member)


def _render(template: str, data: dict) -> str:
    return _templates().get_template(template).render(data)


def _write(path: Path, page: str) -> None:
    with open_replacement(path, newline="\n") as file:
        file.write(page)


@cache
def _templates() -> jinja2.Environment:
    templates = environment(Path(__file__).with_name("pages"))
    script = (Path(__file__).with_name("pages") / "class.js").read_text("utf-8")
    templates.globals.update(
        style=Markup(Path(__file__).with_name("report.css").read_text("utf-8")),
        part_names=PART_NAMES,
        explained=EXPLAINED,
        what_is_shown=SHOWN,
        script=Markup(script),
        script_hash=f"sha256-{b64encode(sha256(script.encode()).digest()).decode()}",
        symbol=symbol,
        ended=ended,
        exercise=load_exercise,
        path_of=path_of,
        by_hand=override_sentence,
        work_by_hand=work_override_sentence,
        lent=lent_sentences,
        parts_table=parts_table,
    )
    templates.filters.update(marks=marks_text, name=lambda path: path.rpartition("/")[2], day=day, moment=moment)
    return templates


def day(when: date) -> str:
    return f"{when.day} {when:%B %Y}"


def moment(when: datetime) -> str:
    """A day and a time, by the instructor's clock: `5 October 2026, 18:30`."""
    return f"{day(when)}, {when:%H:%M}"


def symbol(kind: str) -> str:
    """A sign that stands before a verdict's word."""
    return SYMBOLS.get(kind, NO_ANSWER)


def parts_table(verdict: Verdict) -> tuple[list[str], list[tuple[str, list]]]:
    """(kinds of parts that the exercise has, rows of (function, part or None for each kind))."""
    kinds = [kind for kind in PART_NAMES if any(part.what == kind for part in verdict.parts)]
    functions = dict.fromkeys(part.function for part in verdict.parts if part.what in kinds)
    by_place = {(part.function, part.what): part for part in verdict.parts}
    return kinds, [(function, [by_place.get((function, kind)) for kind in kinds]) for function in functions]

"""Sums for a spreadsheet: a row for each member, a column for each unit and for each piece of work."""

from collections.abc import Iterable, Sequence
from fractions import Fraction
from typing import IO

from ..course import UNITS, Unit, unit_of
from ..judging.verdict import marks_text
from ..marks.attempts import WorkMarks, is_missing
from ..marks.marksheet import MemberMarks
from ..term.term import Work
from .cells import text_cell, write_rows

COUNTED = ", counted"


def write_sums(members: Iterable[MemberMarks], paths: Sequence[str], works: Sequence[Work], file: IO[str]) -> None:
    """Write the table: name, id on the roster, a column for each unit, then three for each piece of work: what it earned, what
    counts after what late costs, and how late it was.

    A cell is empty where nothing was handed in: a 0 stands for something that earned nothing.

    Parameters
    ----------
    members : iterable of MemberMarks
    paths : sequence of str
        The exercises that were set.
    works : sequence of Work
        The pieces of work; one without a name has no columns of its own.
    file : text file
        Opened with newline="" and encoding "utf-8-sig".
    """
    units = [unit for unit in UNITS if any(unit_of(path) == unit for path in paths)]
    named = [work.name for work in works if work.name]
    headings = [heading for name in named for heading in (name, f"{name}{COUNTED}", f"{name}, late")]
    write_rows(file, [["member", "id", *(f"unit {unit.number}" for unit in units), *map(text_cell, headings)]])
    write_rows(file, (_row(member, units, named) for member in members))


def _row(member: MemberMarks, units: Sequence[Unit], named: Sequence[str]) -> list[str]:
    works = {one.work.name: one for one in member.works}
    return [
        text_cell(member.name),
        text_cell(member.person.id) if member.person else "",
        *(_of_unit(member, unit) for unit in units),
        *(cell for name in named for cell in _of_work(works[name])),
    ]


def _of_unit(member: MemberMarks, unit: Unit) -> str:
    marks = [mark for mark in member.marks if unit_of(mark.exercise) == unit]
    counted = [mark for mark in marks if mark.is_judged and (mark.override or not is_missing(mark.verdict))]
    return marks_text(sum((mark.amount for mark in counted), Fraction(0))) if counted else ""


def _of_work(one: WorkMarks) -> tuple[str, str, str]:
    amount, counted = ("" if mark is None else marks_text(mark) for mark in (one.amount, one.after_late))
    return amount, counted, one.lateness.says if one.lateness.is_late else ""

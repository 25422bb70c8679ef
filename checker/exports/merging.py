"""Marks that were changed in a table elsewhere, found by laying it beside the table as it would be written now."""

import csv
import io
from dataclasses import dataclass
from pathlib import Path

from ..course import UnknownExercise, find, load_exercise
from ..faults import Problem
from ..marks.marksheet import mark_from
from ..marks.standing import ClassMarks
from ..term.roster import table_rows
from ..term.term import Work
from .sums import COUNTED, write_sums
from .table import write_table


class TableFault(Problem):
    """A table cannot be merged; the text says where and why, and what to do. Nothing of it was taken."""


@dataclass(frozen=True)
class Amendment:
    """A mark that is another in the table: whose, by name and identity, on which exercise or piece of work, as it was, as written."""

    name: str
    identity: str
    on: str | Work
    before: str
    mark: str


def amendments(file: Path, marks: ClassMarks) -> list[Amendment]:
    """What somebody changed in a copy of marks.csv or sums.csv.

    Members are known by their id on the roster where the table has it, else by name. Columns of exercises and of what counts of
    pieces of work are looked at, and no others.

    Raises
    ------
    TableFault
        If it is no such table, has someone who is not in the marks, or a cell is no mark.
    """
    try:
        rows = table_rows(file)
    except ValueError as problem:
        raise TableFault(f"{problem}.") from None
    if not rows or "member" not in rows[0][1]:
        raise TableFault(f"{file} is no table of marks: its first line wants the column member, as in marks.csv and sums.csv.")
    now = _now(marks)
    found = []
    for line, row in rows:
        who = marks.identities.get(row.get("id", "")) or marks.identities.get(row["member"].lstrip("'")) or ""
        if who not in now:
            raise TableFault(
                f"{file}, line {line}: {row['member'] or 'somebody without a name'} is not in the marks: take the line out."
            )
        name, cells = now[who]
        for heading, cell in row.items():
            on = _on(heading, marks)
            if on is not None and cell and cell.strip() != cells.get(heading, "").strip():
                found.append(Amendment(name, who, on, cells.get(heading, ""), _checked(file, line, heading, cell, on)))
    return [one for one in found if one.mark != one.before]


def _checked(file: Path, line: int, heading: str, cell: str, on: str | Work) -> str:
    """A cell's mark, with a point for a comma."""
    text = cell.strip().replace(",", ".")
    paths, what = (on.paths, "piece of work") if isinstance(on, Work) else ((on,), "exercise")
    try:
        mark_from(text, sum(load_exercise(path).marks for path in paths), what)
    except ValueError as no_mark:
        raise TableFault(f"{file}, line {line}, {heading}: {no_mark}") from None
    return text.rstrip("0").rstrip(".") if "." in text else text


def _on(heading: str, marks: ClassMarks) -> str | Work | None:
    """What a column is about: an exercise's path, a piece of work, or nothing that may be changed."""
    if heading.endswith(COUNTED):
        return marks.work(heading.removesuffix(COUNTED).lstrip("'"))
    try:
        path = find(heading.partition(" (")[0])
    except UnknownExercise:
        return None
    return path if path in marks.paths else None


def _now(marks: ClassMarks) -> dict[str, tuple[str, dict[str, str]]]:
    """(name, cells by heading) of each member by identity, as both tables would be written now."""
    table, sums = io.StringIO(newline=""), io.StringIO(newline="")
    members = list(marks)
    write_table(members, marks.paths, table)
    write_sums(members, marks.paths, marks.works, sums)
    both = ([_small(row) for row in csv.DictReader(io.StringIO(one.getvalue(), newline=""))] for one in (table, sums))
    return {
        member.identity: (member.name, of_table | of_sums) for member, of_table, of_sums in zip(members, *both, strict=True)
    }


def _small(row: dict[str, str]) -> dict[str, str]:
    return {heading.lower(): cell for heading, cell in row.items()}

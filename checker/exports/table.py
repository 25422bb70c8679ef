"""The marks table: a row for each member, for a spreadsheet.

The file begins with a byte order mark. Without one, spreadsheets on Windows take UTF-8 for the system's old character
set and spoil every name that has an accent; programs that read CSV know the mark as "utf-8-sig".
"""

from collections.abc import Iterable, Mapping, Sequence
from types import MappingProxyType
from typing import IO

from ..core import path_of
from ..judging.explanations import lent_sentences
from ..marks.marksheet import MemberMarks, override_sentence
from .cells import text_cell, write_rows


def write_table(
    members: Iterable[MemberMarks], paths: Sequence[str], file: IO[str], faults: Mapping[str, str] = MappingProxyType({})
) -> None:
    """Write the table: name, total, a column for each exercise, core or further, then in words what was set by hand, what stood
    in, and what is to be said of the files.

    A number is a mark: 0 is an answer that is wrong. Where there was none to be judged its cell says why in words, and a cell is
    empty where the exercise was not set.

    Parameters
    ----------
    members : iterable of MemberMarks
    paths : sequence of str
        The exercises, in the order of the columns.
    file : text file
        Opened with newline="" and encoding "utf-8-sig".
    faults : mapping of str to str
        What was wrong with the checker, by the identity of each member over whose marks it failed.
    """
    headings = "set by hand", "with stand-ins", "about the files"
    write_rows(file, [["member", "marks", "out of", *map(_heading, paths), *headings]])
    write_rows(
        file,
        (
            _no_row(member, paths, faults[member.identity]) if member.identity in faults else _row(member, paths)
            for member in members
        ),
    )


def _no_row(member: MemberMarks, paths: Sequence[str], fault: str) -> list[str]:
    says = f"The marks could not be written here, nor in the other tables: a fault of the checker's ({fault})."
    return [text_cell(member.name), "", "", *([""] * len(paths)), "", "", text_cell(says)]


def _row(member: MemberMarks, paths: Sequence[str]) -> list[str]:
    marks = {mark.exercise: mark for mark in member.marks}
    by_hand = [f"{_name(mark.exercise)}: {override_sentence(mark)}" for mark in member.marks if mark.override]
    lent = [f"{_name(mark.exercise)}: {said}" for mark in member.marks for said in lent_sentences(mark.verdict, "the member's")]
    return [
        text_cell(member.name),
        member.text,
        str(member.of),
        *(marks[path].text if path in marks else "" for path in paths),
        text_cell(" ".join(by_hand)),
        text_cell(" ".join(lent)),
        text_cell(" ".join(member.said)),
    ]


def _name(path: str) -> str:
    return path.rpartition("/")[2]


def _heading(path: str) -> str:
    return f"{_name(path)} ({path_of(path)})"

"""Marks in files that other programs read: a table, OneRoster 1.2, JUnit XML."""

from collections.abc import Collection, Iterable, Iterator, Mapping, Sequence
from io import StringIO
from pathlib import Path

from ..faults import attempt
from ..files import open_replacement
from ..marks.marksheet import MemberMarks
from ..term.term import Work
from .cells import write_rows
from .junit import write_junit
from .oneroster import ClassDetails, member_rows, write_oneroster
from .sums import write_sums
from .table import write_table

__all__ = ["ClassDetails", "write_exports"]


def write_exports(
    members: Collection[MemberMarks], paths: Sequence[str], details: ClassDetails, folder: Path, works: Sequence[Work] = ()
) -> Mapping[str, str]:
    """Write marks.csv, sums.csv, oneroster.zip and junit.xml into a folder, each whole or not at all.

    A member over whose marks the checker itself fails has a row in marks.csv that says so, and is in none of the others.

    Parameters
    ----------
    members : collection of MemberMarks
        Gone through several times.
    paths : sequence of str
        The exercises marked, in the course's order.
    details : ClassDetails
        What OneRoster wants to know of the class.
    folder : Path
        There already.
    works : sequence of Work
        The pieces of work of a term: sums.csv has columns for them, and oneroster.zip has them in place of single exercises.

    Returns
    -------
    mapping of str to str
        What was wrong with the checker, by the name of each member left out.

    Raises
    ------
    OSError
        If a file cannot be written.
    """
    failed = [(member, fault) for member in members if (fault := attempt(_write_one, member, paths, details, works)[1])]
    faults = {member.identity: fault for member, fault in failed}
    sound = _Without(members, faults)
    table, sums, roster, junit = (folder / name for name in ("marks.csv", "sums.csv", "oneroster.zip", "junit.xml"))
    with open_replacement(table, encoding="utf-8-sig", newline="") as file:
        write_table(members, paths, file, faults)
    with open_replacement(sums, encoding="utf-8-sig", newline="") as file:
        write_sums(sound, paths, works, file)
    with open_replacement(roster, "wb") as file:
        write_oneroster(sound, paths, details, file, works)
    with open_replacement(junit, newline="\n") as file:
        write_junit(sound, file)
    return {member.name: fault for member, fault in failed}


def _write_one(member: MemberMarks, paths: Sequence[str], details: ClassDetails, works: Sequence[Work]) -> None:
    """All that the files will say of a member, to nobody."""
    write_table([member], paths, StringIO())
    write_sums([member], paths, works, StringIO())
    write_junit([member], StringIO())
    for rows in member_rows([member], details, works).values():
        write_rows(StringIO(), (row.values() for row in rows))


class _Without(Iterable[MemberMarks]):
    """Members, but for some, read again each time they are gone through."""

    def __init__(self, members: Iterable[MemberMarks], left_out: Collection[str]) -> None:
        self._members, self._left_out = members, left_out

    def __iter__(self) -> Iterator[MemberMarks]:
        return (member for member in self._members if member.identity not in self._left_out)

"""Marks in files that other programs read: a table, OneRoster 1.2, JUnit XML."""

from collections.abc import Collection, Sequence
from pathlib import Path

from ..files import open_replacement
from ..marks.marksheet import MemberMarks
from .junit import write_junit
from .oneroster import ClassDetails, write_oneroster
from .table import write_table

__all__ = ["ClassDetails", "write_exports"]


def write_exports(
    members: Collection[MemberMarks], paths: Sequence[str], details: ClassDetails, folder: Path
) -> tuple[Path, ...]:
    """Write marks.csv, oneroster.zip and junit.xml into a folder, each whole or not at all; returns where they are.

    Parameters
    ----------
    members : collection of MemberMarks
        Gone through once for each file.
    paths : sequence of str
        The exercises marked, in the course's order.
    details : ClassDetails
        What OneRoster wants to know of the class.
    folder : Path
        There already.

    Raises
    ------
    OSError
        If a file cannot be written.
    """
    table, roster, junit = (folder / name for name in ("marks.csv", "oneroster.zip", "junit.xml"))
    with open_replacement(table, encoding="utf-8-sig", newline="") as file:
        write_table(members, paths, file)
    with open_replacement(roster, "wb") as file:
        write_oneroster(members, paths, details, file)
    with open_replacement(junit, newline="\n") as file:
        write_junit(members, file)
    return table, roster, junit

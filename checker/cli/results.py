"""What `mark` and `amend` leave in a folder: the class page, a report for each member, and tables for other programs."""

from collections.abc import Iterator, Mapping
from datetime import date
from pathlib import Path

from ..core import WHAT_WAS_SET
from ..exports import ClassDetails, write_exports
from ..marks.standing import ClassMarks
from ..marks.store import Store
from ..report.pages import write_reports
from ..report.text import Line, wrap
from .common import terminal_width


def left_out_lines(left_out: Mapping[str, str]) -> Iterator[Line]:
    """A sentence for each member whom the tables for other programs leave out."""
    for name, fault in left_out.items():
        says = f"{name} is not in the tables for other programs: a fault of the checker's ({fault})."
        yield from wrap(says, terminal_width())


def write_results(store: Store, folder: Path) -> tuple[Path, Mapping[str, str]]:
    """Write everything that stands after the runs so far, under the names that the newest was marked under.

    Parameters
    ----------
    store : Store
        With one finished run at least.
    folder : Path
        Made if it is not there.

    Returns
    -------
    path of the class page; what was wrong with the checker, by the name of each member whom the tables leave out
    """
    folder.mkdir(parents=True, exist_ok=True)
    marks, today = ClassMarks(store), date.today()
    about, paths = marks.about(), marks.paths
    class_id = marks.term.class_id if marks.term else ""
    details = ClassDetails(about.title, about.club, *about.school_year, today, class_id)
    left_out = write_exports(marks, paths, details, folder, marks.works)
    return write_reports(marks, paths, folder, today, about.alike, about.title, WHAT_WAS_SET.get(about.path, "")), left_out

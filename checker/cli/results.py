"""What `mark` and `amend` leave in a folder: the class page, a report for each member, and tables for other programs."""

from datetime import date
from pathlib import Path

from ..core import WHAT_WAS_SET
from ..exports import ClassDetails, write_exports
from ..marks.run import ClassMarks
from ..marks.store import Store
from ..report.pages import write_reports


def write_results(store: Store, run: int, folder: Path) -> Path:
    """Write everything about a run, under the names that it was marked under; returns the class page's path.

    Parameters
    ----------
    store : Store
    run : int
        The run's number in the store.
    folder : Path
        Made if it is not there.
    """
    folder.mkdir(parents=True, exist_ok=True)
    marks, about, today = ClassMarks(store, run), store.about_run(run), date.today()
    first = next(iter(marks), None)
    paths = [mark.exercise for mark in first.marks] if first else []
    write_exports(marks, paths, ClassDetails(about.title, about.club, *about.school_year, today), folder)
    return write_reports(marks, paths, folder, today, about.alike, about.title, WHAT_WAS_SET.get(about.path, ""))

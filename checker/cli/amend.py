"""`checker amend`: a mark set by a person, or all that were changed in a table elsewhere."""

import argparse
import os
from pathlib import Path

from ..course import find
from ..exports.merging import amendments
from ..marks.attempts import key_of_work
from ..marks.marksheet import set_mark, set_work_mark
from ..marks.run import STORE
from ..marks.standing import ClassMarks
from ..marks.store import Store, open_store
from ..report.text import Line, wrap
from ..term.term import Work
from .called import called_as
from .common import DONE, NOT_YET, Command, UsageError, terminal_width
from .results import left_out_lines, write_results
from .terminal import show


def add_arguments(parser: argparse.ArgumentParser) -> None:
    parser.add_argument(
        "member", metavar="MEMBER", nargs="?", help="the name as the marks table has it, or the id on the roster"
    )
    parser.add_argument("exercise", metavar="EXERCISE", nargs="?", help="an exercise, or a piece of work as a whole")
    parser.add_argument(
        "mark",
        metavar="MARK",
        nargs="?",
        help="such as 7, 7.5 or 15/2; or the word withdraw, to let the checker's mark count again",
    )
    parser.add_argument(
        "--from",
        dest="table",
        metavar="TABLE.csv",
        type=Path,
        help="take what was changed in a copy of marks.csv or sums.csv, in place of MEMBER EXERCISE MARK",
    )
    parser.add_argument("--because", required=True, metavar="REASON", help="shown to the member beside the mark")
    parser.add_argument("--by", required=True, metavar="NAME", help="who sets it")
    parser.add_argument("--into", metavar="DIR", type=Path, default=Path("marks"), help="where the marks are (default: marks)")


def run(options: argparse.Namespace) -> int:
    one = (options.member, options.exercise, options.mark)
    if (None in one) if options.table is None else any(one):
        raise UsageError("Name a member, an exercise and a mark; or, alone, a changed table with --from.")
    if not (options.into / STORE).is_file():
        raise UsageError(
            f"There are no marks in {options.into} yet. Run {called_as()} mark first, or name the folder with --into."
        )
    with open_store(options.into / STORE) as store:
        if store.latest_run() is None:
            raise UsageError(f"There are no marks in {options.into} yet: the run in it was not finished.")
        marks = ClassMarks(store)
        if options.table:
            _merge(store, marks, options)
        else:
            _amend(store, marks, options)
        page, left_out = write_results(store, options.into)
    show([Line(f"Done; the reports are written anew: {os.path.relpath(page)}"), *left_out_lines(left_out)])
    return NOT_YET if left_out else DONE


def _amend(store: Store, marks: ClassMarks, options: argparse.Namespace) -> None:
    """The mark of one member on one exercise or piece of work."""
    on = marks.work(options.exercise) or find(options.exercise)
    if options.member not in marks.identities:
        raise UsageError(f"{options.member} is not in the marks. Write the name as the table has it.")
    member = marks.identities[options.member]
    if options.mark == "withdraw":
        store.withdraw(member, key_of_work(on.name) if isinstance(on, Work) else on, options.because, options.by)
    else:
        _set(store, member, on, options.mark, options)


def _set(store: Store, member: str, on: str | Work, mark: str, options: argparse.Namespace) -> None:
    try:
        if isinstance(on, Work):
            set_work_mark(store, member, on, mark, options.because, options.by)
        else:
            set_mark(store, member, on, mark, options.because, options.by)
    except ValueError as problem:
        raise UsageError(str(problem)) from None


def _merge(store: Store, marks: ClassMarks, options: argparse.Namespace) -> None:
    """What was changed in a table elsewhere, each as a mark set by hand, for the one reason."""
    found = amendments(options.table, marks)
    for one in found:
        _set(store, one.identity, one.on, one.mark, options)
        on = one.on.name if isinstance(one.on, Work) else one.on.rpartition("/")[2]
        show(wrap(f"{one.name}, {on}: {one.before or 'nothing'} before, {one.mark} now.", terminal_width()))
    if not found:
        show([Line("Nothing in the table is other than in the marks.")])


COMMAND = Command("amend", "set a mark by hand, with a reason; it outlives every rerun", add_arguments, run)

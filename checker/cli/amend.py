"""`checker amend`: a mark set by a person."""

import argparse
import os
from pathlib import Path

from ..course import find
from ..marks.marksheet import set_mark
from ..marks.run import STORE, ClassMarks
from ..marks.store import open_store
from ..report.text import Line
from .called import called_as
from .common import DONE, NOT_YET, Command, UsageError
from .results import left_out_lines, write_results
from .terminal import show


def add_arguments(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("member", metavar="MEMBER", help="the name as the marks table has it")
    parser.add_argument("exercise", metavar="EXERCISE")
    parser.add_argument(
        "mark", metavar="MARK", help="such as 7, 7.5 or 15/2; or the word withdraw, to let the checker's mark count again"
    )
    parser.add_argument("--because", required=True, metavar="REASON", help="shown to the member beside the mark")
    parser.add_argument("--by", required=True, metavar="NAME", help="who sets it")
    parser.add_argument("--into", metavar="DIR", type=Path, default=Path("marks"), help="where the marks are (default: marks)")


def run(options: argparse.Namespace) -> int:
    path = find(options.exercise)
    if not (options.into / STORE).is_file():
        raise UsageError(
            f"There are no marks in {options.into} yet. Run {called_as()} mark first, or name the folder with --into."
        )
    with open_store(options.into / STORE) as store:
        run = store.latest_run()
        identities = {} if run is None else {member.name: member.identity for member in ClassMarks(store, run)}
        if run is None or options.member not in identities:
            raise UsageError(f"{options.member} is not in the last run's marks. Write the name as the table has it.")
        if options.mark == "withdraw":
            store.withdraw(identities[options.member], path, options.because, options.by)
        else:
            try:
                set_mark(store, identities[options.member], path, options.mark, options.because, options.by)
            except ValueError as problem:
                raise UsageError(str(problem)) from None
        page, left_out = write_results(store, run, options.into)
    show([Line(f"Done; the reports are written anew: {os.path.relpath(page)}"), *left_out_lines(left_out)])
    return NOT_YET if left_out else DONE


COMMAND = Command("amend", "set a mark by hand, with a reason; it outlives every rerun", add_arguments, run)

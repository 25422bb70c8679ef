"""`checker try`: check one exercise, or the next one that is not yet passed."""

import argparse
import json
import os
import sys
from pathlib import Path

from ..course import PATHS, PRACTICE_SEED, find
from ..judging.judge import judge
from ..judging.verdict import NOT_ATTEMPTED, Verdict, to_data
from ..pack.stubs import is_unwritten
from ..report.learner import learner_lines
from ..report.text import Line, wrap
from ..sandbox.proof import offered_containment
from ..sandbox.workers import start_worker
from ..submissions.members import read_member_folder
from .common import DONE, NOT_YET, Command, add_folder_argument, called_as, exercises_folder, terminal_width
from .later import put_aside, set_aside, take_back
from .standing import Standing, is_passed, list_of
from .terminal import show


def add_arguments(parser: argparse.ArgumentParser) -> None:
    what = parser.add_mutually_exclusive_group()
    what.add_argument("exercise", nargs="?", metavar="EXERCISE", help="a name such as resonance; left out: the next one")
    what.add_argument("--later", metavar="EXERCISE", help="set this one aside; the next one comes")
    what.add_argument("--now", metavar="EXERCISE", help="take up one that was set aside")
    what.add_argument("--list", action="store_true", help="name all exercises, core or further, and how each stands")
    add_folder_argument(parser)
    parser.add_argument(
        "--start", action="store_true", help="make that folder if there is none, with every exercise to be filled in"
    )
    parser.add_argument("--json", action="store_true", help="print data instead of text")


def run(options: argparse.Namespace) -> int:
    named = options.exercise or options.now
    one, aside = find(named) if named else None, find(options.later) if options.later else None
    folder = exercises_folder(options.folder, options.start)
    member = read_member_folder(folder.resolve(), "you", account=False)
    here = offered_containment()
    if here.missing:
        print(here, file=sys.stderr)
    if aside:
        put_aside(folder, aside)
    if options.now and one:
        take_back(folder, one)
    later = set_aside(folder)
    with start_worker() as worker:
        verdicts = {
            path: judge(path, member.files, worker, PRACTICE_SEED)
            for path in ([one] if one else PATHS)
            if one or options.list or not is_unwritten(member.files.get(f"{path}.py", ""))
        }
        standing = Standing([path for path in verdicts if is_passed(verdicts[path])], later)
        chosen = one or standing.next
        if chosen and chosen not in verdicts:
            verdicts[chosen] = judge(chosen, member.files, worker, PRACTICE_SEED)
    if options.json:
        shown = verdicts.values() if options.list else [verdicts[chosen]] if chosen else []
        print(json.dumps([to_data(verdict) for verdict in shown], indent=1, ensure_ascii=False))
    elif options.list:
        show(list_of(verdicts, later))
    else:
        width = terminal_width()
        show([Line(f"  {problem}", "yellow") for problem in member.problems])
        if not one:
            show([*standing.lines(width), *([Line("")] if chosen else [])])
        if chosen:
            show([*learner_lines(verdicts[chosen], width), *_what_next(verdicts[chosen], folder)])
        offered = standing.offered(chosen) if chosen and not one else ""
        if offered:
            show(wrap(f"Further in this unit, if you like: {offered}", width, "dim"))
    return DONE if (is_passed(verdicts[one]) if one else not standing.left) else NOT_YET


def _what_next(verdict: Verdict, folder: Path) -> list[Line]:
    name = verdict.exercise.rpartition("/")[2]
    if is_passed(verdict):
        return [Line(f"  Next: {called_as()} try", "dim")]
    file = os.path.relpath(folder / f"{verdict.exercise}.py")
    if verdict.kind == NOT_ATTEMPTED:
        return [
            Line(f"  Write it in {file}", "dim"),
            Line(f"  then: {called_as()} try {name}", "dim"),
            Line(f"  A hint: {called_as()} hint {name}", "dim"),
        ]
    return [Line(f"  A hint: {called_as()} hint {name}", "dim")]


COMMAND = Command("try", "check one exercise, or the next one that is not yet passed", add_arguments, run)

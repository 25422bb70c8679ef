"""`checker try`: check one exercise, or the next one that is not yet passed."""

import argparse
import json
from collections.abc import Collection, Mapping

from ..core import IN_ORDER
from ..course import PATHS
from ..judging.protocols import WorkerLike
from ..judging.verdict import Verdict, to_data
from ..pack.practice import known_verdict, practice_verdict
from ..report.learner import learner_lines
from ..report.text import Line, wrap
from ..sandbox.workers import start_own_worker
from ..submissions.members import read_member_folder
from .common import DONE, NOT_YET, Command, add_folder_argument, exercises_folder, terminal_width
from .guide import guide_lines, trouble_with_file
from .later import put_aside, set_aside, take_back
from .naming import exercise_named, exercises_named
from .standing import Standing, is_passed, list_of, roles_of
from .terminal import show


def add_arguments(parser: argparse.ArgumentParser) -> None:
    what = parser.add_mutually_exclusive_group()
    what.add_argument(
        "exercise",
        nargs="?",
        metavar="EXERCISE",
        help="a name such as resonance, a function, a file, or a unit such as 03; left out: the next one",
    )
    what.add_argument("--later", metavar="EXERCISE", help="set this one aside; the next one comes")
    what.add_argument("--now", metavar="EXERCISE", help="take up one that was set aside")
    what.add_argument("--list", action="store_true", help="name all exercises, core or further, and how each stands")
    add_folder_argument(parser)
    parser.add_argument(
        "--start", action="store_true", help="make that folder if there is none, with every exercise to be filled in"
    )
    parser.add_argument("--json", action="store_true", help="print data instead of text")


def run(options: argparse.Namespace) -> int:
    named = exercises_named(options.exercise) if options.exercise else ()
    taken_up = exercise_named(options.now) if options.now else None
    aside = exercise_named(options.later) if options.later else None
    one = taken_up or (named[0] if len(named) == 1 else None)
    folder = exercises_folder(options.folder, options.start)
    member = read_member_folder(folder.resolve(), "you", account=False)
    if aside:
        put_aside(folder, aside)
    if taken_up:
        take_back(folder, taken_up)
    later = set_aside(folder)
    with start_own_worker() as worker:
        verdicts = {path: practice_verdict(path, member.files, worker) for path in ([one] if one else named or PATHS)}
        if one and is_passed(verdicts[one]):
            verdicts |= _as_far_as_the_next(member.files, later, worker)
    known = {path: verdicts.get(path) or known_verdict(path, member.files) for path in PATHS}
    standing = Standing([path for path, verdict in known.items() if verdict and is_passed(verdict)], later)
    of_unit = (path for path in IN_ORDER if path in named and path in standing.left and path not in later)
    chosen = one or (next(of_unit, None) if named else standing.next)
    if options.json:
        shown = verdicts.values() if options.list else [verdicts[chosen]] if chosen else []
        print(json.dumps([to_data(verdict) for verdict in shown], indent=1))
    elif options.list:
        show(list_of(verdicts, later))
    else:
        width = terminal_width()
        trouble = trouble_with_file(chosen, member, folder) if chosen else ""
        if not (one and trouble):
            show([Line(f"  {problem}", "yellow") for problem in member.problems])
        if named and not one:
            show([*list_of(verdicts, later), *([Line("")] if chosen else [])])
        elif not one:
            show([*standing.lines(width), *([Line("")] if chosen else [])])
        if chosen and trouble:
            show(wrap(trouble, width, "yellow"))
        elif chosen:
            lines = learner_lines(verdicts[chosen], width, roles_of(chosen))
            after = standing.next if chosen in standing.passed else None
            show([*lines, *guide_lines(verdicts[chosen], folder, width, chosen in standing.passed, after)])
        offered = standing.offered(chosen) if chosen and not (one or named) else ""
        if offered:
            show(wrap(f"Further in this unit, if you like: {offered}", width, "dim"))
    return DONE if not (set([one] if one else named or PATHS) & set(standing.left)) else NOT_YET


def _as_far_as_the_next(files: Mapping[str, str], later: Collection[str], worker: WorkerLike) -> dict[str, Verdict]:
    """The verdicts along the path up to the next exercise. One that is kept no more is reached anew: it may be passed."""
    found: dict[str, Verdict] = {}
    for path in IN_ORDER:
        found[path] = practice_verdict(path, files, worker)
        if path not in later and not is_passed(found[path]):
            break
    return found


COMMAND = Command("try", "check one exercise, or the next one that is not yet passed", add_arguments, run)

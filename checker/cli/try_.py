"""`checker try`: check one exercise, or the next one that is not yet passed."""

import argparse
import json
from collections.abc import Iterator, Sequence

from ..course import PATHS, UNITS, unit_of
from ..judging.verdict import PASSED, Verdict, marks_text, to_data
from ..pack.practice import next_exercise, practice_verdict
from ..report.text import Line, verdict_lines, wrap
from ..sandbox.workers import start_own_worker
from ..submissions.members import read_member_folder
from .common import DONE, NOT_YET, Command, add_folder_argument, exercises_folder, terminal_width
from .guide import guide_lines, trouble_with_file
from .naming import exercises_named
from .terminal import show


def add_arguments(parser: argparse.ArgumentParser) -> None:
    parser.add_argument(
        "exercise",
        nargs="?",
        metavar="EXERCISE",
        help="a name such as resonance, a function, a file, or a unit such as 03; left out: the next one",
    )
    parser.add_argument("--list", action="store_true", help="name all exercises and how each stands")
    add_folder_argument(parser)
    parser.add_argument(
        "--start", action="store_true", help="make that folder if there is none, with every exercise to be filled in"
    )
    parser.add_argument("--json", action="store_true", help="print data instead of text")


def run(options: argparse.Namespace) -> int:
    paths = exercises_named(options.exercise) if options.exercise else PATHS
    alone = len(paths) == 1
    folder = exercises_folder(options.folder, options.start)
    member = read_member_folder(folder.resolve(), "you")
    verdicts: list[Verdict] = []
    with start_own_worker() as worker:
        for path in paths:
            verdicts.append(practice_verdict(path, member.files, worker))
            if not (alone or options.list) and verdicts[-1].kind != PASSED:
                break
    chosen = verdicts[-1]
    if options.json:
        print(json.dumps([to_data(verdict) for verdict in (verdicts if options.list else [chosen])], indent=1))
    elif options.list:
        show(_list_of(verdicts))
    else:
        trouble = trouble_with_file(chosen.exercise, member, folder)
        width = terminal_width()
        if not alone:
            show([*_standing(verdicts, paths), Line("")])
        if trouble:
            show(wrap(trouble, width, "yellow"))
            return NOT_YET
        show([Line(f"  {problem}", "yellow") for problem in member.problems])
        after = next_exercise(member.files, chosen.exercise) if chosen.kind == PASSED else None
        show([*verdict_lines(chosen, width), *guide_lines(chosen, folder, width, after)])
    return DONE if all(verdict.kind == PASSED for verdict in verdicts) else NOT_YET


def _standing(verdicts: Sequence[Verdict], paths: Sequence[str]) -> list[Line]:
    passed = sum(verdict.kind == PASSED for verdict in verdicts)
    unit = unit_of(verdicts[-1].exercise)
    which = "exercises" if len(paths) == len(PATHS) else f"exercises of unit {unit.number}, {unit.title}"
    if passed == len(paths):
        return [Line(f"You have passed all {passed} {which}.", "bold")]
    where = f", in unit {unit.number}, {unit.title}" if len(paths) == len(PATHS) else ""
    return [Line(f"You have passed {passed} of {len(paths)} {which}. Next{where}:", "bold")]


def _list_of(verdicts: Sequence[Verdict]) -> Iterator[Line]:
    by_path = {verdict.exercise: verdict for verdict in verdicts}
    for unit in UNITS:
        here = [name for name in unit.exercises if f"{unit.folder}/{name}" in by_path]
        if here:
            yield Line(f"{unit.number}  {unit.title}", "bold")
        for name in here:
            verdict = by_path[f"{unit.folder}/{name}"]
            yield Line(f"  {name:<24}{verdict.kind:<16}{marks_text(verdict.earned):>5} of {verdict.marks}")


COMMAND = Command("try", "check one exercise, or the next one that is not yet passed", add_arguments, run)

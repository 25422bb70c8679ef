"""`checker try`: check one exercise, or the next one that is not yet passed."""

import argparse
import json
import os
import sys
from collections.abc import Iterator, Sequence
from pathlib import Path

from ..course import PATHS, PRACTICE_SEED, UNITS, find, unit_of
from ..judging.judge import judge
from ..judging.verdict import NOT_ATTEMPTED, PASSED, Verdict, marks_text, to_data
from ..report.text import Line, verdict_lines
from ..sandbox.proof import offered_containment
from ..sandbox.workers import start_worker
from ..submissions.members import read_member_folder
from .common import DONE, NOT_YET, Command, add_folder_argument, called_as, exercises_folder, terminal_width
from .terminal import show


def add_arguments(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("exercise", nargs="?", metavar="EXERCISE", help="a name such as resonance; left out: the next one")
    parser.add_argument("--list", action="store_true", help="name all exercises and how each stands")
    add_folder_argument(parser)
    parser.add_argument(
        "--start", action="store_true", help="make that folder if there is none, with every exercise to be filled in"
    )
    parser.add_argument("--json", action="store_true", help="print data instead of text")


def run(options: argparse.Namespace) -> int:
    paths = [find(options.exercise)] if options.exercise else PATHS
    folder = exercises_folder(options.folder, options.start)
    member = read_member_folder(folder.resolve(), "you", account=False)
    here = offered_containment()
    if here.missing:
        print(here, file=sys.stderr)
    verdicts: list[Verdict] = []
    with start_worker() as worker:
        for path in paths:
            verdicts.append(judge(path, member.files, worker, PRACTICE_SEED))
            if not (options.exercise or options.list) and verdicts[-1].kind != PASSED:
                break
    chosen = verdicts[-1]
    if options.json:
        print(
            json.dumps([to_data(verdict) for verdict in (verdicts if options.list else [chosen])], indent=1, ensure_ascii=False)
        )
    elif options.list:
        show(_list_of(verdicts))
    else:
        show([Line(f"  {problem}", "yellow") for problem in member.problems])
        if not options.exercise:
            show([*_standing(verdicts), Line("")])
        show([*verdict_lines(chosen, terminal_width()), *_what_next(chosen, folder)])
    return DONE if all(verdict.kind == PASSED for verdict in verdicts) else NOT_YET


def _standing(verdicts: Sequence[Verdict]) -> list[Line]:
    passed = sum(verdict.kind == PASSED for verdict in verdicts)
    if passed == len(PATHS):
        return [Line(f"You have passed all {passed} exercises.", "bold")]
    unit = unit_of(verdicts[-1].exercise)
    return [Line(f"You have passed {passed} of {len(PATHS)} exercises. Next, in unit {unit.number}, {unit.title}:", "bold")]


def _list_of(verdicts: Sequence[Verdict]) -> Iterator[Line]:
    by_path = {verdict.exercise: verdict for verdict in verdicts}
    for unit in UNITS:
        yield Line(f"{unit.number}  {unit.title}", "bold")
        for name in unit.exercises:
            verdict = by_path[f"{unit.folder}/{name}"]
            yield Line(f"  {name:<24}{verdict.kind:<16}{marks_text(verdict.earned):>5} of {verdict.marks}")


def _what_next(verdict: Verdict, folder: Path) -> list[Line]:
    name = verdict.exercise.rpartition("/")[2]
    if verdict.kind == PASSED:
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

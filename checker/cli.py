"""The command line: `checker try`, `checker hint`, `checker mark`."""
import argparse
import json
import os
import sys
from pathlib import Path

from . import course, words
from .course import PATHS, PRACTICE_SEED, ROOT, SEALED, UNITS, UnknownExercise
from .engine import mark
from .judge import judge
from .pack import write_pack
from .plan import plan_for
from .sealed import BrokenSeal
from .submissions import UnreadableFolder, read_folder, read_member_folder
from .terminal import followed, show, show_table
from .verdict import NOT_ATTEMPTED, PASSED, marks_text, to_data
from .words import Line
from .workers import Worker, WorkerLost

DONE, NOT_YET, MISUSED, INTERRUPTED = 0, 1, 2, 130


class WrongUse(Exception):
    """A command cannot be carried out as asked; the text says why and what to do."""


def main(arguments=None):
    """Run one command. The exit code says how it went: 0 well, 1 not yet, 2 asked wrongly, 130 interrupted."""
    options = _parser().parse_args(arguments)
    try:
        return options.run(options)
    except (UnknownExercise, UnreadableFolder, WorkerLost, BrokenSeal, WrongUse) as problem:
        print(problem, file=sys.stderr)
        return MISUSED
    except OSError as problem:
        print(f"{problem.filename or 'A file'}: {problem.strerror or problem}.", file=sys.stderr)
        return MISUSED
    except KeyboardInterrupt:
        print("Stopped. What was finished has been kept.", file=sys.stderr)
        return INTERRUPTED


def _parser():
    parser = argparse.ArgumentParser(
        prog="checker", description="Checks exercises of the course Crystal to Reaction.",
        epilog="Exit codes: 0 passed or done, 1 not yet passed or something could not be read, 2 asked wrongly.")
    commands = parser.add_subparsers(required=True, metavar="COMMAND")

    trying = commands.add_parser("try", help="check one exercise, or the next one that is not yet passed")
    trying.add_argument("exercise", nargs="?", metavar="EXERCISE", help="a name such as resonance; left out: the next one")
    trying.add_argument("--list", action="store_true", help="name all exercises and how each stands")
    trying.add_argument("--folder", type=Path, help="where your exercises are (default: ./exercises or the one above)")
    trying.add_argument("--json", action="store_true", help="print data instead of text")
    trying.set_defaults(run=_try)

    hinting = commands.add_parser("hint", help="a hint for an exercise; ask again with 2 and 3 for more")
    hinting.add_argument("exercise", metavar="EXERCISE")
    hinting.add_argument("number", nargs="?", type=int, choices=(1, 2, 3), default=1, metavar="1|2|3")
    hinting.set_defaults(run=_hint)

    marking = commands.add_parser("mark", help="mark a folder of submissions, a folder or a zip for each member")
    marking.add_argument("folder", metavar="FOLDER", type=Path)
    marking.add_argument("--seed", type=int, default=PRACTICE_SEED, help="your own number, which draws the inputs; keep it to yourself")
    marking.add_argument("--only", metavar="EXERCISE", nargs="+", help="mark only these exercises")
    marking.add_argument("--reports", metavar="DIR", type=Path, default=Path("marks"), help="where the reports go (default: marks)")
    marking.add_argument("--jobs", type=int, help="how many members at a time (default: one for each processor)")
    marking.add_argument("--json", action="store_true", help="print data instead of the table")
    marking.set_defaults(run=_mark)

    packing = commands.add_parser("pack", help="write the student pack: exercises and checker, no reference code")
    packing.add_argument("where", metavar="FILE.zip", type=Path, nargs="?", default=Path("student-pack.zip"),
                         help="the zip to write (default: student-pack.zip); a name without .zip makes a folder")
    packing.set_defaults(run=_pack)
    return parser


def _try(options):
    folder = options.folder or _exercises_folder()
    member = read_member_folder(folder, "you")
    paths = [course.find(options.exercise)] if options.exercise else PATHS
    with Worker() as worker:
        verdicts = []
        for path in paths:
            verdicts.append(judge(path, member.files, worker, PRACTICE_SEED))
            if not (options.exercise or options.list) and verdicts[-1].kind != PASSED:
                break
    chosen = verdicts[-1]
    if options.json:
        print(json.dumps([to_data(verdict) for verdict in (verdicts if options.list else [chosen])], indent=1, ensure_ascii=False))
    elif options.list:
        show(_listed(verdicts))
    else:
        show([Line(f"  {problem}", "yellow") for problem in member.problems])
        if not options.exercise:
            show([*_standing(verdicts), Line("")])
        show([*words.verdict_lines(chosen, _width()), *_what_next(chosen, folder)])
    return DONE if all(verdict.kind == PASSED for verdict in verdicts) else NOT_YET


def _exercises_folder():
    """The nearest folder called exercises, from here upwards; else the one that came with the course."""
    for above in (Path.cwd(), *Path.cwd().parents):
        if above.name == "exercises" or (above / "exercises").is_dir():
            return above if above.name == "exercises" else above / "exercises"
    return ROOT / "exercises"


def _standing(verdicts):
    passed = sum(verdict.kind == PASSED for verdict in verdicts)
    if passed == len(PATHS):
        return [Line(f"You have passed all {passed} exercises.", "bold")]
    unit = course.unit_of(verdicts[-1].exercise)
    return [Line(f"You have passed {passed} of {len(PATHS)} exercises. Next, in unit {unit.number}, {unit.title}:", "bold")]


def _listed(verdicts):
    by_path = {verdict.exercise: verdict for verdict in verdicts}
    for unit in UNITS:
        yield Line(f"{unit.number}  {unit.title}", "bold")
        for name in unit.exercises:
            verdict = by_path[f"{unit.folder}/{name}"]
            yield Line(f"  {name:<24}{verdict.kind:<16}{marks_text(verdict.earned):>5} of {verdict.marks}")


def _what_next(verdict, folder):
    name = verdict.exercise.rpartition("/")[2]
    if verdict.kind == PASSED:
        return [Line("  Next: checker try", "dim")]
    file = os.path.relpath(folder / f"{verdict.exercise}.py")
    if verdict.kind == NOT_ATTEMPTED:
        return [Line(f"  Write it in {file}", "dim"), Line(f"  then: checker try {name}", "dim"),
                Line(f"  A hint: checker hint {name}", "dim")]
    return [Line(f"  A hint: checker hint {name}", "dim")]


def _hint(options):
    exercise = plan_for(options.exercise, PRACTICE_SEED).exercise
    show([Line(f"{exercise.name} · hint {options.number} of 3", "bold"), *words.wrapped(exercise.hints[options.number - 1], _width())])
    if options.number < 3:
        show([Line(f"  More: checker hint {exercise.name} {options.number + 1}", "dim")])
    return DONE


def _pack(options):
    if SEALED:
        raise WrongUse("This is a student pack already; packs are made from the whole course.")
    show([Line(f"The student pack is in {write_pack(options.where)}. It holds no reference code and nothing of your seed.")])
    return DONE


def _mark(options):
    if SEALED:
        raise WrongUse("This is a student pack: it can only practise. Marks are made with the whole course, under the instructor's seed.")
    members = read_folder(options.folder)
    paths = sorted({course.find(name) for name in options.only}, key=PATHS.index) if options.only else PATHS
    marked = list(followed(mark(members, options.seed, paths, options.jobs), len(members), lambda one: one.member.name))
    where = write_reports(marked, options.reports)
    if options.json:
        print(json.dumps([_marked_to_data(one) for one in marked], indent=1, ensure_ascii=False))
    else:
        show_table(*_marks_table(marked, paths))
        show([Line(""), *_remarks(marked), Line(f"A report for each member: {os.path.relpath(where)}")])
        show(_try_next())
    return NOT_YET if any(one.member.problems for one in marked) else DONE


def _marks_table(marked, paths):
    """(headings, rows): a column for each unit and the total."""
    units = [unit for unit in UNITS if any(path.startswith(unit.folder) for path in paths)]
    rows = []
    for one in marked:
        by_unit = [sum(verdict.earned for verdict in one.verdicts if verdict.exercise.startswith(unit.folder)) for unit in units]
        rows.append([one.member.name, *map(marks_text, by_unit), f"{marks_text(one.earned)} of {one.marks}"])
    return ["member", *(unit.title.lower() for unit in units), "marks"], rows


def _remarks(marked):
    for one in marked:
        for problem in one.member.problems:
            yield from words.wrapped(f"{one.member.name}: {problem}", _width())


def _try_next():
    return [Line("Open it in a browser. Then try one exercise yourself: checker try resonance")]


def _marked_to_data(one):
    return {"member": one.member.name, "marks": one.marks, "earned": str(one.earned), "problems": list(one.member.problems),
            "verdicts": [to_data(verdict) for verdict in one.verdicts]}


def _width():
    try:
        return os.get_terminal_size().columns
    except OSError:
        return words.WIDTH

"""The command line: `checker try`, `hint`, `hear`, `mark`, `amend`, `pack`, `sheet`."""
import argparse
import json
import os
import shutil
import sys
from pathlib import Path

from . import course, words
from .course import PATHS, PRACTICE_SEED, ROOT, SEALED, UNITS, UnknownExercise
from .cluster import ClusterProblem
from .hear import YOURS, Member, Reference, demonstration_emf, play, reference_chain
from .hear_files import CAUTION, write
from .judge import judge
from .marking import (STORE, ClassMarks, NotContained, Request, mark_class, marks_to_data, paths_marked, see_to_containment,
                      write_results)
from .marksheet import set_mark
from .pack import Worked, write_pack
from .plan import plan_for
from .proof import what_is_there
from .sealed import BrokenSeal
from .sealed_hear import opened_hear
from .store import open_store
from .store_problem import StoreProblem
from .submissions import UnreadableFolder, find_submissions, read_member_folder
from .terminal import followed, show, show_table
from .verdict import NOT_ATTEMPTED, PASSED, marks_text, to_data
from .words import Line
from .workers import Worker, WorkerLost

DONE, NOT_YET, MISUSED, INTERRUPTED = 0, 1, 2, 130


class WrongUse(Exception):
    """A command cannot be carried out as asked; the text says why and what to do."""


# Each of these says in one sentence what is wrong and what to do.
_PROBLEMS = (UnknownExercise, UnreadableFolder, WorkerLost, BrokenSeal, WrongUse, NotContained, ClusterProblem, StoreProblem,
             Worked)


def main(arguments=None):
    """Run one command. The exit code says how it went: 0 well, 1 not yet, 2 asked wrongly, 130 interrupted."""
    options = _parser().parse_args(arguments)
    try:
        return options.run(options)
    except _PROBLEMS as problem:
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

    hearing = commands.add_parser("hear", help="hear your own receiver beside the reference, and see the dial and the knobs")
    hearing.add_argument("--folder", type=Path, help="where your exercises are (default: ./exercises or the one above)")
    hearing.add_argument("--into", metavar="DIR", type=Path, default=Path("heard"), help="where sounds and picture go (default: heard)")
    hearing.set_defaults(run=_hear)

    marking = commands.add_parser("mark", help="mark a folder of submissions, a folder or a zip for each member")
    marking.add_argument("folder", metavar="FOLDER", type=Path)
    marking.add_argument("--only", metavar="EXERCISE", nargs="+", help="mark only these exercises")
    marking.add_argument("--seed", type=int, help="the number that draws the inputs (default: the last run's; at first, a new one)")
    marking.add_argument("--into", metavar="DIR", type=Path, default=Path("marks"), help="where marks and reports go (default: marks)")
    marking.add_argument("--class", dest="title", default="Crystal to Reaction", help="the class's name on reports and tables")
    marking.add_argument("--club", default="Saltmarsh Point Wireless Circle", help="the club or school, for the tables")
    marking.add_argument("--jobs", type=int, metavar="N", help="how many members at a time (default: one for each processor)")
    marking.add_argument("--cluster", metavar="ADDRESS", default="", help="mark on the Dask cluster with this scheduler")
    marking.add_argument("--uncontained", action="store_true", help="go on where this system cannot shut submissions in")
    marking.add_argument("--json", action="store_true", help="print data instead of the table")
    marking.set_defaults(run=_mark)

    amending = commands.add_parser("amend", help="set a mark by hand, with a reason; it outlives every remark")
    amending.add_argument("member", metavar="MEMBER", help="the name as the marks table has it")
    amending.add_argument("exercise", metavar="EXERCISE")
    amending.add_argument("mark", metavar="MARK", help="such as 7, 7.5 or 15/2; or the word withdraw, to let the checker's mark count again")
    amending.add_argument("--because", required=True, metavar="REASON", help="shown to the member beside the mark")
    amending.add_argument("--by", required=True, metavar="NAME", help="who sets it")
    amending.add_argument("--into", metavar="DIR", type=Path, default=Path("marks"), help="where the marks are (default: marks)")
    amending.set_defaults(run=_amend)

    packing = commands.add_parser("pack", help="write the student pack: exercises and checker, no reference code")
    packing.add_argument("where", metavar="FILE.zip", type=Path, nargs="?", default=Path("student-pack.zip"),
                         help="the zip to write (default: student-pack.zip); a name without .zip makes a folder")
    packing.set_defaults(run=_pack)

    designing = commands.add_parser("sheet", help="a design sheet to print, from a builder's file")
    designing.add_argument("file", metavar="FILE.toml", type=Path, help="such as checker/example_sheets/orla_quill_reaction.toml")
    designing.add_argument("--into", metavar="PAGE.html", type=Path, help="the page to write (default: FILE's name, here)")
    designing.add_argument("--pdf", action="store_true", help="print it too, by a Chromium on this machine")
    designing.set_defaults(run=_sheet)
    return parser


def _try(options):
    folder = options.folder or _exercises_folder()
    member = read_member_folder(folder.resolve(), "you")
    paths = [course.find(options.exercise)] if options.exercise else PATHS
    here = what_is_there()
    if here.missing:
        print(here, file=sys.stderr)
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
        return [Line(f"  Next: {command()} try", "dim")]
    file = os.path.relpath(folder / f"{verdict.exercise}.py")
    if verdict.kind == NOT_ATTEMPTED:
        return [Line(f"  Write it in {file}", "dim"), Line(f"  then: {command()} try {name}", "dim"),
                Line(f"  A hint: {command()} hint {name}", "dim")]
    return [Line(f"  A hint: {command()} hint {name}", "dim")]


def _hint(options):
    exercise = plan_for(options.exercise, PRACTICE_SEED).exercise
    show([Line(f"{exercise.name} · hint {options.number} of 3", "bold"), *words.wrapped(exercise.hints[options.number - 1], _width())])
    if options.number < 3:
        show([Line(f"  More: {command()} hint {exercise.name} {options.number + 1}", "dim")])
    return DONE


def _hear(options):
    folder = options.folder or _exercises_folder()
    member = read_member_folder(folder.resolve(), "you")
    here = what_is_there()
    if here.missing:
        print(here, file=sys.stderr)
    chain, reference = opened_hear() if SEALED else (reference_chain(), None)
    if reference is None:
        reference = play(chain, Reference(chain)).sound
    with Worker() as worker:
        played = play(chain, Member(chain, member.files, worker))
    emf = demonstration_emf(chain, chain.numbers["log"])
    levels = write(options.into, played, reference, emf, chain)
    show([Line(f"  {problem}", "yellow") for problem in member.problems])
    show([*_whose(played), *(Line(f"  {level}") for level in levels),
          Line(f"Open in a browser:  {os.path.relpath(options.into / 'index.html')}", "bold"),
          *words.wrapped(CAUTION, _width(), "yellow")])  # fmt: skip
    return DONE if set(played.sources.values()) == {YOURS} else NOT_YET


def _whose(played):
    """How much of the chain is the student's own, and who stands in for the rest."""
    own = sum(source == YOURS for source in played.sources.values())
    yield Line(f"{own} of the {len(played.sources)} links of this receiver are your own.", "bold")
    if own < len(played.sources):
        yield Line(f"For the others the reference stands in{', where it can' if played.missing else ''}:")
    for (exercise, function), source in played.sources.items():
        if source != YOURS:
            yield from words.wrapped(f"{exercise + ',':<19}{function}: {source}", _width())
    for name in played.missing:
        part = "the reaction demonstration" if name == "circuit_voltage" else "the six stations"
        yield from words.wrapped(f"Without your own {name}, {part} cannot be played in your sound: a student pack holds the "
                                 "reference as a recording only. Listen to reference.wav.", _width(), "yellow")  # fmt: skip


def _pack(options):
    if SEALED:
        raise WrongUse("This is a student pack already; packs are made from the whole course.")
    show([Line(f"The student pack is in {write_pack(options.where)}. It holds no reference code and nothing of your seed.")])
    return DONE


def _sheet(options):
    if SEALED:
        raise WrongUse("This is a student pack, without the physics that a sheet is made with: sheets are made with the whole course.")
    from . import sheet  # left out of a student pack

    try:
        page = options.into or Path(f"{options.file.stem}.html")
        if page.exists() and options.file.exists() and page.samefile(options.file):
            raise WrongUse(f"{page} is the file itself: name another page with --into.")
        sheet.write_sheet(sheet.work_out(sheet.read_parts(options.file)), page)
        show([Line(f"Open in a browser, and print:  {os.path.relpath(page)}", "bold")])
        if options.pdf:
            show([Line(f"On paper already:  {os.path.relpath(sheet.print_sheet(page, page.with_suffix('.pdf')))}")])
    except sheet.SheetFault as fault:
        raise WrongUse(str(fault)) from None
    return DONE


def _mark(options):
    if SEALED:
        raise WrongUse("This is a student pack: it can only practise. Marks are made with the whole course, under the instructor's seed.")
    if options.jobs is not None and options.jobs < 1:
        raise WrongUse("--jobs wants a number of 1 or more.")
    proof = None if options.cluster else see_to_containment(options.uncontained)
    paths = sorted({course.find(name) for name in options.only}, key=PATHS.index) if options.only else PATHS
    request = Request(options.folder, paths, options.seed, options.jobs, options.cluster, options.uncontained)
    find_submissions(options.folder)  # before anything is written
    if proof:
        print(proof, file=sys.stderr)
    options.into.mkdir(parents=True, exist_ok=True)
    with open_store(options.into / STORE) as store:
        run, seed, alike = mark_class(request, store, lambda marked, total: followed(marked, total, lambda one: one.member.name))
        marks = ClassMarks(store, run)
        page = write_results(marks, paths, options.into, options.title, options.club, alike)
        if options.json:
            print(json.dumps([marks_to_data(member) for member in marks], indent=1, ensure_ascii=False))
        else:
            show_table(*_marks_table(marks, paths))
            show([Line(""), *_remarks(marks, alike), *_what_was_written(page, seed, next(iter(marks)).name, paths[0].rpartition('/')[2])])
        return NOT_YET if any(member.problems for member in marks) else DONE


def _marks_table(marks, paths):
    """(headings, rows): a column for each unit and the total."""
    units = [unit for unit in UNITS if any(path.startswith(unit.folder) for path in paths)]
    rows = []
    for member in marks:
        by_unit = [sum(mark.amount for mark in member.marks if mark.exercise.startswith(unit.folder)) for unit in units]
        star = "*" if any(mark.override for mark in member.marks) else ""
        rows.append([member.name, *map(marks_text, by_unit), f"{marks_text(member.amount)} of {member.of}{star}"])
    return ["in unit", *(str(int(unit.number)) for unit in units), "marks"], rows


def _remarks(marks, alike):
    for member in marks:
        for problem in member.problems:
            yield from words.wrapped(f"{member.name}: {problem}", _width())
    if any(mark.override for member in marks for mark in member.marks):
        yield Line("  * with a mark set by hand")
    if alike:
        pairs = f"{len(alike)} pairs of submissions are" if len(alike) > 1 else "One pair of submissions is"
        yield from words.wrapped(f"{pairs} nearly alike; the class page lays them side by side, for you to judge.", _width())


def _what_was_written(page, seed, first, name):
    folder = os.path.relpath(page.parent)
    yield Line(f"Open in a browser:  {os.path.relpath(page)}", "bold")
    yield Line("  the class, and a report for each member")
    yield Line(f"For other programs:  marks.csv, oneroster.zip and junit.xml in {folder}")
    yield Line(f"Kept in {folder}/{STORE} (seed {seed}): a rerun marks only what changed.")
    yield Line("Try next:")
    yield Line(f'  {command()} amend "{first}" {name} 9 --because "Late" --by "Wren Dalby"')
    yield Line(f"  {command()} try {name}      as a student does")
    yield Line(f"  {command()} pack      what to hand out to students")


def _amend(options):
    path = course.find(options.exercise)
    if not (options.into / STORE).is_file():
        raise WrongUse(f"There are no marks in {options.into} yet. Run checker mark first, or name the folder with --into.")
    with open_store(options.into / STORE) as store:
        run = store.latest_run()
        if run is None or options.member not in {member.name for member in ClassMarks(store, run)}:
            raise WrongUse(f"{options.member} is not in the last run's marks. Write the name as the table has it.")
        if options.mark == "withdraw":
            store.withdraw(options.member, path, options.because, options.by)
        else:
            try:
                set_mark(store, options.member, path, options.mark, options.because, options.by)
            except ValueError as problem:
                raise WrongUse(str(problem)) from None
        marks = ClassMarks(store, run)
        page = write_results(marks, paths_marked(marks), options.into, "Crystal to Reaction", "Saltmarsh Point Wireless Circle")
    show([Line(f"Done; the reports are written anew: {os.path.relpath(page)}")])
    return DONE


def command():
    """How this command is called from here: by its name, or by where it stands if the name alone would not be found."""
    called = Path(sys.argv[0])
    return os.path.relpath(called) if called.name == "checker" and not shutil.which("checker") else "checker"


def _width():
    return max(40, shutil.get_terminal_size((words.WIDTH, 24)).columns)

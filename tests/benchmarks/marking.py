"""How fast is marking? Run by hand: `python tests/benchmarks/marking.py [MEMBERS [LARGEST]]`. Not a test: it holds to no time.

A class is generated from the references, each member with small differences and some with mistakes. Three ways of asking the
same of a submission are timed turn by turn, all on one and the same processor, so that whatever else the machine does
strikes all:

    ours        the engine, one warm worker, full containment, a verdict with everything in it
    (a) python  a `python` process an exercise, which imports the file, makes the same calls and compares the same answers
    (b) pytest  a `pytest` process a submission, with the same calls, each an assertion

Neither (a) nor (b) contains anything, looks for the simplest failing input, or names a slip. Beside the time on the clock stands
that of the processor, which says more where other programs are at work. Then come: how long a file takes to load, the class marked
into a store, cold and warm, on one processor and on two, and memory at several sizes of class.
"""

import ast
import importlib
import json
import os
import resource
import statistics
import subprocess
import sys
import tempfile
import time
from functools import cache, partial
from pathlib import Path

import numpy as np

from checker.course import PATHS, ROOT, load_exercise
from checker.judging.fingerprint import Fingerprints
from checker.judging.judge import judge
from checker.judging.plans import plan_for
from checker.marks.pool import mark
from checker.marks.store import open_store
from checker.sandbox.workers import start_worker
from checker.submissions.members import Member
from checker.worker.wire import from_wire

SEED, TURNS = 20, 3
COMPARE = """
import importlib.util, json, sys
sys.path.insert(0, {checkout!r})
import numpy as np
np.seterr(all="ignore")

def near(got, wanted):
    if isinstance(wanted, (list, tuple)):
        return len(got) == len(wanted) and all(map(near, got, wanted))
    return bool(np.all(got == wanted) or np.all(abs(got - wanted) <= 1e-6 * abs(wanted)))

def load(file):
    spec = importlib.util.spec_from_file_location("answer", file)
    module = importlib.util.module_from_spec(spec)
    spec.loader.exec_module(module)
    return module

def right(module, name, arguments, wanted):
    arguments = [np.array(a) if isinstance(a, list) else a for a in arguments]
    try:
        got = getattr(module, name)(*arguments)
    except ValueError:
        return wanted is None
    return wanted is None or near(got, wanted)

TASKS = [(load(file), json.load(open(cases))) for file, cases in {tasks!r}]
"""


def member(number):
    """A member who has done everything in a way of their own; every third has made a mistake in each exercise."""
    files = {}
    for path in PATHS:
        source = as_a_member_writes(path)
        wrong = source.replace("2 * np.pi", "np.pi") if number % 3 == 0 else source
        files[f"{path}.py"] = f"# handed in by member {number}\n{wrong}"
    return Member(f"member {number:04}", files)


@cache
def as_a_member_writes(path):
    """A reference without `check_ranges`, which belongs to the references; a refusal that is promised is written out."""
    tree = ast.parse((ROOT / "solutions" / f"{path}.py").read_text("utf-8").replace("from solutions.", "from exercises."))
    promised = {question.name for question in load_exercise(path).questions if question.refuses}
    solution = importlib.import_module("solutions." + path.replace("/", "."))
    tree.body = [node for node in tree.body if not (isinstance(node, ast.ImportFrom) and node.module == "exercises.ranges")]
    tree.body[1:1] = ast.parse("import numpy as np").body
    for node in tree.body:
        if isinstance(node, ast.FunctionDef) and hasattr(getattr(solution, node.name), "limits"):
            node.decorator_list = []
            if node.name in promised:
                node.body[1:1] = [ast.parse(_refusal(limit)).body[0] for limit in getattr(solution, node.name).limits]
    return ast.unparse(tree)


def _refusal(limit):
    sign = {">": "<=", ">=": "<", "<": ">=", "<=": ">", "not": "=="}[limit.relation]
    end = f"{limit.factor!r} * {limit.other}" if limit.other else repr(limit.factor)
    return (
        f"if np.any(np.{limit.of.__name__}({limit.name}) {sign} {end}):\n    raise ValueError('{limit.name} is out of range')"
    )


def plain_cases(path):
    """Every numeric call of the exercise: (function, arguments, value wanted; None for a law's call or a refusal)."""
    plan = plan_for(path, SEED)
    wanted = {}
    for planned in plan.questions:
        for case in (*planned.cases, *(case for _, case in planned.published), *planned.stacked):
            wanted[case.place] = case.wanted
    return [
        [call["function"], [_plain(from_wire(argument)) for argument in call["arguments"]], _plain(wanted.get(place))]
        for place, call in enumerate(plan.calls)
        if "arguments" in call
    ]


def _plain(value):
    """As JSON has it. A complex value is left out, to the advantage of the others."""
    if isinstance(value, (list, tuple)):
        return [_plain(item) for item in value]
    if isinstance(value, (np.ndarray, np.generic)):
        value = value.tolist()
    return None if isinstance(value, complex) else value


def compare_processes(folder, files):
    """The commands to compare with: one of python for each exercise, and one of pytest for all."""
    tasks = []
    for path in PATHS:
        answer, cases = folder / f"{path.replace('/', '_')}.py", folder / f"{path.replace('/', '_')}.json"
        answer.write_text(files[f"{path}.py"].replace("from exercises.", "from solutions."))
        cases.write_text(json.dumps(plain_cases(path), default=lambda value: None))
        tasks.append((str(answer), str(cases)))
    commands = []
    for number, task in enumerate(tasks):
        script = folder / f"plain{number}.py"
        script.write_text(
            COMPARE.format(checkout=str(ROOT), tasks=[task])
            + "print(sum(right(module, *case) for module, cases in TASKS for case in cases))\n"
        )
        commands.append([sys.executable, "-I", str(script)])
    every = folder / "test_plain.py"
    every.write_text(
        COMPARE.format(checkout=str(ROOT), tasks=tasks)
        + "import pytest\n@pytest.mark.parametrize('module,case', [(m, c) for m, cases in TASKS for c in cases])\n"
        "def test_case(module, case):\n    assert right(module, *case)\n"
    )
    return commands, [
        sys.executable,
        "-m",
        "pytest",
        "-q",
        "--tb=line",
        "-p",
        "no:cacheprovider",
        "--rootdir",
        str(folder),
        str(every),
    ]


def by_key(path, files, prints, worker):
    """What an exercise costs in a run: its key, and its verdict."""
    used = {name: files[name] for name in prints.files_used(f"{path}.py")}
    return prints.key(path, SEED), judge(path, used, worker, SEED)


def timed(action, worker=None):
    """Milliseconds on the clock, and of the processor for this process and all that it started."""
    began, before = time.perf_counter(), processor_seconds(worker)
    action()
    return 1e3 * (time.perf_counter() - began), 1e3 * (processor_seconds(worker) - before)


def processor_seconds(worker):
    """What this process, those that it has waited for, and a worker's processes with their children have taken."""
    used = os.times()
    total = used.user + used.system + used.children_user + used.children_system
    for warm in worker._started.values() if worker else ():
        fields = Path(f"/proc/{warm._process.pid}/stat").read_text().rpartition(")")[2].split()
        total += sum(map(int, fields[11:15])) / os.sysconf("SC_CLK_TCK")
    return total


def turn_by_turn(folder):
    """A few members in three ways: by exercise in the first two, all at once in the third."""
    ours, python, pytest = [], [], []
    quiet = {"stdout": subprocess.DEVNULL, "stderr": subprocess.DEVNULL, "cwd": folder}
    with start_worker() as worker:
        for path in PATHS:
            judge(path, member(1).files, worker, SEED)  # plans are made once for a whole class
        for turn in range(TURNS):
            files = member(turn + 1).files
            prints = Fingerprints(files)
            each, all_together = compare_processes(folder, files)
            with worker.for_member() as own:
                for path, plain in zip(PATHS, each, strict=True):
                    ours.append(timed(partial(by_key, path, files, prints, own), worker))
                    python.append(timed(partial(subprocess.run, plain, **quiet), worker))
            pytest.append(timed(partial(subprocess.run, all_together, **quiet), worker))
    for place, clock in enumerate(("on the clock", "of the processor")):
        ours_, python_, pytest_ = ([times[place] for times in way] for way in (ours, python, pytest))
        if place == 0:  # the processor's time comes in steps of 10 ms: only its sums say something
            print(
                f"an exercise, median of {len(ours_)}, {clock}:  ours {statistics.median(ours_):.1f} ms   "
                f"(a) python {statistics.median(python_):.1f} ms   {statistics.median(python_) / statistics.median(ours_):.1f} ×"
            )
        mine = sum(ours_)
        print(
            f"a submission of {len(PATHS)} exercises, {clock}:  ours {mine / TURNS:.0f} ms   "
            f"(a) python {sum(python_) / TURNS:.0f} ms   {sum(python_) / mine:.1f} ×   "
            f"(b) pytest {sum(pytest_) / TURNS:.0f} ms   {sum(pytest_) / mine:.1f} ×"
        )


def loading():
    """A file's child, walls and loading, and one call that it has no function for; each file's least of a few turns."""
    files = member(1).files
    prints, least = Fingerprints(files), {}
    with start_worker() as worker, worker.for_member() as own:
        for _ in range(TURNS + 1):
            for path in PATHS:
                used = {name: files[name] for name in prints.files_used(f"{path}.py")}
                took, _ = timed(partial(_load, own, path, used))
                least[path] = min(took, least.get(path, (took, 0))[0]), len(used)
    for says, some in (("all", 1), ("those that may import 15 others or more", 16)):
        times = [took for took, count in least.values() if count >= some]
        if times:
            print(f"loading, {says} ({len(times)}):  median {statistics.median(times):.1f} ms, most {max(times):.1f} ms")


def _load(worker, path, used):
    with worker.session(path, used, 20) as session:
        session.ask([{"function": "no_such_function", "arguments": []}])


def whole_class(folder, count):
    """Cold on one processor, cold on two, warm: a judge for each processor."""
    class_of, cold = [member(number) for number in range(count)], {}
    everywhere = sorted(os.sched_getaffinity(0))
    for processors in (everywhere[:1], everywhere[:2]):
        os.sched_setaffinity(0, processors)
        with open_store(folder / f"marks{len(processors)}.sqlite") as store:
            marked = partial(mark, class_of, SEED, store=store, jobs=len(processors))
            cold[len(processors)] = timed(lambda marked=marked: [one.earned for one in marked()])
            warm = timed(lambda marked=marked: [one.earned for one in marked()])
    os.sched_setaffinity(0, everywhere)
    runs = count * len(PATHS)
    for processors, (clock, processor) in cold.items():
        print(
            f"{count} members × {len(PATHS)} exercises, cold, processors {processors}: {clock / 1e3:.1f} s on the clock "
            f"({clock / runs:.2f} ms an exercise), {processor / 1e3:.1f} s of the processor"
        )
    print(f"one processor against {max(cold)}: {cold[1][0] / cold[max(cold)][0]:.2f} ×")
    print(
        f"warm: {warm[0]:.0f} ms on the clock, {warm[1]:.0f} ms of the processor; against cold on one processor "
        f"{cold[1][0] / warm[0]:.0f} × by the clock, {cold[1][1] / max(warm[1], 10):.0f} × by the processor"
    )


def memory(sizes):
    """Peak memory of this process as the class grows; the members differ, the exercise marked is one."""
    for size in sizes:
        answered = sum(1 for _ in mark(map(member, range(size)), SEED, paths=("unit03_tuned_circuit/resonance",)))
        print(f"{answered:5} members: {resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024:.0f} MB")


if __name__ == "__main__":
    with tempfile.TemporaryDirectory() as name:
        count, largest = (*map(int, sys.argv[1:3]), *(200, 5000)[len(sys.argv) - 1 :])
        everywhere = os.sched_getaffinity(0)
        print(f"{len(everywhere)} processors, load {os.getloadavg()[0]:.1f}")
        os.sched_setaffinity(0, {min(everywhere)})
        turn_by_turn(Path(name))
        loading()
        os.sched_setaffinity(0, everywhere)
        whole_class(Path(name), count)
        memory((50, largest // 10, largest))

"""How fast is marking? Run by hand: `python tests/benchmarks/marking.py [MEMBERS]`. Not a test: it holds to no time.

A class is generated from the references, each member with small differences and some with mistakes. Three ways of marking
one exercise of one member are timed turn by turn, in one process at a time, so that whatever else the machine does strikes all:

    ours        the engine, one warm worker, full containment, a verdict with everything in it
    (a) python  a `python` process for the exercise, which imports the file and compares the same answers
    (b) pytest  a `pytest` process for the submission, with the same comparisons as assertions

Then the whole class is marked into a store, cold and warm, and memory is read at several sizes of class.
"""
import json
import os
import resource
import statistics
import subprocess
import sys
import tempfile
import time
from pathlib import Path

from checker.course import PATHS, ROOT
from checker.engine import mark
from checker.judge import judge
from checker.plan import plan_for
from checker.store import open_store
from checker.submissions import Member
from checker.worker.wire import to_wire
from checker.workers import Worker

SEED, TURNS = 20, 40
COMPARE = '''
import importlib.util, json, sys
sys.path.insert(0, {checkout!r})
import numpy as np
spec = importlib.util.spec_from_file_location("answer", {file!r})
module = importlib.util.module_from_spec(spec)
spec.loader.exec_module(module)
CASES = json.load(open({cases!r}))
def near(got, wanted):
    if isinstance(wanted, (list, tuple)):
        return len(got) == len(wanted) and all(map(near, got, wanted))
    return got == wanted or abs(got - wanted) <= 1e-6 * abs(wanted)
'''


def member(number):
    """A member who has done everything in a way of their own; every third has made a mistake in each exercise."""
    files = {}
    for path in PATHS:
        source = (ROOT / "solutions" / f"{path}.py").read_text().replace("from solutions.", "from exercises.")
        wrong = source.replace("2 * np.pi", "np.pi") if number % 3 == 0 else source
        files[f"{path}.py"] = f"# handed in by member {number}\n{wrong}"
    return Member(f"member {number:04}", files)


def plain_cases(path):
    """The exercise's plain numeric cases: (function, arguments, value wanted)."""
    cases = []
    for planned in plan_for(path, SEED).questions:
        for case in planned.cases:
            if all(isinstance(value, (int, float, str)) for value in case.inputs) and isinstance(case.wanted, float) and case.inputs:
                cases.append([planned.question.name, list(case.inputs), to_wire(case.wanted)])
    return cases


def compare_processes(folder, path, source):
    """The two commands to compare with."""
    answer, cases = folder / "answer.py", folder / "cases.json"
    answer.write_text(source)
    cases.write_text(json.dumps(plain_cases(path)))
    head = COMPARE.format(checkout=str(ROOT), file=str(answer), cases=str(cases))
    (folder / "plain.py").write_text(head + "print(sum(near(getattr(module, f)(*a), w) for f, a, w in CASES))\n")
    (folder / "test_plain.py").write_text(head + "import pytest\n@pytest.mark.parametrize('case', CASES)\ndef test_case(case):\n"
                                          "    f, a, w = case\n    assert near(getattr(module, f)(*a), w)\n")
    return ([sys.executable, "-I", str(folder / "plain.py")],
            [sys.executable, "-m", "pytest", "-q", "-p", "no:cacheprovider", "--rootdir", str(folder), str(folder / "test_plain.py")])


def timed(action):
    started = time.perf_counter()
    action()
    return 1e3 * (time.perf_counter() - started)


def turn_by_turn(folder):
    times = {"ours": [], "(a) python": [], "(b) pytest": []}
    quiet = {"stdout": subprocess.DEVNULL, "stderr": subprocess.DEVNULL, "cwd": folder}
    with Worker() as worker:
        for path in PATHS:
            judge(path, member(1).files, worker, SEED)  # plans are made once for a whole class
        for turn in range(TURNS):
            path, files = PATHS[turn % len(PATHS)], member(turn + 1).files
            plain, pytest = compare_processes(folder, path, files[f"{path}.py"])
            times["ours"].append(timed(lambda: judge(path, files, worker, SEED)))
            times["(a) python"].append(timed(lambda: subprocess.run(plain, **quiet)))
            times["(b) pytest"].append(timed(lambda: subprocess.run(pytest, **quiet)))
    ours = statistics.median(times["ours"])
    for way, taken in times.items():
        median = statistics.median(taken)
        print(f"{way:12} median {median:8.1f} ms   {median / ours:6.1f} × ours")


def whole_class(folder, count):
    class_of = [member(number) for number in range(count)]
    with open_store(folder / "marks.sqlite") as store:
        cold = timed(lambda: [one.earned for one in mark(class_of, SEED, store=store)])
        warm = timed(lambda: [one.earned for one in mark(class_of, SEED, store=store)])
    runs = count * len(PATHS)
    print(f"{count} members × {len(PATHS)} exercises: cold {cold / 1e3:.1f} s ({cold / runs:.2f} ms an exercise), "
          f"warm {warm / 1e3:.1f} s, {cold / warm:.0f} × faster")


def memory(sizes):
    """Peak memory of this process as the class grows; the members differ, the exercise marked is one."""
    for size in sizes:
        answered = sum(1 for _ in mark(map(member, range(size)), SEED, paths=("unit03_tuned_circuit/resonance",)))
        print(f"{answered:5} members: {resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024:.0f} MB")


if __name__ == "__main__":
    with tempfile.TemporaryDirectory() as name:
        print(f"{os.cpu_count()} processors, load {os.getloadavg()[0]:.1f}")
        turn_by_turn(Path(name))
        whole_class(Path(name), int(sys.argv[1]) if len(sys.argv) > 1 else 200)
        memory((50, 500, 2000))

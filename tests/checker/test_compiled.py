"""A member's files are compiled once, by a child that runs none of them; what it makes is read behind the walls alone."""

import ast
import base64
import marshal
import os
import select
import signal
import time

import pytest

from checker.course import ROOT
from checker.judging.judge import judge
from checker.marks.judges import Judges, Task, launch_judge
from checker.sandbox.compiled import CompiledFiles
from checker.sandbox.replies import read_code
from checker.sandbox.workers import WarmWorker
from checker.worker.wire import MAX_CODE, Malformed, line

RESONANCE = "unit03_tuned_circuit/resonance"
PATH = f"{RESONANCE}.py"
RIGHT = """import numpy as np, sympy
from exercises.unit00_bench.metres import half
def resonance_condition(inductance, capacitance):
    return 2 * half / sympy.sqrt(inductance * capacitance)
def resonant_frequency(inductance, capacitance):
    return half / (np.pi * np.sqrt(inductance * capacitance))
"""
HELPER = {"unit00_bench/metres.py": "half = 0.5\n"}
SOURCES = {
    "right": RIGHT,
    "a slip": RIGHT.replace("np.pi * ", ""),
    "no Python": RIGHT + "x = (\n",
    "too complex": RIGHT + f"x = {'-' * 100_000}1\n",
    "a null byte": RIGHT + "\0",
    "a surrogate": RIGHT + "x = '\ud800'\n",
    "an error at a line": RIGHT + "\n\n1 / 0\n",
    "much code": RIGHT + "x = [" + "'a' * 4000 + 'b', " * 2000 + "]\n",
}


@pytest.fixture(scope="module")
def worker():
    with WarmWorker() as worker:
        yield worker


@pytest.mark.parametrize("name", SOURCES)
def test_what_is_said_is_the_same_with_code_kept_and_without(worker, name):
    files = {PATH: SOURCES[name]} | HELPER
    with worker.for_member() as own:
        found = [judge(RESONANCE, files, own, 3) for _ in range(2)]
    assert found == [judge(RESONANCE, files, worker, 3)] * 2
    assert (found[0].kind == "passed") == (name in ("right", "much code")), found[0].findings


def compiled_by(worker):
    return CompiledFiles(lambda: worker._warm().child(b"C"))


def test_it_is_the_code_that_python_makes_and_nothing_of_it_is_run(worker, tmp_path):
    source = f"open({str(tmp_path / 'run')!r}, 'w')\n"
    made = compiled_by(worker)
    try:
        found = made.of({"a.py": source, "b.py": "(", "c.py": "x = 1\n"})
    finally:
        made.close()
    assert list(found) == ["a.py", "c.py"] and not os.path.exists(tmp_path / "run")
    assert marshal.loads(base64.b64decode(found["a.py"])) == compile(source, "a.py", "exec", dont_inherit=True)


class Scripted:
    """A compiler that answers each source by the word that it begins with, and a list of what it was asked."""

    def __init__(self):
        self.asked, self.started, self.ended = [], 0, 0
        self.line = self

    def start(self):
        self.started, self._answers = self.started + 1, [line({"ready": True})]
        return self

    def send(self, message, deadline):
        self.asked.append(message["path"])
        self._answers.append({"late": None, "gone": b"", "odd": b'{"code": 7}'}.get(message["source"], b'{"code": "eA=="}'))

    def receive(self, deadline, most):
        answer = self._answers.pop(0)
        if answer is None:
            raise TimeoutError
        if not answer:
            raise EOFError
        return answer

    def end(self):
        self.ended += 1


def test_a_source_that_ends_the_compiler_costs_no_other_and_is_not_tried_again():
    compiler = Scripted()
    made = CompiledFiles(compiler.start)
    files = {"a.py": "fine", "b.py": "late", "c.py": "gone", "d.py": "odd", "e.py": "fine"}
    assert made.of(files) == made.of(files) == {"a.py": "eA==", "e.py": "eA=="}
    assert compiler.asked == list(files) and (compiler.started, compiler.ended) == (4, 3)
    assert made.of({"a.py": "other"}) == {"a.py": "eA=="} and compiler.asked[-1] == "a.py"
    assert made.of({"a.py": "x" * MAX_CODE, "f.py": "fine"}) == {}, "left to the child that loads it"


def test_a_member_has_only_so_much_time_and_room(monkeypatch):
    class Slow(Scripted):
        def receive(self, deadline, most):
            time.sleep(0.05)
            return super().receive(deadline, most)

    slow = CompiledFiles(Slow().start)
    slow._seconds = 0.12
    assert len(slow.of({f"{n}.py": "fine" for n in range(9)})) < 9
    small = CompiledFiles(Scripted().start)
    small._left = 9
    assert len(small.of({f"{n}.py": "fine" for n in range(9)})) == 2


@pytest.mark.parametrize(
    "raw",
    [b"", b"7", b"{}", b'{"code": 7}', b'{"code": "a b"}', b'{"code": "eA==", "x": 1}', b'{"code": "\\u00e9"}', b"[" * 9000],
)
def test_what_is_no_code_is_malformed(raw):
    with pytest.raises(Malformed):
        read_code(raw)


def test_nothing_on_the_judges_side_of_the_wall_reads_code_or_objects():
    for file in (ROOT / "checker").rglob("*.py"):
        if file.parent.name == "worker" or "examples" in file.parts:
            continue
        imported = {
            name
            for node in ast.walk(ast.parse(file.read_bytes()))
            for name in (
                [alias.name for alias in node.names]
                if isinstance(node, ast.Import)
                else [node.module]
                if isinstance(node, ast.ImportFrom)
                else []
            )
        }
        assert not imported & {"marshal", "pickle", "shelve"}, file
        if file.parent.name == "sandbox":
            assert not any(name and name.endswith("compiling") for name in imported), file


def test_a_child_forked_ahead_is_used_once_and_one_that_died_is_replaced(worker):
    warm = worker._warm()
    seen = []
    for _ in range(3):
        warm.fork_ahead()
        seen.append(warm.child(b"F"))
    assert len({child._pid for child in seen}) == 3
    for child in seen:
        child.end()
    warm.fork_ahead()
    warm._settle()
    dead = warm._ahead
    select.select([dead._end], [], [], 60)  # what it says first lies there unread when it ends
    os.kill(dead._pid, signal.SIGKILL)
    while dead.is_there:
        time.sleep(0.01)
    assert judge(RESONANCE, {PATH: RIGHT} | HELPER, worker, 3).kind == "passed"
    child = warm.child(b"F")
    assert child is not dead
    child.end()


def test_a_judge_launched_as_a_python_of_its_own_judges_alike(worker):
    files = {PATH: SOURCES["a slip"]} | HELPER
    with Judges(1, launch_judge) as judges:
        found = [judges.judge_one(Task(RESONANCE, files, 3, member)) for member in ("one", "two", None)]
    assert found == [judge(RESONANCE, files, worker, 3)] * 3

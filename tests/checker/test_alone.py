"""No verdict is reached in a process in which another exercise's code has run, whatever that code does to its process."""

import time

import pytest

from checker.course import ROOT
from checker.judging.judge import judge
from checker.marks.pool import mark
from checker.sandbox.workers import FreshWorker, WarmWorker, start_worker
from checker.submissions.members import Member
from checker.worker.child import Clock
from tests.checker.corpus import HONEST, PATH

FIRST, SECOND = "unit03_tuned_circuit/quality_factor", "unit03_tuned_circuit/resonance"
CALL = {"function": "resonant_frequency", "arguments": [1.0, 1.0]}
# Each changes something that all later code in its process would meet; none of them sets an attribute by name.
SPOILS = {
    "functools": "import functools\nfunctools.update_wrapper(np, type('x', (), {'pi': 3.0, '__doc__': ''}), ('pi',), ())",
    "dataclasses": "import dataclasses\ndataclasses.make_dataclass('X', ['pi'], namespace={'pi': 3.0})\nvars(np).update(pi=3.0)",
    "string": "import string\n'{0.__dict__}'.format(np)\nstring.Formatter().get_field('0.__dict__', (np,), {})[0].update(pi=3.0)",
    "typing": "import typing\ntyping.get_type_hints\nobject.__getattribute__(np, '__dict__').update(pi=3.0)",
    "enum": "import enum\nenum.global_enum(enum.Enum('X', {'pi': 3.0}, module='numpy'))",
    "sympify": "import sympy\nsympy.sympify('__import__(\"numpy\").__dict__.update(pi=3.0)')",
    "statistics": "import statistics\nvars(statistics)['sys'].modules['numpy'].__dict__.update(pi=3.0)",
    "type": "type.__setattr__(type(np), 'pi', 3.0)",
    "plainly": "np.pi = 3.0\nnp.sqrt = lambda x: x",
    "modules": "import sys\nsys.modules['numpy'].pi = 3.0",
}


@pytest.fixture(scope="module")
def worker():
    with start_worker() as worker:
        yield worker


def spoilt(how):
    source = (ROOT / f"exercises/{FIRST}.py").read_text()
    return f"import numpy as np\ntry:\n    exec({SPOILS[how]!r})\nexcept BaseException:\n    pass\n" + source.replace(
        "raise NotImplementedError", "return 0.0"
    )


@pytest.mark.parametrize("how", SPOILS)
def test_what_one_exercise_does_to_its_process_no_other_meets(worker, how):
    alone = judge(SECOND, {PATH: HONEST}, worker, 3)
    assert alone.kind == "passed"
    judge(FIRST, {f"{FIRST}.py": spoilt(how)}, worker, 3)
    assert judge(SECOND, {PATH: HONEST}, worker, 3) == alone


def test_the_attack_spoils_its_own_process_for_real():
    names = {"np": type("numpy", (), {"pi": 3.1})}
    exec("np.pi = 3.0", names)
    assert names["np"].pi == 3.0


def test_every_session_has_a_process_of_its_own(worker):
    counts = (
        "import numpy as np\ndef resonant_frequency(L, C):\n    np.times = getattr(np, 'times', 0) + 1\n    return np.times\n"
    )
    for _ in range(3):
        with worker.session(SECOND, {PATH: counts}, 2.0) as session:
            assert [reply["value"] for reply in session.ask([CALL, CALL])] == [1, 2]


@pytest.mark.parametrize("kind", [WarmWorker, FreshWorker])
def test_a_child_takes_no_second_exercise(kind):
    with kind() as worker, worker.session(SECOND, {PATH: HONEST}, 2.0) as session:
        assert len(session.ask([CALL])) == 1
        session._line.send({"exercise": FIRST, "files": {f"{FIRST}.py": HONEST}, "seconds": 2.0}, time.monotonic() + 1)
        assert session.ask([CALL]) == []
        assert session.ended.why == "died"


def test_marks_of_a_class_are_those_of_each_exercise_by_itself(worker):
    stubs = {f"{SECOND}.py": (ROOT / f"exercises/{SECOND}.py").read_text()}
    members = [Member("honest", {PATH: HONEST}), Member("idle", stubs)]
    for how in SPOILS:
        members.append(Member(how, {f"{FIRST}.py": spoilt(how), PATH: HONEST}))
    found = {one.member.name: one.verdicts[1] for one in mark(members, 3, (FIRST, SECOND), jobs=1)}
    assert found.pop("idle").earned == 0
    assert set(found.values()) == {judge(SECOND, {PATH: HONEST}, worker, 3)}


@pytest.mark.parametrize(
    "passed, used, due",
    [
        (2.0, 2.0, 0.0),  # nobody was in the way
        (2.0, 1.0, 1.0),  # every other moment somebody else's
        (3.5, 1.0, 0.5),  # no more than twice as long
        (4.0, 1.0, 0.0),
        (2.0, 0.1, 0.0),  # asleep
    ],
)
def test_the_childs_time_is_stretched_where_others_have_the_processor(monkeypatch, passed, used, due):
    clock, now = Clock(), {"monotonic": 10.0, "process_time": 5.0}
    for name in now:
        monkeypatch.setattr(f"checker.worker.child.time.{name}", lambda name=name: now[name])
    clock.start(2.0)
    clock.stop()
    now.update(monotonic=10.0 + passed, process_time=5.0 + used)
    assert clock.still_due() == pytest.approx(due)

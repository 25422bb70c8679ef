"""A right function earns its marks whatever stands in earlier files: the judge answers for these, and for nothing else."""

import ast
import json
import time
from inspect import signature
from unittest.mock import patch

import numpy as np
import pytest

from checker.budgets import BUDGET
from checker.course import PATHS, ROOT, load_exercise, load_physics
from checker.exports.table import write_table
from checker.imports import Sources
from checker.judging import fingerprint
from checker.judging.fingerprint import files_used, judged_by
from checker.judging.judge import judge
from checker.judging.plans import plan_for
from checker.judging.recorded import earlier_from_data, record_earlier
from checker.judging.stand_ins import Earlier, Lender, built_on, references_for, with_numpys
from checker.judging.verdict import NOT_ATTEMPTED, NOT_JUDGED, PASSED, UNFINISHED, from_data, to_data
from checker.marks.marksheet import member_marks
from checker.report.text import verdict_lines
from checker.sandbox.workers import FreshWorker, WarmWorker
from checker.worker.wire import Malformed, to_wire

SEED = 3
RADIATED, FIELD, RADIATION = (
    "unit07_oscillation/radiated_field",
    "unit01_signal/field_strength",
    "unit01_signal/radiation_resistance",
)
COUPLING, REFLECTED = "unit03_tuned_circuit/aerial_coupling", "unit03_tuned_circuit/reflected_impedance"
WIRE, TRIODE = "unit02_coil_and_condenser/wire_resistance", "unit05_valve/triode_current"


def right(path):
    """The reference as a member would hand it in."""
    source = (ROOT / f"solutions/{path}.py").read_text("utf-8").replace("from solutions.", "from exercises.")
    return {f"{path}.py": source, "ranges.py": (ROOT / "solutions/ranges.py").read_text("utf-8")}


def stub(path):
    return {f"{path}.py": (ROOT / f"exercises/{path}.py").read_text("utf-8")}


def doubled(path, name):
    """A file that is right but for one function, which gives twice what it should."""
    wrong = f"\n\nright_one = {name}\n\n\ndef {name}(*inputs):\n    return 2 * right_one(*inputs)\n"
    return right(path) | {f"{path}.py": right(path)[f"{path}.py"] + wrong}


def said(verdict):
    return " ".join(" ".join(line.text for line in verdict_lines(verdict)).split())


@pytest.fixture(scope="module")
def worker():
    with WarmWorker() as worker:
        yield worker


OTHERS = {
    "still the stub": (stub(REFLECTED), "which is still to be written"),
    "not handed in": ({}, "which was not handed in"),
    "wrong": (
        doubled(REFLECTED, "reflected_impedance"),
        "which does not give the right values yet",
    ),
    "stopping": (
        {f"{REFLECTED}.py": "def reflected_impedance(*inputs):\n    return 1 / 0\n"},
        "which does not give an answer yet",
    ),
    "no Python": ({f"{REFLECTED}.py": "def reflected_impedance(:"}, "which does not give an answer yet"),
}


@pytest.mark.parametrize("how", OTHERS)
def test_a_right_function_earns_its_marks_whatever_stands_in_earlier_files(worker, how):
    others, why = OTHERS[how]
    verdict = judge(COUPLING, right(COUPLING) | others, worker, SEED)
    assert (verdict.kind, verdict.earned) == (PASSED, verdict.marks)
    assert f"Right, with the course's own reflected_impedance in place of yours, {why}." in said(verdict)
    assert from_data(to_data(verdict)) == verdict


def test_what_is_right_as_it_was_handed_in_needs_no_stand_in(worker):
    verdict = judge(COUPLING, right(COUPLING) | right(REFLECTED), worker, SEED)
    assert (verdict.kind, verdict.lent) == (PASSED, ())


def test_only_those_that_are_not_right_are_named(worker):
    verdict = judge(RADIATED, right(RADIATED) | right(FIELD) | stub(RADIATION), worker, SEED)
    assert verdict.kind == PASSED
    assert [(one.exercise, one.function) for one in verdict.lent] == [(RADIATION, "radiation_resistance")]
    assert "radiation_resistance in place of yours, which is still to be written." in said(verdict)


def test_a_wrong_function_is_wrong_by_itself_and_not_for_an_earlier_one(worker):
    verdict = judge(COUPLING, doubled(COUPLING, "loaded_quality_factor") | stub(REFLECTED), worker, SEED)
    assert verdict.kind == "wrong" and 0 < verdict.earned < verdict.marks
    assert "Judged with the course's own reflected_impedance" in said(verdict) and "in loaded_quality_factor" in said(verdict)


def test_constants_stand_in_for_a_file_that_is_not_there(worker):
    verdict = judge(WIRE, right(WIRE), worker, SEED)
    assert (verdict.kind, verdict.earned) == (PASSED, verdict.marks)
    assert "the course's own constants of solenoid_inductance in place of yours, which were not handed in." in said(verdict)


def test_a_helper_of_the_member_s_own_is_still_found(worker):
    files = right(COUPLING) | stub(REFLECTED)
    files[f"{REFLECTED}.py"] += "\n\ndef double(x):\n    return 2 * x\n"
    files[f"{COUPLING}.py"] = (
        files[f"{COUPLING}.py"].replace("import reflected_impedance", "import double, reflected_impedance")
        + "\nassert double(2) == 4\n"
    )
    assert judge(COUPLING, files, worker, SEED).kind == PASSED


def test_where_no_number_can_stand_in_it_waits_and_is_not_called_unwritten(worker):
    source = "from exercises.unit03_tuned_circuit.reflected_impedance import reflected_impedance\n"
    source += "def loaded_quality_factor(*inputs):\n    return reflected_impedance(object(), 1.0, 1.0)\n"
    verdict = judge(COUPLING, {f"{COUPLING}.py": source} | stub(REFLECTED), worker, SEED)
    sentence = "loaded_quality_factor cannot be judged until reflected_impedance is right."
    assert verdict.findings[0].kind == UNFINISHED and sentence in said(verdict)
    assert "loaded_quality_factor is still the stub" not in said(verdict)


def test_an_exercise_that_is_not_built_on_is_not_lent_but_its_state_is_told(worker):
    assert "unit03_tuned_circuit/resonance" not in built_on(COUPLING)
    source = "from exercises.unit03_tuned_circuit.resonance import resonant_frequency\n"
    source += "def loaded_quality_factor(*inputs):\n    return resonant_frequency(1.0, 1.0)\n"
    verdict = judge(COUPLING, {f"{COUPLING}.py": source} | stub("unit03_tuned_circuit/resonance"), worker, SEED)
    assert verdict.findings[0].kind == UNFINISHED and verdict.lent == ()
    assert "cannot be judged until resonant_frequency of resonance is right." in said(verdict)


def test_without_fork_too():
    source = "from exercises.unit03_tuned_circuit.reflected_impedance import reflected_impedance as loaded_quality_factor\n"
    lender = Lender(references_for(COUPLING))
    call = {"function": "loaded_quality_factor", "arguments": [1e6, 5e-6, 10.0]}
    with FreshWorker() as worker, worker.session(COUPLING, {f"{COUPLING}.py": source}, 20.0, lender=lender) as session:
        [reply] = session.ask([call])
    assert reply["value"] == lender._functions[ASKED](1e6, 5e-6, 10.0)


# What the line may be asked, and by whom.


def test_nothing_stands_in_for_the_exercise_itself_or_a_later_one():
    assert len([path for path in PATHS if built_on(path)]) > 20
    for path in PATHS:
        assert all(PATHS.index(earlier) < PATHS.index(path) for earlier in built_on(path))


def test_whatever_a_stub_imports_of_earlier_exercises_can_stand_in():
    stubs = Sources(ROOT, ("exercises",))
    for path in PATHS:
        for name in stubs.imports("exercises." + path.replace("/", ".")):
            module, _, thing = name.removeprefix("exercises.").rpartition(".")
            earlier = module.replace(".", "/")
            if earlier in PATHS:
                value = getattr(load_physics(module), thing)
                is_asked = f"def {thing}(" in stub(earlier)[f"{earlier}.py"]
                assert earlier in built_on(path) and (thing.isupper() if not callable(value) else is_asked), (path, name)


def test_whatever_a_reference_takes_of_earlier_exercises_is_in_a_stub_or_can_stand_in():
    for path in PATHS:
        offers = Lender(references_for(path)).offers
        for earlier, names in built_on(path).items():
            of_stub = {
                name
                for node in ast.parse(stub(earlier)[f"{earlier}.py"]).body
                for name in [getattr(node, "name", "")] + [getattr(one, "id", "") for one in getattr(node, "targets", ())]
            }
            assert names <= of_stub | {*offers[earlier]["functions"], *offers[earlier]["constants"]}, path


def question(name, *arguments, **named):
    return {"asks": name, "arguments": list(arguments), "named": named}


ASKED = f"{REFLECTED}.reflected_impedance"


def test_a_lender_answers_as_the_reference_does():
    lender = Lender(references_for(COUPLING))
    reference = lender._functions[ASKED]
    assert lender.answer(question(ASKED, 1e6, 5e-6, 10 + 5j), 100) == {"lends": to_wire(reference(1e6, 5e-6, 10 + 5j))}
    told = lender.answer(question(ASKED), 100)
    assert told["raises"] == "TypeError" and "missing" in told["text"]
    assert lender.answer(question(ASKED, -1.0, 5e-6, 10 + 5j), 100)["raises"] == "ValueError"


@pytest.mark.parametrize(
    "name",
    [
        f"{COUPLING}.tuned_voltage",
        f"{REFLECTED}.__class__",
        "unit09_feedback_receivers/quench.quench",
        "",
        "reflected_impedance",
    ],
)
def test_a_lender_knows_no_name_but_those_of_what_is_built_on(name):
    with pytest.raises(Malformed):
        Lender(references_for(COUPLING)).answer(question(name, 1.0), 100)


ABSURD = (
    1e300,
    -1e300,
    float("nan"),
    float("inf"),
    0.0,
    10**300,
    "wavelength",
    None,
    1j,
    [1.0, [2.0]],
    np.zeros(0),
    np.ones((64, 64)),
)


@pytest.mark.parametrize("path", sorted({earlier for path in PATHS for earlier in built_on(path)}))
def test_an_absurd_question_is_answered_or_refused_at_once(path):
    functions = {one.name: one.asks for one in load_exercise(path).questions if not one.symbolic}
    began = time.thread_time()
    for name, function in functions.items():
        lender = Lender([Earlier(path, {name: function}, {})])
        for value in ABSURD:
            answer = lender.answer(question(f"{path}.{name}", *[value] * len(signature(function).parameters)), 100)
            assert len(answer) in (1, 2) and answer.keys() <= {"lends", "raises", "text", "refuses"}
    assert time.thread_time() - began < BUDGET.lending


def endless(*inputs):
    while True:
        pass


def test_time_bytes_and_numbers_have_an_end():
    with patch(
        "checker.judging.stand_ins.BUDGET", patched := type(BUDGET)(lending=0.05, lent=5, questions=1000, lent_numbers=100)
    ):
        lender = Lender([Earlier(TRIODE, {"endless": endless, "same": lambda x: x}, {})])
        same = f"{TRIODE}.same"
        assert lender.answer(question(same, np.ones(101)), 10) == {"refuses": True}
        assert "lends" in lender.answer(question(same, np.ones(100)), 10)
        began = time.thread_time()
        assert lender.answer(question(f"{TRIODE}.endless"), 10) == {"refuses": True}
        assert time.thread_time() - began < 10 * patched.lending
        assert lender.answer(question(same, 1.0), 10) == {"refuses": True}, "the time is used up"
        many = Lender([Earlier(TRIODE, {"same": lambda x: x}, {})])
        assert ["lends" in many.answer(question(same, 1.0), 10) for _ in range(6)] == [True] * 4 + [False] * 2
        assert Lender([Earlier(TRIODE, {"same": lambda x: x}, {})]).answer(question(same, 1.0), 2000) == {"refuses": True}
        with pytest.raises(Malformed):
            for _ in range(2000):
                many.answer(question(same, 1.0), 10)


def test_a_pack_has_recorded_values_and_knows_no_others():
    plan = plan_for(COUPLING, 1)
    lender = Lender(earlier_from_data(json.loads(json.dumps(record_earlier(plan)))))
    frequency, mutual, impedance = plan.questions[0].cases[0].inputs[:3]
    wanted = to_wire(with_numpys(references_for(COUPLING)[0].functions["reflected_impedance"](frequency, mutual, impedance)))
    for factor, answer in ((1.0, {"lends": wanted}), (1 + 1e-14, {"lends": wanted}), (1.01, {"refuses": True})):
        assert lender.answer(question(ASKED, frequency * factor, mutual, impedance), 10) == answer


# What hangs on it: the store's key, reports, tables.


def test_a_verdict_s_key_hangs_on_the_references_that_may_stand_in(monkeypatch):
    asked = []
    monkeypatch.setattr(type(fingerprint.SOURCES), "hash_of", lambda self, modules, *rest: asked.extend(modules) or "hash")
    judged_by.__wrapped__(COUPLING)
    assert {f"solutions.{path.replace('/', '.')}_check" for path in (COUPLING, REFLECTED)} <= set(asked)


def test_an_earlier_file_that_comes_or_changes_makes_another_key():
    files = right(COUPLING)
    assert f"{REFLECTED}.py" in files_used(f"{COUPLING}.py", files | stub(REFLECTED))


def test_reports_and_table_say_what_stood_in(worker, tmp_path):
    verdict = judge(COUPLING, right(COUPLING) | stub(REFLECTED), worker, SEED)
    member = member_marks("Isla Marrow", [], [verdict], {})
    with open(tmp_path / "marks.csv", "w+", newline="", encoding="utf-8-sig") as file:
        write_table([member], [COUPLING], file)
    table = (tmp_path / "marks.csv").read_text("utf-8-sig")
    assert "aerial_coupling: Right, with the course's own reflected_impedance in place of the member's, which is still" in table


# Attacks that try to use the line.

ATTACKS = {
    "a right answer printed from an earlier function earns nothing for that one": (
        COUPLING,
        "from exercises.unit03_tuned_circuit.reflected_impedance import reflected_impedance\n"
        "def loaded_quality_factor(f, m, z, inductance, resistance):\n    print(reflected_impedance(f, m, z))\n    return 1.0\n",
    ),
    "its own stand-in": (COUPLING, "from exercises.unit03_tuned_circuit.aerial_coupling import loaded_quality_factor\n"),
    "a forged question for its own function": (
        COUPLING,
        "# reflected_impedance\nimport os\nfrom exercises.unit03_tuned_circuit.reflected_impedance import reflected_impedance as lent\n"
        "ask = lent.__closure__\n"
        "def loaded_quality_factor(*inputs):\n"
        "    asking = next(c.cell_contents for c in ask if hasattr(c.cell_contents, '_ask'))._ask\n"
        f"    return asking('{COUPLING}.loaded_quality_factor', inputs, {{}})\n",
    ),
    "questions without end": (
        COUPLING,
        "from exercises.unit03_tuned_circuit.reflected_impedance import reflected_impedance\n"
        "def loaded_quality_factor(*inputs):\n    n = 0\n    while True:\n        n += 1\n        try:\n"
        "            reflected_impedance(1e6 + n, 1e-6, 1.0)\n        except NotImplementedError:\n            raise\n"
        "        except BaseException:\n            pass\n",
    ),
}


@pytest.mark.parametrize("name", ATTACKS)
def test_an_attack_on_the_line_earns_nothing_and_ends(worker, name, monkeypatch):
    monkeypatch.setattr("checker.judging.stand_ins.MOST_REFUSED", 20)
    monkeypatch.setattr("checker.judging.stand_ins.BUDGET", type(BUDGET)(lent=50))
    path, source = ATTACKS[name]
    began, used = time.monotonic(), time.process_time()
    verdict = judge(path, {f"{path}.py": source} | stub(REFLECTED), worker, SEED)
    assert verdict.kind not in (PASSED, NOT_JUDGED) and verdict.earned == 0, said(verdict)
    assert time.process_time() - used < 10 and time.monotonic() - began < 60
    assert judge(REFLECTED, {f"{path}.py": source} | stub(REFLECTED), worker, SEED).kind == NOT_ATTEMPTED

"""Slips that belong to no exercise, each made in three: it is named, and never where it is not what is wrong."""

import ast

import pytest
import sympy

from checker.course import find, load_exercise
from checker.judging.explanations import trouble_finding
from checker.judging.judge import judge
from checker.judging.mends import LONGEST, MENDS, POWER, mended
from tests.exercises.answering import Answering
from tests.exercises.every_mutant import SEED
from tests.exercises.test_from_hints import WRITTEN

DIVIDED, KELVIN, DEGREES, SHORT, BELOW, EXPONENT = (mend.says for mend in MENDS)
THEIR_OWN = {  # exercises that have a sentence of their own for it
    "signal_to_noise": "added 273 to a temperature that is in kelvin already",
    "edge": "gone one round short: range(n) ends before n",
    "tone": "given the sine degrees: np.sin wants radians",
}
MADE = [
    (DIVIDED, "resonance", "1 / (2 * np.pi", "1 // (2 * np.pi"),
    (DIVIDED, "quality_factor", "resonant_frequency / quality_factor", "resonant_frequency // quality_factor"),
    (DIVIDED, "inverse_distance", " / distance", " // distance"),
    (KELVIN, "diode_current", "VOLTS_PER_KELVIN * temperature", "VOLTS_PER_KELVIN * (temperature + 273)"),
    (THEIR_OWN["signal_to_noise"], "signal_to_noise", "BOLTZMANN * temperature", "BOLTZMANN * (273.15 + temperature)"),
    (KELVIN, "build_up", "BOLTZMANN * temperature", "BOLTZMANN * (temperature + 273)"),
    (DEGREES, "am_waveform", "np.cos(2 * np.pi * tone_frequency", "np.cos(360 * tone_frequency"),
    (DEGREES, "am_waveform", "np.cos(2 * np.pi * carrier_frequency * time", "np.cos(np.degrees(2 * np.pi * carrier_frequency * time)"),
    (THEIR_OWN["tone"], "tone", "2 * np.pi", "360"),
    (DEGREES, "ring_down", "angle = 2 * np.pi", "angle = 360"),
    (THEIR_OWN["edge"], "edge", "range(rounds + 1)", "range(rounds)"),
    (SHORT, "channel_plan", "np.arange(59, 179)", "np.arange(59, 178)"),
    (BELOW, "quality_factor", "inductance / (capacitance * resistance)", "inductance / capacitance * resistance"),
    (BELOW, "one_valve", "load / (anode_resistance + load)", "load / anode_resistance + load"),
    (EXPONENT, "phone_loudness", "10 ** (level / 20)", "10 ** level / 20"),
    (SHORT, "mutual_inductance", "np.arange(turns)", "np.arange(turns - 1)"),
]  # fmt: skip


def source(name):
    return (WRITTEN / f"{find(name)}.py").read_text("utf-8")


def slips_of(name, worker, *changes):
    text = source(name)
    for right, wrong in changes:
        assert right in text
        text = text.replace(right, wrong)
    files = {str(file.relative_to(WRITTEN)): file.read_text("utf-8") for file in WRITTEN.rglob("*.py")}
    verdict = judge(name, files | {f"{find(name)}.py": text}, worker, SEED)
    return {finding.slip for finding in verdict.findings}


@pytest.mark.parametrize(("says", "name", "right", "wrong"), MADE)
def test_a_general_slip_is_named_in_whichever_exercise_it_is_made(says, name, right, wrong, worker):
    assert says in slips_of(name, worker, (right, wrong))


@pytest.mark.parametrize(
    ("name", "changes"),
    [
        ("resonance", [("1 / (2 * np.pi", "(5 // 3) / (2 * np.e")]),
        ("signal_to_noise", [("4 * BOLTZMANN * temperature", "3 * BOLTZMANN * (temperature + 273)")]),
        ("edge", [("range(rounds + 1)", "range(rounds - 2)")]),
    ],
)
def test_nobody_is_accused_of_what_is_not_the_fault(name, changes, worker):
    assert not slips_of(name, worker, *changes) & {POWER, *(mend.says for mend in MENDS)}


@pytest.mark.parametrize("name", ["sideband_power", "solenoid_inductance", "condenser"])
def test_a_power_written_with_the_wrong_sign_is_named(name):
    exercise = load_exercise(name)
    question = exercise.questions[0]
    [reply] = Answering({question.name: lambda *inputs: inputs[0] ^ 2}).ask([{"function": question.name, "arguments": [1.5]}])
    assert "A power is written ** in Python" in trouble_finding(question, None, reply, exercise).says


def test_a_power_of_whole_numbers_written_with_the_wrong_sign_is_known_by_its_mend():
    [(says, source), *_] = mended("f = 3 * n ^ 2 + n // 2  # not ^\n")
    assert says == POWER and ast.dump(ast.parse(source)) == ast.dump(ast.parse("f = 3 * n ** 2 + n // 2"))


@pytest.mark.parametrize("name", ["resonance_condition", "coefficients", "trap_without_reactance"])
@pytest.mark.parametrize("root", ["np.sqrt", "math.sqrt"])
def test_a_root_of_a_symbol_is_named(name, root):
    exercise = load_exercise({"coefficients": "triode_current", "trap_without_reactance": "wave_trap"}.get(name, "resonance"))
    question = next(question for question in exercise.questions if question.name == name)
    namespace = {}
    exec(f"import math, numpy as np\ndef answer(*parts): return {root}(parts[0] * parts[1])", namespace)  # noqa: S102
    call = {"function": name, "symbols": list(question.given), "at": [[1.0] * len(question.given)]}
    [reply] = Answering({name: namespace["answer"]}).ask([call])
    assert "a formula wants sympy's" in trouble_finding(question, None, reply, exercise).says


def test_what_is_no_fault_of_a_symbol_is_not_taken_for_one():
    exercise = load_exercise("resonance")
    question = exercise.questions[0]
    reply = {
        "trouble": "raised",
        "error": "TypeError",
        "text": "loop of ufunc does not support argument 0 of type NoneType which has no callable sqrt method",
    }
    assert "sympy" not in trouble_finding(question, None, reply, exercise).says
    assert sympy.sqrt(sympy.Symbol("x")).is_Pow  # the kinds named in the advice are sympy's own


@pytest.mark.parametrize("text", ["def f(:", "x = " + "-" * 5000 + "1", "a = 1 // 2\n" * LONGEST, "(" * 300])
def test_a_source_that_cannot_be_taken_apart_is_left(text):
    assert list(mended(text)) == []

"""Every way a submission goes wrong has a sentence of its own, which fits a terminal and points at the student's line."""

import re
from dataclasses import replace
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from checker.checks.exercise import relative
from checker.checks.units import quantity
from checker.course import PRACTICE_SEED
from checker.judging.compare import is_rounding
from checker.judging.judge import LINE_SHOWN, judge
from checker.judging.plans import plan_for
from checker.judging.verdict import RAISED, TOO_SLOW, Finding, Part, Verdict, from_data, lost_texts, marks_text, to_data
from checker.report.text import printed_lines, verdict_lines
from checker.sandbox.workers import start_worker
from tests.exercises.test_every_exercise import sources

PATH = "unit03_tuned_circuit/resonance.py"
FORMULA = """import numpy as np
import sympy

def resonance_condition(inductance, capacitance):
    return 1 / sympy.sqrt(inductance * capacitance)

def resonant_frequency(inductance, capacitance):
"""
RIGHT = FORMULA + "    return 1 / (2 * np.pi * np.sqrt(inductance * capacitance))\n"
LINE = 8
DIES = "[c for c in ().__class__.__base__.__subclasses__() if c.__name__ == '_wrap_close'][0].__init__.__globals__['_exit'](0)"


def body(text):
    return FORMULA + "".join(f"    {line}\n" for line in text.split("\n"))


# name → (source, kind of verdict, what the message must say, the student's line or None)
TROUBLES = {
    "slip": (
        body("return 1 / np.sqrt(inductance * capacitance)"),
        "wrong",
        ["100 µH", "100 pF", "10.00 MHz", "1.592 MHz", "2π times too large", "You may have returned the angular frequency"],
        None,
    ),
    "constant factor": (
        body("return 3 / (2 * np.pi * np.sqrt(inductance * capacitance))"),
        "wrong",
        ["3 times too large"],
        None,
    ),
    "opposite sign": (body("return -1 / (2 * np.pi * np.sqrt(inductance * capacitance))"), "wrong", ["opposite sign"], None),
    "wrong in a corner": (
        body(
            "f = 1 / (2 * np.pi * np.sqrt(inductance * capacitance))\n"
            "return np.where(np.asarray(capacitance) < 20e-12, 2 * f, f)"
        ),
        "wrong",
        ["10 pF"],
        None,
    ),
    "float32": (
        body("return np.float32(1 / (2 * np.pi * np.sqrt(inductance * capacitance)))"),
        "wrong",
        ["float32", "float64"],
        None,
    ),
    "syntax": ("def resonant_frequency(:\n    pass\n", "raised", ["does not read as Python"], 1),
    "two equals signs": ("if x = 1:\n    pass\n", "raised", ["Maybe you meant", "'='?"], 1),
    "error on loading": ("x = 1 / 0\n" + RIGHT, "raised", ["before any function of it was called", "ZeroDivisionError"], 1),
    "nested brackets": (RIGHT + f"x = {'-' * 100_000}1\n", "too big", ["nested too deeply"], None),
    "nested branches": (RIGHT + "if 0: 0\n" + "elif 0: 0\n" * 25_000, "too big", ["nested too deeply"], None),
    "breakpoint": (body("breakpoint()"), "refused", ["stops at breakpoint()", "Take it out"], LINE),
    "expression nested too deep": (
        body(
            "s = '(' * 80 + '1' + ')' * 80\nx = sympy.Symbol('x')\nfor _ in range(9999): x = sympy.Pow(2, x, evaluate=False)\nstr(x)"
        ),
        "raised",
        ["too deeply"],
        None,
    ),
    "null byte": ("x = 1\0\n", "raised", ["null bytes"], None),
    "indentation": ("def f():\nreturn 1\n", "raised", ["does not read as Python", "expected an indented block"], 2),
    "wrong name": (
        RIGHT.replace("resonant_frequency", "resonance_frequency"),
        "wrong",
        ["no function resonant_frequency", "It has resonance_frequency"],
        None,
    ),
    "no function": ("x = 1\n", "wrong", ["no function resonant_frequency", "Keep the name"], None),
    "too few arguments": (
        RIGHT.replace("resonant_frequency(inductance, capacitance)", "resonant_frequency(inductance)"),
        "wrong",
        ["takes (inductance)", "called with (inductance, capacitance)"],
        None,
    ),
    "half written": (body("raise NotImplementedError"), "unfinished", ["Still to be written: resonant_frequency."], None),
    "nothing returned": (body("1 / (2 * np.pi)"), "wrong", ["returned nothing (None)", "`return`?"], None),
    "wrong shape": (body("return np.array([1.0, 2.0])"), "wrong", ["array of shape (2,) where one number"], None),
    "one number for arrays": (
        body("return float(np.ravel(1 / (2 * np.pi * np.sqrt(inductance * capacitance)))[0])"),
        "wrong",
        ["returned one number where an array of shape (5,)", "right for single numbers"],
        None,
    ),
    "wrong formula": (
        RIGHT.replace("1 / sympy", "2 / sympy"),
        "wrong",
        ["inductance 100 µH", "which is 20.00 Mrad/s here", "an expression that is 10.00 Mrad/s here"],
        None,
    ),
    "formula right at one point": (
        RIGHT.replace("1 / sympy", "1e10 * capacitance / sympy"),
        "wrong",
        ["capacitance 100 pF", "another expression: it has this value here"],
        None,
    ),
    "formula without a value": (
        RIGHT.replace("1 / sympy", "sympy.I * sympy.oo / sympy"),
        "wrong",
        ["which has no value here"],
        None,
    ),
    "math for arrays": (
        body("import math\nreturn 1 / (2 * math.pi * math.sqrt(inductance * capacitance))"),
        "raised",
        ["TypeError", "numpy's", "right for single numbers"],
        LINE + 1,
    ),
    "if on an array": (
        body("if inductance < 0: return 0\nreturn 1 / (2 * np.pi * np.sqrt(inductance * capacitance))"),
        "raised",
        ["truth value of an array", "np.where"],
        LINE,
    ),
    "mean without an axis": (
        body("w = 1 / np.sqrt(np.ones(720) * inductance * capacitance)\nreturn np.mean(w) / (2 * np.pi)"),
        "raised",
        ["(720,)", "last axis", "axis=-1", "right for single numbers"],
        LINE,
    ),
    "input altered": (
        body("capacitance *= inductance\nreturn 1 / (2 * np.pi * np.sqrt(capacitance))"),
        "wrong",
        ["changes the array capacitance", "copy"],
        None,
    ),
    "one array for all answers": (
        body(
            "f = 1 / (2 * np.pi * np.sqrt(inductance * capacitance))\nif np.ndim(f) == 0: return f\n"
            "KEPT[: len(f)] = f\nreturn KEPT[: len(f)]"
        )
        + "KEPT = np.empty(9)\n",
        "wrong",
        ["hands back one and the same array", "Make a new one"],
        None,
    ),
    "nan": (body("return float('nan')"), "wrong", ["nan (not a number)", "0/0"], None),
    "infinity": (body("return np.inf"), "wrong", ["infinity", "divided by zero"], None),
    "complex": (
        body("return 1j / (2 * np.pi * np.sqrt(inductance * capacitance))"),
        "wrong",
        ["complex number", "real one"],
        None,
    ),
    "text": (body("return '5 MHz'"), "wrong", ["the text '5 MHz' where a number"], None),
    "truth": (body("return True"), "wrong", ["returned True where a number"], None),
    "list of text": (body("return ['a']"), "wrong", ["a list of 1 item where a number"], None),
    "generator": (body("return (x for x in [1])"), "wrong", ["a generator, where a number"], None),
    "function": (body("return lambda: 1"), "wrong", ["a function, where a number"], None),
    "dict": (body("return {'f': 1}"), "wrong", ["a dict, where a number"], None),
    "objects": (body("return np.array([None, 1], dtype=object)"), "wrong", ["array of Python objects"], None),
    "huge whole number": (body("return 10**400"), "too big", ["whole number of"], None),
    "huge array": (body("return np.zeros(10**9)"), "too big", ["more memory"], LINE),
    "huge view": (body("return np.broadcast_to(0.0, (10**9,))"), "too big", ["1,000,000,000 numbers"], None),
    "prints a lot": (body("while True: print('.' * 1000)"), "too big", ["prints more than 64 kB"], LINE),
    "input": (body("return input('f? ')"), "refused", ["keyboard with input()"], LINE),
    "sys.exit": (body("raise SystemExit(0)"), "ended early", ["ends Python", "Return a value"], LINE),
    "quit": (body("quit()"), "ended early", ["ends Python"], LINE),
    "infinite loop": (body("while True:\n    pass"), "too slow", ["Still running after 2 s"], None),
    "stubborn loop": (
        body("while True:\n    try:\n        while True: pass\n    except BaseException: pass"),
        "too slow",
        ["Still running after 2 s"],
        None,
    ),
    "loop met by a law alone": (
        body(
            "while np.ndim(capacitance) == 0 and capacitance > 2e-9:\n    pass\n"
            "return 1 / (2 * np.pi * np.sqrt(inductance * capacitance))"
        ),
        "too slow",
        ["Still running after 2 s", "over and over"],
        None,
    ),
    "deep recursion": (
        body("return resonant_frequency(inductance, capacitance)"),
        "raised",
        ["calls itself without end"],
        LINE,
    ),
    "division by zero": (body("return 1 / 0"), "raised", ["ZeroDivisionError: division by zero"], LINE),
    "name error": (body("return pi"), "raised", ["NameError", "spelt", "imported?"], LINE),
    "import scipy": ("import scipy\n" + RIGHT, "refused", ["imports scipy", "numpy, sympy"], 1),
    "import pandas": ("import pandas\n" + RIGHT, "refused", ["imports pandas", "This course uses"], 1),
    "import inside": (body("import numba\nreturn 1"), "refused", ["imports numba", "machine code"], LINE),
    "unknown earlier exercise": ("from exercises.unit09_none.nothing import x\n" + RIGHT, "raised", ["cannot be found"], 1),
    "hard exit": (body(DIES), "ended early", ["Python ended before"], None),
}


@pytest.fixture(scope="module")
def worker():
    with start_worker() as warm:
        yield warm


def test_right_answer_passes(worker):
    verdict = judge("resonance", {PATH: RIGHT}, worker, 1)
    assert (verdict.kind, verdict.earned, verdict.findings) == ("passed", 10, ())


@pytest.mark.parametrize("name", TROUBLES)
def test_each_trouble_has_its_own_sentence(name, worker):
    source, kind, fragments, line = TROUBLES[name]
    verdict = judge("resonance", {PATH: source}, worker, 1)
    lines = [line.text for line in verdict_lines(verdict)]
    text = re.sub(r"\s+", " ", "\n".join(lines))
    assert (verdict.kind, [f for f in fragments if f not in text]) == (kind, []), text
    assert max(map(len, lines)) <= 80
    if line:
        assert f"{PATH}, line {line}" in text
    assert "Traceback" not in text and "checker/" not in text
    assert judge("resonance", {PATH: RIGHT}, worker, 1).kind == "passed", "the next submission must not feel it"


def test_no_two_troubles_read_alike(worker):
    alike = {}
    for name in (
        "nan",
        "infinity",
        "complex",
        "text",
        "generator",
        "nothing returned",
        "sys.exit",
        "input",
        "import scipy",
        "syntax",
    ):
        verdict = judge("resonance", {PATH: TROUBLES[name][0]}, worker, 1)
        alike.setdefault(verdict.findings[0].says, []).append(name)
    assert [names for names in alike.values() if len(names) > 1] == []


def test_missing_file_is_not_attempted(worker):
    assert judge("resonance", {}, worker, 1).kind == "not attempted"


def test_what_could_not_be_measured_in_time_is_too_slow_and_not_wrong(worker, monkeypatch):
    plan = plan_for("receiver", 1)
    hasty = replace(plan, exercise=replace(plan.exercise, seconds=2.0))
    monkeypatch.setattr("checker.judging.judge.plan_for", lambda name, seed: hasty)
    files, capstone = sources("solutions"), "unit09_feedback_receivers/receiver.py"
    files[capstone] = re.sub(
        r"(def receiver.*)", r"\1\n    while len(emf) > 120:  # what is measured, not the cases\n        pass", files[capstone]
    )
    verdict = judge("receiver", files, worker, 1)
    assert [finding.kind for finding in verdict.findings] == [TOO_SLOW]
    assert all("could not be measured" in part.measured for part in verdict.parts if part.function == "receiver")


@pytest.mark.parametrize("instead", ["np.round(10 * ", "str(10 * "])
def test_a_law_that_another_function_breaks_blames_that_one(worker, instead):
    path = "unit08_two_stations/rejection.py"
    files = sources("solutions")
    files[path] = re.sub(r"return 10 \* (.*)$", rf"return {instead}\1)", files[path], count=1, flags=re.M)
    first, *others = judge("rejection", files, worker, 1).findings
    assert first.function == "circuit_rejection" and others
    for finding in others:
        assert finding.says.startswith("This cannot be judged until circuit_rejection is right: ")
        assert finding.inputs == () and finding.remark == ""


def test_a_fault_in_one_function_leaves_the_marks_of_the_other(worker):
    verdict = judge("resonance", {PATH: body("return 0.0")}, worker, 1)
    assert verdict.earned == 5


def test_what_rounding_leaves_of_nothing_is_not_shown_as_what_was_wanted(worker):
    source = (
        "import numpy as np\ndef tone(time, frequency, amplitude):\n    return amplitude * np.sin(360 * frequency * time)\n"
    )
    [finding] = judge("tone", {"unit00_bench/tone.py": source}, worker, PRACTICE_SEED).findings
    assert finding.slip.startswith("given the sine degrees") and abs(quantity(finding.wanted, "V")) > 1e-3


@pytest.mark.parametrize(
    ("wanted", "is_one"), [(-2.4e-15, True), (0.0, False), (0.5, False), ("up", False), ((1e-15, 1.0), False)]
)
def test_a_rounding_is_a_number_that_should_be_nothing(wanted, is_one):
    assert is_rounding(wanted, relative(1e-9, because="test", floor=1e-9)) == is_one


@pytest.mark.parametrize(
    ("printed", "says"), [("a", "It printed: a"), ("a\nb", "(and 1 more line)"), ("a\nb\nc", "(and 2 more lines)")]
)
def test_of_what_is_printed_the_first_line_is_shown_and_how_many_follow(printed, says):
    [line] = printed_lines(printed, 80)
    assert line.text.endswith(says)


def test_functions_that_stop_at_one_line_are_told_together():
    stops = [Finding(RAISED, name, f"{name} stopped.", line=("x.py", 7, "x")) for name in ("drive", "gain", "level")]
    verdict = Verdict(
        "unit05_valve/triode_current", RAISED, 10, tuple(Part(one.function, "numbers", 1, 0) for one in stops), tuple(stops)
    )
    text = "\n".join(line.text for line in verdict_lines(verdict))
    assert text.count("stopped") == 1 and "This line stops gain and level too." in text


def test_what_is_printed_is_shown_to_the_student(worker):
    verdict = judge(
        "resonance", {PATH: RIGHT.replace("    return 1 / (2", "    print('L =', inductance)\n    return 1 / (2")}, worker, 1
    )
    assert verdict.kind == "passed" and verdict.printed.startswith("L = 0.0001")
    assert any("It printed: L = 0.0001" in line.text for line in verdict_lines(verdict))


def test_earlier_exercises_may_be_used(worker):
    other = "unit03_tuned_circuit/quality_factor.py"
    files = {
        other: "def root(x):\n    return x ** 0.5\n",
        PATH: FORMULA.replace(
            "import sympy\n", "import sympy\nfrom exercises.unit03_tuned_circuit.quality_factor import root\n"
        )
        + "    return 1 / (2 * np.pi * root(inductance * capacitance))\n",
    }
    assert judge("resonance", files, worker, 1).kind == "passed"


@pytest.mark.parametrize(
    ("amount", "text"),
    [
        (Fraction(10), "10"),
        (Fraction(15, 2), "7.5"),
        (Fraction(20, 3), "6.7"),
        (Fraction(1, 20), "0.1"),
        (Fraction(1, 21), "0"),
        (Fraction(0), "0"),
    ],
)
def test_marks_round_once_halves_up(amount, text):
    assert marks_text(amount) == text


@given(st.lists(st.fractions(0, 5, max_denominator=99), min_size=1, max_size=6), st.integers(0, 4))
def test_what_is_printed_as_lost_and_earned_adds_up(lost, rest):
    earned = 40 - sum(lost) - rest  # whole marks in all, as an exercise has
    texts = lost_texts(earned, lost)
    assert sum(map(Fraction, texts)) + Fraction(marks_text(earned)) == 40 - rest
    assert all(abs(Fraction(text) - amount) < Fraction(1, 10) for text, amount in zip(texts, lost, strict=True))


def test_verdict_survives_json(worker):
    import json

    verdict = judge("resonance", {PATH: TROUBLES["math for arrays"][0]}, worker, 1)
    assert from_data(json.loads(json.dumps(to_data(verdict)))) == verdict


def test_marks_are_exact():
    parts = tuple(Part("f", what, Fraction(10, 3), Fraction(10, 3)) for what in "abc")
    assert Verdict("x", "passed", 10, parts).earned == 10


def test_what_one_function_answered_counts_though_the_next_ends_the_process(worker):
    verdict = judge("resonance", {PATH: RIGHT.replace("return 1 / sympy.sqrt(inductance * capacitance)", DIES)}, worker, 1)
    assert (verdict.kind, verdict.earned) == ("ended early", 5)


def test_of_a_line_no_more_is_shown_than_can_be_read(worker):
    verdict = judge("resonance", {PATH: body(f"raise KeyError  # {'x' * 1000}")}, worker, 1)
    assert verdict.findings[0].line == (PATH, LINE, "raise KeyError  # " + "x" * (LINE_SHOWN - len("raise KeyError  # ")) + "…")

"""The core: enough of it, some in every unit, short, leaning on nothing further, and to be passed without arrays or refusals."""

import ast
import functools
import inspect
from dataclasses import replace
from importlib import import_module

import numpy as np
import pytest

from checker.core import CORE, CORE_FIRST, FURTHER, core_functions, for_the_core
from checker.course import PATHS, UNITS, load_exercise, unit_of
from checker.judging.judge import judge
from checker.judging.plan import draw_plan
from checker.judging.verdict import NOT_JUDGED, PASSED, UNFINISHED, WRONG, Finding, Part, Verdict
from tests.exercises.answering import Answering
from tests.exercises.every_mutant import SEED

FEWEST, LONGEST = 25, 10  # of exercises; of lines


def references(path):
    """The reference functions that the core asks for, without what checks their ranges."""
    asked = core_functions(load_exercise(path))
    return {name: inspect.unwrap(getattr(import_module(f"solutions.{path.replace('/', '.')}"), name)) for name in asked}


def lines_of(function):
    [node] = ast.parse(inspect.getsource(function)).body
    body = node.body[1:] if ast.get_docstring(node) else node.body
    return body[-1].end_lineno - body[0].lineno + 1


def test_there_is_enough_of_it_in_the_order_of_the_course():
    assert len(CORE) == len(set(CORE)) >= FEWEST
    assert {unit_of(path) for path in CORE} == set(UNITS)
    after = CORE[len(CORE_FIRST) :]
    assert list(after) == sorted(after, key=PATHS.index)
    assert sorted(CORE + FURTHER) == sorted(PATHS)


@pytest.mark.parametrize("path", CORE)
def test_its_references_are_short_and_lean_on_nothing_further(path):
    asked = references(path)
    assert asked
    assert {name: lines_of(function) for name, function in asked.items() if lines_of(function) > LONGEST} == {}
    further = {f"solutions.{one.replace('/', '.')}" for one in FURTHER}
    taken_out = {question.name for question in load_exercise(path).questions if question.further}
    for function in asked.values():
        for name in function.__code__.co_names:
            used = function.__globals__.get(name)
            assert name not in taken_out, f"{function.__name__} calls {name}, which the core does not ask for"
            assert getattr(used, "__module__", "") not in further, f"{function.__name__} uses {name} of a further exercise"


def alone(function):
    """The function as somebody writes it who has no arrays yet."""

    @functools.wraps(function)
    def answer(*inputs):
        if any(isinstance(one, np.ndarray) for one in inputs):
            raise TypeError("only length-1 arrays can be converted to Python scalars")
        return function(*inputs)

    return answer


@pytest.mark.parametrize("path", CORE)
def test_it_is_passed_without_arrays_without_refusals_and_without_what_is_further(path, monkeypatch):
    exercise, asked = load_exercise(path), references(path)
    core = replace(exercise, questions=[question for question in exercise.questions if question.name in asked])
    monkeypatch.setattr("checker.judging.judge.plan_for", lambda name, seed: draw_plan(core, seed))
    answers = Answering({name: alone(function) for name, function in asked.items()})
    verdict = for_the_core(judge(path, {f"{path}.py": ""}, answers, SEED))
    assert (verdict.kind, verdict.earned, verdict.findings) == (PASSED, exercise.marks, ())


PARTS = (
    Part("resonant_frequency", "numbers", 3, 3),
    Part("resonant_frequency", "arrays", 1, 0),
    Part("resonance_condition", "numbers", 6, 0),
)
ARRAYS = Finding(WRONG, "resonant_frequency", "arrays")
FORMULA = Finding(WRONG, "resonance_condition", "formula")


def test_a_verdict_for_the_core_leaves_out_what_it_does_not_ask_and_shares_all_the_marks():
    path = "unit03_tuned_circuit/resonance"
    verdict = for_the_core(Verdict(path, WRONG, 10, PARTS, (ARRAYS, FORMULA)))
    assert (verdict.kind, verdict.earned, verdict.findings) == (PASSED, 10, ())
    wrong = Finding(WRONG, "resonant_frequency", "numbers")
    lost = (Part("resonant_frequency", "numbers", 3, 0), *PARTS[1:])
    verdict = for_the_core(Verdict(path, WRONG, 10, lost, (wrong, FORMULA)))
    assert (verdict.kind, verdict.earned, verdict.findings) == (WRONG, 0, (wrong,))


def test_a_verdict_that_has_nothing_of_the_core_stays_as_it_is():
    verdict = Verdict("unit03_tuned_circuit/resonance", NOT_JUDGED, 10, (), (Finding(NOT_JUDGED, "resonance"),))
    assert for_the_core(verdict) is verdict
    further = Verdict("unit01_signal/channel_plan", UNFINISHED, 10, PARTS)
    assert for_the_core(further) is further


def test_what_is_said_of_another_function_is_said_where_the_core_lacks_it():
    does_not_load = Finding(WRONG, "resonance_condition", "The file does not read as Python.")
    parts = tuple(Part(part.function, part.what, part.worth, 0) for part in PARTS)
    verdict = for_the_core(Verdict("unit03_tuned_circuit/resonance", WRONG, 10, parts, (does_not_load,)))
    assert (verdict.kind, verdict.findings) == (WRONG, (does_not_load,))

"""A child is sent no number that the reference worked out for what the same exercise asks."""

import contextlib
import math
import random
from unittest.mock import patch

import numpy as np
import pytest

from checker import Exercise, Question, exactly, invariant, number, relative, slip
from checker.checks.exercise import Measurement
from checker.judging.judge import judge
from checker.judging.plan import altered, call_key, draw_plan
from checker.judging.plans import plan_for
from checker.worker.wire import Expression, from_wire
from tests.exercises.answering import Answering
from tests.exercises.every_mutant import SEED

FIGURES = 12  # two numbers that agree so far are one
# What a person writes by hand is no secret, however a formula comes to it: numbers of up to four figures, and these three.
BY_HAND = 4
CONSTANTS = {math.pi, math.exp(-1), 10 * math.log10(2)}


def numbers(value):
    """Every number in a value: parts of complex ones, items of lists and arrays, values of expressions."""
    if isinstance(value, np.ndarray | np.generic):
        value = value.tolist()
    if isinstance(value, Expression):
        value = value.at
    if isinstance(value, list | tuple):
        for item in value:
            yield from numbers(item)
    elif isinstance(value, complex):
        yield from (value.real, value.imag)
    elif isinstance(value, int | float) and not isinstance(value, bool):
        yield float(value)


def telling(value):
    """The numbers in a value that no one would come to by chance, to `FIGURES` figures; their sign is nothing."""
    found = (abs(one) for one in numbers(value))
    return {
        f"{one:.{FIGURES}g}"
        for one in found
        if math.isfinite(one) and float(f"{one:.{BY_HAND}g}") != float(f"{one:.{FIGURES}g}")
    } - {f"{one:.{FIGURES}g}" for one in CONSTANTS}


class Wrong(Answering):
    """Answers everything wrongly, each call in a way of its own, and writes down what it was asked."""

    def __init__(self, functions):
        super().__init__(functions)
        self.asked = []

    def _once(self, call):
        self.asked.append(call)
        reply = super()._once(call)
        if "value" not in reply or "symbols" in call:
            return reply
        if isinstance(reply["value"], Expression):
            return reply
        return reply | {"value": altered(reply["value"], random.Random(call_key(call)))}


def given(call):
    return list(map(from_wire, call.get("arguments", ()))) + call.get("at", [])


def worked_out(call, functions):
    """The telling numbers of the reference's answer to a call, but for those that were handed to it."""
    if "symbols" in call:
        return set()  # they are among what is wanted
    with contextlib.suppress(Exception), np.errstate(all="ignore"):
        return telling(functions[call["function"]](*given(call))) - telling(given(call))
    return set()


def test_no_answer_is_among_the_questions(path):
    plan = plan_for(path, SEED)
    functions = {planned.question.name: planned.question.asks for planned in plan.questions}
    wrong = Wrong(functions)
    with patch("checker.judging.judge.simplest_failure", lambda *_: None):
        judge(path, {f"{path}.py": ""}, wrong, SEED)
    assert [call_key(call) for call in wrong.asked[: len(plan.calls)]] == list(map(call_key, plan.calls))
    answers = set().union(*(worked_out(call, functions) for call in wrong.asked))
    for planned in plan.questions:
        if planned.question.symbolic:
            answers |= set().union(*(telling(case.wanted) for case in planned.cases))
    sent = {one: call for call in wrong.asked for one in telling(given(call))}
    assert not {one: sent[one] for one in answers & set(sent)}


def there(x):
    """x³ + x"""
    return x**3 + x


def back(y):
    """The x of that y."""
    return np.cbrt(y)


def made(asks, law, **more):
    question = Question(
        asks,
        {"x": number(1, 1000)},
        relative(1e-9, "made up"),
        no_published="made up",
        holds=[invariant("made up", law)],
        **more,
    )
    other = Question(back, {"y": number(1, 1000)}, exactly("made up"), no_published="made up", slips=[slip("", lambda y: -y)])
    return Exercise("Made up", [question, other], hints=["", "", ""], path="unit00/made_up")


@pytest.mark.parametrize(
    "law",
    [
        lambda f, x: (f.back(f(x)), x),
        lambda f, x: (f(f(x)), x),
        lambda f, x: (f.back(-2.5 * f(x) + 7), x),
        lambda f, x: (f.back(float(round(f(x)))), x),
        lambda f, x: (f.back(f(2 * x) / f(x)), x),
        lambda f, x: (f.back(np.array([f(x), 1.0])), x),
        lambda f, x: (f.back(np.log(f(x) + f(x / 2))), x),
        lambda f, x: (f.back(float(f"{f(x):.3g}")), x),
        lambda f, x: (f.back(121.5 if f(x) > x**3 else 343.25), x),
    ],
    ids=["and back", "twice", "shifted", "rounded", "a ratio", "in an array", "a sum", "in few figures", "where it lies"],
)
def test_a_law_that_carries_an_answer_on_is_left_for_later(law):
    plain = draw_plan(made(there, lambda f, x: (f(x), f(2 * x))), SEED)
    plan = draw_plan(made(there, law), SEED)
    by_itself = {call_key(call) for call in plain.calls}
    more = [call for call in plan.calls if call_key(call) not in by_itself]
    assert all(call["function"] == "there" for call in more), "of the sister nothing more is asked"
    assert all(float(f"{one:.4g}") == one for call in more for one in numbers(given(call)))


def test_a_search_on_the_answers_is_left_for_later():
    def root(f, seed):
        low, high = 1.0, 1000.0
        while high - low > 1e-3:
            middle = (low + high) / 2
            low, high = (middle, high) if f(middle) < 54321.0 else (low, middle)
        return low, ""

    plan = draw_plan(made(there, lambda f, x: (f(x), x), measured=[Measurement("root", root, "made up")]), SEED)
    wanted = next(x for x in np.linspace(30, 45, 15_000_001) if there(x) >= 54321.0)
    asked = [one for call in plan.calls if call["function"] == "there" for one in numbers(given(call))]
    assert 500.5 in asked, "the first step is the same for all"
    assert not [x for x in asked if abs(x - wanted) < 0.01]


def test_calls_that_are_the_same_for_all_are_in_the_batch():
    plan = draw_plan(made(there, lambda f, x: (f(3 * x) / f(x), f.back(x / 7))), SEED)
    asked = {call_key(call) for call in plan.calls}
    for case in plan.questions[0].laws:
        for function, argument in (("there", 3 * case.inputs[0]), ("there", case.inputs[0]), ("back", case.inputs[0] / 7)):
            assert call_key({"function": function, "arguments": [argument]}) in asked

"""A table of all that a student pack holds earns nothing under another seed, wherever a seed can ask something else."""

import json

import pytest

from checker.course import PATHS, PRACTICE_SEED, load_exercise
from checker.judging.plans import plan_for
from checker.judging.sealed import seal_plan, unseal
from checker.worker.wire import Expression
from tests.checker.pack_table import earned_by_table, opened, other_seed

SLOW = {"receiver"}  # measured, not looked up; a table would answer for minutes


QUICKLY = {"metres", "resonance", "sideband_power", "triode_current", "edge", "rejection"}


@pytest.mark.parametrize(
    "path",
    [
        pytest.param(path, marks=() if path.rpartition("/")[2] in QUICKLY else pytest.mark.slow)
        for path in PATHS
        if path.rpartition("/")[2] not in SLOW
    ],
)
def test_a_table_of_the_pack_earns_nothing(path):
    same_for_all = {question.name for question in load_exercise(path).questions if question.same_for_all}
    found = earned_by_table(path, other_seed(path))
    assert not {name: earned for name, earned in found.items() if earned[0] and name not in same_for_all}


@pytest.mark.parametrize("path", [path for path in PATHS if path.rpartition("/")[2] not in SLOW])
def test_a_question_asks_something_else_under_another_seed_or_says_why_not(path):
    for planned in plan_for(path, other_seed(path)).questions:
        if not planned.question.symbolic:
            assert any(case.fresh for case in planned.cases) or planned.question.same_for_all, planned.question.name


def expressions(value):
    if isinstance(value, Expression):
        yield value
    elif isinstance(value, list | tuple):
        for item in value:
            yield from expressions(item)


@pytest.mark.parametrize(
    "path", [path for path in PATHS if any(question.symbolic for question in load_exercise(path).questions)]
)
def test_formulas_are_sealed_as_values_alone(path):
    plan = opened(path)
    sealed = [
        one
        for planned in plan.questions
        for value in (*(case.wanted for case in planned.cases), *(wrongs for _, wrongs in planned.slips))
        for one in expressions(value)
    ]
    assert sealed and all(one.text == "" and one.at for one in sealed)
    made = [
        one.text
        for planned in plan_for(path, PRACTICE_SEED).questions
        for case in planned.cases
        for one in expressions(case.wanted)
    ]
    held = json.dumps(unseal(seal_plan(plan), path))
    assert made and not [text for text in made if not text.isidentifier() and len(text) > 8 and json.dumps(text) in held]

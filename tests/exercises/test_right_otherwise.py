"""A right answer earns full marks however it is written; a spoiled one never does."""

import random

import numpy as np
import pytest

from checker.course import load_exercise
from checker.judging.judge import judge
from tests.exercises.answering import Answering
from tests.exercises.every_mutant import SEED, false_alarms, sources, survivors, written_otherwise
from tests.exercises.mutants import Mutant
from tests.exercises.rewritten import spoiled_ways, wanted_of

FEW_WAYS = 3


@pytest.mark.parametrize("most", [FEW_WAYS, pytest.param(None, marks=pytest.mark.slow)], ids=["a few ways", "every way"])
def test_a_right_answer_written_otherwise_earns_full_marks(path, worker, most):
    ways = written_otherwise(path)
    assert len(ways) >= 5
    if most:
        ways = random.Random(path).sample(ways, min(most, len(ways)))
    assert false_alarms(path, ways, worker, SEED) == {}


def test_a_spoiled_answer_does_not_pass(path, worker):
    asked = {q.name: wanted_of(q) for q in load_exercise(path).questions if not q.symbolic}
    ways = [Mutant("", what, spoiled) for what, spoiled in spoiled_ways(sources("solutions")[f"{path}.py"], asked)]
    assert [way.what for way in survivors(path, ways, worker, SEED)] == []


def odd(answer, share):
    """An answer wrong by a part of itself that is nobody's slip."""
    if isinstance(answer, (tuple, list)):
        return tuple(odd(part, share) for part in answer)
    return answer * (1 + share) if isinstance(answer, (float, complex, np.floating, np.ndarray)) else answer


def test_an_answer_wrong_in_no_usual_way_is_given_no_slips_name(path):
    exercise = load_exercise(path)
    right = {question.name: question.asks for question in exercise.questions}
    for question in exercise.questions:
        if question.symbolic:
            continue
        wrong = {
            question.name: lambda *given, asks=question.asks: odd(
                asks(*given), 0.1234 + 0.1 * random.Random(repr(given)).random()
            )
        }
        found = [
            f for f in judge(path, {f"{path}.py": ""}, Answering(right | wrong), SEED).findings if f.function == question.name
        ]
        assert [f.slip for f in found] in ([""], []), question.name

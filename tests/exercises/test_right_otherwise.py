"""A right answer earns full marks however it is written; a spoiled one never does."""
import random

import numpy as np

from checker.course import load_exercise
from checker.judge import judge
from checker.verdict import PASSED
from tests.exercises.answering import Answering
from tests.exercises.rewritten import other_ways, spoiled_ways
from tests.exercises.test_every_exercise import SEED, sources


def test_a_right_answer_written_otherwise_earns_full_marks(path, worker):
    files = sources("solutions")
    exercise = load_exercise(path)
    asked = {q.name: q.arrays and all(given.stacks for given in q.given.values()) for q in exercise.questions if not q.symbolic}
    ways = list(other_ways(files[f"{path}.py"], asked))
    assert len(ways) >= 6
    with worker.sitting():
        refused = {what: verdict.findings for what, source in ways
                   if (verdict := judge(path, files | {f"{path}.py": source}, worker, SEED)).earned < verdict.marks}
    assert refused == {}


def test_a_spoiled_answer_does_not_pass(path, worker):
    files = sources("solutions")
    exercise = load_exercise(path)
    asked = {q.name: q.arrays for q in exercise.questions if not q.symbolic}
    finest = min((q.tolerance.relative for q in exercise.questions if not (q.symbolic or q.tolerance.absolute)), default=1)
    ways = list(spoiled_ways(files[f"{path}.py"], asked, finest))
    with worker.sitting():
        passed = [what for what, source in ways if judge(path, files | {f"{path}.py": source}, worker, SEED).kind == PASSED]
    assert passed == []


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
        wrong = {question.name: lambda *given, asks=question.asks: odd(asks(*given), 0.1234 + 0.1 * random.Random(repr(given)).random())}
        found = [f for f in judge(path, {f"{path}.py": ""}, Answering(right | wrong), SEED).findings if f.function == question.name]
        assert [f.slip for f in found] in ([""], []), question.name

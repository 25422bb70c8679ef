"""Where the plan of an exercise comes from: drawn from its check, or in a student pack taken out of its sealed file."""

import threading
from functools import cache

from ..checks.exercise import Exercise, Question
from ..course import SEALED, find, load_exercise
from .plan import Plan, draw_plan
from .sealed import read_sealed_plan
from .stand_ins import Earlier, references_for

_DRAWING = threading.RLock()  # the thread that asks first draws a plan, and the others wait for it


def plan_for(name: str, seed: int) -> Plan:
    """The `Plan` of the exercise called `name` under a seed; in a student pack the sealed one, under the practice seed."""
    if SEALED:
        return read_sealed_plan(find(name))
    with _DRAWING:
        return cached_plan(find(name), seed)


def exercise_at(path: str) -> Exercise:
    """The exercise at a path, for which nothing is drawn; in a student pack as much of it as the sealed file holds."""
    return read_sealed_plan(path).exercise if SEALED else load_exercise(path)


@cache
def cached_plan(path: str, seed: int) -> Plan:
    """The plan of the exercise at a path, drawn once in this process."""
    return draw_plan(load_exercise(path), seed)


def with_reference(question: Question, path: str) -> Question | None:
    """A question of the exercise at a path with its reference and its ranges; None in a student pack, which has neither."""
    if SEALED or not question.sealed:
        return None if question.sealed else question
    return next(one for one in load_exercise(path).questions if one.name == question.name)


def earlier_of(plan: Plan) -> tuple[Earlier, ...]:
    """What stands in for the exercises that a plan's exercise builds on: references, or in a student pack what it has of them."""
    return references_for(plan.exercise.path) if plan.earlier is None else plan.earlier

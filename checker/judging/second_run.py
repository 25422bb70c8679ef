"""An exercise that failed as it was handed in is judged once more, with stand-ins for the earlier exercises that it builds on.

Whoever skipped an exercise, or has it wrong, still earns the marks of a later one that is right.
"""

import time
from collections.abc import Callable, Iterable, Mapping
from dataclasses import replace

from ..budgets import BUDGET, patience
from .answers import Answers
from .explanations import is_unwritten
from .fingerprint import files_used
from .plan import Plan
from .plans import earlier_of, plan_for
from .protocols import WorkerLike
from .stand_ins import Lender
from .verdict import (
    MISSING,
    NOT_ATTEMPTED,
    NOT_LOADING,
    SILENT,
    STUB,
    WRONG_VALUES,
    Lent,
    Verdict,
)

_LOADED = (None, "raised", "not written", "no function")  # what is wrong, if anything, where a file as such is not
Run = Callable[[Plan, Mapping[str, str], WorkerLike, Lender | None], Verdict]


def fairest_verdict(plan: Plan, files: Mapping[str, str], worker: WorkerLike, judge_once: Run) -> Verdict:
    """The verdict on an exercise as it was handed in, or the one reached with stand-ins where that does more justice.

    Parameters
    ----------
    plan : Plan
    files : mapping of str to str
        The member's exercises: path to source text.
    worker : Worker
    judge_once : function
        Judges the plan, as it was handed in or with a lender.
    """
    until = time.monotonic() + patience(plan.exercise.seconds) + BUDGET.asking + BUDGET.exchanges
    first = judge_once(plan, files, worker, None)
    if not _may_hang_on_others(plan, files, first):
        return first
    lender = Lender(earlier_of(plan))
    second = judge_once(plan, files, worker, lender)
    lent = [Lent(*name.rsplit(".", 1)) for name in lender.asked] or [Lent(one.path) for one in earlier_of(plan)]
    if second.earned < first.earned or not lender.asked and second.earned == first.earned:
        return first
    at_fault = tuple(_not_right(lent, plan.seed, files, worker, until))
    if not at_fault and second.earned == first.earned:
        return first
    return replace(second, lent=at_fault or tuple(lent))


def _may_hang_on_others(plan: Plan, files: Mapping[str, str], verdict: Verdict) -> bool:
    """Whether anything but a stub of its own has failed in a file that speaks of an earlier exercise."""
    if all(finding.kind == NOT_ATTEMPTED for finding in verdict.findings):
        return False
    names = {one.path.rpartition("/")[2] for one in earlier_of(plan)}
    return any(name in files[file] for file in files_used(f"{plan.exercise.path}.py", files) for name in names)


def _not_right(lent: Iterable[Lent], seed: int, files: Mapping[str, str], worker: WorkerLike, until: float) -> Iterable[Lent]:
    """Those of which the member's own are not right as they were handed in, with how they stand."""
    by_exercise: dict[str, list[Lent]] = {}
    for one in lent:
        by_exercise.setdefault(one.exercise, []).append(one)
    for path, of_one in by_exercise.items():
        if f"{path}.py" not in files:
            yield from (replace(one, own=MISSING) for one in of_one)
        elif time.monotonic() < until:
            stands = _how_they_stand(plan_for(path, seed), files, worker)
            yield from (replace(one, own=stands[one.function]) for one in of_one if one.function in stands)


def _how_they_stand(plan: Plan, files: Mapping[str, str], worker: WorkerLike) -> dict[str, str]:
    """How the functions of an exercise stand as they were handed in, those that are right left out; under "" the file by itself."""
    exercise = plan.exercise
    symbolic = any(question.symbolic for question in exercise.questions)
    with worker.session(exercise.path, files, exercise.seconds, symbolic) as session:
        answers = Answers(plan, session.ask(plan.calls), session)
    loads = any(answers.reply(place).get("trouble") in _LOADED for place in range(len(plan.calls)))
    stands = {} if loads else {"": NOT_LOADING}
    for planned in plan.questions:
        question, cases = planned.question, (*planned.cases, *planned.stacked)
        replies = [answers.reply(case.place) for case in cases]
        if any(reply.get("trouble") == "not written" and is_unwritten(question, reply, exercise) for reply in replies):
            stands[question.name] = STUB
        elif any("value" not in reply for reply in replies):
            stands[question.name] = SILENT
        elif any(
            answers.difference(question, case, case.wanted, question.agrees_within) for case in cases if not question.measured
        ):
            stands[question.name] = WRONG_VALUES
    return stands

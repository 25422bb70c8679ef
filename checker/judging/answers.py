"""A submission's answers to a plan, and what more is asked when one of them is wrong."""

import time
from typing import Any

import numpy as np

from ..budgets import BUDGET
from ..checks.exercise import Question, Tolerance
from . import explanations
from .compare import Difference, difference, is_rounding
from .forms import forms_wanted, in_form
from .inputs import steady, strategy
from .plan import Case, Plan, call_key, numeric_call, shown_inputs
from .protocols import Inputs, Reply, SessionLike
from .verdict import Finding

SEARCH_EXAMPLES = 150


class NoAnswer(Exception):
    """A law asked for a value that the function named did not give."""


class Answers:
    """A submission's answers by call: those of the batch, and any that are asked for later."""

    def __init__(self, plan: Plan, replies: list[Reply], session: SessionLike) -> None:
        self.plan, self._session = plan, session
        self._forms = forms_wanted(plan)
        self._replies = dict(enumerate(replies))
        self._asked = {place: call["function"] for place, call in enumerate(plan.calls)}

    def reply(self, place: int) -> Reply:
        return self._replies.get(place, {"trouble": "unanswered"})

    def value(self, reply: Reply) -> Any:
        """The value in a reply; raises `NoAnswer` if there is none."""
        if "value" not in reply:
            raise NoAnswer
        return reply["value"]

    def ask(self, function: str, inputs: Inputs) -> Reply:
        call = numeric_call(function, inputs)
        place = self.plan.places.get(call_key(call))
        if place is None:
            place = -1 - len(self._replies)
            self._replies[place] = (self._session.ask([call]) or [{"trouble": "unanswered"}])[0]
            self._asked[place] = function
        return self._replies.get(place, {"trouble": "unanswered"})

    def is_right(self, function: str) -> bool:
        """Whether all its numbers are; so is one of which none are asked."""
        return not any(
            self.difference(planned.question, case, case.wanted, planned.question.agrees_within)
            for planned in self.plan.questions
            if planned.question.name == function and not planned.question.measured
            for case in planned.cases
        )

    def difference(self, question: Question, case: Case, wanted: Any, tolerance: Tolerance) -> Difference | None:
        """The `Difference` between the answer to a case and a value; None if it will do."""
        try:
            return difference(self.value(self.reply(case.place)), wanted, tolerance, question.gives)
        except NoAnswer:
            return Difference(says="gave no answer")

    def first_stop(self) -> Finding | None:
        """The finding for the call after which all others were answered alike, time or memory being up; None if none was."""
        questions = {planned.question.name: planned.question for planned in self.plan.questions}
        return next(
            (
                explanations.trouble_finding(questions[self._asked[place]], None, reply, self.plan.exercise)
                for place, reply in self._replies.items()
                if explanations.ends_the_batch(reply)
            ),
            None,
        )

    def value_for_law(self, function: str, inputs: Inputs) -> Any:
        """The value as a law wants it: numbers and arrays of the form that the reference gives, or `NoAnswer`."""
        try:
            numbers = _as_law_value(in_form(self.value(self.ask(function, inputs)), function, inputs, self._forms))
        except NoAnswer:
            numbers = None
        if numbers is None:
            raise NoAnswer(function)
        return numbers


class _TimeIsUp(Exception):
    """The search has had its seconds."""


def _as_law_value(value: Any) -> Any:
    if isinstance(value, (list, tuple)):
        items = tuple(_as_law_value(item) for item in value)
        return None if any(item is None for item in items) else items
    if isinstance(value, np.ndarray):
        value.flags.writeable = False  # what a law did to it, the next would see
    if isinstance(value, (int, float, complex, str, np.ndarray)):
        return value
    return None


def simplest_failure(question: Question, answers: Answers) -> tuple[Case, Difference] | None:
    """(case, difference) for the simplest failing input that hypothesis finds, or None."""
    import hypothesis  # late: it takes longer than a verdict, and only a search wants it

    until, failing = time.monotonic() + BUDGET.search, []

    def fails(inputs: Inputs) -> bool:
        if time.monotonic() > until:
            raise _TimeIsUp
        reply, wanted = answers.ask(question.name, inputs), question.asks(*inputs)
        wrong = (
            "value" in reply
            and not is_rounding(wanted, question.agrees_within)
            and difference(answers.value(reply), wanted, question.agrees_within) is not None
        )
        failing[:] = [inputs] if wrong else failing
        return wrong

    try:
        inputs = hypothesis.find(
            strategy(question),
            fails,
            random=None,
            settings=steady(max_examples=SEARCH_EXAMPLES, suppress_health_check=list(hypothesis.HealthCheck)),
        )
    except _TimeIsUp:
        if not failing:
            return None
        [inputs] = failing  # simpler than what it began with, if not the simplest
    except (hypothesis.errors.HypothesisException, NoAnswer):
        return None
    wanted = question.asks(*inputs)
    apart = difference(answers.value(answers.ask(question.name, inputs)), wanted, question.agrees_within, question.gives)
    return (Case(inputs, -1, wanted, shown_inputs(question, inputs)), apart) if apart else None

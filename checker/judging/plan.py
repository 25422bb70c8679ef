"""The frozen batch: everything that will be asked of a submission, drawn once for an exercise and a seed.

Invariants are laws over calls of the student's function. They are run here with the reference standing in, which writes
down the calls they make, and again with other answers: the calls that are the same whatever is answered are in the batch.
Those that carry an answer on, as a law does that goes there and back, are left to the judge, who runs the laws again over
the student's own answers. So a submission gets one batch, the same for every member, and no number of the reference's
leaves this side.
"""

import cmath
import contextlib
import json
import random
from collections.abc import Callable, Iterable, Iterator, Sequence
from dataclasses import dataclass, replace
from functools import partial
from typing import Any

import numpy as np

from ..checks.exercise import Exercise, Invariant, Measurement, Published, Question, Refusal, Slip
from ..course import PRACTICE_SEED
from ..worker.wire import Expression, from_wire, to_wire
from .compare import difference
from .inputs import as_integers, asked_singly, draw, is_whole, stack, whole_inputs, whole_parts
from .protocols import Call, Inputs
from .stand_ins import Earlier

Answer = Callable[[str, Inputs], Any]
POINTS = 5  # a formula is judged by its values, and each costs a millisecond to work out
# A law is shown three wrong functions, to see which of its calls hang on what it is answered: the right answers times
# anything between these.
OTHER_ANSWERS = (2.0, 100.0), (0.01, 0.5), (-3.0, -0.3)
FIRSTS = 3  # so many different whole answers come first in a stack


@dataclass(frozen=True)
class Case:
    """One call: its inputs, its place in the batch, the value wanted, and the inputs as (name, text) pairs.

    A formula is called with symbols alone; the pairs are then those of the first point at which its value is worked out.
    `fresh` says that a student pack does not ask it.
    """

    inputs: tuple
    place: int
    wanted: object
    shown: tuple[tuple[str, str], ...]
    fresh: bool = True


@dataclass(frozen=True)
class LawCase:
    law: Invariant
    inputs: tuple
    shown: tuple[tuple[str, str], ...]


@dataclass(frozen=True)
class QuestionPlan:
    """What is asked of one function. The first `drawn` of the cases are drawn; the others lie at the ends of what it takes."""

    question: Question
    cases: tuple[Case, ...]
    drawn: int
    stacked: tuple[Case, ...]
    published: tuple[tuple[Published, Case], ...]
    laws: tuple[LawCase, ...]
    refusals: tuple[tuple[Refusal, Case], ...]
    slips: tuple[tuple[Slip, tuple], ...]


@dataclass(frozen=True)
class Plan:
    """All that is asked of an exercise. A sealed one has with it what stands in for `earlier` exercises."""

    exercise: Exercise
    seed: int
    calls: tuple[dict, ...]
    places: dict[str, int]
    questions: tuple[QuestionPlan, ...]
    earlier: tuple[Earlier, ...] | None = None


class Batch:
    """Collects calls, each once, in order."""

    def __init__(self) -> None:
        self.calls, self.places = [], {}

    def add(self, call: Call) -> int:
        key = call_key(call)
        if key not in self.places:
            self.places[key] = len(self.calls)
            self.calls.append(call)
        return self.places[key]


class LawFunction:
    """What a law calls `f`: the function asked for; its sisters in the same exercise are its attributes."""

    def __init__(self, name: str, answer: Callable[[str, tuple], object]) -> None:
        self._name, self._answer = name, answer

    def __call__(self, *inputs: Any) -> Any:
        return self._answer(self._name, inputs)

    def __getattr__(self, name: str) -> "LawFunction":
        if name.startswith("_"):
            raise AttributeError(name)
        return LawFunction(name, self._answer)


def numeric_call(name: str, inputs: Iterable) -> Call:
    return {"function": name, "arguments": [to_wire(value) for value in inputs]}


def symbolic_call(question: Question, points: Any) -> Call:
    return {"function": question.name, "symbols": list(question.given), "at": [[float(v) for v in point] for point in points]}


call_key = json.JSONEncoder(sort_keys=True).encode  # made once: making it takes longer than a call


def draw_plan(exercise: Exercise, seed: int) -> Plan:
    """The `Plan` of an exercise under a seed; the same for the same two, in every process."""
    batch = Batch()
    references = {question.name: question.asks for question in exercise.questions}
    values = {}

    def answer(function: str, inputs: Inputs) -> Any:
        key = call_key(numeric_call(function, inputs))
        if key not in values:
            values[key] = references[function](*inputs)
        return values[key]

    questions = tuple(_plan_question(question, seed, exercise.cases, batch, answer) for question in exercise.questions)
    return Plan(exercise, seed, tuple(batch.calls), batch.places, questions)


def _plan_question(question: Question, seed: int, count: int, batch: Batch, answer: Answer) -> QuestionPlan:
    drawn = draw(question, POINTS if question.symbolic else count, seed)
    if question.symbolic:
        cases: tuple[Case, ...] = (
            Case(
                (),
                batch.add(symbolic_call(question, drawn)),
                evaluate_formula(question.asks, question, drawn),
                shown_inputs(question, drawn[0]),
            ),
        )
        stacked: tuple[Case, ...] = ()
    else:
        whole = whole_inputs(question, drawn)
        practised = {repr(figure.given) for figure in question.published}
        if seed != PRACTICE_SEED:
            practised.update(repr(inputs) for inputs, _ in asked_singly(question, draw(question, count, PRACTICE_SEED)))
        cases = tuple(
            replace(_case(question, batch, inputs, question.asks(*plain)), fresh=repr(inputs) not in practised)
            for inputs, plain in asked_singly(question, drawn, whole)
        )
        stacked = tuple(_stacked_cases(question, batch, cases, drawn, whole)) if question.arrays else ()
    published = tuple((figure, _case(question, batch, figure.given, figure.wanted)) for figure in question.published)
    laws = tuple(
        case for law in question.holds for case in _law_cases(law, question, drawn[: max(3, count // 4)], batch, answer)
    )
    refusals = tuple(
        (one, _case(question, batch, one.given, None))
        for refusal in question.refuses
        for given in (refusal.given, *refusal.near)
        for one in _alone_and_in_an_array(question, Refusal(refusal.what, given), drawn[0])
    )
    for measured in question.measured:
        _add_foreseen_calls(batch, question, answer, partial(_measure, measured, seed))
    slips = tuple(
        (slip, wrongs) for slip in question.slips if (wrongs := _slip_values(slip, question, cases[: len(drawn)], drawn))
    )
    return QuestionPlan(question, cases, 1 if question.symbolic else len(drawn), stacked, published, laws, refusals, slips)


def _measure(measured: Measurement, seed: int, function: LawFunction) -> None:
    measured.of(function, seed)


def _try_law(law: Invariant, inputs: Inputs, function: LawFunction) -> None:
    law.law(function, *inputs)


def _law_cases(law: Invariant, question: Question, drawn: Sequence[Inputs], batch: Batch, answer: Answer) -> list[LawCase]:
    """A case for each of the inputs drawn; one without inputs if the law asks the same whatever they are."""
    asked = [_add_foreseen_calls(batch, question, answer, partial(_try_law, law, inputs)) for inputs in drawn]
    if len(drawn) > 1 and len(set(asked)) == 1:
        return [LawCase(law, drawn[0], ())]
    return [LawCase(law, inputs, shown_inputs(question, inputs)) for inputs in drawn]


def _add_foreseen_calls(batch: Batch, question: Question, answer: Answer, run: Callable[[LawFunction], Any]) -> tuple[str, ...]:
    """Put into the batch what a law asks whatever it is answered; the keys of all that it asks of the reference."""
    calls: list[tuple[str, Inputs, Any]] = []

    def note(function: str, inputs: Inputs) -> Any:
        calls.append((function, inputs, answer(function, inputs)))
        return calls[-1][2]

    run(LawFunction(question.name, note))
    others = [_keys_asked_of_another(question, calls, run, factors) for factors in OTHER_ANSWERS]
    keys = []
    for function, inputs, _ in calls:
        call = numeric_call(function, inputs)
        keys.append(call_key(call))
        if all(keys[-1] in asked for asked in others):
            batch.add(call)
    return tuple(keys)


def _keys_asked_of_another(
    question: Question,
    calls: Sequence[tuple[str, Inputs, Any]],
    run: Callable[[LawFunction], Any],
    factors: tuple[float, float],
) -> set[str]:
    """What a law asks of a function that answers otherwise, up to where it asks for something else or cannot go on."""
    answered: dict[str, Any] = {}
    turn = iter(calls)

    def answer_otherwise(function: str, inputs: Inputs) -> Any:
        key = call_key(numeric_call(function, inputs))
        same_turn, _, value = next(turn, ("", (), None))
        if key not in answered:
            if same_turn != function:
                raise LookupError(f"{function} is not what was asked in this place")
            answered[key] = altered(value, random.Random(key), factors)
        return answered[key]

    with np.errstate(all="ignore"), contextlib.suppress(Exception):  # what a law does with a wrong answer is its own affair
        run(LawFunction(question.name, answer_otherwise))
    return set(answered)


def altered(value: Any, rng: random.Random, factors: tuple[float, float] = OTHER_ANSWERS[0]) -> Any:
    """Another answer of the same kind: each number in it times something between the two factors, each by itself."""
    if isinstance(value, (tuple, list)):
        return type(value)(altered(item, rng, factors) for item in value)
    if isinstance(value, np.ndarray) and value.dtype.kind in "fc":
        each = np.random.default_rng(rng.getrandbits(64))
        turns = np.exp(1j * each.uniform(0.3, 1.5, value.shape)) if value.dtype.kind == "c" else 1.0
        return (np.where(value == 0, 1.0, value) * each.uniform(*factors, value.shape) * turns).astype(value.dtype)
    if isinstance(value, np.ndarray):
        return np.array([altered(item, rng, factors) for item in value.ravel().tolist()], value.dtype).reshape(value.shape)
    if isinstance(value, np.generic):
        return type(value)(altered(value.item(), rng, factors))
    if isinstance(value, bool):
        return not value
    if isinstance(value, str):
        return "".join(str((int(sign) + rng.randint(1, 9)) % 10) if sign in "0123456789" else sign for sign in value)
    if isinstance(value, int):
        return value + rng.randint(1, 9) * (1 if factors[0] > 1 else -1)
    turn = cmath.rect(1, rng.uniform(0.3, 1.5)) if isinstance(value, complex) else 1.0
    return (value or 1.0) * rng.uniform(*factors) * turn


def _alone_and_in_an_array(question: Question, refusal: Refusal, right: Inputs) -> Iterator[Refusal]:
    """The refusal by itself and, where arrays are taken, behind inputs that are right: any that is wrong is to be refused."""
    yield refusal
    stacked = [
        given.stacks and isinstance(wrong, (int, float))
        for given, wrong in zip(question.given.values(), refusal.given, strict=False)
    ]
    if question.arrays and any(stacked):
        both = tuple(
            np.array([one, other]) * 1.0 if stacks else other
            for stacks, one, other in zip(stacked, right, refusal.given, strict=False)
        )
        yield replace(refusal, what=f"{refusal.what}, even if others in the array are right", given=both)


def _slip_values(slip: Slip, question: Question, cases: Sequence[Case], drawn: Sequence[Inputs]) -> tuple:
    """What the slip gives for each case; nothing if it gives none, or the right values: then it cannot be told apart."""
    try:
        with np.errstate(all="ignore"):
            values = (
                (evaluate_formula(slip.wrong, question, drawn),)
                if question.symbolic
                else tuple(slip.wrong(*case.inputs) for case in cases)
            )
    except (ArithmeticError, ValueError):
        return ()
    right = all(
        difference(round_trip(value), case.wanted, question.agrees_within) is None
        for value, case in zip(values, cases, strict=True)
    )
    return () if right else tuple(map(round_trip, values))


def round_trip(value: Any) -> Any:
    """A value as it looks after crossing from the worker."""
    return from_wire(to_wire(value))


def _case(question: Question, batch: Batch, inputs: Inputs, wanted: Any) -> Case:
    return Case(inputs, batch.add(numeric_call(question.name, inputs)), wanted, shown_inputs(question, inputs))


def shown_inputs(question: Question, inputs: Inputs) -> tuple[tuple[str, str], ...]:
    """Inputs as (name, text) pairs; fewer than the function has arguments, if a figure leaves the last to their defaults."""
    return tuple((name, given.show(value)) for (name, given), value in zip(question.given.items(), inputs, strict=False))


def _stacked_cases(
    question: Question, batch: Batch, cases: Sequence[Case], drawn: Sequence[Inputs], whole: Sequence[Inputs]
) -> Iterator[Case]:
    """Several inputs at once, as arrays.

    Whole answers come first, zero before all: who takes the type of an array from its first answer cuts the others short.
    Last come whole inputs, as integers: who takes it from the inputs does so too.
    """
    firsts: dict[str, Inputs] = {}
    for case in sorted((case for case in cases if is_whole(case.wanted)), key=lambda case: 0 not in whole_parts(case.wanted)):
        firsts.setdefault(repr(case.wanted), case.inputs)
    for first in list(firsts.values())[:FIRSTS] or drawn[:1]:
        together = stack(question, [first, *(inputs for inputs in drawn if inputs != first)])
        yield _stacked(question, batch, together, question.asks(*together))
    if whole:
        together = stack(question, whole)
        yield _stacked(question, batch, tuple(map(as_integers, together)), question.asks(*together))


def _stacked(question: Question, batch: Batch, together: Inputs, wanted: Any) -> Case:
    place = batch.add(numeric_call(question.name, together) | {"again": True})
    return Case(together, place, wanted, shown_inputs(question, together))


def evaluate_formula(formula: Callable, question: Question, points: Any) -> Any:
    """A function of sympy symbols as the `Expression` it gives, with its values at the points."""
    import sympy  # late: it takes a second, and only a formula wants it

    symbols = [sympy.Symbol(name, positive=True) for name in question.given]

    def evaluate(result: Any) -> Any:
        if isinstance(result, (tuple, list, sympy.Tuple)):
            return tuple(evaluate(item) for item in result)
        result = sympy.sympify(result)
        return Expression(str(result), [complex(result.evalf(20, subs=dict(zip(symbols, p, strict=True)))) for p in points])

    return evaluate(formula(*symbols))

"""What there is to see of a function: its arguments in words, the points at which it is drawn, those at which it is judged."""

import contextlib
import inspect
import itertools
import random
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

import numpy as np

from ..checks.exercise import Exercise, Question
from ..checks.given import Given, shown
from ..checks.units import tidily
from ..course import PRACTICE_SEED
from ..judging.inputs import asked_singly, draw
from ..judging.plan import POINTS, evaluate_formula
from ..judging.protocols import Inputs
from ..worker.wire import Expression

USUAL, OF_ARRAYS, FEWEST, OF_A_FORMULA = 81, 33, 9, 21  # points: fewer where an answer takes long


DECADES = 50.0  # a greatest value so many times the least


@dataclass(frozen=True)
class Argument:
    """One argument: its name, its unit, its range in words, a value of the kind that it takes, and that value in words."""

    name: str
    unit: str
    text: str
    example: Any
    shown: str

    def show(self, value: Any) -> str:
        """A value as a person reads it."""
        return shown(value, self.unit, tidily)


@dataclass(frozen=True)
class View:
    """A function to be seen.

    `points` are the inputs at which it is drawn, along the argument at place `along` (−1: one answer, a list, by its places);
    `reference` the reference's answers there; `judged` the inputs at which it is judged. `none` says why it is not drawn.
    The last arguments beyond `needed` may be left out.
    """

    function: str
    gives: str | Sequence[str]
    symbolic: bool
    arguments: tuple[Argument, ...]
    needed: int
    along: int
    points: tuple[Inputs, ...]
    reference: tuple
    none: str
    judged: tuple[Inputs, ...]


def views_of(exercise: Exercise, most: int | None = None) -> tuple[View, ...]:
    """A view of each function that an exercise asks for; where it is said with at most so many points, and none that are judged."""
    return tuple(_view_of(question, exercise.cases, most) for question in exercise.questions)


def _view_of(question: Question, cases: int, most: int | None) -> View:
    plain = _plain_inputs(question)
    arguments = tuple(
        Argument(name, given.unit, given.text, value, given.show(value))
        for (name, given), value in zip(question.given.items(), plain, strict=True)
    )
    needed = sum(one.default is one.empty for one in inspect.signature(question.asks).parameters.values())
    judged = _judged_inputs(question, cases) if most is None else ()
    return View(
        question.name, question.gives, question.symbolic, arguments, needed, *_curve(question, plain, cases, most), judged
    )


def _judged_inputs(question: Question, cases: int) -> tuple[Inputs, ...]:
    drawn = draw(question, POINTS if question.symbolic else cases, PRACTICE_SEED)
    return drawn if question.symbolic else tuple(inputs for inputs, _ in asked_singly(question, drawn))


def _plain_inputs(question: Question) -> Inputs:
    """The plainest values of all the arguments that go together, or nearly."""
    pools, rng = [given.values for given in question.given.values()], random.Random(PRACTICE_SEED)
    plainest = tuple(pool[0] for pool in pools)
    tried = (tuple(pool[int(len(pool) * rng.random() ** 3)] for pool in pools) for _ in range(1000))
    return next(inputs for inputs in itertools.chain([plainest], tried) if question.where(*inputs))


def _curve(question: Question, simplest: Inputs, cases: int, most: int | None) -> tuple[int, tuple[Inputs, ...], tuple, str]:
    """(the argument along which it is drawn, the points, the reference's answers, why there are none)."""
    picture, names = question.picture, list(question.given)
    if picture.none or most == 0:
        return -1, (), (), picture.none
    at = tuple(picture.at.get(name, value) for name, value in zip(names, simplest, strict=True))
    first = None if question.symbolic else _answer(question, at)
    if isinstance(first, (list, np.ndarray)):
        return -1, (at,), (first,), ""
    if isinstance(first, str):
        return -1, (), (), f"{question.name} answers with a text, and no line runs through texts."
    runs = {name: ends for name, given in question.given.items() if (ends := _ends(given))}
    if not runs:
        return -1, (), (), f"{question.name} is given {_kinds(simplest)}, and no line runs along those."
    name = picture.along or next(iter(runs))
    along, ends = names.index(name), picture.between or runs[name]
    fewest = OF_ARRAYS if question.arrays else FEWEST
    count = picture.points or (OF_A_FORMULA if question.symbolic else max(fewest, USUAL * cases**2 // 24**2))
    count = count if most is None else min(most, count)
    points = tuple(
        inputs
        for value in _spread(ends, count, at[along], not picture.between and over_decades(*ends))
        if question.where(*(inputs := (*at[:along], value, *at[along + 1 :])))
    )
    if question.symbolic:
        return along, points, formula_values(evaluate_formula(question.asks, question, points), len(points)), ""
    return along, points, _answers(question, points, along), ""


def _answers(question: Question, points: Sequence[Inputs], along: int) -> tuple:
    """The reference's answers: in one go where it takes arrays, which is what takes it no time."""
    if question.arrays and points and not isinstance(points[0][along], complex):
        together = np.array([inputs[along] for inputs in points]) * 1.0
        with contextlib.suppress(ArithmeticError, ValueError), np.errstate(all="ignore"):
            answer = question.asks(*points[0][:along], together, *points[0][along + 1 :])
            parts = answer if isinstance(answer, tuple) else (answer,)
            columns = [np.broadcast_to(part, together.shape).tolist() for part in parts]
            return tuple(zip(*columns, strict=True)) if isinstance(answer, tuple) else tuple(columns[0])
    return tuple(_answer(question, inputs) for inputs in points)


def _ends(given: Given) -> tuple:
    """The least and the greatest number (of a complex one, the size) that an argument is given; () if it is no number."""
    kinds = {type(value) for value in given.values}
    if given.ends and kinds <= {int, float}:
        return given.ends[0], given.ends[-1]
    if kinds <= {int, float, complex}:
        sizes = sorted({abs(value) if complex in kinds else value for value in given.values})
        return (sizes[0], sizes[-1]) if len(sizes) > 3 else ()
    return ()


def _kinds(inputs: Inputs) -> str:
    """What kind of things are given, in words."""
    return "texts" if isinstance(inputs[0], str) else "lists"


def _spread(ends: Sequence[float], count: int, like: Any, decades: bool) -> list:
    """Numbers of the kind of `like` from end to end: whole ones, complex ones of its phase, or plain ones."""
    values = (np.geomspace if decades else np.linspace)(float(ends[0]), float(ends[-1]), count)
    if type(like) is int:
        return sorted({round(value) for value in values})
    plain = [float(f"{value:.12g}") for value in values]
    return [value * like / abs(like) for value in plain] if isinstance(like, complex) else plain


def over_decades(low: float, high: float) -> bool:
    """Whether a range is so wide that it is drawn by decades."""
    return low > 0 and high >= DECADES * low


def _answer(question: Question, inputs: Inputs) -> Any:
    """What the reference answers; None where it has no answer."""
    try:
        with np.errstate(all="ignore"):
            return question.asks(*inputs)
    except (ArithmeticError, ValueError):
        return None


def formula_values(answer: Any, count: int) -> tuple:
    """A formula's value at each of the points that it was worked out at; a tuple for each where there are several formulas."""
    if isinstance(answer, Expression):
        return tuple(value.real if isinstance(value, complex) and value.imag == 0 else value for value in answer.at)
    if isinstance(answer, (list, tuple)):
        return tuple(zip(*(formula_values(part, count) for part in answer), strict=True))
    return (None,) * count

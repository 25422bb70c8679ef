"""What a function is asked: inputs drawn from their ranges, those at the ends of these, and whole numbers, which tell who cuts.

All of it comes from the question and the seed alone.
"""

import itertools
import math
import random
from collections.abc import Iterator, Mapping, Sequence
from typing import Any

import numpy as np

from ..checks.exercise import Question
from ..checks.given import Given
from .protocols import Inputs

STACKED = 5
WHOLES = 2  # so many inputs are asked as integers
_SIMPLEST: dict[int, tuple[Question, Inputs]] = {}  # by the question's identity: the question, kept, and its simplest inputs
WHOLE_UP_TO = 10_000_000  # an input beyond it is asked as a float: products of such integers pass the longest that numpy has


def steady(**more: Any) -> Any:
    """Hypothesis's settings for the same search every time, with more of them.

    The phases leave out the one that traces every line run, to explain a failure to a programmer.
    """
    import hypothesis  # late: it takes longer than a verdict, and only a search wants it

    phases = hypothesis.Phase.generate, hypothesis.Phase.shrink
    return hypothesis.settings(database=None, derandomize=True, deadline=None, phases=phases, **more)


def strategy(question: Question) -> Any:
    """The hypothesis strategy of all of a question's inputs together, within `where`."""
    from hypothesis import strategies as st  # late: as above

    return st.tuples(*(st.sampled_from(given.values) for given in question.given.values())).filter(
        lambda inputs: question.where(*inputs)
    )


def draw(question: Question, count: int, seed: int) -> tuple[Inputs, ...]:
    """`count` different inputs for a question under a seed: the simplest, the ends of the ranges, at least one at random."""
    pools = [given.values for given in question.given.values()]
    count = min(count, math.prod(map(len, pools)))
    ends = [given.ends or pool[:1] for given, pool in zip(question.given.values(), pools, strict=True)]
    rng = random.Random(seed)
    found = {}
    same_for_all = [_simplest_inputs(question, pools), tuple(end[0] for end in ends), tuple(end[-1] for end in ends)]
    for inputs in itertools.chain(
        same_for_all[: count - 1],
        (tuple(map(rng.choice, pools)) for _ in range(50 * count)),
    ):
        if question.where(*inputs):
            found.setdefault(repr(inputs), inputs)
        if len(found) == count:
            break
    return tuple(found.values())


def _simplest_inputs(question: Question, pools: Sequence[Sequence]) -> Inputs:
    first = tuple(pool[0] for pool in pools)
    if question.where(*first):
        return first
    if id(question) not in _SIMPLEST:  # the search takes a second, and does not hang on the seed
        import hypothesis  # late: as above

        _SIMPLEST[id(question)] = question, hypothesis.find(strategy(question), lambda inputs: True, settings=steady())
    return _SIMPLEST[id(question)][1]


def asked_singly(
    question: Question, drawn: Sequence[Inputs], whole: Sequence[Inputs] | None = None
) -> Iterator[tuple[Inputs, Inputs]]:
    """What is asked one by one: those drawn, those at the edges, and one of whole numbers; each with what the reference gets."""
    for inputs in (*drawn, *edge_inputs(question, drawn)):
        yield inputs, inputs
    for inputs in (whole_inputs(question, drawn) if whole is None else whole)[:1]:
        yield tuple(map(as_integer, inputs)), inputs


def edge_inputs(question: Question, drawn: Sequence[Inputs]) -> list[Inputs]:
    """Inputs at each of a question's edges, made from the last of those drawn: these differ from seed to seed.

    The edges are those that the question names, and every end that belongs to a range in the reference's docstring, but for
    those that are asked already.
    """
    rows = itertools.cycle(reversed(drawn))
    found = [edge(*inputs) for edge, inputs in zip(question.edges, rows, strict=False)]
    for limit, inputs in zip(getattr(question.asks, "limits", ()), rows, strict=False):
        given = dict(zip(question.given, inputs, strict=True))
        inside = isinstance(given.get(limit.name), (int, float)) and (not limit.other or limit.other in given)
        if not inside or limit.relation not in (">=", "<="):
            continue
        place = list(given).index(limit.name)
        asked = any(row[place] == _end(limit, dict(zip(given, row, strict=True))) for row in (*drawn, *found))
        at_end = tuple((given | {limit.name: _end(limit, given)}).values())
        if not asked and _has_answer(question, at_end):
            found.append(at_end)
    return found


def _end(limit: Any, given: Mapping[str, Any]) -> Any:
    """Where a range ends for one set of inputs; a whole number where one is given."""
    end = limit.factor * (given[limit.other] if limit.other else 1.0)
    return int(end) if type(given[limit.name]) is int and float(end).is_integer() else end


def _has_answer(question: Question, inputs: Inputs) -> bool:
    """Whether the reference has an answer for inputs, and a finite one."""
    try:
        with np.errstate(all="ignore"):
            answer = question.asks(*inputs)
    except (ArithmeticError, ValueError):
        return False
    return all(
        np.all(np.isfinite(part)) for part in (answer if isinstance(answer, tuple) else (answer,)) if not isinstance(part, str)
    )


def whole_inputs(question: Question, drawn: Sequence[Inputs]) -> list[Inputs]:
    """A few of the inputs drawn with whole values for all that can have them; none if nothing can.

    The first has an answer that is not whole, if one has: an answer of the type of its input would be cut short.
    """
    found: list[Inputs] = []
    for inputs in reversed(drawn):
        rounded = tuple(_rounded(given, value) for given, value in zip(question.given.values(), inputs, strict=True))
        if len(found) == WHOLES:
            break
        if not any(type(as_integer(value)) is int for value in rounded):
            continue
        if question.where(*rounded) and (found or not is_whole(question.asks(*rounded))):
            found.append(rounded)
    return found


def _rounded(given: Given, value: Any) -> Any:
    """The whole number next to a value, if it is within the range and not too large."""
    if not given.stacks or type(value) is not float or not given.ends or abs(value) > WHOLE_UP_TO:
        return value
    whole = float(round(value))
    return whole if given.ends[0] <= whole <= given.ends[-1] else value


def as_integer(value: Any) -> Any:
    return int(value) if type(value) is float and value.is_integer() and abs(value) <= WHOLE_UP_TO else value


def is_whole(answer: Any) -> bool:
    """Whether an answer, or a part of it, is a whole number: one that may have been written without a point."""
    return bool(whole_parts(answer))


def whole_parts(answer: Any) -> list:
    parts = answer if isinstance(answer, tuple) else (answer,)
    return [part for part in parts if isinstance(part, (int, float, np.integer, np.floating)) and float(part).is_integer()]


def stack(question: Question, rows: Sequence[Inputs]) -> Inputs:
    """Inputs as arrays, a few rows at once; what does not stack keeps the first row's value, and the others must go with it."""
    stacks = [given.stacks for given in question.given.values()]
    rows = [tuple(value if one else first for one, value, first in zip(stacks, row, rows[0], strict=True)) for row in rows]
    rows = [rows[0], *filter(lambda row: question.where(*row), rows[1:])][:STACKED]
    return tuple(
        np.array(column) * 1.0 if one else column[0] for one, column in zip(stacks, zip(*rows, strict=True), strict=True)
    )


def as_integers(value: Any) -> Any:
    """An array of whole numbers as integers."""
    if (
        isinstance(value, np.ndarray)
        and value.dtype.kind == "f"
        and np.all(value % 1 == 0)
        and np.all(abs(value) <= WHOLE_UP_TO)
    ):
        return value.astype(int)
    return value

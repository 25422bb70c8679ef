"""Instances of a question for a reader with a pocket calculator: what is given, the numbers wanted, and what each slip would give.

Everything comes from the check by which the exercise is marked: its strategies, its reference, its slips, its tolerance.
"""

import inspect
import itertools
import math
import random
import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Any

import numpy as np

from checker.checks.exercise import Exercise, Question, Slip, Tolerance, absolute, exactly, relative
from checker.checks.given import Given, complex_in_words
from checker.checks.units import in_full, tidily
from checker.text import ended

INSTANCES = 3
CANDIDATES = 8  # so many are looked at, to find those in which a slip can be told from what is right
DRAWS = 2000  # so many times inputs are drawn in search of candidates
FIGURES = 3, 4, 5
MARGIN = 1.3  # a slip lies so many times further from what is right than is allowed: its last figure may have been rounded
WORDS = {3: "Three", 4: "Four", 5: "Five"}
# Half of the last decimal, at three figures, of what is counted from a zero of its own: a ratio of such numbers says nothing.
HALF_A_DECIMAL = {"dB": 0.05, "°": 0.05, "h": 0.05, "days": 0.005}


@dataclass(frozen=True)
class Part:
    """One number asked for, as text in its unit; of each slip the number that it gives, "" where that passes for the right one."""

    name: str
    unit: str
    wanted: str
    slips: tuple[str, ...]


@dataclass(frozen=True)
class Instance:
    """What is given, as (name, text) pairs, and the parts of the answer."""

    given: tuple[tuple[str, str], ...]
    parts: tuple[Part, ...]


@dataclass(frozen=True)
class Asked:
    """A question to be answered in numbers, by its name.

    Right is |got - wanted| <= relative |wanted| + absolute; `because` says so. The slips are whole sentences.
    """

    name: str
    because: str
    relative: float
    absolute: float
    slips: tuple[str, ...]
    instances: tuple[Instance, ...]


@dataclass(frozen=True)
class Candidate:
    """Inputs, with the numbers wanted and those of each slip; None for a slip that gives none."""

    inputs: tuple
    wanted: tuple[float, ...]
    slips: tuple[tuple[float, ...] | None, ...]


def asked_in_numbers(exercise: Exercise) -> list[Asked]:
    """The questions of an exercise whose inputs and answers are numbers, each with its instances; the same at every build."""
    return [asked for question in exercise.questions if (asked := asked_in(question, exercise.path))]


def asked_in(question: Question, path: str) -> Asked | None:
    """A question with its instances.

    None if it gives a formula, an array, a waveform or a word, or is not judged by its numbers.
    """
    if question.symbolic or question.measured:
        return None
    candidates = list(itertools.islice(candidates_of(question, random.Random(f"{path} {question.name}")), CANDIDATES))
    if len(candidates) < INSTANCES:
        return None
    units = units_of(question, candidates[0])
    rounding, chosen = chosen_from(candidates, question, units)
    instances = [instance_of(question, candidate, units, rounding) for candidate in chosen]
    return Asked(
        question.name,
        rounding.because,
        rounding.relative,
        rounding.absolute,
        tuple(ended(f"You may have {slip.says}") for slip in question.slips),
        tuple(instances),
    )


def candidates_of(question: Question, rng: random.Random) -> Iterator[Candidate]:
    """Different inputs from the plainest of a question's strategies, whose answer is a few numbers other than zero."""
    pools = [given.values[: max(len(given.values) // 10, 12)] for given in question.given.values()]
    seen = set()
    for _ in range(DRAWS):
        drawn = [rounded(rng.choice(pool), given) for pool, given in zip(pools, question.given.values(), strict=True)]
        inputs = tuple(drawn)
        if None in drawn or repr(inputs) in seen:
            continue
        seen.add(repr(inputs))
        if not question.where(*inputs):
            continue
        with np.errstate(all="ignore"):
            wanted = numbers_in(question.asks(*inputs))
            if wanted is None:
                return
            if all(map(is_readable, wanted)):
                yield Candidate(inputs, wanted, tuple(slip_numbers(slip, inputs, len(wanted)) for slip in question.slips))


def rounded(value: Any, given: Given) -> Any:
    """An input to the four figures in which it is shown; None if it is not one number, one word or a few numbers, or leaves its range."""
    if isinstance(value, complex):
        return complex(float(f"{value.real:.4g}"), float(f"{value.imag:.4g}"))
    if isinstance(value, (str, int)):
        return value
    if isinstance(value, tuple):
        return value if all(isinstance(part, (int, float)) for part in value) else None
    if not isinstance(value, float):
        return None
    value = float(f"{value:.4g}")
    return value if not given.ends or given.ends[0] <= value <= given.ends[-1] else None


def numbers_in(answer: Any) -> tuple[float, ...] | None:
    """The numbers of an answer: of a tuple all of its parts', of a complex number two; None if it has something else in it."""
    if isinstance(answer, (tuple, list)):
        parts = [numbers_in(part) for part in answer]
        return None if None in parts else tuple(number for part in parts if part for number in part)
    if isinstance(answer, np.generic) or (isinstance(answer, np.ndarray) and answer.ndim == 0):
        answer = answer.item()
    if isinstance(answer, complex):
        return answer.real, answer.imag
    return (float(answer),) if isinstance(answer, (int, float)) and not isinstance(answer, bool) else None


def is_readable(number: float) -> bool:
    """Whether a number can be written with a prefix."""
    return math.isfinite(number) and 1e-15 <= abs(number) < 1e15


def slip_numbers(slip: Slip, inputs: tuple, count: int) -> tuple[float, ...] | None:
    """What a slip gives, if it is as many numbers as are wanted."""
    try:
        answer = slip.wrong(*inputs)
    except (ArithmeticError, ValueError):
        return None
    numbers = numbers_in(answer.tolist() if isinstance(answer, np.ndarray) else answer)
    return numbers if numbers and len(numbers) == count else None


def units_of(question: Question, candidate: Candidate) -> tuple[str, ...]:
    """The unit of each number of the answer."""
    if not isinstance(question.gives, str) and len(question.gives) == len(candidate.wanted):
        return tuple(question.gives)
    unit = question.gives if isinstance(question.gives, str) else question.gives[0]
    return (unit,) * len(candidate.wanted)


def chosen_from(
    candidates: Sequence[Candidate], question: Question, units: Sequence[str]
) -> tuple[Tolerance, Sequence[Candidate]]:
    """The widest rounding under which three candidates tell as many slips apart as any rounding would, and those three."""
    roundings = list(roundings_for(question.agrees_within, units))
    told = [[told_apart(candidate, rounding, units) for candidate in candidates] for rounding in roundings]
    enough = sorted(told[-1])[-INSTANCES]
    for rounding, counts in zip(roundings, told, strict=True):
        fit = [candidate for candidate, count in zip(candidates, counts, strict=True) if count >= enough]
        if len(fit) >= INSTANCES:
            return rounding, fit[:INSTANCES]
    raise AssertionError("the finest rounding tells apart what it tells apart")


def roundings_for(tolerance: Tolerance, units: Sequence[str]) -> Iterator[Tolerance]:
    """How near an answer has to come, from wide to narrow, never nearer than to the check's own tolerance."""
    if not tolerance.relative and not tolerance.absolute:
        yield exactly("Give all its figures: it is one of a few values")
        return
    decimal = HALF_A_DECIMAL.get(units[0]) if len(set(units)) == 1 else None
    for figures in FIGURES:
        finer = 10 ** (figures - FIGURES[0])
        if decimal:
            amount = max(decimal / finer, tolerance.absolute)
            yield absolute(amount, f"Within {tidily(float(amount), units[0])} is right")
        else:
            share = max(0.005 / finer, tolerance.relative)
            words = f"{WORDS[figures]} figures will do: within {100 * share:.2g} % is right"
            yield relative(share, words, floor=tolerance.absolute)


def told_apart(candidate: Candidate, rounding: Tolerance, units: Sequence[str]) -> int:
    """How many slips are told from what is right; a part that passes for another one counts against it."""
    slips = sum(
        any(apart(number, wanted, rounding) for number, wanted in zip(numbers, candidate.wanted, strict=True))
        for numbers in candidate.slips
        if numbers
    )
    parts = zip(candidate.wanted, units, strict=True)
    return slips - sum(
        its_unit == unit and not apart(one, other, rounding)
        for (one, its_unit), (other, unit) in itertools.combinations(parts, 2)
    )


def apart(number: float, wanted: float, rounding: Tolerance) -> bool:
    """Whether a number does not pass for the one wanted, nor would if its last figure were rounded."""
    return math.isfinite(number) and abs(number - wanted) > MARGIN * (rounding.relative * abs(wanted) + rounding.absolute)


def instance_of(question: Question, candidate: Candidate, units: Sequence[str], rounding: Tolerance) -> Instance:
    """A candidate in words."""
    given = tuple(
        (in_plain_words(name), shown_input(value, its))
        for (name, its), value in zip(question.given.items(), candidate.inputs, strict=True)
    )
    parts = tuple(
        Part(
            name,
            unit,
            written(wanted, unit, rounding),
            tuple(
                written(numbers[place], unit, rounding) if numbers and apart(numbers[place], wanted, rounding) else ""
                for numbers in candidate.slips
            ),
        )
        for place, (name, unit, wanted) in enumerate(zip(part_names(question, candidate), units, candidate.wanted, strict=True))
    )
    return Instance(given, parts)


def shown_input(value: Any, given: Given) -> str:
    """An input as it is read: a word without quotation marks, a year without a comma."""
    if isinstance(value, bool):
        return "yes" if value else "no"
    if isinstance(value, str):
        return value
    if isinstance(value, complex):
        return complex_in_words(value, given.unit) if given.unit else given.show(value)
    return str(value) if isinstance(value, int) and abs(value) < 10_000 and not given.unit else given.show(value)


def written(number: float, unit: str, rounding: Tolerance) -> str:
    """A number as text, with a figure more than the rounding looks at."""
    if not rounding.relative and not rounding.absolute:
        return tidily(number, unit, figures=12)
    if rounding.relative:
        return in_full(number, unit, figures=2 - math.floor(math.log10(2 * rounding.relative)))
    decimals = 1 - math.floor(math.log10(rounding.absolute))
    return f"{number:.{decimals}f} {unit}"


def part_names(question: Question, candidate: Candidate) -> Sequence[str]:
    """What each number of the answer is called: by the function's name, or for several by what its docstring says it returns."""
    count = len(candidate.wanted)
    if count == 1:
        return [in_plain_words(question.name)]
    returns = re.search(r"^Returns\n-+\n(.*?)(?:\n\n|\Z)", inspect.getdoc(question.asks) or "", re.S | re.M)
    lines = re.findall(r"^([\w, ]+) : ", returns[1] if returns else "", re.M)
    names = [in_plain_words(name.strip()) for line in lines for name in line.split(",")]
    if len(names) == count:
        return names
    if isinstance(question.asks(*candidate.inputs), complex):
        return ["real part", "imaginary part"]
    return [f"value {place} of {count}" for place in range(1, count + 1)]


def in_plain_words(name: str) -> str:
    """A name of the code's as words."""
    return name.replace("_", " ")

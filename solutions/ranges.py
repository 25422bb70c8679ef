"""Functions held to the ranges that their docstrings state.

The line of a parameter reads "name : kind, unit, range, what it is". A range is one of these, between two commas or semicolons:

    > 0    >= 0    at least 1    at most 1    below 1    0 to 1    above 0 to 1    0 to below 1    not 0    real part > 0

and a bound may be another parameter: > `start`, 0 to `gap`, > 4 `capacitance_high`. "As in `other`" takes the ranges over.
"""

import operator
import re
from collections.abc import Callable, Iterable, Iterator, Mapping
from functools import partial, wraps
from typing import NamedTuple

import numpy as np

BREAKS = {  # a relation: what breaks it, and how it is said
    ">": (operator.le, "above"),
    ">=": (operator.lt, "at least"),
    "<": (operator.ge, "below"),
    "<=": (operator.gt, "at most"),
    "not": (operator.eq, "other than"),
}
SIGNS = {"above": ">", "at least": ">=", "below": "<", "at most": "<=", "not": "not", "": ""}
BOUND = r"([−-]?[\d.]+|[−-]|π|zero)?(?: ?(?:times )?`(\w+)`)?(?: \([^)]*\))?"
ONE_END = re.compile(rf"(real part )?(>=|>|<=|<|at least|at most|above|below|not) {BOUND}")
TWO_ENDS = re.compile(rf"(?:from )?(above )?{BOUND} to (below )?{BOUND}")


class Limit(NamedTuple):
    """One end of a parameter's range: `factor`, times the parameter called `other` if there is one."""

    name: str
    of: Callable
    relation: str
    factor: float
    other: str
    why: str


def number(text: str) -> float:
    """A bound's number as it is written: "−1", "π", or nothing before another parameter's name."""
    words = {None: 1.0, "−": -1.0, "-": -1.0, "π": np.pi, "zero": 0.0}
    return words[text] if text in words else float(text.replace("−", "-"))


def ends(range_: str) -> list[tuple[Callable, str, float, str]]:
    """The ends of one range as a docstring writes it; none if it is no range."""
    if found := ONE_END.fullmatch(range_):
        part, sign, factor, other = found.groups()
        if factor or other:
            return [(np.real if part else np.asarray, SIGNS.get(sign, sign), number(factor), other)]
    if found := TWO_ENDS.fullmatch(range_):
        above, low, low_other, below, high, high_other = found.groups()
        if (low or low_other) and (high or high_other):
            # "0.001 to 1 times `x`": the parameter belongs to both ends
            low_other = low_other or (high_other if "times" in range_ else None)
            return [
                (np.asarray, ">" if above else ">=", number(low), low_other),
                (np.asarray, "<" if below else "<=", number(high), high_other),
            ]
    return []


def limits(function: Callable, reasons: dict[str, str]) -> Iterator[Limit]:
    """All ends of the ranges that a function's docstring states; those of a tuple's members are theirs, not its."""
    _, _, text = (function.__doc__ or "").partition("Parameters\n    ----------\n")
    text = re.split(r"\n\n    \w+\n    --", text)[0]
    for entry in re.split(r"\n(?=    \S)", text):
        names, _, words = entry.strip().partition(" : ")
        taken_over = re.search(r"[Aa]s (?:in|for) `(\w+)`", entry)
        if taken_over:
            names = names.partition("\n")[0]
            other = function.__globals__.get(taken_over[1])
            yield from (limit for limit in getattr(other, "limits", ()) if limit.name in names.split(", "))
        for name in names.split(", ") if not words.startswith("tuple") else ():
            for range_ in re.split(r"[,;:\n]", words):
                yield from (Limit(name, *end, reasons.get(name, "")) for end in ends(range_.strip()))


def check_ranges(function: Callable | None = None, /, **reasons: str) -> Callable:
    """Have a function refuse, with ValueError and one sentence, whatever is outside the ranges that its docstring states.

    Parameters
    ----------
    function : function, with a docstring in numpydoc's form
    reasons : str, for any of its parameters: why the range ends there, or what to do; the end of the sentence
    """
    if function is None:
        return partial(check_ranges, **reasons)
    code = function.__code__
    names = code.co_varnames[: code.co_argcount]
    held = tuple(dict.fromkeys(limits(function, reasons)))

    plain = [
        (names.index(limit.name), BREAKS[limit.relation][0], limit.factor, names.index(limit.other) if limit.other else None)
        for limit in held
        if limit.name in names and (not limit.other or limit.other in names)
    ]

    @wraps(function)
    def checked(*arguments, **named):
        if named or len(arguments) < len(names) or not are_plainly_within(plain, arguments):
            refuse_outside(function.__name__, held, dict(zip(names, arguments, strict=False), **named))
        return function(*arguments, **named)

    checked.limits = held
    return checked


def are_plainly_within(plain: Iterable[tuple], arguments: tuple) -> bool:
    """Whether all that ranges are stated for are single numbers within them: a look that costs little, where loops ask often."""
    for place, breaks, factor, other in plain:
        value = arguments[place]
        end = factor if other is None else factor * arguments[other]
        if not isinstance(value, float) or not isinstance(end, float) or breaks(value, end):
            return False
    return True


def refuse_outside(asked: str, held: Iterable[Limit], given: Mapping[str, object]) -> None:
    """Nothing, for values within their ranges; else ValueError with one sentence.

    Parameters
    ----------
    asked : str, the function's name, for the sentence
    held : iterable of Limit
    given : mapping of values by name
    """
    for name, of, relation, factor, other, why in held:
        if name not in given or (other and other not in given):
            continue
        breaks, words = BREAKS[relation]
        value = given[name] if isinstance(given[name], float) else of(given[name])
        broken = breaks(value, factor * given[other] if other else factor)
        if broken.any() if isinstance(broken, np.ndarray) else broken:
            first = np.broadcast_to(value, np.shape(broken))[broken].flat[0]
            end = f"{factor:g}" if not other else f"`{other}`" if factor == 1 else f"{factor:g} `{other}`"
            raise ValueError(f"{asked}: {name} must be {words} {end}, not {first:.6g}{why and f': {why}'}")

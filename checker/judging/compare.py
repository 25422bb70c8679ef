"""Is this the answer that was wanted, and if not, how does it differ? On values alone; no code of the student's runs here."""

import math
from collections.abc import Iterable, Iterator, Sequence, Sized
from dataclasses import dataclass
from typing import Any

import numpy as np

from ..checks.exercise import Tolerance
from ..checks.given import complex_in_words, shown
from ..checks.units import in_words
from ..worker.wire import Expression, Unusable

_RETURN = ": is there a `return`?"
NAMED_RATIOS = {
    "2π": 2 * math.pi,
    "π": math.pi,
    "4π": 4 * math.pi,
    "4π²": 4 * math.pi**2,
    "√2": math.sqrt(2),
    "2": 2,
    "4": 4,
    "8": 8,
    "10": 10,
    "100": 100,
    "1000": 1e3,
    "10⁴": 1e4,
    "a million": 1e6,
    "10⁹": 1e9,
    "10¹²": 1e12,
    "57.3 (degrees in a radian)": 180 / math.pi,
    "2.54": 2.54,
    "√3": math.sqrt(3),
}


@dataclass(frozen=True)
class Difference:
    """How an answer differs: a sentence when its kind is wrong, else the two values as text; `too_big` to be sent."""

    says: str = ""
    got: str = ""
    wanted: str = ""
    thought: str = ""
    too_big: bool = False


def difference(got: Any, wanted: Any, tolerance: Tolerance, unit: str | Sequence[str] = "") -> Difference | None:
    """None if `got` will do for `wanted`; otherwise the `Difference`.

    `wanted` comes from the reference and decides what is acceptable: text for text, a complex number only where one
    is wanted, lists and arrays alike, one number for a 0-d array. `unit` is a text, or one for each item of a tuple.
    """
    if isinstance(wanted, np.generic):
        wanted = wanted.item()
    if type(got) is float and type(wanted) is float and math.isfinite(got) and tolerance.allows(got, wanted):
        return None
    if isinstance(got, Unusable):
        return _unusable(got, wanted)
    if got is None:
        return Difference(says=f"returned nothing (None) where {_kind(wanted)} wanted{_RETURN}")
    if isinstance(wanted, Expression):
        return _expression_difference(got, wanted, tolerance, unit if isinstance(unit, str) else "")
    if isinstance(wanted, (str, bool)):
        return _word_difference(got, wanted)
    if isinstance(wanted, (tuple, list)):
        return _sequence_difference(got, wanted, tolerance, unit)
    return _number_difference(got, np.asarray(wanted), tolerance, unit if isinstance(unit, str) else "")


def is_rounding(wanted: Any, tolerance: Tolerance) -> bool:
    """Whether a wanted number is nothing but what rounding has left of nothing: it would puzzle whoever is shown it."""
    return isinstance(wanted, (float, np.floating)) and wanted != 0 and difference(0.0, wanted, tolerance) is None


def _unusable(got: Unusable, wanted: Any) -> Difference:
    if got.oversize:
        return Difference(says=f"returned {got.what}, where {_kind(wanted)} wanted: too big to look at", too_big=True)
    return Difference(says=f"returned {_with_article(got.what)}, where {_kind(wanted)} wanted")


def _word_difference(got: Any, wanted: Any) -> Difference | None:
    if type(got) is not type(wanted):
        return Difference(says=f"returned {_describe(got)} where {_kind(wanted)} wanted")
    return None if got == wanted else Difference(got=repr(got), wanted=repr(wanted))


def _sequence_difference(got: Any, wanted: Any, tolerance: Tolerance, unit: str | Sequence[str]) -> Difference | None:
    if isinstance(got, np.ndarray) and got.ndim:
        got = list(got)
    if not isinstance(got, list):
        return Difference(says=f"returned {_describe(got)} where {_kind(wanted)} wanted, as a tuple")
    if len(got) != len(wanted):
        end = _missing_end(list(got), list(wanted), tolerance)
        return Difference(says=f"returned {_count(got, 'value')} where {_kind(wanted)} wanted{end}")
    units = [unit] * len(wanted) if isinstance(unit, str) else unit
    for place, (one, other, its_unit) in enumerate(zip(got, wanted, units, strict=True), 1):
        found = difference(one.item() if isinstance(one, np.generic) else one, other, tolerance, its_unit)
        if found:
            says = found.says.removesuffix(_RETURN).replace("returned", f"returned, as value {place} of {len(wanted)},", 1)
            ordinal = f"   (value {place} of {len(wanted)})"
            return Difference(says, found.got and found.got + ordinal, found.wanted, found.thought, found.too_big)
    return None


def _expression_difference(got: Any, wanted: Any, tolerance: Tolerance, unit: str) -> Difference | None:
    if isinstance(got, list) or not isinstance(got, Expression):
        return Difference(says=f"returned {_describe(got)} where one sympy expression was wanted")
    if len(got.at) != len(wanted.at) or not all(isinstance(value, (int, float, complex)) for value in got.at):
        return Difference(says=f"returned the expression {got.text}, which has no value, or symbols in it that were not given")
    if tolerance.allows(np.array(got.at, complex), np.array(wanted.at, complex)):
        return None
    one, other = got.at[0], wanted.at[0]
    if tolerance.allows(one, other):
        return Difference(got=got.text, wanted="another expression: it has this value here, and others elsewhere")
    has_value = np.isfinite(one)
    if not has_value or complex(one).imag == complex(other).imag == 0:
        one, other = one.real, other.real
    got_text, wanted_text = distinct_texts(one, other, unit)
    is_here = f"is {got_text}" if has_value else "has no value"
    return Difference(got=f"{got.text}, which {is_here} here", wanted=f"an expression that is {wanted_text} here")


def _number_difference(got: Any, wanted: Any, tolerance: Tolerance, unit: str) -> Difference | None:
    array, complaint = _as_numbers(got, wanted)
    if array is None:
        return Difference(says=complaint or "")
    if array.shape != wanted.shape:
        return Difference(says=_shape_sentence(array, wanted, tolerance))
    if array.dtype.kind == "c" and wanted.dtype.kind != "c":
        return Difference(says=f"returned a complex number, {shown(complex(array.flat[0]))}, where a real one was wanted")
    for odd, what in ((np.isnan, "nan (not a number)"), (np.isinf, "infinity")):
        here = odd(array) & ~odd(wanted)
        if here.any():
            return Difference(
                says=f"returned {what}{_place(here)}",
                thought=_ODD_THOUGHT[what],
                got=what,
                wanted=shown(wanted[here].flat[0].item(), unit),
            )
    if tolerance.allows(array, wanted):
        return None
    apart = np.array([not tolerance.allows(a, b) for a, b in zip(array.ravel(), wanted.ravel(), strict=True)])
    first = int(np.argmax(apart))
    place = _place(apart.reshape(wanted.shape)) if wanted.ndim else ""
    one, other = array.flat[first].item(), wanted.flat[first].item()
    got_text, wanted_text = distinct_texts(one, other, unit)
    return Difference(
        got=got_text + (f"   {place.strip()}" if place else ""), wanted=wanted_text, thought=_precision_thought(array)
    )


_ODD_THOUGHT = {
    "nan (not a number)": "That is 0/0, infinity over infinity, or the root or logarithm of a negative number.",
    "infinity": "Something was divided by zero, or grew past all bounds.",
}


def _as_numbers(got: Any, wanted: Any) -> tuple[np.ndarray, None] | tuple[None, str]:
    """(array, None), or (None, a sentence)."""
    if isinstance(got, (bool, str, Expression)):
        return None, f"returned {_describe(got)} where {_kind(wanted)} wanted"
    if isinstance(got, list):
        if not all(isinstance(item, (int, float, complex)) and not isinstance(item, bool) for item in _flat(got)):
            return None, f"returned {_describe(got)} where {_kind(wanted)} wanted"
        try:
            got = np.array(got)
        except (ValueError, OverflowError):
            return None, "returned a list whose rows differ in length"
    try:
        array = np.asarray(got)
        array = array if array.dtype.kind in "fc" else array.astype(float)
    except (OverflowError, TypeError):  # TypeError: complex numbers beside it
        return None, "returned a whole number too large for any quantity here"
    return array, None


def _flat(items: list) -> Iterator:
    for item in items:
        if isinstance(item, list):
            yield from _flat(item)
        else:
            yield item


def _shape_sentence(got: np.ndarray, wanted: np.ndarray, tolerance: Tolerance) -> str:
    if wanted.ndim == 0:
        return f"returned an array of shape {got.shape} where one number was wanted"
    if got.ndim == 0:
        return f"returned one number where an array of shape {wanted.shape} was wanted, a value for each input"
    if got.ndim == wanted.ndim == 1:
        lengths = f"returned an array of {_count(got, 'value')} where {_count(wanted, 'value')} were wanted"
        return lengths + _missing_end(got.tolist(), wanted.tolist(), tolerance)
    return f"returned an array of shape {got.shape} where shape {wanted.shape} was wanted"


def _missing_end(got: list, wanted: list, tolerance: Tolerance) -> str:
    """Which end of a row is short, or too long, where the rest of it is right: ": the last is missing"."""
    shorter, longer = sorted((got, wanted), key=len)
    over = len(longer) - len(shorter)

    def alike(part: list) -> bool:
        pairs = zip(part, shorter, strict=True) if longer is got else zip(shorter, part, strict=True)
        return bool(shorter) and all(difference(one, other, tolerance) is None for one, other in pairs)

    ends = [word for word, part in (("last", longer[: len(shorter)]), ("first", longer[over:])) if alike(part)]
    if len(ends) != 1:
        return ""
    which = f"the {ends[0]} is" if over == 1 else f"the {ends[0]} {over} are"
    return f": {which} {'too many' if longer is got and over > 1 else 'one too many' if longer is got else 'missing'}"


def _precision_thought(array: np.ndarray) -> str:
    return (
        "The numbers came back as float32, which keeps 7 figures. Use float64, Python's own."
        if array.dtype == np.float32
        else ""
    )


def _place(here: np.ndarray) -> str:
    return "" if here.ndim == 0 else f" at index {', '.join(map(str, np.argwhere(here)[0]))}"


def _kind(wanted: Any) -> str:
    """What was wanted, with its verb: "a number was"."""
    if isinstance(wanted, Expression):
        return "a sympy expression was"
    if isinstance(wanted, bool):
        return "True or False was"
    if isinstance(wanted, str):
        return "text was"
    if isinstance(wanted, (tuple, list)):
        return f"{_count(wanted, 'value')} {'was' if len(wanted) == 1 else 'were'}"
    return "a number was" if np.ndim(wanted) == 0 else f"an array of shape {np.shape(wanted)} was"


def _count(things: Sized, what: str) -> str:
    return f"{len(things)} {what}{'' if len(things) == 1 else 's'}"


def _describe(got: Any) -> str:
    if isinstance(got, Expression):
        return f"the expression {got.text}"
    if isinstance(got, bool):
        return str(got)
    if isinstance(got, str):
        return f"the text {got[:40]!r}"
    if isinstance(got, list):
        return f"a list of {_count(got, 'item')}"
    if isinstance(got, np.ndarray):
        return f"an array of shape {got.shape}"
    return f"the number {shown(got)}"


def _with_article(what: str) -> str:
    if what.startswith("ndarray"):
        return f"an array{what.removeprefix('ndarray')}"
    return what if " " in what and what.startswith(("a ", "an ")) else ("an " if what[:1].lower() in "aeio" else "a ") + what


def distinct_texts(got: Any, wanted: Any, unit: str = "") -> tuple[str, ...]:
    """Both numbers as text, with as many figures as it takes to tell them apart."""
    is_complex = isinstance(got, complex) or isinstance(wanted, complex)
    for figures in (4, 7, 10, 13, 17):
        texts = tuple(
            complex_in_words(complex(value), unit, figures) if is_complex else in_words(float(value), unit, figures)
            for value in (got, wanted)
        )
        if texts[0] != texts[1]:
            break
    return texts


def ratio_in_words(pairs: Iterable[tuple[Any, Any]], unit: str = "") -> str:
    """What all (got, wanted) pairs have in common: a constant factor by its name, a sign, a step in decibels; or ""."""
    pairs = [(got, wanted) for got, wanted in pairs if _is_real(got) and _is_real(wanted) and wanted]
    if len(pairs) < 3:
        return ""
    if unit == "dB":
        steps = [got - wanted for got, wanted in pairs]
        if max(steps) - min(steps) < 1e-6:
            return f"yours is {abs(steps[0]):.4g} dB too {'high' if steps[0] > 0 else 'low'}"
    ratios = [got / wanted for got, wanted in pairs]
    first = ratios[0]
    if not first or not math.isfinite(first) or any(abs(ratio / first - 1) > 1e-6 for ratio in ratios):
        return ""
    if abs(first + 1) < 1e-6:
        return "yours has the opposite sign"
    size = max(abs(first), 1 / abs(first))
    if size < 1.0001:
        return ""
    name = next((name for name, value in NAMED_RATIOS.items() if abs(size / value - 1) < 1e-6), f"{size:.4g}")
    return f"yours is {name} times too {'large' if abs(first) > 1 else 'small'}" + (
        " and has the opposite sign" if first < 0 else ""
    )


def _is_real(value: Any) -> bool:
    return isinstance(value, (int, float)) and not isinstance(value, bool) and math.isfinite(value)

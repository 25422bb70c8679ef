"""What a function is given: each argument's unit, range, and the values that it is drawn from, tidy ones first.

The values drawn have at most three figures, and the tidiest ones near the middle of the range come first, so that
the simplest failing input is one that a person would choose: 100 pF, not 104.2813 pF.
"""

import math
from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass
from functools import partial
from typing import Any

from .units import in_words, quantity, tidily


@dataclass(frozen=True)
class Given:
    """One argument: its range in words, how one value is shown, what it is drawn from (plainest first), its ends, its unit."""

    text: str
    show: Callable[[object], str]
    stacks: bool = True
    values: tuple = ()
    ends: tuple = ()
    unit: str = ""


def physical(unit: str, low: str, high: str) -> Given:
    """A real quantity between two texts such as "10 µH" and "10 mH"; spread evenly over decades if it spans them."""
    ends = quantity(low, unit), quantity(high, unit)
    return _chosen(tidy_values(*ends), f"{low} to {high}", partial(shown, unit=unit, number=tidily), ends=ends, unit=unit)


henries, farads, hertz, ohms = (partial(physical, unit) for unit in ("H", "F", "Hz", "Ω"))
metres, volts, amperes, watts, seconds = (partial(physical, unit) for unit in ("m", "V", "A", "W", "s"))
siemens, ohm_metres, celsius, degrees, radians, decibels, volts_per_metre, siemens_per_metre = (
    partial(physical, unit) for unit in ("S", "Ω·m", "°C", "°", "rad", "dB", "V/m", "S/m")
)


def number(low: float, high: float) -> Given:
    """A pure number, such as a coupling coefficient or Q."""
    return _chosen(
        tidy_values(low, high), f"{low:g} to {high:g}", partial(shown, number=tidily), ends=(float(low), float(high))
    )


def whole(low: int, high: int) -> Given:
    """A whole number, such as a count of turns."""
    values = sorted(range(low, high + 1), key=lambda n: (len(_digits(n)), abs(n - (low + high) / 2)))
    return _chosen(values, f"{low} to {high}, whole", _show_whole, ends=(low, high))


def one_of(*choices: str | float) -> Given:
    """One of a few words or numbers, the plainest first."""
    return _chosen(choices, " or ".join(map(str, choices)), shown, stacks=False)


def drawn(values: Iterable, text: str, show: Callable[[Any], str] | None = None, stacks: bool = False, unit: str = "") -> Given:
    """Anything else: a list of values to choose from, the plainest first, with their range said in words."""
    return _chosen(tuple(values), text, show or partial(shown, unit=unit), stacks=stacks, unit=unit)


def _chosen(values: Sequence, text: str, show: Callable[[Any], str], **more: Any) -> Given:
    return Given(text, show, values=tuple(values), **more)


def _show_whole(value: Any) -> str:
    return shown(value) if hasattr(value, "tolist") else f"{value:,}"


def shown(value: Any, unit: str = "", number: Callable[..., str] = in_words) -> str:
    """One value as a student reads it; a long array by its ends and length. `number` puts one number into words."""
    if hasattr(value, "tolist"):
        value = value.tolist()
    if isinstance(value, (list, tuple)):
        items = [shown(item, unit, number) for item in value]
        if len(items) > 6:
            return f"[{items[0]}, {items[1]}, … {items[-1]}] ({len(items)} values)"
        return "[" + ", ".join(items) + "]"
    if isinstance(value, complex):
        return complex_in_words(value, unit)
    return repr(value) if isinstance(value, str) else number(value, unit)


def complex_in_words(value: complex, unit: str = "", figures: int = 4) -> str:
    sign = "-" if value.imag < 0 else "+"
    return f"({value.real:.{figures}g} {sign} {abs(value.imag):.{figures}g}j) {unit}".strip()


def tidy_values(low: float, high: float) -> list[float]:
    """All numbers of up to three figures from low to high (both included), tidiest and most central first."""
    if not low < high:
        raise ValueError(f"a range runs upwards: {low:g} to {high:g} does not")
    over_decades = low > 0 and high >= 10 * low
    if over_decades:
        decades = range(math.floor(math.log10(low)), math.floor(math.log10(high)) + 1)
        values = {float(f"{figures}e{power - 2}") for power in decades for figures in range(100, 1000)}
        middle = math.sqrt(low * high)
    else:
        power = math.floor(math.log10((high - low) / 100))
        first, last = math.ceil(low / 10.0**power - 1e-9), math.floor(high / 10.0**power + 1e-9)
        values = {float(f"{n}e{power}") for n in range(first, last + 1)}
        middle = (low + high) / 2
    inside = {value for value in values if low <= value <= high} | {float(low), float(high)}

    def untidiness(value: float) -> tuple:
        away = abs(math.log(value / middle)) if over_decades else abs(value - middle)
        digits = _digits(value)
        return len(digits), digits[0] != "1", value < 0, away

    return sorted(inside, key=untidiness)


def _digits(value: float) -> str:
    """The figures of a number, without zeros before or after them."""
    return repr(value).partition("e")[0].replace(".", "").strip("-0") or "0"

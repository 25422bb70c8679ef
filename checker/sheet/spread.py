"""How far a result spreads when its parts do: many sets, each of parts drawn within their tolerances.

The same draws serve every sheet, so that a wider tolerance widens an interval and never moves it by chance.
"""

import math
from dataclasses import dataclass

import numpy as np

from ..checks.units import tidily
from .keys import SECTIONS, Quantity
from .reading import Parts

DRAWS = 200
SEED = 1
MOST = 5.0, 95.0  # per cent: an interval holds nine sets in ten
NAMES = {
    "former": "the tube's diameter",
    "covered": "the wire's thickness over its covering",
    "condenser": "the tuning condenser",
    "stray": "the strays",
    "gaps": "the gaps between windings",
    "coil_loss": "the coil's losses",
    "aerial": "the aerial",
    "earth": "the earth",
    "valve": "the valve",
    "crystal": "the crystal",
    "telephones": "the telephones",
    "field": "the stations' fields",
    "supply": "the supply",
    "resistors": "the resistors",
}
assert tuple(NAMES) == tuple(key.name for key in SECTIONS["spread"])


def draw_offsets(parts: Parts, draws: int = DRAWS) -> dict[str, np.ndarray]:
    """For each name in `NAMES`, how far each drawn set's part is off: a fraction, metres or decibels, the first one not at all.

    Parameters
    ----------
    parts : Parts
    draws : int
        How many sets; the first is the nominal one.

    Returns
    -------
    dict of ndarray of shape (draws,)
        Evenly drawn between minus and plus the tolerance: makers promise limits, and no more.
    """
    evenly = np.random.default_rng(SEED).uniform(-1, 1, (draws, len(NAMES)))
    evenly[0] = 0
    off = {}
    for column, key in enumerate(SECTIONS["spread"]):
        scale = 0.01 if isinstance(key.takes, Quantity) and key.takes.unit == "%" else 1.0
        off[key.name] = evenly[:, column] * parts[f"spread.{key.name}"] * scale
    return off


@dataclass(frozen=True)
class Spread:
    """A result: of the nominal set, and between what limits nine sets in ten have it; which part matters most; how many
    sets in a hundred have it at all."""

    nominal: float
    low: float
    high: float
    most: str | None
    share: float = 1.0

    @property
    def wide(self) -> bool:
        return self.high > self.low


def spread(values: np.ndarray, off: dict[str, np.ndarray]) -> Spread:
    """What became of a result over all drawn sets.

    Parameters
    ----------
    values : ndarray of shape (draws,)
        The first is the nominal set's; nan where a set does not have the result.
    off : dict of ndarray
        As `drawn` gives it.
    """
    there = np.isfinite(values)
    if not there.any():
        return Spread(math.nan, math.nan, math.nan, None, 0.0)
    low, high = np.percentile(values[there], MOST)
    return Spread(
        float(values[0]),
        float(low),
        float(high),
        _most(values[there], {n: o[there] for n, o in off.items()}),
        float(there.mean()),
    )


def _most(values: np.ndarray, off: dict[str, np.ndarray]) -> str | None:
    """The part that goes furthest towards explaining the result's spread: of the largest squared correlation."""
    scatter = np.std(values)
    if not scatter > 1e-9 * np.max(np.abs(values)):
        return None
    explained = {name: np.corrcoef(values, one)[0, 1] ** 2 for name, one in off.items() if np.std(one) > 0}
    return NAMES[max(explained, key=lambda name: explained[name])]


def text(result: Spread, unit: str, figures: int = 3) -> str:
    """A result in words, no finer than its parts allow: "between 510 kHz and 545 kHz", or one number where nothing spreads."""
    if not math.isfinite(result.nominal):
        return "not reached"
    low, high = (rounded_to(end, result.high - result.low, figures) for end in (result.low, result.high))
    if low == high:
        return in_units(low, unit, figures)
    first, last = in_units(low, unit, figures), in_units(high, unit, figures)
    (number, _, symbol), (top, _, same) = first.partition(" "), last.partition(" ")
    if symbol != same:
        return f"{first} to {last}"
    places = max(len(one.partition(".")[2]) for one in (number, top))
    return f"{_padded(number, places)} to {_padded(top, places)} {symbol}".rstrip()


def _padded(number: str, places: int) -> str:
    """A number with so many figures after its point."""
    whole, _, fraction = number.partition(".")
    return f"{whole}.{fraction:0<{places}}" if places else whole


def rounded_to(value: float, width: float, figures: int = 3) -> float:
    """A number rounded to a tenth of a width, a power of ten; to a few figures where the width is nothing."""
    if not value:
        return 0.0
    finest = math.floor(math.log10(abs(value))) - figures + 1
    place = finest if not width > 0 else max(math.floor(math.log10(width)) - 1, finest)
    return round(value / 10.0**place) * 10.0**place


def in_units(value: float, unit: str, figures: int = 3) -> str:
    """A number with prefix and unit, without the zeros at its end."""
    if unit == "dB":
        return f"{round(value)} dB".replace("-", "−")
    if unit == "mm":
        return f"{1e3 * value:.{figures}g} mm"
    if unit == "kHz":
        return f"{value / 1e3:.{max(figures, 4)}g} kHz"
    return tidily(float(value), unit, figures).replace("-", "−")

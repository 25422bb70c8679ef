"""What the figures of this unit leave out, and how large each is: one row a thing, sized by the network itself.

for row in LEFT_OUT:
    print(row.name, row.size(1107e3), row.unit, row.words)
"""

from collections.abc import Callable
from dataclasses import replace
from functools import cache
from typing import NamedTuple

import numpy as np

from solutions.ranges import check_ranges
from solutions.unit06_reaction.network import (
    CHOKE,
    CONDENSER,
    GRID_ANODE,
    GRID_FILAMENT,
    THROTTLE_RANGE,
    ReactionSet,
    saltmarsh_set,
    through_grid_condenser,
)
from solutions.unit06_reaction.stability import at_threshold, retuned, ring
from solutions.unit07_oscillation.stage import SALTMARSH_STAGE, slopes_at_rest

LEAST, MOST = 5e-12, 1e-9  # farad: where the threshold is looked for, the throttle's stops left aside
QUALITY_SPREAD = 0.2  # of a coil's resistance: damp, varnish, a tube of other stuff (common practice, no source)
HOLDER = 1e-12  # farad, grid to anode, of base and holder (common practice, no source)
WORST_SLOPE, WORST_RESISTANCE = 0.68 / 0.9, 13.64 / 10.3  # tests/published/valve/triode_spread.csv: the worst of four 30s
GRID_CURRENT_SPREAD = 0.5  # of the grid's current at rest: the least certain figure of unit 5
LEAD = 0.1e-6  # henry: some 100 mm of wire (common practice, no source)
WOUND_CLOSE = 1.7e-6  # henry, aerial winding and tickler on the tube of the bench page
HAND = 0.25e-12  # farad, of a hand near the live end
WARMER, COPPER, COIL_GROWS = 10.0, 3.93e-3, 50e-6  # kelvin, per kelvin: IEC 60028 for copper; a coil on card, from memory


class LeftOut(NamedTuple):
    """Something that the figures leave out."""

    name: str
    unit: str  # of its size; "" for a fraction
    size: Callable[[float], float]  # at a frequency in hertz
    words: str  # what it does and to what


@check_ranges
def threshold_moved(change: Callable[[ReactionSet], dict], frequency: float) -> float:
    """By what fraction a change of the set's parts moves its throttle's threshold.

    Parameters
    ----------
    change : function of a ReactionSet that returns the fields to be replaced
    frequency : float, hertz, > 0

    Returns
    -------
    float, a pure number; above 0 where more throttle is needed

    Raises
    ------
    ValueError
        As `at_threshold`.
    """
    of = saltmarsh_set(frequency)
    before, after = (
        at_threshold(there, frequency, low=LEAST, high=MOST).throttle_capacitance for there in (of, replace(of, **change(of)))
    )
    return float(after / before - 1)


@check_ranges
def tuning_moved(change: Callable[[ReactionSet], dict], frequency: float) -> float:
    """By how many hertz a change of the set's parts moves its tuning, throttle shut.

    Parameters
    ----------
    change, frequency
        As in `threshold_moved`.

    Returns
    -------
    float, hertz

    Raises
    ------
    ValueError
        As `retuned`.
    """
    there = retuned(replace(saltmarsh_set(frequency), throttle_capacitance=THROTTLE_RANGE[0]), frequency)
    return float(ring(replace(there, **change(there)))[0] - frequency)


@check_ranges
def valve_behind(condenser: float, slope: float = 1.0, resistance: float = 1.0, grid_current: float = 1.0, more: float = 0.0):
    """The valve's fields with another grid condenser, slope, resistance, grid current or grid-anode capacitance.

    Parameters
    ----------
    condenser : float, farad, > 0
    slope, resistance, grid_current : float, > 0, times the club's
    more : float, farad, >= 0, from grid to anode beside the valve's own

    Returns
    -------
    dict, fields of `ReactionSet`
    """
    transconductance, anode_resistance, conductance = slopes_at_rest(SALTMARSH_STAGE)
    seen = through_grid_condenser(
        condenser,
        GRID_ANODE + more,
        GRID_FILAMENT,
        slope * transconductance,
        resistance * anode_resistance,
        grid_current * conductance,
    )
    return dict(zip(("transconductance", "anode_resistance", "grid_conductance", "grid_anode_capacitance"), seen, strict=True))


def _threshold(change):
    return lambda frequency: threshold_moved(change, frequency)


def _choke(frequency):
    """A coil to earth takes away as much capacitance as would resonate with it."""
    less = 1 / ((2 * np.pi * frequency) ** 2 * CHOKE)
    return threshold_moved(lambda of: {"anode_capacitance": of.anode_capacitance - less}, frequency)


def _leads(frequency):
    """A condenser with a little coil in series is a little more condenser."""
    angular = 2 * np.pi * frequency
    return threshold_moved(
        lambda of: {"anode_capacitance": of.anode_capacitance / (1 - angular**2 * LEAD * of.anode_capacitance)}, frequency
    )


LEFT_OUT = (
    LeftOut("the choke's inductance, 100 mH", "", _choke, "moves the threshold; on the dial it counts as its 3 pF alone"),
    LeftOut("100 mm of lead at the by-pass", "", _leads, "moves the threshold"),
    LeftOut(
        "a grid condenser of no reactance in place of 100 pF",
        "",
        _threshold(lambda of: valve_behind(1e3 * CONDENSER)),
        "would move the threshold; the figures count the 100 pF",
    ),
    LeftOut(
        "1 pF more from grid to anode, of base and holder",
        "",
        _threshold(lambda of: valve_behind(CONDENSER, more=HOLDER)),
        "moves the threshold",
    ),
    LeftOut(
        "a coil of a fifth more resistance",
        "",
        _threshold(lambda of: {"tuned_resistance": (1 + QUALITY_SPREAD) * of.tuned_resistance}),
        "moves the threshold",
    ),
    LeftOut(
        "half as much again of grid current at rest",
        "",
        _threshold(lambda of: valve_behind(CONDENSER, grid_current=1 + GRID_CURRENT_SPREAD)),
        "moves the threshold",
    ),
    LeftOut(
        "the worst type 30 of a measured handful",
        "",
        _threshold(lambda of: valve_behind(CONDENSER, WORST_SLOPE, WORST_RESISTANCE)),
        "moves the threshold",
    ),
    LeftOut(
        "aerial winding and tickler on one tube: 1.7 µH, not 0.4",
        "",
        _threshold(lambda of: {"aerial_tickler": WOUND_CLOSE}),
        "moves the threshold",
    ),
    LeftOut(
        "ten kelvin warmer: copper",
        "",
        _threshold(lambda of: {"tuned_resistance": (1 + COPPER * WARMER / 2) * of.tuned_resistance}),
        "moves the threshold; half as much as the resistance to steady current, as the skin is the deeper",
    ),
    LeftOut(
        "ten kelvin warmer: the coil grows",
        "Hz",
        lambda frequency: tuning_moved(
            lambda of: {"tuned_inductance": (1 + COIL_GROWS * WARMER) * of.tuned_inductance}, frequency
        ),
        "moves the tuning",
    ),
    LeftOut(
        "a hand near the live end",
        "Hz",
        lambda frequency: tuning_moved(lambda of: {"tuning_capacitance": of.tuning_capacitance + HAND}, frequency),
        "moves the tuning; a screen behind the panel keeps it out",
    ),
)


@cache
@check_ranges
def size_of(name: str, frequency: float) -> float:
    """How large one of the things left out is.

    Parameters
    ----------
    name : str, as in `LEFT_OUT`
    frequency : float, hertz, > 0

    Returns
    -------
    float, a fraction of the throttle at the threshold, or hertz

    Raises
    ------
    ValueError
        If no row has that name; or as `threshold_moved`.
    """
    for row in LEFT_OUT:
        if row.name == name:
            return row.size(frequency)
    raise ValueError(f"nothing called {name!r} is in the table of what is left out")

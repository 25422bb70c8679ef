"""What the figures of this unit leave out, and how large each is: one row a thing, sized by the engine.

The rows are those of `unit06_reaction.left_out`, here for a set that swings: the fierce one, 30 % over its edge.
"""

from collections.abc import Callable
from dataclasses import replace
from functools import cache

import numpy as np

from solutions.ranges import check_ranges
from solutions.unit01_signal.aerial_voltage import effective_height
from solutions.unit01_signal.radiation_resistance import radiation_resistance
from solutions.unit04_crystal_set.crystal_set import EARTH_RESISTANCE, HEIGHT, TOP
from solutions.unit05_valve.triode_current import triode_current
from solutions.unit06_reaction.left_out import GRID_CURRENT_SPREAD, WORST_SLOPE, LeftOut
from solutions.unit06_reaction.network import CHOKE, ReactionSet
from solutions.unit07_oscillation.envelope import RATE, follow, start
from solutions.unit07_oscillation.stage import SALTMARSH_STAGE, Stage
from solutions.unit07_oscillation.station_on import on_station, threshold_in_silence, threshold_with_station

OVER, SECONDS, SEED = 1.3, 0.03, 3.0  # parts of the edge; second; volt
OLD_BATTERY = 350.0  # ohm, ten 9 V zinc batteries in a row: from memory, as in `unit00_bench`
FILAMENT_DROP = 1.0  # volt: half of what stands along the filament, from its middle to an end


@check_ranges
def swing_changed(
    frequency: float,
    stage: Callable[[Stage], dict] = lambda of: {},
    windings: Callable[[ReactionSet], dict] = lambda of: {},
) -> float:
    """By what fraction a change of a part changes how far the fierce set swings, its knobs standing still.

    Parameters
    ----------
    frequency : float, hertz, > 0
    stage, windings : functions that return the fields to be replaced

    Returns
    -------
    float, a fraction

    Raises
    ------
    ValueError
        As `envelope.follow`.
    """
    there = on_station(frequency, OVER * threshold_in_silence(frequency))
    changes = (SALTMARSH_STAGE, there), (SALTMARSH_STAGE._replace(**stage(SALTMARSH_STAGE)), replace(there, **windings(there)))
    quiet = np.zeros(round(SECONDS * RATE) + 1)
    before, after = (abs(follow(quiet, RATE, frequency, set_, one, start(one, SEED)).grid[-1]) for one, set_ in changes)
    return float(after / before - 1)


@check_ranges
def backlash_moved(change: Callable[[Stage], dict], frequency: float) -> float:
    """By what fraction of the edge a change of the stage moves the place at which the fierce set stops.

    Parameters
    ----------
    change : function of a Stage that returns the fields to be replaced
    frequency : float, hertz, > 0

    Returns
    -------
    float, a fraction; below 0 where the backlash grows

    Raises
    ------
    ValueError
        As `threshold_with_station`.
    """
    before, after = (
        threshold_with_station(frequency, np.inf, stage=stage) / threshold_in_silence(frequency, stage=stage)
        for stage in (SALTMARSH_STAGE, SALTMARSH_STAGE._replace(**change(SALTMARSH_STAGE)))
    )
    return after - before


@check_ranges
def crest_current(frequency: float) -> float:
    """Anode current of that set at the crest of its swing, which a filament has to give.

    Parameters
    ----------
    frequency : float, hertz, > 0

    Returns
    -------
    float, ampere
    """
    there = on_station(frequency, OVER * threshold_in_silence(frequency))
    quiet = np.zeros(round(SECONDS * RATE) + 1)
    heard = follow(quiet, RATE, frequency, there, SALTMARSH_STAGE, start(SALTMARSH_STAGE, SEED))
    law = SALTMARSH_STAGE.amplification_factor, SALTMARSH_STAGE.perveance, SALTMARSH_STAGE.offset
    return float(triode_current(heard.state.anode, heard.bias[-1] + abs(heard.grid[-1]), *law))


def _choke(frequency):
    less = 1 / ((2 * np.pi * frequency) ** 2 * CHOKE)
    return swing_changed(frequency, windings=lambda of: {"anode_capacitance": of.anode_capacitance - less})


def _more_grid_current(of):
    return {"zero_current": (1 + GRID_CURRENT_SPREAD) * of.zero_current}


LEFT_OUT = (
    LeftOut("the choke's inductance, 100 mH", "", _choke, "changes the swing"),
    LeftOut(
        "the worst type 30 of a measured handful",
        "",
        lambda frequency: swing_changed(frequency, lambda of: {"perveance": WORST_SLOPE * of.perveance}),
        "changes the swing",
    ),
    LeftOut(
        "half as much again of grid current: swing",
        "",
        lambda frequency: swing_changed(frequency, _more_grid_current),
        "changes the swing",
    ),
    LeftOut(
        "half as much again of grid current: stop",
        "",
        lambda frequency: backlash_moved(_more_grid_current, frequency),
        "moves the stop, as a part of the edge",
    ),
    LeftOut(
        "the filament's middle, 1 V above its end",
        "",
        lambda frequency: swing_changed(
            frequency, lambda of: {"offset": of.offset - FILAMENT_DROP * (1 + 1 / of.amplification_factor)}
        ),
        "changes the swing; the law's offset, taken from curves, holds most of it already",
    ),
    LeftOut(
        "an old battery's 350 Ω",
        "",
        lambda frequency: swing_changed(frequency, lambda of: {"load_resistance": of.load_resistance + OLD_BATTERY}),
        "changes the swing",
    ),
    LeftOut(
        "what the aerial radiates",
        "",
        lambda frequency: float(radiation_resistance(effective_height(HEIGHT, TOP), frequency) / EARTH_RESISTANCE),
        "of the aerial's loss; the figures count the earth's alone",
    ),
    LeftOut(
        "the end of the filament's emission",
        "A",
        crest_current,
        "flows at the crests; an oxide filament of 0.12 W gives some 6 to 12 mA (50 to 100 mA a watt, from memory): a "
        "tired one limits the swing first",
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
    float, a fraction, or amperes

    Raises
    ------
    ValueError
        If no row has that name; or as `swing_changed`.
    """
    for row in LEFT_OUT:
        if row.name == name:
            return row.size(frequency)
    raise ValueError(f"nothing called {name!r} is in the table of what is left out")

"""A set that ticks: the gentle one with its throttle far open, a great leak and a large grid condenser."""

from functools import lru_cache
from typing import NamedTuple

import numpy as np

from solutions.ranges import check_ranges
from solutions.unit01_signal.club_stations import NEXT_CHANNEL
from solutions.unit05_valve.one_valve_set import GRID_SLOPE, LAW
from solutions.unit06_reaction.network import ReactionSet
from solutions.unit07_oscillation.envelope import RATE, Heard, follow, start
from solutions.unit07_oscillation.squegging import largest_leak, swing_exponent, ticking_frequency
from solutions.unit07_oscillation.stage import GENTLE_STAGE, Stage
from solutions.unit07_oscillation.station_on import on_station, threshold_in_silence

FREQUENCY, PART = NEXT_CHANNEL.frequency, 3.0  # hertz; the throttle, in parts of its edge
STEADY_LEAK = 5e6  # ohm: with it the swing lasts, whatever the grid condenser
WHISPER = 1e-6  # volt, crest, in the aerial: about what the air's noise brings, from which a burst grows
LOUD = 1.0  # volt: a swing that counts as a burst
SECONDS, SETTLE = 0.2, 0.03


class Tick(NamedTuple):
    """One tick of a set that ticks."""

    blocked: float  # volt: where a burst leaves the grid
    restart: float  # volt: the grid when the next has grown to a volt
    burst: float  # second
    period: float  # second


def far_open() -> float:
    """The throttle of the set that ticks.

    Returns
    -------
    float, farad
    """
    return PART * threshold_in_silence(FREQUENCY, stage=GENTLE_STAGE)


@check_ranges
def with_leak(leak_resistance: float, grid_capacitance: float) -> tuple[Stage, ReactionSet]:
    """The gentle set with another leak and grid condenser, its throttle far open, tuned.

    Parameters
    ----------
    leak_resistance : float, ohm, > 0
    grid_capacitance : float, farad, > 0

    Returns
    -------
    stage, windings : Stage, ReactionSet
    """
    stage = GENTLE_STAGE._replace(leak_resistance=leak_resistance, grid_capacitance=grid_capacitance)
    return stage, on_station(FREQUENCY, far_open(), stage=stage)


@check_ranges
def played(leak_resistance: float, grid_capacitance: float, seconds: float) -> Heard:
    """That set, switched on, with next to nothing in its aerial.

    Parameters
    ----------
    leak_resistance, grid_capacitance
        As in `with_leak`.
    seconds : float, > 0

    Returns
    -------
    Heard
    """
    stage, windings = with_leak(leak_resistance, grid_capacitance)
    return follow(np.full(round(seconds * RATE) + 1, WHISPER), RATE, FREQUENCY, windings, stage, start(stage, 0.5))


@lru_cache(maxsize=8)
@check_ranges
def one_tick(leak_resistance: float, grid_capacitance: float) -> Tick:
    """What a set that ticks does between one burst and the next.

    Parameters
    ----------
    leak_resistance, grid_capacitance
        As in `with_leak`.

    Returns
    -------
    Tick

    Raises
    ------
    ValueError
        If it does not tick.
    """
    heard = played(leak_resistance, grid_capacitance, SECONDS)
    loud = np.abs(heard.grid) > LOUD
    begins = np.flatnonzero(loud[1:] & ~loud[:-1])
    if len(begins) < 3:
        raise ValueError("this set does not tick: give it a greater leak or grid condenser")
    last = slice(begins[-2], begins[-1])
    return Tick(
        float(heard.bias[last].min()),
        float(heard.bias[begins[-1]]),
        float(np.sum(loud[last]) / RATE),
        float((begins[-1] - begins[-2]) / RATE),
    )


@check_ranges
def by_formula(leak_resistance: float, grid_capacitance: float) -> float:
    """Ticks a second by the leak's exponential, from the voltages at which that set's bursts end and begin.

    Parameters
    ----------
    leak_resistance, grid_capacitance
        As in `with_leak`.

    Returns
    -------
    float, hertz

    Raises
    ------
    ValueError
        As `one_tick`.
    """
    tick = one_tick(leak_resistance, grid_capacitance)
    return ticking_frequency(
        tick.blocked, tick.restart, GENTLE_STAGE.leak_return, leak_resistance, grid_capacitance, tick.burst
    )


@lru_cache(maxsize=8)
@check_ranges
def leak_limit(grid_capacitance: float) -> float:
    """Leak above which that set ticks, by the exercise's balance at the limit that it comes to with a small one.

    Parameters
    ----------
    grid_capacitance
        As in `with_leak`.

    Returns
    -------
    float, ohm; infinite with a condenser so small that no leak makes it tick
    """
    stage, windings = with_leak(STEADY_LEAK, grid_capacitance)
    heard = played(STEADY_LEAK, grid_capacitance, SETTLE)
    crest, bias = float(abs(heard.grid[-1])), float(heard.bias[-1])
    exponent = swing_exponent(crest, bias, heard.state.anode, *LAW)
    quality = 2 * np.pi * FREQUENCY * windings.tuned_inductance / windings.tuned_resistance
    limit = largest_leak(exponent, FREQUENCY, quality, windings.tuning_capacitance, grid_capacitance, -bias, GRID_SLOPE)
    return float(limit)

"""The threshold with a station on: how much of the margin its carrier uses up, and what is left when it fades.

A weak carrier finds the set of unit 06. A strong one swings the grid far enough for its own current to move the bias, and
the set is another: one with backlash can be carried over its edge at a throttle that would be safe in silence. All of
this is played by the envelope's equation, the set being tuned to the station at each setting of the throttle.
"""

from dataclasses import replace
from functools import lru_cache

import numpy as np

from solutions.ranges import check_ranges
from solutions.unit06_reaction import stability
from solutions.unit06_reaction.network import SALTMARSH_SET, THROTTLE_RANGE, ReactionSet, saltmarsh_set
from solutions.unit07_oscillation.envelope import RATE, follow, start
from solutions.unit07_oscillation.stage import SALTMARSH_STAGE, Stage, small_signal_set

COUPLING = SALTMARSH_SET.aerial_tuned  # henry
SETTLE = 12e-3  # second: sixty times the grid leak's time constant
GROWS, SPAN = 2e-3, 10e-3  # second: by the growth between these times after the station is gone, the set sings or does not
FULL_SWING, TRACE = 20.0, 1e-4  # volt: a swing beyond any that lasts; one too small to tell from silence
HALVINGS = 9  # of the throttle's interval: to 1 part in 500
LEAST_PART = 0.05  # of the threshold in silence: below it no throttle is tried


@check_ranges
def on_station(frequency: float, throttle: float, coupling: float = COUPLING, stage: Stage = SALTMARSH_STAGE) -> ReactionSet:
    """The Circle's set with any stage, tuned to a station in silence.

    Parameters
    ----------
    frequency : float, hertz, > 0
    throttle : float, farad, > 0
    coupling : float, henry, of aerial and tuned coil
    stage : Stage

    Returns
    -------
    ReactionSet

    Raises
    ------
    ValueError
        As `stability.retuned`.
    """
    small = small_signal_set(saltmarsh_set(frequency), stage)
    return stability.retuned(replace(small, throttle_capacitance=throttle, aerial_tuned=coupling), frequency)


@lru_cache(maxsize=256)
@check_ranges
def threshold_in_silence(frequency: float, coupling: float = COUPLING, stage: Stage = SALTMARSH_STAGE) -> float:
    """Throttle at which the set begins to oscillate with no station on.

    Parameters
    ----------
    frequency, coupling, stage
        As in `on_station`.

    Returns
    -------
    float, farad

    Raises
    ------
    ValueError
        As `stability.at_threshold`.
    """
    small = replace(small_signal_set(saltmarsh_set(frequency), stage), aerial_tuned=coupling)
    return float(stability.at_threshold(small, frequency).throttle_capacitance)


@check_ranges
def swing_with_station(
    frequency: float, throttle: float, emf: float, coupling: float = COUPLING, stage: Stage = SALTMARSH_STAGE
) -> float:
    """Swing of the tuned circuit with an unmodulated carrier on, the set having been silent before.

    Parameters
    ----------
    frequency, throttle, coupling, stage
        As in `on_station`.
    emf : float, volt, crest, >= 0, in the aerial

    Returns
    -------
    float, volt, crest

    Raises
    ------
    ValueError
        As `on_station` and `envelope.follow`.
    """
    there = on_station(frequency, throttle, coupling, stage)
    heard = follow(np.full(int(SETTLE * RATE), emf), RATE, frequency, there, stage)
    return float(np.abs(heard.grid[-1]))


@check_ranges
def sings_after(
    frequency: float, throttle: float, emf: float, coupling: float = COUPLING, stage: Stage = SALTMARSH_STAGE
) -> bool:
    """Whether the set goes on by itself when a carrier that was on has gone.

    Parameters
    ----------
    frequency, throttle, emf, coupling, stage
        As in `swing_with_station`; an infinite `emf` stands for a set that was swinging as far as it can.

    Returns
    -------
    bool

    Raises
    ------
    ValueError
        As `swing_with_station`.
    """
    there = on_station(frequency, throttle, coupling, stage)
    if np.isinf(emf):
        state = start(stage, FULL_SWING)
        state = follow(np.zeros(int(SETTLE * RATE)), RATE, frequency, there, stage, state).state
    else:
        state = follow(np.full(int(SETTLE * RATE), emf), RATE, frequency, there, stage).state
    left = np.abs(follow(np.zeros(int(SPAN * RATE)), RATE, frequency, there, stage, state).grid)
    return bool(left[-1] > TRACE and left[-1] > 0.9 * left[int(GROWS * RATE)])


@lru_cache(maxsize=512)
@check_ranges
def threshold_with_station(frequency: float, emf: float, coupling: float = COUPLING, stage: Stage = SALTMARSH_STAGE) -> float:
    """Least throttle at which a carrier leaves the set singing, or at which it would sing in any case.

    Parameters
    ----------
    frequency, emf, coupling, stage
        As in `sings_after`. With an infinite `emf` this is where the set stops when reaction is taken back.

    Returns
    -------
    float, farad, at most `threshold_in_silence`

    Raises
    ------
    ValueError
        As `sings_after`.

    Source
    ------
    The envelope's equation, and halving.
    """
    high = threshold_in_silence(frequency, coupling, stage)
    low = max(LEAST_PART * high, THROTTLE_RANGE[0])
    if emf == 0 or not sings_after(frequency, 0.998 * high, emf, coupling, stage):
        return high
    for _ in range(HALVINGS):
        middle = (low + high) / 2
        low, high = (low, middle) if sings_after(frequency, middle, emf, coupling, stage) else (middle, high)
    return (low + high) / 2


@check_ranges
def margin_used(frequency: float, emf: float, coupling: float = COUPLING, stage: Stage = SALTMARSH_STAGE) -> float:
    """What share of the throttle's way to the threshold a carrier uses up.

    Parameters
    ----------
    frequency, emf, coupling, stage
        As in `threshold_with_station`.

    Returns
    -------
    float, a fraction, 0 for a weak carrier or a set that slides into oscillation

    Raises
    ------
    ValueError
        As `threshold_with_station`.
    """
    silent = threshold_in_silence(frequency, coupling, stage)
    return 1 - threshold_with_station(frequency, emf, coupling, stage) / silent


@check_ranges
def margin_left(
    frequency: float, throttle: float, emf: float, coupling: float = COUPLING, stage: Stage = SALTMARSH_STAGE
) -> float:
    """How much further the throttle may be turned before the station's carrier leaves the set singing.

    Parameters
    ----------
    frequency, emf, coupling, stage
        As in `threshold_with_station`.
    throttle : float, farad, > 0

    Returns
    -------
    float, a fraction of the throttle that is set; below 0 it is beyond

    Raises
    ------
    ValueError
        As `threshold_with_station`.
    """
    return threshold_with_station(frequency, emf, coupling, stage) / throttle - 1

"""Does it slide into oscillation, or plop?   Lesson: Oscillation, section 3.

returned    of each ampere of anode current at the carrier, how much comes back into the tuned circuit: by the tickler, less
            what the capacitance from anode to grid takes
loss        siemens: what the tuned circuit loses for each volt, the grid's own load left out
"""

import numpy as np

from solutions.ranges import check_ranges
from solutions.unit04_crystal_set.rectified_voltage import i1_over_i0
from solutions.unit05_valve.grid_leak import bias_with_carrier
from solutions.unit05_valve.one_valve_set import GRID_SLOPE, LAW, ZERO_CURRENT
from solutions.unit07_oscillation.limit_amplitude import effective_transconductance

SWINGS = np.geomspace(1e-3, 50.0, 120)  # volt, crest: from next to nothing to more than any battery set does


@check_ranges
def grid_load(swing: float, leak_resistance: float, return_voltage: float) -> float:
    """How much the club's grid and its leak load the tuned circuit while it swings.

    Parameters
    ----------
    swing : float or ndarray, volt, crest, > 0
    leak_resistance : float or ndarray, ohm, > 0, from grid to filament
    return_voltage : float or ndarray, volt, >= 0, of the filament's end that the leak is taken to

    Returns
    -------
    float or ndarray, siemens; the arguments broadcast together

    Source
    ------
    The leak carries the grid's mean current. At the carrier the grid takes 2 I1/I0 times that (`i1_over_i0`), for each
    volt of swing; the leak takes its own.
    """
    bias = bias_with_carrier(swing, leak_resistance, return_voltage, ZERO_CURRENT, GRID_SLOPE)
    mean_current = (return_voltage - bias) / leak_resistance
    return 2 * mean_current * i1_over_i0(swing / GRID_SLOPE) / swing + 1 / leak_resistance


@check_ranges
def returned_for(swing: float, loss: float, leak_resistance: float, return_voltage: float, anode_voltage: float) -> float:
    """Reaction that just keeps up a swing.

    Parameters
    ----------
    swing : float or ndarray, volt, crest, > 0
    loss : float or ndarray, siemens, > 0
    leak_resistance, return_voltage
        As in `grid_load`.
    anode_voltage : float or ndarray, volt, > 0, steady

    Returns
    -------
    float or ndarray, `returned`, a pure number; the arguments broadcast together

    Source
    ------
    All that is lost, loss and grid load, is made good by `returned` × effective transconductance.
    """
    bias = bias_with_carrier(swing, leak_resistance, return_voltage, ZERO_CURRENT, GRID_SLOPE)
    lost = loss + grid_load(swing, leak_resistance, return_voltage)
    worth = effective_transconductance(swing, bias, anode_voltage, *LAW)
    if np.any(worth <= 0):
        raise ValueError("the valve is cut off, so no reaction keeps such a swing up: raise the anode's voltage")
    return lost / worth


@check_ranges
def start_and_stop(loss: float, leak_resistance: float, return_voltage: float, anode_voltage: float) -> tuple[float, float]:
    """Reaction at which the set begins to oscillate when it is turned up, and at which it stops when it is turned down.

    Parameters
    ----------
    loss, leak_resistance, return_voltage, anode_voltage : float
        As in `returned_for`.

    Returns
    -------
    start, stop : float, `returned`, a pure number; alike where the onset is smooth, else there is backlash

    Source
    ------
    It starts when the smallest swing can grow, and stops when no swing can be kept up: the least of `returned_for`.
    """
    needed = returned_for(SWINGS, loss, leak_resistance, return_voltage, anode_voltage)
    return float(needed[0]), float(np.min(needed))


@check_ranges
def swing_at(
    turned: float,
    oscillating: bool,
    loss: float,
    leak_resistance: float,
    return_voltage: float,
    anode_voltage: float,
) -> float:
    """How far the set swings at a setting of the reaction, which depends on whether it was swinging before.

    Parameters
    ----------
    turned : float, a fraction of the reaction at which it starts, 0 to 1.5; at 1 it starts
    oscillating : bool, whether it was
    loss, leak_resistance, return_voltage, anode_voltage : float
        As in `returned_for`.

    Returns
    -------
    float, volt, crest; 0 where it does not oscillate

    Source
    ------
    The largest swing that this reaction keeps up, read off the curve of `returned_for` where that rises, beyond its least.
    """
    needed = returned_for(SWINGS, loss, leak_resistance, return_voltage, anode_voltage)
    rising = np.argmin(needed)
    returned = turned * needed[0]
    if returned < needed[rising if oscillating else 0]:
        return 0.0
    return float(np.interp(returned, needed[rising:], SWINGS[rising:]))


@check_ranges
def least_swing(loss: float, leak_resistance: float, return_voltage: float, anode_voltage: float) -> float:
    """The swing that needs the least reaction: at which the set stops when it is turned down.

    Parameters
    ----------
    loss, leak_resistance, return_voltage, anode_voltage : float
        As in `returned_for`.

    Returns
    -------
    float, volt, crest
    """
    return float(SWINGS[np.argmin(returned_for(SWINGS, loss, leak_resistance, return_voltage, anode_voltage))])

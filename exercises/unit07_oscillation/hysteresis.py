"""Does it slide into oscillation, or plop?   Lesson: Oscillation, section 3 (course/lessons/unit07_oscillation/index.md).

returned    of each ampere of anode current at the carrier, how much comes back into the tuned circuit: by the tickler, less
            what the capacitance from anode to grid takes
loss        siemens: what the tuned circuit loses for each volt, the grid's own load left out
"""

import numpy as np

from exercises.unit04_crystal_set.rectified_voltage import i1_over_i0
from exercises.unit05_valve.grid_leak import bias_with_carrier
from exercises.unit05_valve.one_valve_set import GRID_SLOPE, LAW, ZERO_CURRENT
from exercises.unit07_oscillation.limit_amplitude import effective_transconductance

SWINGS = np.geomspace(1e-3, 50.0, 120)  # volt, crest: from next to nothing to more than any battery set does


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
    raise NotImplementedError


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
    raise NotImplementedError


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
    raise NotImplementedError


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
    raise NotImplementedError

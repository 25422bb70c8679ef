"""What the exercise of backlash calls loss and returned, of a whole set: three windings, and an anode with capacitances."""

from dataclasses import replace

import numpy as np

from solutions.ranges import check_ranges
from solutions.unit06_reaction.network import ANODE, GRID, SALTMARSH_SET, STATES, ReactionSet, rates
from solutions.unit07_oscillation.slow_mode import OPEN
from solutions.unit07_oscillation.stage import SALTMARSH_STAGE, Stage
from solutions.unit07_oscillation.station_on import on_station, threshold_in_silence, threshold_with_station


@check_ranges
def loss_and_returned(reaction_set: ReactionSet, frequency: float) -> tuple[float, float]:
    """What the tuned circuit loses with a cold valve, and how much of the anode's current comes back into it.

    Parameters
    ----------
    reaction_set : ReactionSet, tuned to the frequency; the grid's own load is left out of it
    frequency : float, hertz, > 0

    Returns
    -------
    loss : float, siemens, of coil, aerial and all else that is coupled to it
    returned : float, a pure number: by the tickler, less what the capacitance from anode to grid takes

    Raises
    ------
    ValueError
        As `network.rates`.

    Source
    ------
    The network solved twice with the valve taken out: an ampere put in at the grid's end, and one drawn from the anode.
    """
    cold = replace(reaction_set, transconductance=0.0, anode_resistance=OPEN, grid_conductance=0.0)
    storage, flow = rates(cold)
    pushes = np.zeros((len(STATES), 2))
    pushes[GRID, 0], pushes[ANODE, 1] = 1.0, -1.0
    by_grid, by_anode = np.linalg.solve(2j * np.pi * frequency * storage - flow, pushes)[GRID]
    return float((1 / by_grid).real), float((by_anode / by_grid).real)


@check_ranges
def by_throttle(
    frequency: float, coupling: float = SALTMARSH_SET.aerial_tuned, stage: Stage = SALTMARSH_STAGE
) -> tuple[float, float]:
    """How far the throttle of a set with backlash goes back from start to stop, and how far its reaction does.

    Parameters
    ----------
    frequency, coupling, stage
        As in `threshold_with_station`.

    Returns
    -------
    throttle, returned : float, at the stop, as parts of those at the start

    Raises
    ------
    ValueError
        As `threshold_with_station`.

    Source
    ------
    The envelope's equation for the two throttles.
    """
    ends = (
        threshold_with_station(frequency, np.inf, coupling, stage),
        threshold_in_silence(frequency, coupling, stage),
    )
    stop, start = (loss_and_returned(on_station(frequency, throttle, coupling, stage), frequency)[1] for throttle in ends)
    return ends[0] / ends[1], stop / start

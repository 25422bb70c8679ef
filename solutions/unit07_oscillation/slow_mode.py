"""The network of three windings, reduced to the one mode that is slow beside the carrier."""
from typing import NamedTuple

import numpy as np

from solutions.unit06_reaction.network import AERIAL, GRID, TICKLER, ReactionSet, rates
from solutions.unit07_oscillation.stage import Stage, small_signal_set

TOO_NEAR = 2 * np.pi * 50e3  # radian a second: a second mode as near as this would have to be followed too
LEAST_KAPPA = 0.03  # with less throttle than this the tables of `cycle` would be left


class Net(NamedTuple):
    """The slow mode, scaled to 1 V on the grid, and what all other modes do at once.

    The valve is in it by its slopes at rest, so that the mode of a weak signal is followed exactly.
    """

    rate: complex  # 1/s: growth, and turning in the frame
    anode_current: complex  # siemens: what the anode passes for each volt of the mode
    by_anode: complex  # V/s for each ampere that the anode passes beyond its slope
    by_grid: complex  # V/s for each ampere that the grid takes
    by_emf: complex  # V/s for each volt in the aerial
    grid_at_once: complex  # grid voltage for each volt in the aerial, beside the mode
    anode_at_once: complex  # siemens: anode current for each volt in the aerial, beside the mode
    anode_by_grid: complex  # anode current for each ampere that the grid takes
    grid_by_anode: complex  # ohm: grid voltage at once for each ampere that the anode passes beyond its slope
    grid_by_grid: complex  # ohm: grid voltage at once for each ampere that the grid takes
    echo: complex  # how far the rest of the network is from a tickler and throttle by themselves
    slope: float  # siemens: the valve's at rest
    grid_slope: float  # siemens: the grid's at rest
    resistance: float  # ohm: the tickler's
    leakage: float  # henry: the tickler's with the other windings shorted
    throttle: float  # farad
    coil: float  # a fraction: as in `cycle.anode_cycle`
    tuned_tickler: float  # henry, mutual


def slow_mode(windings: ReactionSet, stage: Stage, reference: float) -> Net:
    """The mode nearest to a frequency, and what the rest of the network does at that frequency.

    Parameters
    ----------
    windings : ReactionSet
    stage : Stage
    reference : float, hertz, > 0, of the frame

    Returns
    -------
    Net

    Raises
    ------
    ValueError
        If the aerial's circuit is tuned so near that it would have to be followed too; if the tickler resonates with its
        throttle below the reference; if the throttle is all but shut; or as `inductance_matrix`.

    Source
    ------
    Modes are the eigenvectors of `network.state_matrix`. A mode far from the frame answers a push at once.
    """
    small = small_signal_set(windings, stage)
    carrier = 2j * np.pi * reference
    storage, flow = rates(small)
    into = np.linalg.inv(storage)
    poles, shapes = np.linalg.eig(into @ flow)
    slow, second = np.argsort(np.abs(poles - carrier))[:2]
    if np.abs(poles[second] - carrier) < TOO_NEAR:
        raise ValueError("the aerial's circuit is tuned close to the set's: loosen the coupling or shorten the aerial")
    leakage = 1 / into[TICKLER, TICKLER]
    own = small.tickler_resistance + carrier * leakage + 1 / (carrier * small.throttle_capacitance)
    if own.imag >= 0:
        raise ValueError("tickler and throttle resonate below the carrier: take less throttle or fewer turns")
    if stage.amplification_factor / -own.imag < LEAST_KAPPA * small.transconductance / 1.5:
        raise ValueError("the throttle is all but shut: give it a picofarad or more")

    sources = np.stack([-small.anode_resistance * into[:, TICKLER], -into[:, GRID], into[:, AERIAL]], axis=-1)
    driven = np.linalg.solve(shapes, sources)
    fast = np.delete(np.arange(len(poles)), slow)
    at_once = shapes[:, fast] @ (driven[fast] / (carrier - poles[fast])[:, None])
    shape = shapes[:, slow] / shapes[GRID, slow]
    stands = 1 + own * small.transconductance / stage.amplification_factor
    complex_parts = (
        poles[slow] - carrier,
        -shape[TICKLER],
        *(driven[slow] * shapes[GRID, slow]),
        at_once[GRID, 2],
        -at_once[TICKLER, 2],
        -at_once[TICKLER, 1],
        at_once[GRID, 0],
        at_once[GRID, 1],
        -stands * at_once[TICKLER, 0] - 1,
    )
    real_parts = (
        small.transconductance,
        small.grid_conductance - 1 / stage.leak_resistance,
        small.tickler_resistance,
        leakage,
        small.throttle_capacitance,
        # to the second harmonic the tuned winding adds a third of μ times the mutual inductance
        -carrier.imag * (leakage + 4 / 9 * stage.amplification_factor * small.tuned_tickler) / own.imag,
        small.tuned_tickler,
    )
    return Net(*map(complex, complex_parts), *map(float, real_parts))

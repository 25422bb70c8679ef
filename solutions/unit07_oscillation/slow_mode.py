"""The network of three windings and anode, reduced to the one mode that is slow beside the carrier."""

from dataclasses import replace
from typing import NamedTuple

import numpy as np

from solutions.ranges import check_ranges
from solutions.unit06_reaction.network import AERIAL, ANODE, GRID, STATES, ReactionSet, rates
from solutions.unit07_oscillation.stage import Stage, slopes_at_rest, small_signal_set

TOO_NEAR = 2 * np.pi * 50e3  # radian a second: a second mode as near as this would have to be followed too
OPEN = 1e15  # ohm: the anode's resistance where the valve's current is put in from outside


class Net(NamedTuple):
    """The slow mode, scaled to 1 V on the valve's grid, and what all other modes do at once.

    The valve is in it by its slopes at rest, so that the mode of a weak signal is followed exactly. "Drive" is the
    voltage that the valve's current obeys: the grid's, and the anode's over μ.
    """

    rate: complex  # 1/s: growth, and turning in the frame
    tuned: complex  # voltage of the tuned circuit for each volt of the mode
    drive: complex  # drive for each volt of the mode
    by_anode: complex  # V/s for each ampere that the anode passes beyond its slope
    by_grid: complex  # V/s for each ampere that the grid takes
    by_emf: complex  # V/s for each volt in the aerial
    grid_at_once: complex  # grid voltage for each volt in the aerial, beside the mode
    drive_at_once: complex  # drive for each volt in the aerial, beside the mode
    grid_by_anode: complex  # ohm: grid voltage at once for each ampere that the anode passes beyond its slope
    grid_by_grid: complex  # ohm: grid voltage at once for each ampere that the grid takes
    drive_by_anode: complex  # ohm: drive at once, likewise
    drive_by_grid: complex  # ohm
    second_drive: complex  # ohm: drive for each ampere of the anode current's second harmonic
    third_drive: complex  # ohm
    fourth_drive: complex  # ohm
    second_grid: complex  # ohm: grid voltage, likewise
    third_grid: complex  # ohm
    fourth_grid: complex  # ohm
    slope: float  # siemens: the valve's at rest
    grid_slope: float  # siemens: the grid's at rest
    grid_node: float  # farad: all that meets at the grid
    grid_fed: float  # of a slow change of the anode's voltage, the share that its capacitance brings to the grid


@check_ranges
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
        If the aerial's circuit is tuned so near that it would have to be followed too; or as `rates`.

    Source
    ------
    Modes are the eigenvectors of `network.state_matrix`. A mode far from the frame answers a push at once.
    """
    small = small_signal_set(windings, stage)
    slope, _, conductance = slopes_at_rest(stage)
    carrier = 2j * np.pi * reference
    at_grid = np.zeros(len(STATES))
    at_grid[[GRID, ANODE]] = np.array([stage.grid_capacitance, stage.grid_anode]) / stage.grid_node
    in_drive = at_grid.copy()
    in_drive[ANODE] += 1 / stage.amplification_factor
    storage, flow = rates(replace(small, grid_conductance=0.0))
    flow = flow - conductance * np.outer(at_grid, at_grid)
    into = np.linalg.inv(storage)
    poles, shapes = np.linalg.eig(into @ flow)
    slow, second = np.argsort(np.abs(poles - carrier))[:2]
    if np.abs(poles[second] - carrier) < TOO_NEAR:
        raise ValueError("the aerial's circuit is tuned close to the set's: loosen the coupling or shorten the aerial")

    sources = np.stack([-into[:, ANODE], -into @ at_grid, into[:, AERIAL]], axis=-1)
    driven = np.linalg.solve(shapes, sources)
    fast = np.delete(np.arange(len(poles)), slow)
    at_once = shapes[:, fast] @ (driven[fast] / (carrier - poles[fast])[:, None])
    shape = shapes[:, slow] / (at_grid @ shapes[:, slow])
    grids, drives = at_grid @ at_once, in_drive @ at_once
    harmonics = overtone_answers(small, reference)
    complex_parts = (
        poles[slow] - carrier,
        shape[GRID],
        in_drive @ shape,
        *(driven[slow] * (at_grid @ shapes[:, slow])),
        grids[2],
        drives[2],
        *grids[:2],
        *drives[:2],
        *(harmonics @ in_drive),
        *(harmonics @ at_grid),
    )
    real_parts = slope, conductance - 1 / stage.leak_resistance, stage.grid_node, at_grid[ANODE]
    return Net(*map(complex, complex_parts), *map(float, real_parts))


@check_ranges
def overtone_answers(windings: ReactionSet, frequency: float) -> np.ndarray:
    """What the second to fourth harmonic of the anode's current make of all seven states.

    Parameters
    ----------
    windings : ReactionSet
    frequency : float, hertz, > 0, of the carrier

    Returns
    -------
    ndarray of shape (3, 7), complex, for each ampere

    Source
    ------
    The network with the valve taken out, solved at each harmonic with a current drawn from the anode.
    """
    storage, flow = rates(replace(windings, transconductance=0.0, anode_resistance=OPEN))
    harmonic = 2j * np.pi * frequency * np.array([2, 3, 4])[:, None, None]
    drawn = np.zeros((len(STATES), 1))
    drawn[ANODE] = -1.0
    return np.linalg.solve(harmonic * storage - flow, drawn)[..., 0]

"""Three coupled windings and a valve: the reaction set as a network.   Lesson: Reaction.

Three currents go round. i1 comes down the aerial through its winding to earth. i2 goes round the tuned winding into
its condenser, whose voltage v is on the grid. i3 comes out of the anode, through the tickler and the throttle condenser,
to earth: the valve drives it with −μv behind its anode resistance. Every winding is coupled to both others.
"""
from dataclasses import astuple, dataclass

import numpy as np

from solutions.unit01_signal.aerial_voltage import aerial_capacitance
from solutions.unit04_crystal_set.crystal_set import COIL, COIL_RESISTANCE, EARTH_RESISTANCE, HEIGHT, TOP, WIRE_RADIUS
from solutions.unit05_valve.grid_leak import rest_bias
from solutions.unit05_valve.load_line import operating_point
from solutions.unit05_valve.one_valve_set import (
    GRID_SLOPE,
    HT,
    LAW,
    LEAK,
    LEAK_RETURN,
    STEADY_RESISTANCE,
    ZERO_CURRENT,
)
from solutions.unit05_valve.triode_current import anode_resistance, mutual_conductance

STATES = ("aerial charge", "aerial current", "grid voltage", "tuned current", "tickler current", "throttle voltage")
CHARGE, AERIAL, GRID, TUNED, TICKLER, THROTTLE = range(6)  # where each stands among the states


@dataclass(frozen=True)
class ReactionSet:
    """A reaction set with every part a number; `dataclasses.replace` turns a knob.

    Parameters
    ----------
    aerial_resistance : float or ndarray, ohm, >= 0, of aerial and earth
    aerial_capacitance : float or ndarray, farad, > 0
    aerial_inductance : float or ndarray, henry, > 0, of the wire and its winding
    tuned_inductance : float or ndarray, henry, > 0
    tuned_resistance : float or ndarray, ohm, >= 0, in series with it
    tuning_capacitance : float or ndarray, farad, > 0, across the tuned winding; the grid is on it
    tickler_inductance : float or ndarray, henry, > 0
    tickler_resistance : float or ndarray, ohm, >= 0
    throttle_capacitance : float or ndarray, farad, > 0, in series with the tickler: more of it is more reaction
    aerial_tuned : float or ndarray, henry, mutual inductance
    tuned_tickler : float or ndarray, henry, mutual inductance; positive when wound so as to help, else negative
    aerial_tickler : float or ndarray, henry, mutual inductance
    grid_conductance : float or ndarray, siemens, >= 0, of grid and leak across the tuned circuit
    transconductance : float or ndarray, siemens, >= 0, of the valve at rest; 0 is a cold valve
    anode_resistance : float or ndarray, ohm, > 0
        All arguments broadcast together.
    """

    aerial_resistance: float
    aerial_capacitance: float
    aerial_inductance: float
    tuned_inductance: float
    tuned_resistance: float
    tuning_capacitance: float
    tickler_inductance: float
    tickler_resistance: float
    throttle_capacitance: float
    aerial_tuned: float
    tuned_tickler: float
    aerial_tickler: float
    grid_conductance: float
    transconductance: float
    anode_resistance: float


def inductance_matrix(reaction_set: ReactionSet) -> np.ndarray:
    """Self and mutual inductances of the three windings: aerial, tuned, tickler.

    Parameters
    ----------
    reaction_set : ReactionSet

    Returns
    -------
    ndarray of shape (..., 3, 3), henry, symmetric

    Raises
    ------
    ValueError
        If the windings are coupled more closely than any coils can be: currents could then be found that store less
        than no energy.

    Source
    ------
    Reciprocity; the energy stored in a magnetic field is never negative.
    """
    one, two, three = reaction_set.aerial_inductance, reaction_set.tuned_inductance, reaction_set.tickler_inductance
    m12, m13, m23 = reaction_set.aerial_tuned, reaction_set.aerial_tickler, reaction_set.tuned_tickler
    entries = np.broadcast_arrays(one, m12, m13, m12, two, m23, m13, m23, three)
    matrix = np.stack(entries, axis=-1).reshape(*entries[0].shape, 3, 3).astype(float)
    if np.any(np.linalg.eigvalsh(matrix) <= 0):
        raise ValueError("the three windings are coupled more closely than coils can be: make a mutual inductance smaller")
    return matrix


def rates(reaction_set: ReactionSet) -> tuple[np.ndarray, np.ndarray]:
    """The set's six equations, E dx/dt = F x + (the aerial's e.m.f.), in the order of `STATES`.

    Parameters
    ----------
    reaction_set : ReactionSet

    Returns
    -------
    storage, flow : ndarray of shape (..., 6, 6), SI units
        E, of inductances and capacitances, and F, of all else.

    Raises
    ------
    ValueError
        As `inductance_matrix`.

    Source
    ------
    The voltages round each mesh add up to nothing, and so do the currents at each condenser.
    """
    shape = np.broadcast_shapes(*map(np.shape, astuple(reaction_set)))
    storage, flow = np.zeros((2, *shape, 6, 6))
    windings = np.array([[AERIAL], [TUNED], [TICKLER]])
    storage[..., windings, windings.T] = inductance_matrix(reaction_set)
    storage[..., CHARGE, CHARGE] = 1
    storage[..., GRID, GRID] = reaction_set.tuning_capacitance
    storage[..., THROTTLE, THROTTLE] = reaction_set.throttle_capacitance

    flow[..., CHARGE, AERIAL] = 1
    flow[..., AERIAL, AERIAL] = -np.asarray(reaction_set.aerial_resistance)
    flow[..., AERIAL, CHARGE] = -1 / np.asarray(reaction_set.aerial_capacitance)
    flow[..., GRID, TUNED] = 1
    flow[..., GRID, GRID] = -np.asarray(reaction_set.grid_conductance)
    flow[..., TUNED, TUNED] = -np.asarray(reaction_set.tuned_resistance)
    flow[..., TUNED, GRID] = -1
    flow[..., TICKLER, TICKLER] = -np.add(reaction_set.tickler_resistance, reaction_set.anode_resistance)
    flow[..., TICKLER, THROTTLE] = -1
    flow[..., TICKLER, GRID] = -np.multiply(reaction_set.transconductance, reaction_set.anode_resistance)
    flow[..., THROTTLE, TICKLER] = 1
    return storage, flow


def state_matrix(reaction_set: ReactionSet) -> np.ndarray:
    """The matrix A of dx/dt = A x + (drive) × (e.m.f.), x being the six states in the order of `STATES`.

    Parameters
    ----------
    reaction_set : ReactionSet

    Returns
    -------
    ndarray of shape (..., 6, 6), SI units; its eigenvalues are the set's poles, in radians a second

    Raises
    ------
    ValueError
        As `inductance_matrix`.
    """
    storage, flow = rates(reaction_set)
    return np.linalg.solve(storage, flow)


def drive(reaction_set: ReactionSet) -> np.ndarray:
    """What a volt of e.m.f. in the aerial does to the rates of the six states.

    Parameters
    ----------
    reaction_set : ReactionSet

    Returns
    -------
    ndarray of shape (..., 6), SI units

    Raises
    ------
    ValueError
        As `inductance_matrix`.
    """
    storage, _ = rates(reaction_set)
    return np.linalg.inv(storage)[..., AERIAL]


THROTTLE_RANGE = 5e-12, 75e-12  # farad: the throttle condenser, its plates straight-line in frequency
DIAL = 530e3, 1600e3  # hertz

REST_BIAS = rest_bias(LEAK, LEAK_RETURN, ZERO_CURRENT, GRID_SLOPE)
REST_ANODE, _ = operating_point(HT, STEADY_RESISTANCE, REST_BIAS, *LAW)

# The Circle's three-winding set: aerial, coil and valve of the earlier units. The aerial's winding is smaller than the
# crystal set's, so that with the wire's own 15 µH it resonates above the dial, and there is no dead spot on it.
SALTMARSH_SET = ReactionSet(
    aerial_resistance=EARTH_RESISTANCE,
    aerial_capacitance=float(aerial_capacitance(HEIGHT, TOP, WIRE_RADIUS)),
    aerial_inductance=40e-6,
    tuned_inductance=COIL,
    tuned_resistance=COIL_RESISTANCE,
    tuning_capacitance=126e-12,
    tickler_inductance=12e-6,
    tickler_resistance=1.0,
    throttle_capacitance=10e-12,
    aerial_tuned=20e-6,
    tuned_tickler=6e-6,
    aerial_tickler=0.2e-6,
    grid_conductance=float(1 / LEAK + ZERO_CURRENT * np.exp(REST_BIAS / GRID_SLOPE) / GRID_SLOPE),
    transconductance=float(mutual_conductance(REST_ANODE, REST_BIAS, *LAW)),
    anode_resistance=float(anode_resistance(REST_ANODE, REST_BIAS, *LAW)),
)

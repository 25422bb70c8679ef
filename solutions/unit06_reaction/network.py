"""Three coupled windings and a valve: the reaction set as a network.   Lesson: Reaction.

Three currents go round. i1 comes down the aerial through its winding to earth. i2 goes round the tuned winding into
its condenser, whose voltage v is on the grid. i3 comes out of the anode, through the tickler and the throttle condenser,
to earth. Every winding is coupled to both others. The anode is a node of its own, at a voltage va: the valve draws
gm v + va/ra from it, a condenser joins it to earth (the valve's own, wiring, choke and by-pass), and another to the grid.
"""

from dataclasses import dataclass, replace

import numpy as np

from solutions.ranges import check_ranges, limits, refuse_outside
from solutions.unit01_signal.aerial_voltage import aerial_capacitance
from solutions.unit02_coil_and_condenser.club_coil import STATED, coil_resistance
from solutions.unit04_crystal_set.crystal_set import COIL, EARTH_RESISTANCE, HEIGHT, TOP, WIRE_RADIUS
from solutions.unit05_valve.grid_leak import rest_bias
from solutions.unit05_valve.load_line import operating_point
from solutions.unit05_valve.one_valve_set import (
    CONDENSER,
    GRID_SLOPE,
    HT,
    LAW,
    LEAK,
    LEAK_RETURN,
    STEADY_RESISTANCE,
    ZERO_CURRENT,
)
from solutions.unit05_valve.triode_current import anode_resistance, mutual_conductance
from solutions.unit05_valve.triodes import capacitances

STATES = (
    "aerial charge",
    "aerial current",
    "grid voltage",
    "tuned current",
    "tickler current",
    "throttle voltage",
    "anode voltage",
)
CHARGE, AERIAL, GRID, TUNED, TICKLER, THROTTLE, ANODE = range(7)  # where each stands among the states

CONDENSERS = "aerial_capacitance", "tuning_capacitance", "throttle_capacitance", "anode_capacitance"


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
    tuning_capacitance : float or ndarray, farad, > 0, across the tuned winding; the grid is on it, its own capacitance to
        the filament counted in
    tickler_inductance : float or ndarray, henry, > 0
    tickler_resistance : float or ndarray, ohm, >= 0
    throttle_capacitance : float or ndarray, farad, > 0, in series with the tickler: more of it is more reaction
    aerial_tuned : float or ndarray, henry, mutual inductance
    tuned_tickler : float or ndarray, henry, mutual inductance; positive when wound so as to help, else negative
    aerial_tickler : float or ndarray, henry, mutual inductance
    grid_conductance : float or ndarray, siemens, >= 0, of grid and leak across the tuned circuit
    transconductance : float or ndarray, siemens, >= 0, of the valve at rest; 0 is a cold valve
    anode_resistance : float or ndarray, ohm, > 0
    grid_anode_capacitance : float or ndarray, farad, >= 0, within the valve, its base and holder
        Where there is a grid condenser, these four as `through_grid_condenser` gives them.
    anode_capacitance : float or ndarray, farad, > 0, from the anode to earth: the valve's own, wiring, the choke's, by-pass
    tickler_conductance : float or ndarray, siemens, >= 0, of a resistor across the tickler; 0 is none
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
    grid_anode_capacitance: float
    anode_capacitance: float
    tickler_conductance: float = 0.0


LIMITS = tuple(limits(ReactionSet, dict.fromkeys(CONDENSERS, "give every condenser of the set some capacitance")))


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
    """The set's seven equations, E dx/dt = F x + (the aerial's e.m.f.), in the order of `STATES`.

    Parameters
    ----------
    reaction_set : ReactionSet

    Returns
    -------
    storage, flow : ndarray of shape (..., 7, 7), SI units
        E, of inductances and capacitances, and F, of all else.

    Raises
    ------
    ValueError
        If a part is outside the range that `ReactionSet` states for it; or as `inductance_matrix`.

    Source
    ------
    The voltages round each mesh add up to nothing, and so do the currents at each condenser.
    """
    shape = np.broadcast_shapes(*map(np.shape, vars(reaction_set).values()))
    refuse_outside("a reaction set", LIMITS, vars(reaction_set))
    storage, flow = np.zeros((2, *shape, 7, 7))
    windings = np.array([[AERIAL], [TUNED], [TICKLER]])
    storage[..., windings, windings.T] = inductance_matrix(reaction_set)
    storage[..., CHARGE, CHARGE] = 1
    storage[..., GRID, GRID] = np.add(reaction_set.tuning_capacitance, reaction_set.grid_anode_capacitance)
    storage[..., ANODE, ANODE] = np.add(reaction_set.anode_capacitance, reaction_set.grid_anode_capacitance)
    storage[..., GRID, ANODE] = storage[..., ANODE, GRID] = -np.asarray(reaction_set.grid_anode_capacitance)
    storage[..., THROTTLE, THROTTLE] = reaction_set.throttle_capacitance

    flow[..., CHARGE, AERIAL] = 1
    flow[..., AERIAL, AERIAL] = -np.asarray(reaction_set.aerial_resistance)
    flow[..., AERIAL, CHARGE] = -1 / np.asarray(reaction_set.aerial_capacitance)
    flow[..., GRID, TUNED] = 1
    flow[..., GRID, GRID] = -np.asarray(reaction_set.grid_conductance)
    flow[..., TUNED, TUNED] = -np.asarray(reaction_set.tuned_resistance)
    flow[..., TUNED, GRID] = -1
    flow[..., TICKLER, TICKLER] = -np.asarray(reaction_set.tickler_resistance)
    flow[..., TICKLER, THROTTLE] = -1
    flow[..., TICKLER, ANODE] = 1
    flow[..., THROTTLE, TICKLER] = 1
    flow[..., ANODE, TICKLER] = -1
    flow[..., ANODE, GRID] = -np.asarray(reaction_set.transconductance)
    flow[..., ANODE, ANODE] = -1 / np.asarray(reaction_set.anode_resistance)
    across = np.array([[ANODE], [THROTTLE]])
    flow[..., across, across.T] += np.multiply.outer(reaction_set.tickler_conductance, [[-1, 1], [1, -1]])
    return storage, flow


def state_matrix(reaction_set: ReactionSet) -> np.ndarray:
    """The matrix A of dx/dt = A x + (drive) × (e.m.f.), x being the seven states in the order of `STATES`.

    Parameters
    ----------
    reaction_set : ReactionSet

    Returns
    -------
    ndarray of shape (..., 7, 7), SI units; its eigenvalues are the set's poles, in radians a second

    Raises
    ------
    ValueError
        As `rates`.
    """
    storage, flow = rates(reaction_set)
    return np.linalg.solve(storage, flow)


def drive(reaction_set: ReactionSet) -> np.ndarray:
    """What a volt of e.m.f. in the aerial does to the rates of the seven states.

    Parameters
    ----------
    reaction_set : ReactionSet

    Returns
    -------
    ndarray of shape (..., 7), SI units

    Raises
    ------
    ValueError
        As `rates`.
    """
    storage, _ = rates(reaction_set)
    return np.linalg.inv(storage)[..., AERIAL]


@check_ranges
def through_grid_condenser(
    grid_condenser: float,
    grid_anode: float,
    grid_filament: float,
    transconductance: float,
    anode_resistance: float,
    grid_conductance: float,
) -> tuple[float, float, float, float]:
    """What a valve is to the tuned circuit when a grid condenser stands between the two.

    Condenser and the valve's capacitances divide the voltage: of the tuned circuit's the grid gets a part, and a little of
    the anode's besides, which acts like a lower anode resistance.

    Parameters
    ----------
    grid_condenser : float or ndarray, farad, > 0
    grid_anode, grid_filament : float or ndarray, farad, >= 0, of the valve itself
    transconductance : float or ndarray, siemens, >= 0, of the valve itself
    anode_resistance : float or ndarray, ohm, > 0, of the valve itself
    grid_conductance : float or ndarray, siemens, >= 0, at the grid

    Returns
    -------
    transconductance, anode_resistance, grid_conductance, grid_anode : float or ndarray
        Siemens, ohm, siemens, farad: as fields of `ReactionSet`. The arguments broadcast together.

    Source
    ------
    The grid's node taken out of the three condensers that meet there (star to mesh).
    """
    node = grid_condenser + grid_anode + grid_filament
    share, fed = grid_condenser / node, grid_anode / node
    resistance = 1 / (1 / anode_resistance + transconductance * fed)
    return share * transconductance, resistance, share**2 * grid_conductance, share * grid_anode


THROTTLE_RANGE = 10e-12, 500e-12  # farad: the throttle condenser
DIAL = 530e3, 1600e3  # hertz

REST_BIAS = rest_bias(LEAK, LEAK_RETURN, ZERO_CURRENT, GRID_SLOPE)
REST_ANODE, _ = operating_point(HT, STEADY_RESISTANCE, REST_BIAS, *LAW)

GRID_ANODE, GRID_FILAMENT, ANODE_FILAMENT = capacitances("type 30")  # farad
CHOKE, CHOKE_OWN = 100e-3, 3e-12  # henry, farad: in sections, below its own resonance nowhere on the dial
ANODE_WIRING, BY_PASS = 2.9e-12, 200e-12  # farad
VALVE = through_grid_condenser(
    CONDENSER,
    GRID_ANODE,
    GRID_FILAMENT,
    mutual_conductance(REST_ANODE, REST_BIAS, *LAW),
    anode_resistance(REST_ANODE, REST_BIAS, *LAW),
    1 / LEAK + ZERO_CURRENT * np.exp(REST_BIAS / GRID_SLOPE) / GRID_SLOPE,
)

# The Circle's three-winding set: aerial, coil and valve of the earlier units. The aerial's winding is smaller than the
# crystal set's, so that with the wire's own 15 µH it resonates above the dial, and there is no dead spot on it. The
# tickler is one that a valve with capacitances needs: see `unit06_reaction.choosing`.
SALTMARSH_SET = ReactionSet(
    aerial_resistance=EARTH_RESISTANCE,
    aerial_capacitance=float(aerial_capacitance(HEIGHT, TOP, WIRE_RADIUS)),
    aerial_inductance=40e-6,
    tuned_inductance=COIL,
    tuned_resistance=STATED,
    tuning_capacitance=120e-12,
    tickler_inductance=48e-6,
    tickler_resistance=2.0,
    throttle_capacitance=50e-12,
    aerial_tuned=20e-6,
    tuned_tickler=14e-6,
    aerial_tickler=0.4e-6,
    grid_conductance=float(VALVE[2]),
    transconductance=float(VALVE[0]),
    anode_resistance=float(VALVE[1]),
    grid_anode_capacitance=VALVE[3],
    anode_capacitance=ANODE_FILAMENT + CHOKE_OWN + ANODE_WIRING + BY_PASS,
)


@check_ranges
def saltmarsh_set(frequency: float) -> ReactionSet:
    """The Circle's set as it is on some part of the dial: its coil loses more the higher the frequency.

    Parameters
    ----------
    frequency : float or ndarray, hertz, > 0

    Returns
    -------
    ReactionSet
        `SALTMARSH_SET`, which holds at 1 MHz, with the resistance of the coil at this frequency.
    """
    return replace(SALTMARSH_SET, tuned_resistance=coil_resistance(frequency))

"""What a reaction set does, from its state matrix: poles, response, threshold, and the knobs set for a station.

Every function takes a `ReactionSet`, whose fields may be arrays: a map over two knobs is one call, with
`replace(SALTMARSH_SET, aerial_tuned=couplings[:, None], throttle_capacitance=throttles)`.
"""

from dataclasses import replace

import numpy as np

from solutions.ranges import check_ranges
from solutions.unit06_reaction.network import GRID, THROTTLE_RANGE, TUNED, ReactionSet, drive, state_matrix

MOST_STEPS, PRECISION = 60, 1e-12  # towards a threshold; the last step is no larger a part of it
ROUNDS = 12  # of setting one knob after the other
ON_STATION = 1e-5  # how nearly a set must ring at the frequency asked for, as a fraction of it


def parts(reaction_set: ReactionSet) -> tuple:
    """A set as the exercises take it: three knobs, then aerial, tuned, tickler and valve.

    Parameters
    ----------
    reaction_set : ReactionSet

    Returns
    -------
    coupling, tuning, throttle, aerial, tuned, tickler, valve
        As in `full_polynomial`.
    """
    of = reaction_set
    return (
        of.aerial_tuned,
        of.tuning_capacitance,
        of.throttle_capacitance,
        (of.aerial_resistance, of.aerial_capacitance, of.aerial_inductance),
        (of.tuned_resistance, of.tuned_inductance, of.grid_conductance),
        (of.tickler_resistance, of.tickler_inductance, of.tuned_tickler, of.aerial_tickler),
        (of.transconductance, of.anode_resistance, of.grid_anode_capacitance, of.anode_capacitance),
    )


@check_ranges
def from_parts(
    coupling: float,
    tuning: float,
    throttle: float,
    aerial: tuple[float, float, float],
    tuned: tuple[float, float, float],
    tickler: tuple[float, float, float, float],
    valve: tuple[float, float, float, float],
) -> ReactionSet:
    """A set from what the exercises take: `parts` the other way round.

    Parameters
    ----------
    coupling, tuning, throttle, aerial, tuned, tickler, valve
        As in `full_polynomial`.

    Returns
    -------
    ReactionSet
    """
    resistance, inductance, grid_conductance = tuned
    tickler_resistance, tickler_inductance, to_tuned, to_aerial = tickler
    return ReactionSet(
        *aerial,
        inductance,
        resistance,
        tuning,
        tickler_inductance,
        tickler_resistance,
        throttle,
        coupling,
        to_tuned,
        to_aerial,
        grid_conductance,
        *valve,
    )


def poles(reaction_set: ReactionSet) -> np.ndarray:
    """All poles, that which outlasts the others first.

    Parameters
    ----------
    reaction_set : ReactionSet

    Returns
    -------
    ndarray of shape (..., 7), complex, radian per second, by falling real part
        The first is the leading pole; of a pair that with the positive imaginary part comes first.

    Raises
    ------
    ValueError
        If the windings are coupled more closely than coils can be.
    """
    found = np.linalg.eigvals(state_matrix(reaction_set))
    return np.take_along_axis(found, np.lexsort((-found.imag, -found.real), axis=-1), axis=-1)


def ring(reaction_set: ReactionSet) -> tuple[np.ndarray, np.ndarray]:
    """Frequency at which the set rings, or sings, by itself, and the rate at which that grows.

    Parameters
    ----------
    reaction_set : ReactionSet

    Returns
    -------
    frequency : float or ndarray, hertz
    growth : float or ndarray, per second; below 0 the ring dies away, above it the set oscillates
        Of the pair of poles that grows, if one does; else of that which the tuned circuit takes the greatest part in.

    Raises
    ------
    ValueError
        As `poles`.

    Source
    ------
    The part of a state in a mode is the product of its entries in the mode's right and left eigenvectors (I. J.
    Pérez-Arriaga, G. C. Verghese, F. C. Schweppe, IEEE Transactions PAS-101, 1982, from memory).
    """
    found, right = np.linalg.eig(state_matrix(reaction_set))
    left = np.swapaxes(np.linalg.inv(right), -1, -2)
    part = np.sum(np.abs((right * left)[..., [GRID, TUNED], :]), axis=-2)
    rank = np.where(found.real > 0, part.sum(axis=-1, keepdims=True) + found.real, part)
    pole = np.take_along_axis(found, np.argmax(np.where(found.imag > 0, rank, -1.0), axis=-1)[..., None], axis=-1)[..., 0]
    return pole.imag / (2 * np.pi), pole.real


@check_ranges
def steady_formula(reaction_set: ReactionSet, frequency: float) -> np.ndarray:
    """What the steady-state formula gives, be it true or not. Beyond the threshold it is false: use `response`.

    Parameters
    ----------
    reaction_set : ReactionSet
    frequency : float or ndarray, hertz, > 0, broadcast with the set

    Returns
    -------
    complex or ndarray of complex, volts on the grid for each volt in the aerial

    Raises
    ------
    ValueError
        As `poles`.

    Source
    ------
    The state equations at s = jω, solved.
    """
    s = np.asarray(2j * np.pi * frequency)[..., None, None]
    matrix = s * np.eye(7) - state_matrix(reaction_set)
    return np.linalg.solve(matrix, drive(reaction_set)[..., None])[..., GRID, 0]


@check_ranges
def response(reaction_set: ReactionSet, frequency: float) -> np.ndarray:
    """Volts on the grid for each volt in the aerial, once the set has settled.

    Parameters
    ----------
    reaction_set : ReactionSet
    frequency : float or ndarray, hertz, > 0, broadcast with the set

    Returns
    -------
    complex or ndarray of complex, a pure number

    Raises
    ------
    ValueError
        If the set oscillates: it then never settles. Also as `poles`.
    """
    _refuse_oscillation(reaction_set)
    return steady_formula(reaction_set, frequency)


def _refuse_oscillation(reaction_set):
    if np.any(poles(reaction_set)[..., 0].real >= 0):
        raise ValueError("this set oscillates by itself and has no steady response: turn the reaction back")


def gain_and_bandwidth(reaction_set: ReactionSet) -> tuple[np.ndarray, np.ndarray]:
    """Volts on the grid for each volt in the aerial, at the frequency the set is tuned to, and the band it takes in.

    Parameters
    ----------
    reaction_set : ReactionSet

    Returns
    -------
    gain : float or ndarray, a pure number
    bandwidth : float or ndarray, hertz, between −3 dB points of the leading pole's resonance

    Raises
    ------
    ValueError
        As `response`.

    Source
    ------
    Near its leading pole σ + jω a network answers as one tuned circuit does: −3 dB at −σ to either side of ω.
    """
    frequency, growth = ring(reaction_set)
    return np.abs(response(reaction_set, frequency)), -growth / np.pi


def threshold(reaction_set: ReactionSet, knob: str, low: float, high: float) -> np.ndarray:
    """Setting of any one part at which the set begins to oscillate.

    Parameters
    ----------
    reaction_set : ReactionSet
    knob : str, a field of `ReactionSet`, such as "throttle_capacitance", "transconductance" or "tuned_tickler"
    low, high : float or ndarray, SI, broadcast with the set: the set is silent at one and oscillates at the other

    Returns
    -------
    float or ndarray, SI

    Raises
    ------
    ValueError
        If the set, or one of them, is silent at both settings or oscillates at both.

    Source
    ------
    The leading pole's real part is zero at the threshold: found between two settings by the line through them, where one of them
    stays twice its part halved (the Illinois rule: M. Dowell and P. Jarratt, BIT 11, 1971, from memory).
    """

    def growth(value):
        return poles(replace(reaction_set, **{knob: value}))[..., 0].real

    at_low, at_high = growth(low), growth(high)
    if np.any((at_low > 0) == (at_high > 0)):
        raise ValueError(f"no threshold between {knob} {np.min(low):.4g} and {np.max(high):.4g}: move the ends apart")
    oscillates_high = at_high > 0
    low, high = low + np.zeros(at_low.shape), high + np.zeros(at_low.shape)
    value = low
    for _ in range(MOST_STEPS):
        value, last = high - at_high * (high - low) / (at_high - at_low), value
        at_value = growth(value)
        beyond = (at_value > 0) == oscillates_high
        at_low = np.where(beyond, np.where(high == last, at_low / 2, at_low), at_value)
        at_high = np.where(beyond, at_value, np.where(low == last, at_high / 2, at_high))
        low, high = np.where(beyond, low, value), np.where(beyond, value, high)
        if np.all(np.abs(value - last) <= PRECISION * np.abs(value)):
            break
    return value[()]


@check_ranges
def retuned(reaction_set: ReactionSet, frequency: float) -> ReactionSet:
    """The set with its tuning condenser turned so that it rings at a frequency, all other knobs left alone.

    Parameters
    ----------
    reaction_set : ReactionSet
    frequency : float or ndarray, hertz, > 0, broadcast with the set

    Returns
    -------
    ReactionSet

    Raises
    ------
    ValueError
        If no setting makes it ring there: the aerial's own resonance is in the way. Also as `poles`.

    Source
    ------
    A frequency too high by a part in a hundred wants two parts in a hundred more capacitance; and again.
    """
    there = replace(reaction_set, tuning_capacitance=1 / ((2 * np.pi * frequency) ** 2 * reaction_set.tuned_inductance))
    for _ in range(ROUNDS):
        there = _nearer(there, frequency)
    return _checked(there, frequency)


def _nearer(reaction_set, frequency):
    found, _ = ring(reaction_set)
    return replace(reaction_set, tuning_capacitance=reaction_set.tuning_capacitance * (found / frequency) ** 2)


def _checked(reaction_set, frequency):
    if np.any(np.abs(ring(reaction_set)[0] / frequency - 1) > ON_STATION):
        raise ValueError("the tuning condenser cannot make this set ring at that frequency: loosen the aerial's coupling")
    return reaction_set


@check_ranges
def at_threshold(
    reaction_set: ReactionSet,
    frequency: float,
    knob: str = "throttle_capacitance",
    low: float = THROTTLE_RANGE[0],
    high: float = THROTTLE_RANGE[1],
) -> ReactionSet:
    """The set tuned to a frequency with its reaction just at the threshold there.

    Parameters
    ----------
    reaction_set : ReactionSet
    frequency : float or ndarray, hertz, > 0, broadcast with the set; the dial, for the reaction setting across it
    knob : str
        What the reaction is set by, as in `threshold`; the throttle condenser by default.
    low, high : float or ndarray, SI
        As in `threshold`; the throttle condenser's stops by default.

    Returns
    -------
    ReactionSet
        Its `tuning_capacitance` and the knob are arrays where `frequency` is one.

    Raises
    ------
    ValueError
        As `threshold`: the knob does not reach it at one of the frequencies. Also as `retuned`.

    Source
    ------
    As an operator does it: set the reaction, correct the tuning, and again.
    """
    there = retuned(reaction_set, frequency)
    for _ in range(ROUNDS):
        there = _nearer(replace(there, **{knob: threshold(there, knob, low, high)}), frequency)
    return _checked(there, frequency)

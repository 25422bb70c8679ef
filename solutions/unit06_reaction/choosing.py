"""Which tickler, and which choke at the anode: so that reaction comes in well within the throttle's travel all over the dial.

At the edge of oscillation a set swings for ever at one frequency. So all that hangs on the tuned winding takes, at that
frequency, just nothing: its conductance is 0. That is one equation for the throttle, and a quadratic one. No pole has to be
sought, and a map over the dial and two hundred sets is one call.
"""

from collections.abc import Iterable
from dataclasses import replace
from typing import NamedTuple

import numpy as np

from solutions.ranges import check_ranges
from solutions.unit06_reaction.network import GRID, THROTTLE, THROTTLE_RANGE, ReactionSet, rates
from solutions.unit06_reaction.stability import poles

TRAVEL = 0.1, 0.6  # of the throttle's greatest capacitance: where edges belong. Of 500 pF: 50 to 300 pF
IN_HAND = 1.5  # how many times farther valve, wiring and weather may move an edge before it leaves those
ON_EDGE = 1e-6  # how nearly a pole stands on the axis, as a part of its distance from 0
CHOKE_SHARE = 0.05  # of what else is from anode to earth: the most that the choke may take back of it


class Edge(NamedTuple):
    """Where a set begins to oscillate: both condensers, farad, as arrays over sets and dial; nan where it does not."""

    throttle: np.ndarray
    tuning: np.ndarray


@check_ranges
def edge(reaction_set: ReactionSet, frequency: float, low: float = THROTTLE_RANGE[0], high: float = THROTTLE_RANGE[1]) -> Edge:
    """Throttle and tuning condenser with which a set stands at the edge of oscillation just on a frequency.

    Parameters
    ----------
    reaction_set : ReactionSet
        Its own throttle and tuning condenser do not matter.
    frequency : float or ndarray, hertz, > 0, broadcast with the set
    low, high : float or ndarray, farad, > 0, of the throttle, its plates out and in

    Returns
    -------
    throttle, tuning : float or ndarray, farad
        The first edge on the way from the low stop to the high one. nan for both where the throttle does not reach it,
        where the set oscillates at the low stop already, and where no tuning condenser puts the set there.

    Raises
    ------
    ValueError
        As `rates`.

    Source
    ------
    Grid and throttle as two nodes of the network: Y = y11 − y12 y21/(y22 + jωC3) hangs on the grid, less the tuning condenser.
    With B for the imaginary part of y22 + jωC3 its real part is 0 where Re(y11)(B² + p²) = p Re(y12 y21) + B Im(y12 y21),
    p being the real part of y22.
    """
    nodes = np.array([GRID, THROTTLE])
    angular = 2 * np.pi * np.asarray(frequency, dtype=float)
    storage, flow = rates(reaction_set)
    between = np.linalg.inv(1j * np.multiply.outer(angular, np.ones((1, 1))) * storage - flow)[..., nodes[:, None], nodes]
    (y11, y12), (y21, y22) = np.moveaxis(np.linalg.inv(between), (-2, -1), (0, 1))
    y11 = y11 - 1j * angular * reaction_set.tuning_capacitance
    y22 = y22 - 1j * angular * reaction_set.throttle_capacitance
    loss, damping, product = y11.real, y22.real, y12 * y21

    def hanging(throttle):
        return y11 - product / (y22 + 1j * angular * throttle)

    with np.errstate(divide="ignore", invalid="ignore"):
        root = np.sqrt(product.imag**2 - 4 * loss * damping * (loss * damping - product.real))
        throttles = ((product.imag + np.multiply.outer([-1, 1], root)) / (2 * loss) - y22.imag) / angular
    reached = (throttles >= low) & (throttles <= high) & (hanging(np.broadcast_to(low, angular.shape)).real > 0)
    throttle = np.min(np.where(reached, throttles, np.inf), axis=0)
    tuning = -hanging(np.where(np.isfinite(throttle), throttle, high)).imag / angular
    there = np.isfinite(throttle) & (tuning > 0)
    return Edge(np.where(there, throttle, np.nan)[()], np.where(there, tuning, np.nan)[()])


@check_ranges
def threshold_span(
    reaction_set: ReactionSet, dial: np.ndarray, low: float = THROTTLE_RANGE[0], high: float = THROTTLE_RANGE[1]
) -> tuple[float, float]:
    """Least and greatest throttle capacitance at which a set begins to oscillate, over its dial.

    Parameters
    ----------
    reaction_set : ReactionSet
        What changes over the dial has the dial's length as its last axis; what changes from one set to another has one axis
        more, of length 1 for what does not change over the dial.
    dial : ndarray of shape (n,), hertz, > 0
    low, high
        As in `edge`.

    Returns
    -------
    least, greatest : float or ndarray of the sets' shape, farad; both nan for a set that somewhere on its dial has no edge

    Raises
    ------
    ValueError
        As `rates`.
    """
    throttle = edge(reaction_set, dial, low, high).throttle
    return np.min(throttle, axis=-1), np.max(throttle, axis=-1)


@check_ranges
def with_tickler(reaction_set: ReactionSet, inductance: float, mutual: float) -> ReactionSet:
    """The set with another tickler in the place of its own: what it shares with the aerial's winding goes with its turns.

    Parameters
    ----------
    reaction_set : ReactionSet
    inductance : float or ndarray, henry, > 0
    mutual : float or ndarray, henry, with the tuned winding

    Returns
    -------
    ReactionSet

    Source
    ------
    In the same place on the tube, self-inductance goes with the square of the turns, and a mutual inductance with the turns.
    """
    turns = np.sqrt(inductance / reaction_set.tickler_inductance)
    return replace(
        reaction_set,
        tickler_inductance=inductance,
        tickler_resistance=turns * reaction_set.tickler_resistance,
        tuned_tickler=mutual,
        aerial_tickler=turns * reaction_set.aerial_tickler,
    )


@check_ranges
def choose_tickler(
    trials: Iterable[ReactionSet], dial: np.ndarray, low: float = THROTTLE_RANGE[0], high: float = THROTTLE_RANGE[1]
) -> tuple[int, ReactionSet]:
    """The smallest tickler with which reaction comes in where it should all over the dial, and nothing else sings by then.

    Parameters
    ----------
    trials : iterable of ReactionSet, the smallest tickler first
        The same set with one tickler after another, each as in `threshold_span`.
    dial : ndarray of shape (n,), hertz, > 0
    low, high
        As in `edge`.

    Returns
    -------
    place : int, of the tickler among the trials
    chosen : ReactionSet

    Raises
    ------
    ValueError
        If none serves.

    Source
    ------
    Common practice, no source: as few turns as will do, because more of them detune the set and bring the tickler's own
    resonance down to the dial; and edges that are neither in the last third of the throttle's travel nor in its first tenth.
    """
    least, greatest = TRAVEL[0] * IN_HAND * high, TRAVEL[1] / IN_HAND * high
    for place, trial in enumerate(trials):
        there = edge(trial, dial, low, high)
        if np.all((there.throttle >= least) & (there.throttle <= greatest)) and not _sings_elsewhere(trial, dial, there):
            return place, trial
    raise ValueError(
        f"with none of these ticklers does reaction come in between {least * 1e12:.0f} and {greatest * 1e12:.0f} pF over the "
        "whole dial: bring the tickler nearer to the tuned winding, or take a smaller by-pass condenser at the anode"
    )


def _sings_elsewhere(reaction_set, dial, there):
    """Whether another pair of poles grows already where the tuned circuit's own stands at its edge: the anode's own circuit."""
    at_edge = replace(reaction_set, throttle_capacitance=there.throttle, tuning_capacitance=there.tuning)
    return np.any(poles(at_edge)[..., 0].real > ON_EDGE * 2 * np.pi * dial)


@check_ranges
def tickler_for(
    reaction_set: ReactionSet,
    dial: np.ndarray,
    coupling: float,
    low: float = THROTTLE_RANGE[0],
    high: float = THROTTLE_RANGE[1],
) -> ReactionSet:
    """A set's tickler chosen, from its other parts and from how closely it can be coupled.

    Parameters
    ----------
    reaction_set : ReactionSet
        As in `threshold_span`. Of its own tickler only the turns' resistance and the coupling with the aerial matter.
    dial : ndarray of shape (n,), hertz, > 0
    coupling : float, a pure number, above 0 to below 1, of tickler and tuned winding, whatever the tickler's turns
    low, high
        As in `edge`.

    Returns
    -------
    ReactionSet
        With the smallest tickler of whole microhenries that serves; `tickler_inductance` and `tuned_tickler` are its own.

    Raises
    ------
    ValueError
        As `choose_tickler`.
    """
    inductances = np.arange(2, 301) * 1e-6
    mutuals = coupling * np.sqrt(np.multiply.outer(inductances, reaction_set.tuned_inductance))
    trials = (with_tickler(reaction_set, *tickler) for tickler in zip(inductances, mutuals, strict=True))
    return choose_tickler(trials, dial, low, high)[1]


@check_ranges
def least_choke(frequency: float, anode_capacitance: float) -> float:
    """The smallest choke at the anode that takes back no more than a twentieth of what the capacitances there carry.

    Parameters
    ----------
    frequency : float or ndarray, hertz, > 0, the lowest on the dial
    anode_capacitance : float or ndarray, farad, > 0, all from the anode to earth, the choke's own and the by-pass counted in

    Returns
    -------
    float or ndarray, henry

    Source
    ------
    A choke acts like −1/(ω²L) of capacitance. One of much less makes the anode see a coil, and then the set sings by itself at
    the low end of the dial: see `balancing_inductance`.
    """
    return 1 / ((2 * np.pi * frequency) ** 2 * CHOKE_SHARE * anode_capacitance)

"""What does each knob do to the others?   Lesson: Reaction, section 6 (course/lessons/unit06_reaction/knobs.md).

A set is given as its three knobs, coupling, tuning and throttle, and then the parts that stay as they are: aerial,
tuned, tickler and valve, all as in `full_polynomial`.
"""

import numpy as np

from exercises.unit06_reaction.characteristic_polynomial import full_polynomial, leading_pole
from exercises.unit06_reaction.oscillation_point import crossing

ROUNDS = 5  # of setting reaction and tuning in turn


def tuned_to(
    coupling: float,
    tuning: float,
    throttle: float,
    aerial: tuple[float, float, float],
    tuned: tuple[float, float, float],
    tickler: tuple[float, float, float, float],
    valve: tuple[float, float, float, float],
) -> tuple[float, float]:
    """Frequency to which the set is tuned, and how wide a band it takes in.

    Parameters
    ----------
    coupling, tuning, throttle, aerial, tuned, tickler, valve
        As in `full_polynomial`.

    Returns
    -------
    frequency : float, hertz, at which it would ring
    bandwidth : float, hertz, between −3 dB points; below 0 where the set oscillates: then no band is taken in
        Both are those of the leading pole. In a set with little reaction and a sharp aerial that may be the aerial's.

    Raises
    ------
    ValueError
        As `full_polynomial`.

    Source
    ------
    Near its leading pole σ + jω a set answers as one tuned circuit does: −3 dB at −σ to either side of ω.
    """
    raise NotImplementedError


def detuning(
    coupling: float,
    tuning: float,
    throttle: float,
    aerial: tuple[float, float, float],
    tuned: tuple[float, float, float],
    tickler: tuple[float, float, float, float],
    valve: tuple[float, float, float, float],
) -> float:
    """How far the aerial draws the set from where it would be tuned with the aerial's coil far away.

    Parameters
    ----------
    coupling, tuning, throttle, aerial, tuned, tickler, valve
        As in `full_polynomial`.

    Returns
    -------
    float, hertz, below 0 where the aerial makes the set tune lower

    Raises
    ------
    ValueError
        As `full_polynomial`.

    Source
    ------
    With the aerial's coil far away both of its mutual inductances are 0.
    """
    raise NotImplementedError


def reaction_setting(
    coupling: float,
    tuning: float,
    least: float,
    most: float,
    aerial: tuple[float, float, float],
    tuned: tuple[float, float, float],
    tickler: tuple[float, float, float, float],
    valve: tuple[float, float, float, float],
) -> float:
    """Throttle capacitance at which the set begins to oscillate.

    Parameters
    ----------
    coupling, tuning : float
        As in `full_polynomial`.
    least, most : float, farad, > 0, of the throttle condenser, its plates out and in
    aerial, tuned, tickler, valve
        As in `full_polynomial`.

    Returns
    -------
    float, farad

    Raises
    ------
    ValueError
        If the set is silent with the plates in, or oscillates with the plates out: the knob does not reach the threshold.
        Also as `full_polynomial`.

    Source
    ------
    Every coefficient of the polynomial is a straight line in the throttle's capacitance: `crossing` between its stops.
    """
    raise NotImplementedError


def settings_for(
    frequency: float,
    coupling: float,
    least: float,
    most: float,
    aerial: tuple[float, float, float],
    tuned: tuple[float, float, float],
    tickler: tuple[float, float, float, float],
    valve: tuple[float, float, float, float],
) -> tuple[float, float]:
    """Tuning and throttle capacitance with which the set stands at the threshold just on a station's frequency.

    Parameters
    ----------
    frequency : float, hertz, > 0
    coupling, least, most, aerial, tuned, tickler, valve
        As in `reaction_setting`.

    Returns
    -------
    tuning, throttle : float, farad

    Raises
    ------
    ValueError
        As `reaction_setting`.

    Source
    ------
    As an operator does it: set the reaction, correct the tuning, and again. A frequency too high by a part in a hundred
    wants two parts in a hundred more capacitance.
    """
    raise NotImplementedError

"""How much of one coil's field does another catch?   Lesson: Coil and condenser, section 4
(course/lessons/unit02_coil_and_condenser/two_coils.md)."""

import numpy as np

from exercises.unit02_coil_and_condenser.solenoid_inductance import MU_0, elliptic_integrals


def coaxial_filaments(radius_1: float, radius_2: float, distance: float) -> float:
    """Mutual inductance of two thin circular turns on one axis.

    Parameters
    ----------
    radius_1, radius_2 : float or ndarray, metre, > 0, broadcast
    distance : float or ndarray, metre, broadcast with the radii
        From the plane of one turn to that of the other; not zero if the radii are equal.

    Returns
    -------
    float or ndarray, henry

    Raises
    ------
    ValueError
        If one turn lies upon the other anywhere: of equal radius and no distance, they would share more than all.

    Source
    ------
    J. C. Maxwell, A Treatise on Electricity and Magnetism, 1873, art. 701; in elliptic integrals of
    m = k² = 4 r₁ r₂ / ((r₁ + r₂)² + d²): M = μ₀ √(r₁ r₂) [(2/k - k) K(m) - (2/k) E(m)].
    """
    raise NotImplementedError


def turn_positions(turns: int, length: float) -> np.ndarray:
    """Places of the turns along the axis, from the middle of the winding.

    Parameters
    ----------
    turns : int, whole, >= 1
    length : float, metre, > 0

    Returns
    -------
    ndarray of `turns` floats, metre
    """
    raise NotImplementedError


def coaxial_coils(
    turns_1: int, diameter_1: float, length_1: float, turns_2: int, diameter_2: float, length_2: float, distance: float
) -> float:
    """Mutual inductance of two single-layer coils on one axis, summed over every pair of their turns.

    Turn n of N (n = 0, 1, …) lies at (n + 1/2) length / N from the end of its winding.

    Parameters
    ----------
    turns_1, turns_2 : int, whole, >= 1
    diameter_1, diameter_2 : float, metre, > 0
        From wire centre to wire centre.
    length_1, length_2 : float, metre, > 0
        Of each winding: turns times pitch.
    distance : float, metre
        From the middle of one winding to the middle of the other; no turn may lie upon another.

    Returns
    -------
    float, henry

    Raises
    ------
    ValueError
        If a turn of the one lies upon a turn of the other.
    """
    raise NotImplementedError


def coupling_coefficient(mutual_inductance: float, inductance_1: float, inductance_2: float) -> float:
    """Mutual inductance as a fraction of the greatest it could be between these two coils.

    Parameters
    ----------
    mutual_inductance : float or ndarray, henry
    inductance_1, inductance_2 : float or ndarray, henry, > 0, broadcast with `mutual_inductance`

    Returns
    -------
    float or ndarray, dimensionless, between -1 and 1

    Raises
    ------
    ValueError
        If it is more than 1, either way, by more than rounding: no coils are coupled so closely.
    """
    raise NotImplementedError


def mutual_from_series(inductance_aiding: float, inductance_opposing: float) -> float:
    """Mutual inductance from two bench readings of both coils in series, the second with one coil's ends exchanged.

    Parameters
    ----------
    inductance_aiding : float or ndarray, henry, > 0
        The greater reading: the fields help each other.
    inductance_opposing : float or ndarray, henry, > 0, broadcast with `inductance_aiding`

    Returns
    -------
    float or ndarray, henry
    """
    raise NotImplementedError

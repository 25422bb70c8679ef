"""How much inductance has a coil?   Lesson: Coil and condenser, section 2."""

import numpy as np

from solutions.ranges import check_ranges

MU_0 = 4e-7 * np.pi  # henry per metre
INCH = 25.4e-3  # metre
ROUNDS = 10  # each round doubles the number of right figures


@check_ranges
def common_mean(first: float, second: float) -> tuple[float, float]:
    """Arithmetic-geometric mean of two numbers, and the sum of 2ⁿ (half their gap)² after n = 1, 2, … rounds.

    Parameters
    ----------
    first, second : float or ndarray, > 0, in one unit, broadcast

    Returns
    -------
    tuple of two floats or ndarrays, in that unit and its square

    Source
    ------
    NIST Digital Library of Mathematical Functions, 19.8.1 and 19.8.6.
    """
    gaps = 0.0
    for n in range(1, ROUNDS):
        half_gap = (first - second) / 2
        first, second = (first + second) / 2, np.sqrt(first * second)
        gaps = gaps + 2**n * half_gap**2
    return first, gaps


@check_ranges
def elliptic_integrals(parameter: float) -> tuple[float, float]:
    """Complete elliptic integrals of the first and second kind, by the arithmetic-geometric mean.

    Parameters
    ----------
    parameter : float or ndarray, dimensionless, 0 to below 1
        The square of the modulus, m = k².

    Returns
    -------
    tuple of two floats or ndarrays, dimensionless
        K(m) and E(m), each of the shape of `parameter`.

    Source
    ------
    NIST Digital Library of Mathematical Functions, 19.8.5 and 19.8.6.
    """
    mean, gaps = common_mean(1.0, np.sqrt(1 - parameter))
    first_kind = np.pi / (2 * mean)
    return first_kind, first_kind * (1 - (parameter + gaps) / 2)


@check_ranges(diameter_over_length="rounding spoils the closed form there, so take a coil of another shape")
def nagaoka_coefficient(diameter_over_length: float) -> float:
    """Fraction of a very long coil's inductance per length that is left in a coil of finite length.

    Parameters
    ----------
    diameter_over_length : float or ndarray, dimensionless, 0.0002 to 5000
        Accurate to 1e-9 from 0.0005 to 5000, and to 1e-8 below; rounding spoils the closed form outside it.

    Returns
    -------
    float or ndarray, dimensionless, between 0 and 1

    Raises
    ------
    ValueError
        If the ratio is outside that range anywhere: rounding would spoil the closed form, which at 0 has no value at all.

    Source
    ------
    H. Nagaoka, J. Coll. Sci. Imp. Univ. Tokyo 27 art. 6, 1909; L. Lorenz 1879. Formula from memory, confirmed against
    the double integral of Maxwell's mutual inductance over the current sheet.
    """
    parameter = diameter_over_length**2 / (1 + diameter_over_length**2)
    modulus = np.sqrt(parameter)
    complement = 1 / np.sqrt(1 + diameter_over_length**2)
    first_kind, second_kind = elliptic_integrals(parameter)
    bracket = complement**2 / parameter * (first_kind - second_kind) + second_kind - modulus
    return 4 / (3 * np.pi * complement) * bracket


@check_ranges
def solenoid_inductance(turns: float, diameter: float, length: float) -> float:
    """Inductance of a single-layer coil, taken as a sheet of current wrapped round a cylinder.

    Parameters
    ----------
    turns : float or ndarray, dimensionless, > 0
    diameter : float or ndarray, metre, > 0, broadcast with `turns`
        From wire centre to wire centre.
    length : float or ndarray, metre, > 0, broadcast with `turns`
        Of the winding: turns times pitch.

    Returns
    -------
    float or ndarray, henry

    Source
    ------
    US National Bureau of Standards, Circular 74, 1924, formula (153), in SI units.
    """
    area = np.pi * diameter**2 / 4
    return MU_0 * turns**2 * area / length * nagaoka_coefficient(diameter / length)


@check_ranges
def wheeler_inductance(turns: float, diameter: float, length: float) -> float:
    """Inductance of a single-layer coil by a formula that needs only multiplication and one division.

    Parameters
    ----------
    turns : float or ndarray, dimensionless, > 0
    diameter : float or ndarray, metre, > 0, broadcast with `turns`
        From wire centre to wire centre.
    length : float or ndarray, metre, > 0.4 `diameter` for the promised one per cent, broadcast with `turns`

    Returns
    -------
    float or ndarray, henry

    Source
    ------
    H. A. Wheeler, "Simple Inductance Formulas for Radio Coils", Proc. IRE 16, October 1928:
    microhenries from the radius and length in inches, r² N² / (9 r + 10 l).
    """
    radius_inches = diameter / 2 / INCH
    length_inches = length / INCH
    return 1e-6 * (radius_inches * turns) ** 2 / (9 * radius_inches + 10 * length_inches)

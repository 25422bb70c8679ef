"""How much inductance has a coil?   Lesson: Coil and condenser, section 2
(course/lessons/unit02_coil_and_condenser/index.md)."""

import numpy as np

MU_0 = 4e-7 * np.pi  # henry per metre
INCH = 25.4e-3  # metre


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
    raise NotImplementedError


def nagaoka_coefficient(diameter_over_length: float) -> float:
    """Fraction of a very long coil's inductance per length that is left in a coil of finite length.

    Parameters
    ----------
    diameter_over_length : float or ndarray, dimensionless, 0.0002 to 5000

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
    raise NotImplementedError


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
    raise NotImplementedError


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
    raise NotImplementedError

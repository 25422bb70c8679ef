"""How much does a crystal rectify?   Lesson: Crystal set, section 3 (course/lessons/unit04_crystal_set/index.md).

x    crest of the carrier over the diode's slope voltage
y    rectified voltage over the diode's slope voltage
"""

import numpy as np


def log_i0(x: float) -> float:
    """Natural logarithm of the modified Bessel function I0: of the average of exp(x cos θ) round a cycle.

    Parameters
    ----------
    x : float or ndarray, a pure number, 0 to 10000; I0 itself is too large for a float above 713

    Returns
    -------
    float or ndarray, a pure number

    Source
    ------
    M. Abramowitz and I. A. Stegun, Handbook of Mathematical Functions, NBS AMS 55, 1964, eqs. 9.6.16 (average round a
    cycle) and 9.7.1 (for large x, exp(x)/sqrt(2πx) times 1 + 1/(8x) + …).
    """
    raise NotImplementedError


def i1_over_i0(x: float) -> float:
    """Ratio of the modified Bessel functions I1 and I0: where, in the cycle, a diode's current is gathered.

    Parameters
    ----------
    x : float or ndarray, a pure number, 0 to 10000

    Returns
    -------
    float or ndarray, a fraction: x/2 for a weak carrier, nearly 1 for a strong one

    Source
    ------
    Abramowitz and Stegun, 1964, eq. 9.6.19: the average of cos θ round a cycle, each moment weighted by exp(x cos θ).
    """
    raise NotImplementedError


def square_law_output(carrier: float, slope_voltage: float) -> float:
    """Voltage that an unloaded diode builds up from a weak carrier, far below the slope voltage.

    Parameters
    ----------
    carrier : float or ndarray, volt, crest, >= 0
    slope_voltage : float or ndarray, volt, > 0, broadcast with `carrier`

    Returns
    -------
    float or ndarray, volt

    Source
    ------
    First term of the series of ln I0.
    """
    raise NotImplementedError


def no_load_output(carrier: float, slope_voltage: float) -> float:
    """Voltage that an unloaded diode builds up on its condenser from a carrier of any strength.

    Parameters
    ----------
    carrier : float or ndarray, volt, crest, >= 0
    slope_voltage : float or ndarray, volt, > 0, broadcast with `carrier`

    Returns
    -------
    float or ndarray, volt

    Source
    ------
    No current flows on the average once exp(-y) I0(x) = 1.
    """
    raise NotImplementedError


def detector_output(carrier: float, load_resistance: float, saturation_current: float, slope_voltage: float) -> float:
    """Steady voltage that a diode builds up from a carrier on a condenser with a load across it.

    Parameters
    ----------
    carrier : float or ndarray, volt, crest, >= 0, at the diode
    load_resistance : float or ndarray, ohm, > 0; the condenser across it passes the carrier freely
    saturation_current : float or ndarray, ampere, > 0, of the diode
    slope_voltage : float or ndarray, volt, > 0, of the diode

    Returns
    -------
    float or ndarray, volt; the arguments broadcast together

    Source
    ------
    K. K. Clarke and D. T. Hess, Communication Circuits, 1971, ch. 10 (from memory): exp(-y) I0(x) - 1 = y/r, where r is
    the load over the diode's slope resistance at rest. With u = ln(1 + y/r) it reads u + r (exp(u) - 1) = ln I0(x),
    solved by Newton's steps downwards from the u that would be right if only the load stood in the way.
    """
    raise NotImplementedError

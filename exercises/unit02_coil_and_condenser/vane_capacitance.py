"""What does the dial turn?   Lesson: Coil and condenser, section 6
(course/lessons/unit02_coil_and_condenser/dial_and_sheet.md)."""

import numpy as np

EPSILON_0 = 8.8541878128e-12  # farad per metre, CODATA 2018
LAWS = {"capacitance": 1.0, "wavelength": 0.5, "frequency": -0.5}  # the power of C that is a straight line in the angle


def plate_capacitance(plates: int, area: float, gap: float) -> float:
    """Capacitance of a stack of plates in air, every other one joined, edges neglected.

    Parameters
    ----------
    plates : int or ndarray, >= 2
        Fixed and moving together.
    area : float or ndarray, square metre, >= 0, broadcast with `plates`
        Of one plate, as far as it faces the next.
    gap : float or ndarray, metre, > 0, broadcast with `plates`

    Returns
    -------
    float or ndarray, farad
    """
    raise NotImplementedError


def vane_capacitance(angle: float, law: str, minimum: float, maximum: float) -> float:
    """Capacitance of a variable condenser at an angle of its spindle, for three shapes of plate.

    Parameters
    ----------
    angle : float or ndarray, radian, 0 (plates out) to π (plates in)
    law : str
        What the scale is even in: "capacitance", "wavelength" or "frequency".
    minimum, maximum : float or ndarray, farad, > 0, broadcast with `angle`
        Capacitance with the plates out and in, strays included.

    Returns
    -------
    float or ndarray, farad

    Raises
    ------
    ValueError
        If there is no such law, or any angle is beyond a stop.
    """
    raise NotImplementedError


def power_of(law: str) -> float:
    """Power of the capacitance that a plate shape makes proportional to the angle.

    Parameters
    ----------
    law : str, "capacitance", "wavelength" or "frequency"

    Returns
    -------
    float, dimensionless

    Raises
    ------
    ValueError
        If there is no such law.
    """
    if law not in LAWS:
        raise ValueError(f"there is no law {law!r}: choose one of {', '.join(LAWS)}")
    return LAWS[law]


def vane_radius(angle: float, law: str, minimum: float, maximum: float, plates: int, gap: float, cut_out: float) -> float:
    """Radius of the moving plates at the edge that enters at an angle: the outline that gives the law.

    Parameters
    ----------
    angle, law, minimum, maximum
        As for `vane_capacitance`.
    plates : int, >= 2
        Fixed and moving together.
    gap : float, metre, > 0
    cut_out : float, metre, >= 0
        Radius of the hole in the fixed plates that clears the spindle.

    Returns
    -------
    float or ndarray, metre

    Raises
    ------
    ValueError
        If there is no such law, or any angle is beyond a stop.
    """
    raise NotImplementedError


def gangs_in_parallel(first: float, second: float) -> float:
    """Capacitance of two gangs side by side: both see the same voltage.

    Parameters
    ----------
    first, second : float or ndarray, farad, > 0, broadcast

    Returns
    -------
    float or ndarray, farad
    """
    raise NotImplementedError


def gangs_in_series(first: float, second: float) -> float:
    """Capacitance of two gangs end to end through their common spindle: both carry the same charge.

    Parameters
    ----------
    first, second : float or ndarray, farad, > 0, broadcast

    Returns
    -------
    float or ndarray, farad
    """
    raise NotImplementedError

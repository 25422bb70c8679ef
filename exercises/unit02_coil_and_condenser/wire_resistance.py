"""What does the wire cost?   Lesson: Coil and condenser, section 3 (course/lessons/unit02_coil_and_condenser/index.md)."""

import numpy as np

from exercises.unit02_coil_and_condenser.solenoid_inductance import INCH, MU_0

COPPER_RESISTIVITY = 1 / 58e6  # ohm metre, annealed copper at 20 °C, IEC 60028
TEMPERATURE_COEFFICIENT = 0.00393  # per kelvin, about 20 °C, IEC 60028
ROOM_TEMPERATURE = 293.15  # kelvin, 20 °C
SWG_DIAMETER_INCHES = {  # British Standard Wire Gauge, BS 3737:1964
    16: 0.064, 17: 0.056, 18: 0.048, 19: 0.040, 20: 0.036, 21: 0.032, 22: 0.028, 23: 0.024, 24: 0.022, 25: 0.020,
    26: 0.018, 27: 0.0164, 28: 0.0148, 29: 0.0136, 30: 0.0124, 31: 0.0116, 32: 0.0108, 33: 0.0100, 34: 0.0092,
    35: 0.0084, 36: 0.0076, 37: 0.0068, 38: 0.0060, 39: 0.0052, 40: 0.0048,
}  # fmt: skip


def swg_diameter(gauge: int) -> float:
    """Diameter of a bare wire from its number in the British Standard Wire Gauge.

    Parameters
    ----------
    gauge : int, a whole number from 16 to 40

    Returns
    -------
    float, metre

    Raises
    ------
    ValueError
        If the table has no such gauge.
    """
    raise NotImplementedError


def awg_diameter(gauge: float) -> float:
    """Diameter of a bare wire from its number in the American Wire Gauge.

    Gauge 36 is 0.005 inch; 39 gauges lower is 92 times as thick, and every step between is the same ratio.

    Parameters
    ----------
    gauge : float or ndarray, dimensionless, -39 to 50; below 0 the thick ones, of which 0000 is -3

    Returns
    -------
    float or ndarray, metre

    Source
    ------
    ASTM B258; US National Bureau of Standards, Circular 31, 1914.
    """
    raise NotImplementedError


def copper_resistivity(temperature: float = ROOM_TEMPERATURE) -> float:
    """Resistivity of annealed copper, which rises evenly with temperature.

    Parameters
    ----------
    temperature : float or ndarray, kelvin, 230 to 400

    Returns
    -------
    float or ndarray, ohm metre

    Source
    ------
    IEC 60028:1925, International Standard of Resistance for Copper.
    """
    return COPPER_RESISTIVITY * (1 + TEMPERATURE_COEFFICIENT * (temperature - ROOM_TEMPERATURE))


def direct_resistance(length: float, diameter: float, temperature: float = ROOM_TEMPERATURE) -> float:
    """Resistance of a round copper wire to a steady current.

    Parameters
    ----------
    length : float or ndarray, metre, > 0
    diameter : float or ndarray, metre, > 0, broadcast with `length`
        Of the copper, without its covering.
    temperature : float or ndarray, kelvin, 230 to 400, broadcast with `length`

    Returns
    -------
    float or ndarray, ohm
    """
    raise NotImplementedError


def skin_depth(frequency: float, resistivity: float = COPPER_RESISTIVITY) -> float:
    """Depth below a flat surface at which the current has fallen to 1/e.

    Parameters
    ----------
    frequency : float or ndarray, hertz, > 0
    resistivity : float or ndarray, ohm metre, > 0, broadcast with `frequency`

    Returns
    -------
    float or ndarray, metre
    """
    raise NotImplementedError


def skin_effect_ratio(radius_over_skin_depth: float) -> float:
    """Resistance of a round wire to an alternating current, as a multiple of its resistance to a steady one.

    Parameters
    ----------
    radius_over_skin_depth : float or ndarray, dimensionless, >= 0

    Returns
    -------
    float or ndarray, dimensionless, >= 1

    Source
    ------
    Lord Kelvin 1889; the ratio is the real part of (z/2) J₀(z) / J₁(z) with z² = w = -2j (radius / skin depth)². The
    continued fraction for a ratio of Bessel functions, NIST Digital Library of Mathematical Functions, 10.10.1, makes
    that 1 - (w/2) / (4 - w / (6 - w / (8 - …))).
    """
    raise NotImplementedError


def alternating_resistance(length: float, diameter: float, frequency: float, temperature: float = ROOM_TEMPERATURE) -> float:
    """Resistance of a straight round copper wire, far from any other, to an alternating current.

    Parameters
    ----------
    length : float or ndarray, metre, > 0
    diameter : float or ndarray, metre, > 0, broadcast with `length`
    frequency : float or ndarray, hertz, > 0, broadcast with `length`
    temperature : float or ndarray, kelvin, 230 to 400, broadcast with `length`

    Returns
    -------
    float or ndarray, ohm
    """
    raise NotImplementedError

"""A filament from a fixed rail, through a dropper resistor.   Lesson: Bench, section 6 (course/lessons/unit00_bench/supply.md).

rail                the supply voltage, volt
filament_voltage    what the filament is rated for, volt
filament_current    what it draws at that voltage, ampere
"""

import numpy as np

PREFERRED = {
    "E6": (10, 15, 22, 33, 47, 68),
    "E12": (10, 12, 15, 18, 22, 27, 33, 39, 47, 56, 68, 82),
    "E24": (10, 11, 12, 13, 15, 16, 18, 20, 22, 24, 27, 30, 33, 36, 39, 43, 47, 51, 56, 62, 68, 75, 82, 91),
}


def dropper_resistance(rail: float, filament_voltage: float, filament_current: float) -> float:
    """Series resistance that leaves a filament its rated voltage, and so its rated current.

    Parameters
    ----------
    rail : float or ndarray, volt
    filament_voltage : float or ndarray, volt, >= 0, broadcast with `rail`; 0 for a resistor alone on the rail
    filament_current : float or ndarray, ampere, > 0, broadcast with `rail`

    Returns
    -------
    float or ndarray, ohm

    Raises
    ------
    ValueError
        If the rail is lower than the filament voltage anywhere: no resistor can raise a voltage.

    Source
    ------
    Ohm's law, on the voltage across the resistor.
    """
    raise NotImplementedError


def dropper_dissipation(rail: float, filament_voltage: float, filament_current: float) -> float:
    """Power that the dropper resistor turns into heat while the filament has its rated current.

    Parameters
    ----------
    rail : float or ndarray, volt, >= `filament_voltage`
    filament_voltage : float or ndarray, volt, >= 0, broadcast with `rail`; 0 for a resistor alone on the rail
    filament_current : float or ndarray, ampere, > 0, broadcast with `rail`

    Returns
    -------
    float or ndarray, watt

    Source
    ------
    Joule's law: the voltage across the resistor times the current through it.
    """
    raise NotImplementedError


def next_preferred(resistance: float, series: str = "E12") -> float:
    """Smallest preferred value that is not below a resistance: the next one up in the drawer.

    Parameters
    ----------
    resistance : float, ohm, > 0
        A resistance less than one part in 10⁹ above a preferred value counts as that value.
    series : str
        "E6", "E12" or "E24".

    Returns
    -------
    float, ohm

    Raises
    ------
    ValueError
        If the resistance is not above zero, or the series is not one of the three.

    Source
    ------
    IEC 60063:2015, Preferred number series for resistors and capacitors. Found in public listings of the standard.
    """
    raise NotImplementedError


def current_through_dropper(rail: float, resistance: float, filament_voltage: float, filament_current: float) -> float:
    """Current that flows when the dropper in place is not the one calculated.

    The filament is taken as the resistance it has when hot: its rated voltage over its rated current. A real filament's
    resistance falls when it is starved and rises when it is overrun, so the true current lies nearer the rating.

    Parameters
    ----------
    rail : float or ndarray, volt, > 0
    resistance : float or ndarray, ohm, >= 0, broadcast with `rail`
        The dropper in place.
    filament_voltage : float or ndarray, volt, > 0, broadcast with `rail`
    filament_current : float or ndarray, ampere, > 0, broadcast with `rail`

    Returns
    -------
    float or ndarray, ampere

    Source
    ------
    Ohm's law, on the whole loop.
    """
    raise NotImplementedError

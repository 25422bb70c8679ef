"""Where does the valve settle?   Lesson: Valve, section 4 (course/lessons/unit05_valve/stage.md)."""

import numpy as np

from exercises.unit05_valve.triode_current import triode_current


def load_line_current(anode_voltage: float, supply: float, load: float) -> float:
    """Current that the load lets through when the anode stands at a voltage.

    Parameters
    ----------
    anode_voltage : float or ndarray, volt
    supply : float or ndarray, volt, of the HT battery, broadcast with `anode_voltage`
    load : float or ndarray, ohm, > 0, between battery and anode

    Returns
    -------
    float or ndarray, ampere

    Source
    ------
    Ohm's law.
    """
    raise NotImplementedError


def operating_point(
    supply: float, load: float, grid_voltage: float, amplification_factor: float, perveance: float, offset: float
) -> tuple[float, float]:
    """Anode voltage and current at which valve and load agree.

    Parameters
    ----------
    supply : float or ndarray, volt, >= 0, of the HT battery
    load : float or ndarray, ohm, > 0, between battery and anode
    grid_voltage, amplification_factor, perveance, offset
        As in `triode_current`.

    Returns
    -------
    anode_voltage : float or ndarray, volt
    anode_current : float or ndarray, ampere; the arguments broadcast together

    Raises
    ------
    ValueError
        If valve and load agree nowhere between 0 V and the supply: the grid is so high, or the load, that the anode would
        stand below the filament, where the law does not hold.

    Source
    ------
    The valve's current rises with the anode's voltage and the load's falls: they cross once.
    """
    raise NotImplementedError


def grid_voltage_for(
    anode_current: float, supply: float, load: float, amplification_factor: float, perveance: float, offset: float
) -> float:
    """Grid voltage that makes the valve settle at a wanted current.

    Parameters
    ----------
    anode_current : float or ndarray, ampere, > 0, at most `supply` over `load`
    supply, load, amplification_factor, perveance, offset
        As in `operating_point`.

    Returns
    -------
    float or ndarray, volt; the arguments broadcast together

    Raises
    ------
    ValueError
        If the load passes so much current from this supply at no anode voltage.

    Source
    ------
    The load line gives the anode's voltage, and the three-halves law, turned round, the drive.
    """
    raise NotImplementedError


def power_shares(
    supply: float, load: float, grid_voltage: float, amplification_factor: float, perveance: float, offset: float
) -> tuple[float, float, float]:
    """Power from the HT battery, and what load and anode make of it: heat.

    Parameters
    ----------
    supply, load, grid_voltage, amplification_factor, perveance, offset
        As in `operating_point`.

    Returns
    -------
    battery, in_load, in_valve : float or ndarray, watt; the arguments broadcast together

    Raises
    ------
    ValueError
        As `operating_point`.

    Source
    ------
    Voltage times current, each at the operating point.
    """
    raise NotImplementedError

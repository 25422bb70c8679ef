"""Where does the valve settle?   Lesson: Valve, section 4."""

import numpy as np

from solutions.ranges import check_ranges
from solutions.unit05_valve.triode_current import triode_current

STEPS = 16  # a few to come near, then each nearly doubles the number of right figures


@check_ranges
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
    return (supply - anode_voltage) / load


@check_ranges
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
    if np.any(triode_current(0.0, grid_voltage, amplification_factor, perveance, offset) * load > supply):
        raise ValueError("the anode would stand below the filament: lower the grid or the load, or raise the supply")
    most = np.maximum(grid_voltage + offset + np.asarray(supply) / amplification_factor, 0.0)  # drive, if no current flowed
    takes_away = load * perveance / amplification_factor
    drive = most
    for _ in range(STEPS):
        root = np.sqrt(drive)
        drive = drive - (drive + takes_away * drive * root - most) / (1 + 1.5 * takes_away * root)
    current = perveance * drive**1.5
    return (supply - load * current)[()], current[()]


@check_ranges
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
    anode_voltage = supply - anode_current * load
    if np.any(anode_voltage < 0):
        raise ValueError("this load cannot pass so much current from this supply: lower the load or raise the supply")
    return (anode_current / perveance) ** (2 / 3) - anode_voltage / amplification_factor - offset


@check_ranges
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
    voltage, current = operating_point(supply, load, grid_voltage, amplification_factor, perveance, offset)
    return supply * current, load * current**2, voltage * current

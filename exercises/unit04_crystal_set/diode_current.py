"""What does a crystal let through?   Lesson: Crystal set, section 2 (course/lessons/unit04_crystal_set/index.md)."""

import numpy as np

VOLTS_PER_KELVIN = 8.617333262e-5  # Boltzmann's constant over the charge of the electron, CODATA


def slope_voltage(ideality: float, temperature: float) -> float:
    """Step in voltage that multiplies a diode's forward current by 2.718.

    Parameters
    ----------
    ideality : float or ndarray, a pure number, 1 for a perfect junction, up to 2.5 for a poor contact
    temperature : float or ndarray, kelvin, > 0, broadcast with `ideality`

    Returns
    -------
    float or ndarray, volt

    Source
    ------
    The thermal voltage kT/e, by the constants of CODATA, times the ideality.
    """
    raise NotImplementedError


def diode_current(voltage: float, saturation_current: float, slope_voltage: float) -> float:
    """Current through a diode with a voltage across it, resistance of its leads and body neglected.

    Parameters
    ----------
    voltage : float or ndarray, volt, positive in the easy direction
    saturation_current : float or ndarray, ampere, > 0, broadcast with `voltage`
        What leaks through, whatever the voltage, in the hard direction.
    slope_voltage : float or ndarray, volt, > 0, broadcast with `voltage`
        As the function of that name gives it.

    Returns
    -------
    float or ndarray, ampere

    Source
    ------
    The exponential law of the junction, W. Shockley, Bell System Technical Journal 28, 435 (1949): from memory.
    """
    raise NotImplementedError


def slope_resistance(voltage: float, saturation_current: float, slope_voltage: float) -> float:
    """Resistance of a diode to a small change of voltage about a steady one.

    Parameters
    ----------
    voltage, saturation_current, slope_voltage
        As in `diode_current`.

    Returns
    -------
    float or ndarray, ohm; at 0 V it is the slope voltage over the saturation current

    Source
    ------
    One over the slope of the exponential law.
    """
    raise NotImplementedError

"""One valve in three numbers.   Lesson: Valve, before section 1 (course/lessons/unit05_valve/index.md)."""

import numpy as np


def leak_time(resistance: float, capacitance: float) -> float:
    """Time in which a leak empties its condenser to 36.8 %: the time constant.

    Parameters
    ----------
    resistance : float or ndarray, ohm, > 0
    capacitance : float or ndarray, farad, > 0

    Returns
    -------
    float or ndarray, second; the arguments broadcast together
    """
    raise NotImplementedError


def gain(conductance: float, anode_resistance: float, load: float) -> float:
    """Volts at the anode for each volt at the grid; that they have the other sign is left out.

    Parameters
    ----------
    conductance : float or ndarray, siemens, > 0: the mutual conductance, amperes at the anode for each volt at the grid
    anode_resistance : float or ndarray, ohm, > 0, of the valve itself
    load : float or ndarray, ohm, > 0, in the anode's lead

    Returns
    -------
    float or ndarray, a ratio; the arguments broadcast together

    Source
    ------
    F. E. Terman, Radio Engineers' Handbook, 1943, section 5 (from memory): the current goes through both, side by side.
    """
    raise NotImplementedError


def level(gain: float) -> float:
    """A gain of voltage in decibels.

    Parameters
    ----------
    gain : float or ndarray, a ratio of voltages, > 0

    Returns
    -------
    float or ndarray, decibel

    Source
    ------
    Recommendation ITU-R V.574 (from memory): 20 times the logarithm for voltages.
    """
    raise NotImplementedError

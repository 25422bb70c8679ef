"""Why does the current not grow with the heat?   Lesson: Valve, section 2 (course/lessons/unit05_valve/index.md).

A flat cathode and a flat anode face each other across a gap. The electrons on their way hold back those that follow.
"""

import numpy as np

PERMITTIVITY = 8.8541878128e-12  # farad per metre, of empty space
CHARGE_TO_MASS = 1.75882001e11  # coulomb per kilogram, of the electron, CODATA


def space_charge_density(voltage: float, gap: float) -> float:
    """Most current that can cross each square metre of the gap, however much the cathode could emit.

    Parameters
    ----------
    voltage : float or ndarray, volt, >= 0, of the anode above the cathode
    gap : float or ndarray, metre, > 0, broadcast with `voltage`

    Returns
    -------
    float or ndarray, ampere per square metre

    Source
    ------
    C. D. Child, Phys. Rev. 32, 492 (1911), and I. Langmuir, Phys. Rev. 2, 450 (1913) (citations from memory): the
    three-halves law (4 ε0/9) sqrt(2e/m) V^1.5/d², which is 2.334 µA for a volt across a metre.
    """
    raise NotImplementedError


def gap_potential(position: float, voltage: float, gap: float) -> float:
    """Voltage part of the way across a gap that is full of space charge.

    Parameters
    ----------
    position : float or ndarray, metre, from the cathode, 0 to `gap`
    voltage : float or ndarray, volt, >= 0, of the anode above the cathode
    gap : float or ndarray, metre, > 0

    Returns
    -------
    float or ndarray, volt, above the cathode; the arguments broadcast together

    Source
    ------
    Child and Langmuir, as above: V (x/d)^(4/3), which leaves the cathode level.
    """
    raise NotImplementedError


def transit_time(voltage: float, gap: float) -> float:
    """Time that an electron takes to cross a gap that is full of space charge.

    Parameters
    ----------
    voltage : float or ndarray, volt, > 0, of the anode above the cathode
    gap : float or ndarray, metre, > 0, broadcast with `voltage`

    Returns
    -------
    float or ndarray, second

    Source
    ------
    The electron arrives at sqrt(2 (e/m) V); as x grows with the cube of the time, that is three times its mean speed.
    """
    raise NotImplementedError


def anode_density(voltage: float, gap: float, emission: float) -> float:
    """Current that crosses each square metre of the gap: what the anode can draw, as far as the cathode can give it.

    Parameters
    ----------
    voltage : float or ndarray, volt, of the anode above the cathode; below zero no current crosses
    gap : float or ndarray, metre, > 0
    emission : float or ndarray, ampere per square metre, >= 0, that the cathode can give

    Returns
    -------
    float or ndarray, ampere per square metre; the arguments broadcast together

    Source
    ------
    The smaller of the two limits; in a real valve the corner between them is round.
    """
    raise NotImplementedError

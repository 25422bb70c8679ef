"""How far does it swing?   Lesson: Oscillation, section 2 (course/lessons/unit07_oscillation/index.md).

A valve that swings far works with another slope than at rest. What it still does for the tuned circuit is its
describing function: the part of its current at the oscillation's own frequency, for each volt of swing. The
oscillation grows until that has fallen to what the losses need.
"""

import numpy as np

from exercises.unit05_valve.grid_leak import bias_with_carrier
from exercises.unit05_valve.one_valve_set import GRID_SLOPE, LAW, LEAK, LEAK_RETURN, ZERO_CURRENT
from exercises.unit05_valve.triode_current import triode_current


def describing_conductance(swing: float, negative: float, cubic: float) -> float:
    """What a device that passes −negative × v + cubic × v³ amounts to, for a swing of given size at its own frequency.

    Parameters
    ----------
    swing : float or ndarray, volt, crest, >= 0
    negative : float or ndarray, siemens, > 0: at small swings the device gives this much back
    cubic : float or ndarray, ampere per cubic volt, > 0

    Returns
    -------
    float or ndarray, siemens, below zero where it still feeds the circuit; the arguments broadcast together

    Source
    ------
    cos³ = (3 cos + cos 3)/4: three quarters of the cubic current come at the swing's own frequency.
    """
    raise NotImplementedError


def van_der_pol_amplitude(negative: float, cubic: float) -> float:
    """Swing at which that device neither feeds the circuit nor loads it: where an oscillation of a good circuit settles.

    Parameters
    ----------
    negative : float or ndarray, siemens, > 0
    cubic : float or ndarray, ampere per cubic volt, > 0

    Returns
    -------
    float or ndarray, volt, crest; the arguments broadcast together

    Source
    ------
    B. van der Pol, Radio Review 1, 701 (1920); Phil. Mag. 2, 978 (1926) (citations from memory): amplitude 2 in his
    normalised equation x'' − ε (1 − x²) x' + x = 0, whose device has negative = ε and cubic = ε/3.
    """
    raise NotImplementedError


def effective_transconductance(
    swing: float,
    grid_voltage: float,
    anode_voltage: float,
    amplification_factor: float,
    perveance: float,
    offset: float,
) -> float:
    """Anode current at the oscillation's frequency for each volt by which it swings the grid, cut-off and all.

    Parameters
    ----------
    swing : float or ndarray, volt, crest, > 0, at the grid
    grid_voltage : float or ndarray, volt, averaged over the cycle
    anode_voltage : float or ndarray, volt, >= 0, steady
    amplification_factor, perveance, offset : float or ndarray
        As in `triode_current`.

    Returns
    -------
    float or ndarray, siemens; the arguments broadcast together

    Source
    ------
    First term of the current's Fourier series, 2 × the average of current times cos round the cycle, over the swing.
    """
    raise NotImplementedError


def limit_amplitude(needed: float, anode_voltage: float) -> float:
    """Swing at the grid of the club's valve at which its describing function has fallen to what the losses need.

    The louder it swings, the more negative the grid leak makes the grid, and the shorter the part of the cycle in which
    the valve passes anything.

    Parameters
    ----------
    needed : float, siemens, > 0: the mutual conductance at which the set is just at the edge
    anode_voltage : float, volt, > 0, steady

    Returns
    -------
    float, volt, crest

    Raises
    ------
    ValueError
        If the valve at rest has no more than `needed`: then the set does not oscillate. If it would swing beyond 200 V.

    Source
    ------
    `effective_transconductance` at the bias that the swing itself makes, equal to `needed`; solved by halving.
    """
    raise NotImplementedError

"""From field to volts.   Lesson: Signal, section 4 (course/lessons/unit01_signal/aerial.md)."""

import numpy as np

PERMITTIVITY = 8.8541878128e-12  # F/m, of empty space


def effective_height(height: float, top_length: float) -> float:
    """Height of wire that would give the same voltage if the current in it were the same all the way up.

    The aerial is an inverted L, much shorter than a quarter of a wave: a down-lead and a level top, whose current falls
    evenly from its full value at the foot to nothing at the far end. Only the upright part counts.

    Parameters
    ----------
    height : float or ndarray, metre, of the upright part, > 0
    top_length : float or ndarray, metre, of the level part, >= 0, broadcast with `height`

    Returns
    -------
    float or ndarray, metre

    Source
    ------
    Admiralty Handbook of Wireless Telegraphy, 1938, vol. II: the mean of the current up the lead, over the current at
    the foot, times the height.
    """
    raise NotImplementedError


def aerial_emf(field: float, effective_height: float) -> float:
    """Voltage that a wave puts in series with the aerial.

    Parameters
    ----------
    field : float or ndarray, volt per metre, upright, r.m.s., >= 0
    effective_height : float or ndarray, metre, > 0, broadcast with `field`

    Returns
    -------
    float or ndarray, volt, r.m.s.

    Source
    ------
    Definition of the effective height.
    """
    raise NotImplementedError


def aerial_capacitance(height: float, top_length: float, wire_radius: float) -> float:
    """Capacitance to earth of an inverted-L aerial, every metre taken as a level wire at full height.

    A few per cent low: charge crowds to the ends of a wire, and this leaves them out.

    Parameters
    ----------
    height : float or ndarray, metre, of the upright part, > 0
    top_length : float or ndarray, metre, of the level part, at least `height`
    wire_radius : float or ndarray, metre, far below `height`, > 0

    Returns
    -------
    float or ndarray, farad; the arguments broadcast together

    Source
    ------
    A level wire and its image in the ground: 2π ε0 / ln(2h/a) for each metre (NBS Circular 74, 1924, antenna capacity).
    """
    raise NotImplementedError

"""Twice as far, half the field.   Lesson: Signal, section 3 (course/lessons/unit01_signal/ground.md)."""

import numpy as np


def field(power: float, distance: float) -> float:
    """R.m.s. field of a short upright aerial over perfect, flat ground.

    Parameters
    ----------
    power : float or ndarray, watt, > 0, sent out
    distance : float or ndarray, metre, > 0

    Returns
    -------
    float or ndarray, volt per metre, r.m.s.; the arguments broadcast together

    Source
    ------
    Recommendation ITU-R P.368 (from memory): 300 mV/m at 1 km for 1 kW, which is sqrt(90 P)/d.
    """
    raise NotImplementedError


def distance_for(power: float, field: float) -> float:
    """Distance at which that aerial's field has fallen to a given one.

    Parameters
    ----------
    power : float or ndarray, watt, > 0, sent out
    field : float or ndarray, volt per metre, r.m.s., > 0

    Returns
    -------
    float or ndarray, metre; the arguments broadcast together

    Source
    ------
    The formula of `field`, solved for the distance.
    """
    raise NotImplementedError

"""How far out does it play?   Lesson: Crystal set, section 1 (course/lessons/unit04_crystal_set/index.md)."""

import numpy as np


def phone_power(emf: float, resistance: float, share: float) -> float:
    """Power that reaches the telephones of a crystal set.

    Parameters
    ----------
    emf : float or ndarray, volt, r.m.s., >= 0, that the wave makes in the aerial
    resistance : float or ndarray, ohm, > 0, of the aerial with its earth
    share : float or ndarray, 0 to 1: of the most that the aerial can give, what reaches the telephones

    Returns
    -------
    float or ndarray, watt; the arguments broadcast together

    Source
    ------
    The most that a source can give is E²/4R (maximum power theorem).
    """
    raise NotImplementedError


def reach(power: float, least_field: float) -> float:
    """Distance out to which a station is strong enough, over perfect, flat ground.

    Parameters
    ----------
    power : float or ndarray, watt, > 0, that the station sends out
    least_field : float or ndarray, volt per metre, r.m.s., > 0, that the set needs

    Returns
    -------
    float or ndarray, metre; the arguments broadcast together

    Source
    ------
    Recommendation ITU-R P.368 (from memory): the field is sqrt(90 P)/d.
    """
    raise NotImplementedError

"""Where the power goes.   Lesson: Signal, section 2 (course/lessons/unit01_signal/index.md)."""

import numpy as np


def total_power(carrier_power: float, depth: float) -> float:
    """Power a transmitter sends while one tone modulates it, averaged over the tone.

    Parameters
    ----------
    carrier_power : float or ndarray, watt, power of the carrier when nobody speaks, > 0
    depth : float or ndarray, depth of modulation as a fraction, 0 to 1, broadcast with `carrier_power`

    Returns
    -------
    float or ndarray, watt

    Source
    ------
    F. E. Terman, Radio Engineers' Handbook, 1943, sec. 7: each side frequency has m/2 of the carrier's amplitude.
    """
    raise NotImplementedError


def sideband_power(carrier_power: float, depth: float) -> float:
    """Power in the two side frequencies together: the only part that carries the sound.

    Parameters
    ----------
    carrier_power : float or ndarray, watt, power of the carrier when nobody speaks, > 0
    depth : float or ndarray, depth of modulation as a fraction, 0 to 1, broadcast with `carrier_power`

    Returns
    -------
    float or ndarray, watt

    Source
    ------
    As `total_power`.
    """
    raise NotImplementedError


def sideband_share(depth: float) -> float:
    """Share of all the power sent that is in the two side frequencies.

    Parameters
    ----------
    depth : float or ndarray, depth of modulation as a fraction, 0 to 1

    Returns
    -------
    float or ndarray, a fraction, 0 to 1/3

    Source
    ------
    As `total_power`.
    """
    raise NotImplementedError


def depth_from_aerial_current(current_ratio: float) -> float:
    """Depth of modulation read from the transmitter's aerial ammeter, which shows r.m.s. current.

    Parameters
    ----------
    current_ratio : float or ndarray, aerial current with the tone over aerial current without it, at least 1

    Returns
    -------
    float or ndarray, depth of modulation as a fraction

    Raises
    ------
    ValueError
        if any ratio is below 1: a tone never lowers the aerial current

    Source
    ------
    The r.m.s. current goes as the square root of `total_power`.
    """
    raise NotImplementedError

"""Will the far station come out from under the near one?   Lesson: Two stations, section 1
(course/lessons/unit08_two_stations/index.md).

A circuit stands on the wanted station. Its rejection of another is how many decibels more it takes from that one.
"""

import numpy as np


def circuit_rejection(frequency: float, offset: float, quality_factor: float) -> float:
    """Decibels by which one tuned circuit holds back a station some way off.

    Parameters
    ----------
    frequency : float or ndarray, hertz, > 0, of the wanted station, to which the circuit is tuned
    offset : float or ndarray, hertz, of the other carrier from the wanted one, of either sign; above −`frequency`
    quality_factor : float or ndarray, a pure number, >= 0

    Returns
    -------
    float or ndarray, decibel, >= 0; the arguments broadcast together

    Source
    ------
    F. E. Terman, Radio Engineers' Handbook, 1943, section 3 (from memory): the response is 1/(1 + jQd), with
    d = f/f0 − f0/f, exact for a series circuit of constant resistance.
    """
    raise NotImplementedError


def coupled_rejection(
    frequency: float,
    offset: float,
    primary_quality_factor: float,
    secondary_quality_factor: float,
    coupling_coefficient: float,
) -> float:
    """Decibels by which two coupled circuits, each tuned to the wanted station, hold back another.

    Parameters
    ----------
    frequency : float or ndarray, hertz, > 0, of the wanted station, to which each circuit by itself is tuned
    offset : float or ndarray, hertz, of the other carrier from the wanted one, of either sign; above −`frequency`
    primary_quality_factor, secondary_quality_factor : float or ndarray, a pure number, > 0
    coupling_coefficient : float or ndarray, a fraction, above 0 to 1

    Returns
    -------
    float or ndarray, decibel; the arguments broadcast together. Above critical coupling there is a hump on either side,
        and a station on a hump is let through better than the wanted one: the answer is then below 0

    Source
    ------
    The two mesh equations, driven in series with the first circuit. With x = f/f0 and d = x − 1/x the second
    circuit's current goes as x/((1/Q1 + jd)(1/Q2 + jd) + (k x)²).
    """
    raise NotImplementedError


def protection_left(wanted_field: float, unwanted_field: float, rejection: float) -> float:
    """Decibels by which the wanted carrier stands above the other one behind the tuned circuits.

    Parameters
    ----------
    wanted_field, unwanted_field : float or ndarray, volt per metre, > 0, of the two stations at the aerial
    rejection : float or ndarray, decibel, of the unwanted station

    Returns
    -------
    float or ndarray, decibel, negative where the other one is still the stronger; the arguments broadcast together

    Source
    ------
    The decibel: ratios multiply, decibels add.
    """
    raise NotImplementedError


def quality_factor_needed(
    frequency: float, offset: float, wanted_field: float, unwanted_field: float, protection: float
) -> float:
    """Q that one tuned circuit needs to lift the wanted carrier as far above the other one as it should be.

    Parameters
    ----------
    frequency : float or ndarray, hertz, > 0, of the wanted station
    offset : float or ndarray, hertz, of the other carrier, of either sign, not 0; above −`frequency`
    wanted_field, unwanted_field : float or ndarray, volt per metre, > 0
    protection : float or ndarray, decibel, by which the wanted carrier should be above behind the circuit. For two
        stations on one carrier Recommendation ITU-R BS.560 asks for 40 dB

    Returns
    -------
    float or ndarray, a pure number, 0 where the wanted station is far enough above without any tuning; the arguments
        broadcast together

    Source
    ------
    `circuit_rejection` solved for Q.
    """
    raise NotImplementedError

"""How far above the hiss?   Lesson: Two stations, section 6 (course/lessons/unit08_two_stations/noise.md)."""

import numpy as np

BOLTZMANN = 1.380649e-23  # joule per kelvin, exact by definition


def thermal_noise(resistance: float, bandwidth: float, temperature: float) -> float:
    """Voltage that the heat in a resistance makes in series with it.

    Parameters
    ----------
    resistance : float or ndarray, ohm, >= 0
    bandwidth : float or ndarray, hertz, >= 0
    temperature : float or ndarray, kelvin, >= 0

    Returns
    -------
    float or ndarray, volt, r.m.s.; the arguments broadcast together

    Source
    ------
    H. Nyquist, Physical Review 32, 110 (1928): its square is 4kTRB.
    """
    raise NotImplementedError


def ratio(signal: float, noise: float) -> float:
    """By how many decibels one voltage is above another; below 0 if it is the smaller.

    Parameters
    ----------
    signal : float or ndarray, volt, > 0
    noise : float or ndarray, volt, > 0

    Returns
    -------
    float or ndarray, decibel; the arguments broadcast together

    Source
    ------
    Recommendation ITU-R V.574 (from memory): 20 times the logarithm for voltages.
    """
    raise NotImplementedError

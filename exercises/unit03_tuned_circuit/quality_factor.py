"""How sharply does it tune?   Lesson: Tuned circuit, section 3 (course/lessons/unit03_tuned_circuit/index.md)."""

import numpy as np


def quality_factor(inductance: float, resistance: float, frequency: float) -> float:
    """Ratio of a coil's reactance to the resistance in series with it.

    Parameters
    ----------
    inductance : float or ndarray, henry, > 0
    resistance : float or ndarray, ohm, > 0, all the loss of the circuit counted as one series resistance
    frequency : float or ndarray, hertz, > 0

    Returns
    -------
    float or ndarray, dimensionless; the three arguments broadcast

    Source
    ------
    F. E. Terman, *Radio Engineers' Handbook*, 1943, section 3 (from memory).
    """
    raise NotImplementedError


def bandwidth(resonant_frequency: float, quality_factor: float) -> float:
    """Width of the band, between half-power frequencies, that a tuned circuit lets through.

    Parameters
    ----------
    resonant_frequency : float or ndarray, hertz, > 0
    quality_factor : float or ndarray, dimensionless, > 0

    Returns
    -------
    float or ndarray, hertz; exact for a series circuit of constant resistance, however small its Q

    Source
    ------
    F. E. Terman, *Radio Engineers' Handbook*, 1943, section 3 (from memory).
    """
    raise NotImplementedError


def half_power_frequencies(resonant_frequency: float, quality_factor: float) -> tuple[float, float]:
    """Frequencies at which the current has fallen to 1/sqrt(2) of its value at resonance (−3 dB).

    Parameters
    ----------
    resonant_frequency : float or ndarray, hertz, > 0
    quality_factor : float or ndarray, dimensionless, > 0

    Returns
    -------
    lower, upper : float or ndarray, hertz; exact: their difference is the bandwidth,
        and their product is the square of the resonant frequency

    Source
    ------
    The two positive solutions of Q (f/f0 − f0/f) = ∓1.
    """
    raise NotImplementedError


def dynamic_resistance(inductance: float, capacitance: float, resistance: float) -> float:
    """Resistance that the tuned circuit offers between its two ends at resonance.

    Parameters
    ----------
    inductance : float or ndarray, henry, > 0
    capacitance : float or ndarray, farad, > 0
    resistance : float or ndarray, ohm, > 0, in series with the coil

    Returns
    -------
    float or ndarray, ohm; the three arguments broadcast

    Source
    ------
    F. E. Terman, *Radio Engineers' Handbook*, 1943, section 3 (from memory).
    """
    raise NotImplementedError

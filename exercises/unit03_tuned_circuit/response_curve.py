"""How much of each station gets through?   Lesson: Tuned circuit, section 4 (course/lessons/unit03_tuned_circuit/index.md)."""

import numpy as np


def relative_response(frequency: float, resonant_frequency: float, quality_factor: float) -> complex:
    """Current in a series tuned circuit at one frequency, as a fraction of its current at resonance.

    Parameters
    ----------
    frequency : float or ndarray, hertz, > 0
    resonant_frequency : float or ndarray, hertz, > 0
    quality_factor : float or ndarray, dimensionless, > 0, at resonance; the resistance is taken as constant

    Returns
    -------
    complex or ndarray of complex, dimensionless: size and phase, exactly 1 at resonance

    Source
    ------
    F. E. Terman, *Radio Engineers' Handbook*, 1943, section 3 (from memory).
    """
    raise NotImplementedError


def detuning_in_bandwidths(frequency: float, resonant_frequency: float, quality_factor: float) -> float:
    """Distance from resonance, counted in bandwidths: the quantity along the foot of the universal curve.

    Parameters
    ----------
    frequency : float or ndarray, hertz, > 0
    resonant_frequency : float or ndarray, hertz, > 0
    quality_factor : float or ndarray, dimensionless, > 0

    Returns
    -------
    float or ndarray, dimensionless; negative below resonance

    Source
    ------
    F. E. Terman, *Radio Engineers' Handbook*, 1943, section 3 (from memory).
    """
    raise NotImplementedError


def universal_response(detuning: float) -> complex:
    """Response of any tuned circuit of high Q near its resonance: one curve for all.

    Parameters
    ----------
    detuning : float or ndarray, dimensionless, distance from resonance in bandwidths

    Returns
    -------
    complex or ndarray of complex, dimensionless: size and phase, exactly 1 at resonance

    Source
    ------
    F. E. Terman, *Radio Engineers' Handbook*, 1943, section 3, universal resonance curve (from memory).
    """
    raise NotImplementedError


def decibels(response: complex) -> float:
    """Size of a voltage or current ratio in decibels.

    Parameters
    ----------
    response : float, complex or ndarray, dimensionless, not zero

    Returns
    -------
    float or ndarray, dB; negative where the ratio is less than 1

    Source
    ------
    The decibel is defined on powers, and power goes as the square of the size.
    """
    raise NotImplementedError

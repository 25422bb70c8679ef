"""What can the aerial give?   Lesson: Signal, section 5 (course/lessons/unit01_signal/aerial.md)."""

import numpy as np

SPEED_OF_LIGHT = 299_792_458.0  # m/s, exact by definition


def radiation_resistance(effective_height: float, frequency: float) -> float:
    """Resistance that stands for the power a short earthed aerial sends out again as waves.

    Parameters
    ----------
    effective_height : float or ndarray, metre, > 0
    frequency : float or ndarray, hertz, > 0, broadcast with `effective_height`

    Returns
    -------
    float or ndarray, ohm

    Source
    ------
    F. E. Terman, Radio Engineers' Handbook, 1943, sec. 11: 160π² (h/λ)², with 120π ohm for the impedance of space.
    """
    raise NotImplementedError


def available_power(emf: float, resistance: float) -> float:
    """Most power that any set can draw from an aerial: with reactance tuned out and a load equal to its resistance.

    Parameters
    ----------
    emf : float or ndarray, volt, r.m.s., >= 0
    resistance : float or ndarray, ohm, all that is in series in the aerial (radiation, wire and earth together), > 0,
        broadcast with `emf`

    Returns
    -------
    float or ndarray, watt

    Source
    ------
    Maximum power theorem.
    """
    raise NotImplementedError

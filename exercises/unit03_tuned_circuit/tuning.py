"""Which condenser for this station?   Lesson: Tuned circuit, section 2 (course/lessons/unit03_tuned_circuit/index.md)."""

import numpy as np


def tuning_capacitance(frequency: float, inductance: float) -> float:
    """Capacitance that tunes a coil to a wanted frequency, losses neglected.

    Parameters
    ----------
    frequency : float or ndarray, hertz, > 0
    inductance : float or ndarray, henry, > 0

    Returns
    -------
    float or ndarray, farad; the arguments broadcast together

    Source
    ------
    US National Bureau of Standards, Circular 74, 1924, on simple resonance: (2πf)² L C = 1.
    """
    raise NotImplementedError

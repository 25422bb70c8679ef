"""A tone of your own.   Lesson: Bench, section 4 (course/lessons/unit00_bench/tools.md)."""

import numpy as np


def tone(time: float, frequency: float, amplitude: float) -> float:
    """Voltage of a pure tone at a moment; at time 0 it is nothing, and rising.

    Parameters
    ----------
    time : float or ndarray, second
    frequency : float or ndarray, hertz, > 0
    amplitude : float or ndarray, volt, > 0: the highest that it gets

    Returns
    -------
    float or ndarray, volt; the arguments broadcast together

    Source
    ------
    School trigonometry: A sin(2πft), with the angle in radians. A whole swing is 2π of them.
    """
    raise NotImplementedError

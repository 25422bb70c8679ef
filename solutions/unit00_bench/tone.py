"""A tone of your own.   Lesson: Bench, section 4."""

import numpy as np

from solutions.ranges import check_ranges


@check_ranges
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
    return amplitude * np.sin(2 * np.pi * frequency * time)

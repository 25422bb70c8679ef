"""One step of a swing.   Lesson: Feedback receivers, section 1 (course/lessons/unit09_feedback_receivers/index.md)."""

import numpy as np


def swing_step(swing: float, push: float, growth: float, step: float) -> float:
    """How large a circuit's swing is, one step later, while a steady push works on it.

    Parameters
    ----------
    swing : float or ndarray, volt, before the step
    push : float or ndarray, volt per second
    growth : float or ndarray, 1/s, not 0: above 0 the swing grows by itself, below 0 it dies away
    step : float or ndarray, second, >= 0

    Returns
    -------
    float or ndarray, volt; the arguments broadcast together

    Source
    ------
    The solution of dv/dt = g v + p with g and p steady: v e^(gt) + p (e^(gt) - 1)/g.
    """
    raise NotImplementedError

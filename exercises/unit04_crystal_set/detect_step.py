"""Up at once, down slowly.   Lesson: Crystal set, section 1 (course/lessons/unit04_crystal_set/index.md)."""

import numpy as np


def detect_step(held: float, wave: float, step: float, time_constant: float) -> float:
    """Voltage that the condenser behind a perfect crystal holds, one short step later.

    Parameters
    ----------
    held : float or ndarray, volt, >= 0, on the condenser before the step
    wave : float or ndarray, volt, of either sign: the wave at the end of the step
    step : float or ndarray, second, >= 0
    time_constant : float or ndarray, second, > 0: the condenser times the resistance across it

    Returns
    -------
    float or ndarray, volt; the arguments broadcast together
        Left alone the condenser falls to held * exp(-step / time_constant); where the wave is higher than that, to the wave.

    Source
    ------
    The ideal peak detector: F. E. Terman, Radio Engineers' Handbook, 1943, section 7 (from memory).
    """
    raise NotImplementedError

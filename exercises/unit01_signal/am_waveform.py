"""One tone on a carrier.   Lesson: Signal, section 1 (course/lessons/unit01_signal/index.md)."""

import numpy as np
import sympy


def am_envelope(time: float, tone_frequency: float, depth: float, amplitude: float) -> float:
    """Height of the carrier's crest at each moment: the outline of an amplitude-modulated wave.

    Parameters
    ----------
    time : float or ndarray, second
    tone_frequency : float or ndarray, hertz, > 0
    depth : float or ndarray, depth of modulation as a fraction, >= 0; above 1 the outline crosses zero, and detectors distort
    amplitude : float or ndarray, volt, peak of the carrier when nobody speaks, > 0

    Returns
    -------
    float or ndarray, volt; the arguments broadcast together

    Source
    ------
    F. E. Terman, Radio Engineers' Handbook, 1943, sec. 7: v = A (1 + m cos 2πFt) cos 2πft.
    """
    raise NotImplementedError


def am_waveform(time: float, carrier_frequency: float, tone_frequency: float, depth: float, amplitude: float) -> float:
    """Voltage, moment by moment, of a carrier modulated in amplitude by one tone; both crest at time 0.

    Parameters
    ----------
    time : float or ndarray, second
    carrier_frequency : float or ndarray, hertz, > 0
    tone_frequency : float or ndarray, hertz, > 0, far below `carrier_frequency`
    depth : float or ndarray, depth of modulation as a fraction, >= 0; above 1 the outline crosses zero, and detectors distort
    amplitude : float or ndarray, volt, peak of the carrier when nobody speaks, > 0

    Returns
    -------
    float or ndarray, volt; the arguments broadcast together

    Source
    ------
    F. E. Terman, Radio Engineers' Handbook, 1943, sec. 7: v = A (1 + m cos 2πFt) cos 2πft.
    """
    raise NotImplementedError


def am_spectrum(depth: sympy.Expr, amplitude: sympy.Expr) -> tuple[sympy.Expr, sympy.Expr, sympy.Expr]:
    """Peak amplitudes of the three steady waves that make up an amplitude-modulated wave, as formulas.

    Parameters
    ----------
    depth : sympy expression, depth of modulation as a fraction
    amplitude : sympy expression, volt, peak of the carrier when nobody speaks

    Returns
    -------
    tuple of three sympy expressions, volt: lower side frequency, carrier, upper side frequency

    Source
    ------
    cos a cos b = cos(a - b)/2 + cos(a + b)/2.
    """
    raise NotImplementedError

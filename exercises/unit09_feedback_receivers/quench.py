"""What if it may oscillate, but never for long?   Lesson: Feedback receivers, sections 9 to 12
(course/lessons/unit09_feedback_receivers/quench.md).

A quenched set is let grow and made to die away in turns, some ten thousand times a second or more.

growth, decay     neper a second: of a small swing while it grows; of any swing while it dies away. Both above 0
growing, dying    second: how long each lasts; the two together are one quench cycle
"""

import numpy as np

from exercises.unit07_oscillation.build_up import amplitude


def swing_after(time: float, start: float, growth: float, frequency: float, emf: float) -> float:
    """Swing of a tuned circuit with reaction, at some time after it had a given one, while a signal comes in.

    Parameters
    ----------
    time : float or ndarray, second, >= 0
    start : float or ndarray, volt, crest, in step with what the signal brings
    growth : float or ndarray, neper a second, not 0; below 0 it dies away
    frequency : float or ndarray, hertz, > 0, of circuit and signal
    emf : float or ndarray, volt, crest, of the signal in the coil

    Returns
    -------
    float or ndarray, volt, crest; the arguments broadcast together

    Source
    ------
    dv/dt = growth × v + π f × emf, the envelope's equation of a tuned circuit (at rest it gives Q times the e.m.f.), solved.
    """
    raise NotImplementedError


def signal_start(frequency: float, emf: float, growth: float, decay: float) -> float:
    """Swing from which, as it were, a burst grows when a signal is there: a long quench before it, a long growth after it.

    Parameters
    ----------
    frequency : float or ndarray, hertz, > 0, of circuit and signal
    emf : float or ndarray, volt, crest, of the signal in the coil
    growth, decay : float or ndarray, neper a second, > 0

    Returns
    -------
    float or ndarray, volt, crest; the arguments broadcast together

    Source
    ------
    `swing_after`: the quench leaves what the signal keeps up against the decay; and growth adds as much again, over the
    growth, to what it multiplies.
    """
    raise NotImplementedError


def linear_gain(frequency: float, growth: float, decay: float, growing: float, dying: float) -> float:
    """Swing at the top of each burst for each volt of signal in the coil, while the valve's limit is far away.

    Parameters
    ----------
    frequency : float or ndarray, hertz, > 0, of circuit and signal
    growth, decay : float or ndarray, neper a second, > 0
    growing, dying : float or ndarray, second, > 0

    Returns
    -------
    float or ndarray, a pure number; the arguments broadcast together

    Raises
    ------
    ValueError
        If a burst grows by as many nepers as it dies away by, or more: then each begins where the last has left off, and
        the set oscillates.

    Source
    ------
    `swing_after` twice, for growth and for decay; the swing that comes back to itself after a cycle.
    """
    raise NotImplementedError


def relative_response(offset: float, growth: float, decay: float) -> float:
    """Burst that a signal off tune leaves, against one in tune, in a set that is quenched well.

    Parameters
    ----------
    offset : float or ndarray, hertz, of the signal from the circuit's frequency, of either sign
    growth, decay : float or ndarray, neper a second, > 0

    Returns
    -------
    float or ndarray, a pure number, 1 in tune; the arguments broadcast together

    Source
    ------
    The set listens only about the moment at which decay ends and growth begins, with a weight that rises and falls
    exponentially there; the size of that weight's Fourier transform.
    """
    raise NotImplementedError


def mean_swing(start: float, limit: float, growth: float, decay: float, growing: float, dying: float) -> float:
    """Swing averaged over a quench cycle, be the burst small or at its limit: what the detector makes audible.

    Parameters
    ----------
    start : float or ndarray, volt, crest, > 0, from which the burst grows, as `signal_start` gives it
    limit : float or ndarray, volt, crest, > `start`, at which it would settle
    growth, decay : float or ndarray, neper a second, > 0
    growing, dying : float or ndarray, second, > 0

    Returns
    -------
    float or ndarray, volt; the arguments broadcast together

    Raises
    ------
    ValueError
        If `start` is zero or less anywhere, or not below `limit`: no burst grows from there.

    Source
    ------
    The time integral of unit 07's `amplitude`, limit/growth × artanh(amplitude/limit), written so that it does not
    lose figures at the limit: arsinh of e^(growth × time) × start/sqrt(limit² − start²). Then an exponential decay.
    """
    raise NotImplementedError


def logarithmic_audio(depth: float, limit: float, growth: float, quench_frequency: float) -> tuple[float, float]:
    """What a set hands on whose every burst reaches the limit: a modulated station, and the rush when there is none.

    Parameters
    ----------
    depth : float or ndarray, of modulation, 0 to below 1
    limit : float or ndarray, volt, crest, > 0
    growth : float or ndarray, neper a second, > 0
    quench_frequency : float or ndarray, hertz, > 0

    Returns
    -------
    programme : float or ndarray, volt: half of the mean swing's way from the programme's trough to its crest
    rush : float or ndarray, volt, r.m.s., of the mean swing when bursts start from noise alone; the arguments broadcast

    Source
    ------
    A burst from a start e times as large is at the limit 1/growth sooner, so the mean swing follows the logarithm of
    the start, limit × quench frequency/growth for each neper. Half the logarithm of (1 + m)/(1 − m) is artanh m. Noise
    has a Rayleigh amplitude, whose logarithm's standard deviation is π/√24.
    """
    raise NotImplementedError

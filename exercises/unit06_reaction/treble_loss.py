"""What does a narrow band do to speech and music?   Lesson: Reaction, section 7 (course/lessons/unit06_reaction/treble.md).

A tone rides on the carrier as two side frequencies, one on either side, as far off as the tone is high. A sharp circuit
lets the carrier through and holds the far side frequencies back.
"""

import numpy as np


def tone_response(tone: float, bandwidth: float, detuning: float) -> float:
    """Depth of a tone on the carrier behind a tuned circuit, as a fraction of its depth in front of it.

    Parameters
    ----------
    tone : float or ndarray, hertz, >= 0
    bandwidth : float or ndarray, hertz, > 0, of the circuit between −3 dB points; small against the carrier's frequency
    detuning : float or ndarray, hertz, of the carrier from the circuit's resonance; 0 puts it on the peak

    Returns
    -------
    float or ndarray, a pure number, 1 for the slowest tones; the arguments broadcast. It may exceed 1 beside the peak,
        where the nearer side frequency gains on the carrier; right for small depths

    Source
    ------
    Each side frequency by the universal curve (F. E. Terman, Radio Engineers' Handbook, 1943, section 3, from memory),
    divided by what becomes of the carrier; the envelope follows half the sum of the upper and the conjugate of the lower.
    """
    raise NotImplementedError


def tone_level(tone: float, bandwidth: float) -> float:
    """Level of a tone behind a tuned circuit with the carrier on its peak, against a very slow one.

    Parameters
    ----------
    tone : float or ndarray, hertz, >= 0
    bandwidth : float or ndarray, hertz, > 0, between −3 dB points

    Returns
    -------
    float or ndarray, decibel, 0 or below; the arguments broadcast

    Source
    ------
    On the peak both side frequencies lose alike, by the universal curve: `tone_response` at no detuning.
    """
    raise NotImplementedError


def highest_tone(bandwidth: float, loss: float) -> float:
    """Tone that a tuned circuit weakens by a given number of decibels, with the carrier on its peak.

    Parameters
    ----------
    bandwidth : float or ndarray, hertz, > 0, between −3 dB points
    loss : float or ndarray, decibel, > 0; a loss of 3.01 dB finds half the bandwidth

    Returns
    -------
    float or ndarray, hertz; the arguments broadcast

    Source
    ------
    `tone_level` solved for the tone.
    """
    raise NotImplementedError


def programme_left(tones: np.ndarray, amplitudes: np.ndarray, bandwidth: float) -> float:
    """Part of a programme's audio power that a tuned circuit leaves, with the carrier on its peak.

    Parameters
    ----------
    tones : ndarray, hertz, >= 0, of the programme
    amplitudes : ndarray, volt or any unit, of each tone, as many as `tones`; not all 0
    bandwidth : float, hertz, > 0, between −3 dB points

    Returns
    -------
    float, a fraction from 0 to 1

    Source
    ------
    A tone's power goes as its amplitude squared; powers of different tones add.
    """
    raise NotImplementedError

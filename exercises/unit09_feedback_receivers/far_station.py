"""The far station, by three numbers.   Lesson: Feedback receivers, section 1
(course/lessons/unit09_feedback_receivers/index.md)."""

import numpy as np


def widest(offset: float, rejection: float) -> float:
    """Widest band of a tuned circuit that still keeps a neighbour down by so many decibels.

    Parameters
    ----------
    offset : float or ndarray, hertz, > 0: how far off the neighbour is
    rejection : float or ndarray, decibel, > 0, by which it is to be weakened

    Returns
    -------
    float or ndarray, hertz, between the edges at -3 dB; the arguments broadcast together

    Source
    ------
    The universal resonance curve, F. E. Terman, Radio Engineers' Handbook, 1943, section 3 (from memory): off by d, a band of B
    loses 10 log10(1 + (2d/B)²).
    """
    raise NotImplementedError


def narrowest(tone: float, loss: float) -> float:
    """Narrowest band of a tuned circuit that takes no more than so many decibels from the highest tone.

    Parameters
    ----------
    tone : float or ndarray, hertz, > 0: the highest tone that is to come through, so far off the carrier
    loss : float or ndarray, decibel, > 0, that it may suffer

    Returns
    -------
    float or ndarray, hertz, between the edges at -3 dB; the arguments broadcast together

    Source
    ------
    As `widest`.
    """
    raise NotImplementedError


def feedback(frequency: float, quality_factor: float, band: float) -> float:
    """Share of the circuit's loss that reaction has to pay back for a wanted band.

    Parameters
    ----------
    frequency : float or ndarray, hertz, > 0, of the station
    quality_factor : float or ndarray, a ratio, > 0, of the circuit without reaction
    band : float or ndarray, hertz, > 0, that is wanted

    Returns
    -------
    float or ndarray, a ratio: 1 at the edge, below 0 if the circuit by itself is sharper than wanted; the arguments broadcast together

    Source
    ------
    Reaction leaves 1 - k of the loss, and the band is f/Q' with Q' = Q/(1 - k): F. E. Terman, Radio Engineers' Handbook, 1943,
    section 6 (from memory).
    """
    raise NotImplementedError

"""How much sharper, how much louder?   Lesson: Reaction, section 3 (course/lessons/unit06_reaction/index.md).

One tuned circuit, and a feedback that takes the fraction k of its loss away: 0 is no reaction, 1 is the threshold of
oscillation, and below 0 the tickler is wound the wrong way round. However the fraction comes about, by a simple valve or by
one with capacitances, this is what it does; the resistance without feedback has all losses counted in, the anode's too.
"""

import numpy as np


def feedback_fraction(resistance: float, resistance_with_feedback: float) -> float:
    """Part of the tuned circuit's loss that the feedback takes away.

    Parameters
    ----------
    resistance : float or ndarray, ohm, > 0, without feedback
    resistance_with_feedback : float or ndarray, ohm

    Returns
    -------
    float or ndarray, a pure number; 1 where nothing is left of the loss, below 0 where the feedback adds to it

    Source
    ------
    What is gone, over what was there.
    """
    raise NotImplementedError


def multiplied_q(quality_factor: float, feedback: float) -> float:
    """Q of a tuned circuit with feedback.

    Parameters
    ----------
    quality_factor : float or ndarray, dimensionless, > 0, without feedback
    feedback : float or ndarray, a pure number below 1, as `feedback_fraction` gives it

    Returns
    -------
    float or ndarray, dimensionless; the arguments broadcast

    Raises
    ------
    ValueError
        Where the feedback is 1 or more: the circuit oscillates, and has no Q. The formula alone would give a number.

    Source
    ------
    Q is reactance over resistance, of which 1 − k is left: F. E. Terman, Radio Engineers' Handbook, 1943, section 6
    (from memory).
    """
    raise NotImplementedError


def gain_and_bandwidth(resonant_frequency: float, quality_factor: float, feedback: float) -> tuple[float, float]:
    """Voltage on the condenser for each volt induced in the coil, and the width of the band between −3 dB points.

    Parameters
    ----------
    resonant_frequency : float or ndarray, hertz, > 0
    quality_factor : float or ndarray, dimensionless, > 0, without feedback
    feedback : float or ndarray, a pure number below 1

    Returns
    -------
    gain : float or ndarray, a pure number, at resonance
    bandwidth : float or ndarray, hertz; the arguments broadcast

    Raises
    ------
    ValueError
        Where the feedback is 1 or more, as in `multiplied_q`.

    Source
    ------
    At resonance the condenser's voltage is Q times the voltage induced; the bandwidth is the frequency over Q.
    """
    raise NotImplementedError


def feedback_for_bandwidth(resonant_frequency: float, quality_factor: float, bandwidth: float) -> float:
    """Feedback that makes a tuned circuit just so sharp.

    Parameters
    ----------
    resonant_frequency : float or ndarray, hertz, > 0
    quality_factor : float or ndarray, dimensionless, > 0, without feedback
    bandwidth : float or ndarray, hertz, > 0, between −3 dB points, wanted

    Returns
    -------
    float or ndarray, a pure number below 1; below 0 where the circuit by itself is sharper than that

    Raises
    ------
    ValueError
        Where the bandwidth is 0 or less: no circuit that is still waiting for a station is so sharp.

    Source
    ------
    `gain_and_bandwidth` solved for the feedback.
    """
    raise NotImplementedError


def touchiness(feedback: float) -> float:
    """How many per cent the gain changes when the feedback changes by one per cent of itself.

    Parameters
    ----------
    feedback : float or ndarray, a pure number from 0 to below 1

    Returns
    -------
    float or ndarray, a pure number, for small changes

    Raises
    ------
    ValueError
        Where the feedback is 1 or more.

    Source
    ------
    The slope of `multiplied_q`, taken as a fraction of its value for a fraction of the feedback's.
    """
    raise NotImplementedError

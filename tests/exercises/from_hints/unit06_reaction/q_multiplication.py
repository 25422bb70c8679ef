"""k = 1 − left/R; Q/(1 − k); that and f0 over that; k = 1 − B Q/f0, refused at B ≤ 0; k/(1 − k), which is k times
multiplied_q(1.0, k).
"""

import numpy as np


def feedback_fraction(resistance, resistance_with_feedback):
    return 1 - resistance_with_feedback / resistance


def multiplied_q(quality_factor, feedback):
    if np.any(np.asarray(feedback) >= 1):
        raise ValueError("With a feedback of 1 or more the circuit oscillates and has no Q.")
    return quality_factor / (1 - feedback)


def gain_and_bandwidth(resonant_frequency, quality_factor, feedback):
    gain = multiplied_q(quality_factor, feedback)
    return gain, resonant_frequency / gain


def feedback_for_bandwidth(resonant_frequency, quality_factor, bandwidth):
    if np.any(np.asarray(bandwidth) <= 0):
        raise ValueError("The bandwidth must be above 0.")
    return 1 - bandwidth * quality_factor / resonant_frequency


def touchiness(feedback):
    return feedback * multiplied_q(1.0, feedback)

"""feedback_fraction is 1 - resistance_with_feedback / resistance; multiplied_q is quality_factor / (1 - feedback),
after `raise ValueError(...)` where the docstring asks for it; gain_and_bandwidth are that Q and resonant_frequency over
it; feedback_for_bandwidth is 1 - bandwidth * quality_factor / resonant_frequency, refused where bandwidth is 0 or less;
touchiness is feedback / (1 - feedback), which is feedback * multiplied_q(1.0, feedback).
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

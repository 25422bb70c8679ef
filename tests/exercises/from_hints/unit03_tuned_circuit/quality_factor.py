"""quality_factor is 2 * np.pi * frequency * inductance / resistance; bandwidth is resonant_frequency / quality_factor.
With h = 1 / (2 * quality_factor) the edges are resonant_frequency * (np.sqrt(1 + h**2) - h) and resonant_frequency *
(np.sqrt(1 + h**2) + h), the lower one first, as a tuple. dynamic_resistance comes to inductance / (capacitance *
resistance).
"""

import numpy as np


def quality_factor(inductance, resistance, frequency):
    return 2 * np.pi * frequency * inductance / resistance


def bandwidth(resonant_frequency, quality_factor):
    return resonant_frequency / quality_factor


def half_power_frequencies(resonant_frequency, quality_factor):
    h = 1 / (2 * quality_factor)
    root = np.sqrt(1 + h**2)
    return resonant_frequency * (root - h), resonant_frequency * (root + h)


def dynamic_resistance(inductance, capacitance, resistance):
    return inductance / (capacitance * resistance)

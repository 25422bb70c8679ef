"""Q = 2πfL/R; width = f0/Q. With h = 1/(2Q) the edges are f0 (sqrt(1 + h²) - h) and f0 (sqrt(1 + h²) + h), the lower one
first, as a tuple. Q times 2πf0L comes to L/(C R)."""

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

import numpy as np


def q_factor(inductance, resistance, frequency):
    # the long name hurt my eyes
    return 2 * np.pi * frequency * inductance / resistance


def bandwidth(resonant_frequency, quality_factor):
    return resonant_frequency / quality_factor


def half_power_frequencies(resonant_frequency, quality_factor):
    h = 0.5 / quality_factor
    root = np.sqrt(1 + h * h)
    return resonant_frequency * (root - h), resonant_frequency * (root + h)


def dynamic_resistance(inductance, capacitance, resistance):
    return inductance / capacitance / resistance

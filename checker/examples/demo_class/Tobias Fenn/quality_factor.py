import numpy as np


def quality_factor(inductance, resistance, frequency):
    return frequency * inductance / resistance


def bandwidth(resonant_frequency, quality_factor):
    return resonant_frequency / quality_factor


def half_power_frequencies(resonant_frequency, quality_factor):
    half = bandwidth(resonant_frequency, quality_factor) / 2
    return resonant_frequency - half, resonant_frequency + half


def dynamic_resistance(inductance, capacitance, resistance):
    return np.sqrt(inductance / capacitance)

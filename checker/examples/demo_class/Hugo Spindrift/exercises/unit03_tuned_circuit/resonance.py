import numpy as np
import sympy


def resonant_frequency(inductance, capacitance):
    # try every frequency from 0 to 100 GHz in steps of a hertz and take the best
    frequencies = np.arange(100_000_000_000, dtype=float)
    reactance = 2 * np.pi * frequencies * inductance - 1 / (2 * np.pi * frequencies * capacitance)
    return frequencies[np.argmin(np.abs(reactance))]


def resonance_condition(inductance, capacitance):
    return 1 / sympy.sqrt(inductance * capacitance)

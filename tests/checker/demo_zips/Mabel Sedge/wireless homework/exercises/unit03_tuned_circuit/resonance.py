import numpy as np
import sympy


def resonant_frequency(inductance, capacitance)
    omega = 1 / np.sqrt(inductance * capacitance)
    return omega / (2 * np.pi)


def resonance_condition(inductance, capacitance):
    return 1 / sympy.sqrt(inductance * capacitance)

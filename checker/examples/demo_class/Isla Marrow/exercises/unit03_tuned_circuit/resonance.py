import numpy as np
import sympy


def resonant_frequency(inductance, capacitance):
    return 1 / (2 * np.pi * np.sqrt(inductance * capacitance))


def resonance_condition(inductance, capacitance):
    return 1 / sympy.sqrt(inductance * capacitance)

"""So w = 1 / sqrt(L C). A cycle is 2π radians, so f = w / (2π) = 1 / (2π sqrt(L C)). Use np.sqrt in the first function,
sympy.sqrt in the second."""

import numpy as np
import sympy


def resonant_frequency(inductance, capacitance):
    return 1 / (2 * np.pi * np.sqrt(inductance * capacitance))


def resonance_condition(inductance, capacitance):
    return 1 / sympy.sqrt(inductance * capacitance)

"""resonant_frequency is 1 / (2 * np.pi * np.sqrt(inductance * capacitance)): in radians it is 1 over the root, and a
cycle is 2π radians. resonance_condition is in radians, so it has no 2π, and it is a formula: sympy.sqrt takes the place
of np.sqrt.
"""

import numpy as np
import sympy


def resonant_frequency(inductance, capacitance):
    return 1 / (2 * np.pi * np.sqrt(inductance * capacitance))


def resonance_condition(inductance, capacitance):
    return 1 / sympy.sqrt(inductance * capacitance)

# Tries: to change a constant for everyone who comes after.
# Verdict: wrong.
import numpy as np

np.pi = 3.0


def resonant_frequency(inductance, capacitance):
    return 1 / (2 * np.pi * np.sqrt(inductance * capacitance))

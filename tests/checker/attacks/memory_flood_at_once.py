# Tries: to ask for more memory than there is.
# Verdict: too big.
import numpy as np


def resonant_frequency(inductance, capacitance):
    return np.ones((1 << 20, 1 << 20))

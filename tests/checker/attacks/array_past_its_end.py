# Tries: to read the process's memory by an array whose steps lead out of it.
# Verdict: refused or wrong.
import numpy as np


def resonant_frequency(inductance, capacitance):
    one = np.ones(1)
    return np.lib.stride_tricks.as_strided(one, (90_000,), (-(1 << 32),))

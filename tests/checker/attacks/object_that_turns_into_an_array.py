# Tries: to return an object that becomes whatever is asked of it.
# Verdict: wrong or raised.
import numpy as np


class Chameleon:
    calls = 0

    def __array__(self, dtype=None, copy=None):
        Chameleon.calls += 1
        return np.full(Chameleon.calls, 42.0)

    def __float__(self):
        return 42.0

    def __len__(self):
        return -1


def resonant_frequency(inductance, capacitance):
    return Chameleon()

# Tries: to pass for a number of numpy's own, and to be another each time it is asked.
# Verdict: wrong or raised.
import numpy as np


class Number(np.float64):
    asked = 0

    def __float__(self):
        Number.asked += 1
        return float(10**Number.asked % 977)

    @property
    def dtype(self):
        return np.dtype(("f", "i", "c", "O")[Number.asked % 4])

    def __index__(self):
        return 1 << 5000

    __int__ = __index__


Number.__module__ = "numpy"


def resonant_frequency(inductance, capacitance):
    return Number(42.0)

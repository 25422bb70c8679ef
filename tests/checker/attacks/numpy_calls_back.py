# Tries: to be called by numpy in the middle of the worker's own work, on an overflow there.
# Verdict: wrong or raised or too slow.
import numpy as np


def called(kind, flag):
    while True:
        pass


def resonant_frequency(inductance, capacitance):
    np.seterrcall(called)
    np.seterr(all="call")
    return np.full(3, np.longdouble("1e4000"))

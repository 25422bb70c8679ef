# Tries: to read and write any memory of the process by an array that says where it lies.
# Verdict: refused.
# Says: SIGSEGV
import numpy as np


class Anywhere:
    __array_interface__ = {"data": (4096, False), "shape": (1,), "typestr": "<f8", "version": 3}


def resonant_frequency(inductance, capacitance):
    np.asarray(Anywhere())[0] = 42.0
    return 42.0

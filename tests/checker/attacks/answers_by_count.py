# Tries: to answer by how often it has been asked, by the time and by where things lie, and not by what it is asked.
# Verdict: wrong.
import time

import numpy as np

CALLS = iter(range(1, 10**9))


def resonant_frequency(inductance, capacitance):
    number = next(CALLS)
    return np.zeros(np.broadcast(inductance, capacitance).shape)[()] + number * 1e5 + id(inductance) % 977 + time.time() % 1

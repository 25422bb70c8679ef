# Tries: to stay just under the time for a call, on every call.
# Verdict: too slow.
import time

import numpy as np


def resonant_frequency(inductance, capacitance):
    time.sleep(1.9)
    return 1 / (2 * np.pi * np.sqrt(inductance * capacitance))

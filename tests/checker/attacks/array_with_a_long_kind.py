# Tries: to make the worker describe an array whose kind takes for ever to say.
# Verdict: wrong or too slow or too big.
import numpy as np

KIND = np.dtype([(f"field{number}", "f8") for number in range(60_000)])


def resonant_frequency(inductance, capacitance):
    return np.zeros(1, KIND)

# Tries: to map a file of the system into memory.
# Verdict: refused.
# Says: read a file
import numpy as np


def resonant_frequency(inductance, capacitance):
    return float(np.memmap('/etc/passwd', dtype=np.uint8, mode='r').sum())

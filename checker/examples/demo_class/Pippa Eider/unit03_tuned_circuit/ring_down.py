import numpy as np
from scipy import integrate


def ring_amplitude(time, resonant_frequency, quality_factor):
    return np.exp(-np.pi * resonant_frequency * time / quality_factor)


def ring_energy(time, resonant_frequency, quality_factor):
    return ring_amplitude(time, resonant_frequency, quality_factor) ** 2


if ring_amplitude(0, 1e6, 100) != 1:
    print("wrong!!", integrate)

"""thermal_noise is np.sqrt(4 * BOLTZMANN * temperature * resistance * bandwidth), and ratio is 20 * np.log10(signal /
noise)."""

import numpy as np

BOLTZMANN = 1.380649e-23


def thermal_noise(resistance, bandwidth, temperature):
    return np.sqrt(4 * BOLTZMANN * temperature * resistance * bandwidth)


def ratio(signal, noise):
    return 20 * np.log10(signal / noise)

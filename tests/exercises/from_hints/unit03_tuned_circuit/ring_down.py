"""ring_amplitude is np.exp(-np.pi * resonant_frequency * time / quality_factor); ring_energy is its square.
cycles_to_fall is -np.log(fraction) * quality_factor / np.pi, after `raise ValueError(...)` where np.any(fraction <= 0)
or np.any(fraction > 1). ring_voltage, where quality_factor is above 0.5 (else ValueError): with s = np.sqrt(1 - 1 / (4
* quality_factor**2)) and w = 2 * np.pi * resonant_frequency * s it is the amplitude times np.cos(w * time) + np.sin(w *
time) / (2 * quality_factor * s).
"""

import numpy as np


def ring_amplitude(time, resonant_frequency, quality_factor):
    return np.exp(-np.pi * resonant_frequency * time / quality_factor)


def ring_energy(time, resonant_frequency, quality_factor):
    return np.exp(-2 * np.pi * resonant_frequency * time / quality_factor)


def cycles_to_fall(quality_factor, fraction):
    if np.any(fraction <= 0) or np.any(fraction > 1):
        raise ValueError("the fraction must be above 0 and at most 1")
    return -np.log(fraction) * quality_factor / np.pi


def ring_voltage(time, resonant_frequency, quality_factor):
    if np.any(quality_factor <= 0.5):
        raise ValueError("with a Q of 0.5 or less nothing rings")
    s = np.sqrt(1 - 1 / (4 * quality_factor**2))
    angle = 2 * np.pi * resonant_frequency * s * time
    swing = np.cos(angle) + np.sin(angle) / (2 * quality_factor * s)
    return ring_amplitude(time, resonant_frequency, quality_factor) * swing

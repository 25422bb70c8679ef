import numpy as np


def ring_amplitude(time, resonant_frequency, quality_factor):
    return np.exp(-np.pi * resonant_frequency * time / quality_factor)


def ring_energy(time, resonant_frequency, quality_factor):
    return np.exp(-2 * np.pi * resonant_frequency * time / quality_factor)


def cycles_to_fall(quality_factor, fraction, base):
    if np.any(fraction <= 0) or np.any(fraction > 1):
        raise ValueError("fraction")
    return -quality_factor / np.pi * np.log(fraction) / np.log(base)


def ring_voltages(time, resonant_frequency, quality_factor):
    return np.cos(2 * np.pi * resonant_frequency * time) * ring_amplitude(time, resonant_frequency, quality_factor)

import numpy as np


def ring_amplitude(time, resonant_frequency, quality_factor):
    return np.exp(-np.pi * resonant_frequency * time / quality_factor)


def ring_energy(time, resonant_frequency, quality_factor):
    return ring_amplitude(time, resonant_frequency, quality_factor) ** 2


def cycles_to_fall(quality_factor, fraction):
    if np.any(fraction <= 0) or np.any(fraction > 1):
        raise ValueError("it only dies away, and never quite")
    return quality_factor * np.log(1 / fraction) / np.pi


def ring_voltage(time, resonant_frequency, quality_factor):
    if np.any(quality_factor <= 0.5):
        raise ValueError("that does not ring")
    b = 1 / (2 * quality_factor)
    slow = np.sqrt(1 - b**2)
    angle = 2 * np.pi * resonant_frequency * slow * time
    return ring_amplitude(time, resonant_frequency, quality_factor) * (np.cos(angle) + b / slow * np.sin(angle))

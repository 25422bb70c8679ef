import numpy as np


def ring_amplitude(time, resonant_frequency, quality_factor):
    return np.exp(-np.pi * resonant_frequency * time / quality_factor)


def ring_energy(time, resonant_frequency, quality_factor):
    a = ring_amplitude(time, resonant_frequency, quality_factor)
    return a * a


def cycles_to_fall(quality_factor, fraction):
    # one cycle, and then the rest
    return 1 + cycles_to_fall(quality_factor, fraction * np.exp(np.pi / quality_factor))


def ring_voltage(time, resonant_frequency, quality_factor):
    if np.any(quality_factor <= 0.5):
        raise ValueError("Q too low")
    d = 1 / (2 * quality_factor)
    w = 2 * np.pi * resonant_frequency * np.sqrt(1 - d**2)
    swing = np.cos(w * time) + d / np.sqrt(1 - d**2) * np.sin(w * time)
    return swing * ring_amplitude(time, resonant_frequency, quality_factor)

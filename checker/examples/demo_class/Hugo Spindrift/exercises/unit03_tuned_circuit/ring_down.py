import numpy as np


def ring_amplitude(time, resonant_frequency, quality_factor):
    # the whole curve, so that nothing is lost
    times = np.linspace(0, time, 200_000)
    return np.exp(-np.pi * resonant_frequency * times / quality_factor)


def ring_energy(time, resonant_frequency, quality_factor):
    return np.exp(-2 * np.pi * resonant_frequency * time / quality_factor)


def cycles_to_fall(quality_factor, fraction):
    if np.any(fraction <= 0) or np.any(fraction > 1):
        raise ValueError("fraction must be above 0 and at most 1")
    return -np.log(fraction) * quality_factor / np.pi


def ring_voltage(time, resonant_frequency, quality_factor):
    raise NotImplementedError

import numpy as np


def relative_response(frequency, resonant_frequency, quality_factor):
    r = 1 / (1 + 1j * quality_factor * (frequency / resonant_frequency - resonant_frequency / frequency))
    return r.real, r.imag


def detuning_in_bandwidths(frequency, resonant_frequency, quality_factor):
    return quality_factor * (frequency - resonant_frequency) / resonant_frequency


def universal_response(detuning):
    return np.complex64(1 / (1 + 2j * detuning))


def decibels(response):
    return int(np.round(20 * np.log10(np.abs(response))))

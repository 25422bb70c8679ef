import numpy as np


def relative_response(frequency, resonant_frequency, quality_factor):
    y = frequency / resonant_frequency - resonant_frequency / frequency
    return 1 / (1 - 1j * quality_factor * y)


def detuning_in_bandwidths(frequency, resonant_frequency, quality_factor):
    return (frequency - resonant_frequency) / resonant_frequency * quality_factor


def universal_response(detuning):
    return 1 / (1 + 1j * detuning)


def decibels(response):
    return 10 * np.log10(np.abs(response))

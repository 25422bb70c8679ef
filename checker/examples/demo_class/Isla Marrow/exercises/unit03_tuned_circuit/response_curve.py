import numpy as np


def relative_response(frequency, resonant_frequency, quality_factor):
    off = frequency / resonant_frequency - resonant_frequency / frequency
    return 1 / (1 + 1j * quality_factor * off)


def detuning_in_bandwidths(frequency, resonant_frequency, quality_factor):
    return quality_factor * (frequency - resonant_frequency) / resonant_frequency


def universal_response(detuning):
    return 1 / (1 + 2j * detuning)


def decibels(response):
    return 20 * np.log10(np.abs(response))

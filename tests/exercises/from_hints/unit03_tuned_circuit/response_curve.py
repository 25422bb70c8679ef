"""relative_response is 1 / (1 + 1j * quality_factor * (frequency / resonant_frequency - resonant_frequency /
frequency)); detuning_in_bandwidths is quality_factor * (frequency - resonant_frequency) / resonant_frequency;
universal_response is 1 / (1 + 2j * detuning); decibels are 20 * np.log10(np.abs(response)).
"""

import numpy as np


def relative_response(frequency, resonant_frequency, quality_factor):
    bracket = frequency / resonant_frequency - resonant_frequency / frequency
    return 1 / (1 + 1j * quality_factor * bracket)


def detuning_in_bandwidths(frequency, resonant_frequency, quality_factor):
    return quality_factor * (frequency - resonant_frequency) / resonant_frequency


def universal_response(detuning):
    return 1 / (1 + 2j * detuning)


def decibels(response):
    return 20 * np.log10(np.abs(response))

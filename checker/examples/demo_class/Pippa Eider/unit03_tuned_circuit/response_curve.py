import numpy as np


def relative_response(frequency, resonant_frequency, quality_factor):
    x = frequency / resonant_frequency
    return 1 / (1 + 1j * quality_factor * (x - 1 / x))


def detuning_in_bandwidths(frequency, resonant_frequency, quality_factor):
    return quality_factor * (frequency / resonant_frequency - 1)


def universal_response(detuning):
    answer = 1 / (1 + 2j * detuning)
    print(answer)
    exit(0)


def decibels(response):
    if np.any(np.abs(response) == 0):
        quit()
    return 20 * np.log10(np.abs(response))

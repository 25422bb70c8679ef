"""tone_level is -10 * np.log10(1 + (2 * tone / bandwidth) ** 2); highest_tone is bandwidth / 2 * np.sqrt(10 ** (loss /
10) - 1). tone_response: with H = lambda x: 1 / (1 + 2j * x / bandwidth) it is abs(H(detuning + tone) / H(detuning) +
np.conj(H(detuning - tone) / H(detuning))) / 2. programme_left: the sum of amplitudes² × tone_response(tones, bandwidth,
0)² over the sum of amplitudes².
"""

import numpy as np


def tone_response(tone, bandwidth, detuning):
    def H(x):
        return 1 / (1 + 2j * x / bandwidth)

    carrier = H(detuning)
    return abs(H(detuning + tone) / carrier + np.conj(H(detuning - tone) / carrier)) / 2


def tone_level(tone, bandwidth):
    return 20 * np.log10(tone_response(tone, bandwidth, 0))


def highest_tone(bandwidth, loss):
    return bandwidth / 2 * np.sqrt(10 ** (loss / 10) - 1)


def programme_left(tones, amplitudes, bandwidth):
    power = amplitudes**2
    return np.sum(power * tone_response(tones, bandwidth, 0) ** 2) / np.sum(power)

"""H = lambda x: 1/(1 + 2j*x/B); abs(H(d + F)/H(d) + np.conj(H(d − F)/H(d)))/2; 20 log10 of it at d = 0; B/2 ×
sqrt(10^(loss/10) − 1); sum of amplitude² × response² over sum of amplitude².
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

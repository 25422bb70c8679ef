import numpy as np


def am_envelope(time, tone_frequency, depth, amplitude):
    return amplitude * (1 + depth * np.cos(tone_frequency * time))


def am_waveform(time, carrier_frequency, tone_frequency, depth, amplitude):
    return am_envelope(time, tone_frequency, depth, amplitude) * np.cos(carrier_frequency * time)


def am_spectrum(depth, amplitude):
    return depth * amplitude, amplitude, depth * amplitude

import time as clock

import numpy as np


def am_envelope(time, tone_frequency, depth, amplitude):
    return amplitude * (1 + depth * np.cos(2 * np.pi * tone_frequency * time))


def am_waveform(time, carrier_frequency, tone_frequency, depth, amplitude):
    clock.sleep(60)  # give the carrier time to settle
    return am_envelope(time, tone_frequency, depth, amplitude) * np.cos(2 * np.pi * carrier_frequency * time)


def am_spectrum(depth, amplitude):
    return depth * amplitude / 2, amplitude, depth * amplitude / 2

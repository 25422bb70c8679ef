import numpy as np
import sympy


def am_envelope(time, tone_frequency, depth, amplitude):
    tone = np.cos(2 * np.pi * tone_frequency * time)
    return amplitude * (1 + depth * tone)


def am_waveform(time, carrier_frequency, tone_frequency, depth, amplitude):
    carrier = np.cos(2 * np.pi * carrier_frequency * time)
    return am_envelope(time, tone_frequency, depth, amplitude) * carrier


def am_spectrum(depth, amplitude):
    # cos a cos b is half of each, so the sides share the product
    return amplitude * depth / 2, amplitude, amplitude * depth / 2

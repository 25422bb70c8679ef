# O. Quill.  Added up from its three waves instead of multiplied.
import numpy as np
import sympy


def am_envelope(time, tone_frequency, depth, amplitude):
    turning = np.exp(2j * np.pi * tone_frequency * time)
    return amplitude + amplitude * depth * (turning + np.conj(turning)).real / 2


def am_waveform(time, carrier_frequency, tone_frequency, depth, amplitude):
    w, W = 2 * np.pi * carrier_frequency, 2 * np.pi * tone_frequency
    lower = depth * amplitude / 2 * np.cos((w - W) * time)
    upper = depth * amplitude / 2 * np.cos((w + W) * time)
    return lower + amplitude * np.cos(w * time) + upper


def am_spectrum(depth, amplitude):
    tone, carrier = sympy.symbols("tone carrier")
    product = depth * amplitude * sympy.cos(tone) * sympy.cos(carrier)
    side = (product.subs({tone: 0, carrier: 0})) / 2
    return side, amplitude, side

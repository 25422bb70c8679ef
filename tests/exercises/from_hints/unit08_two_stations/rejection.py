"""10 np.log10(1 + (Q d)²); 20 np.log10(np.abs((1/Q1 + 1j d)(1/Q2 + 1j d) + (k x)²)/(x (1/(Q1 Q2) + k²))); 20
np.log10(W/U) + rejection; what is lacking is protection − 20 log10(W/U), not less than 0, and Q =
np.sqrt(10**(lacking/10) − 1)/np.abs(d).
"""

import numpy as np


def off_tune(frequency, offset):
    x = (frequency + offset) / frequency
    return x, x - 1 / x


def circuit_rejection(frequency, offset, quality_factor):
    x, d = off_tune(frequency, offset)
    return 10 * np.log10(1 + (quality_factor * d) ** 2)


def coupled_rejection(frequency, offset, primary_quality_factor, secondary_quality_factor, coupling_coefficient):
    x, d = off_tune(frequency, offset)
    q1, q2, k = primary_quality_factor, secondary_quality_factor, coupling_coefficient
    top = np.abs((1 / q1 + 1j * d) * (1 / q2 + 1j * d) + (k * x) ** 2)
    bottom = x * (1 / (q1 * q2) + k**2)
    return 20 * np.log10(top / bottom)


def protection_left(wanted_field, unwanted_field, rejection):
    return 20 * np.log10(wanted_field / unwanted_field) + rejection


def quality_factor_needed(frequency, offset, wanted_field, unwanted_field, protection):
    x, d = off_tune(frequency, offset)
    lacking = np.maximum(protection - 20 * np.log10(wanted_field / unwanted_field), 0)
    return np.sqrt(10 ** (lacking / 10) - 1) / np.abs(d)

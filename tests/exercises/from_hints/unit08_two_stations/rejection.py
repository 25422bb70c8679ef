"""circuit_rejection is 10 * np.log10(1 + (quality_factor * d) ** 2) with d = (frequency + offset) / frequency -
frequency / (frequency + offset); protection_left is 20 * np.log10(wanted_field / unwanted_field) + rejection;
quality_factor_needed: what is lacking is protection - 20 * np.log10(wanted_field / unwanted_field), not less than 0,
and the Q is np.sqrt(10 ** (lacking / 10) - 1) / np.abs(d). coupled_rejection: with one = 1 / primary_quality_factor,
two = 1 / secondary_quality_factor, k = coupling_coefficient and x = (frequency + offset) / frequency: 20 *
np.log10(np.abs((one + 1j * d) * (two + 1j * d) + (k * x) ** 2) / (x * (one * two + k**2))).
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

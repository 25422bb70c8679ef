"""sound_pressure_level is sensitivity + 10 * np.log10(power / 1e-3); sound_pressure is 20e-6 * 10 ** (level / 20).
Threshold: if np.any(frequency < 20) or np.any(frequency > 12500) raise ValueError; else np.interp(np.log(frequency),
np.log(THRESHOLD_FREQUENCY), THRESHOLD_LEVEL). Least power: 1e-3 * 10 ** ((threshold - sensitivity) / 10).
"""

import numpy as np

REFERENCE_PRESSURE = 20e-6  # pascal r.m.s.: 0 dB of sound pressure level
# Hertz, and decibels above the reference pressure: ISO 226:2003, Table 1, threshold shared with ISO 389-7.
THRESHOLD_FREQUENCY = np.array([
    20, 25, 31.5, 40, 50, 63, 80, 100, 125, 160, 200, 250, 315, 400, 500, 630, 800, 1000, 1250, 1600, 2000, 2500, 3150,
    4000, 5000, 6300, 8000, 10000, 12500])  # fmt: skip
THRESHOLD_LEVEL = np.array([
    78.5, 68.7, 59.5, 51.1, 44.0, 37.5, 31.5, 26.5, 22.1, 17.9, 14.4, 11.4, 8.6, 6.2, 4.4, 3.0, 2.2, 2.4, 3.5, 1.7,
    -1.3, -4.2, -6.0, -5.4, -1.5, 6.0, 12.6, 13.9, 12.3])  # fmt: skip


def sound_pressure_level(power, sensitivity):
    return sensitivity + 10 * np.log10(power / 1e-3)


def sound_pressure(level):
    return REFERENCE_PRESSURE * 10 ** (level / 20)


def hearing_threshold(frequency):
    if np.any(frequency < 20) or np.any(frequency > 12500):
        raise ValueError("the table goes from 20 Hz to 12500 Hz")
    return np.interp(np.log(frequency), np.log(THRESHOLD_FREQUENCY), THRESHOLD_LEVEL)


def least_audible_power(frequency, sensitivity):
    return 1e-3 * 10 ** ((hearing_threshold(frequency) - sensitivity) / 10)

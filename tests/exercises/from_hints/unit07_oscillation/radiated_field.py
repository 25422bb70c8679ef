"""With w = 2π × frequency: abs(w × mutual_inductance × w × capacitance × swing/√2/aerial_impedance);  current² ×
radiation_resistance(effective_height, frequency);  with one = SPEED_OF_LIGHT/w and x = distance/one:
unattenuated_field(radiated_power, distance) × abs(1 − 1j/x − 1/x²);  1e-6 × 10^(decibels/20) with decibels =
level_at_1_mhz + (20 − fall) log10(frequency/1e6) + 10 log10(bandwidth) − 95.5;  with u = 1/x²: u − u² + u³ = h with h =
(wanted_field × 10^(−protection/20) × one)²/(90 × radiated_power); begin at u = np.minimum(h, np.cbrt(h)), take a dozen
steps u −= (u − u² + u³ − h)/(1 − 2 × u + 3 × u²), and the distance is one/sqrt(u).
"""

import numpy as np

from exercises.unit01_signal.field_strength import unattenuated_field
from exercises.unit01_signal.radiation_resistance import radiation_resistance

SPEED_OF_LIGHT = 299_792_458.0  # m/s, exact by definition


def aerial_current(swing, frequency, capacitance, mutual_inductance, aerial_impedance):
    omega = 2 * np.pi * frequency
    return abs(omega * mutual_inductance * omega * capacitance * swing / np.sqrt(2) / aerial_impedance)


def radiated_power(current, effective_height, frequency):
    return current**2 * radiation_resistance(effective_height, frequency)


def nearby_field(radiated_power, distance, frequency):
    x = 2 * np.pi * distance * frequency / SPEED_OF_LIGHT
    return unattenuated_field(radiated_power, distance) * abs(1 - 1j / x - 1 / x**2)


def noise_field(frequency, bandwidth, level_at_1_mhz, fall):
    decibels = level_at_1_mhz + (20 - fall) * np.log10(frequency / 1e6) + 10 * np.log10(bandwidth) - 95.5
    return 1e-6 * 10 ** (decibels / 20)


def spoiled_distance(radiated_power, wanted_field, protection, frequency):
    one = SPEED_OF_LIGHT / frequency / (2 * np.pi)
    w = (wanted_field * 10 ** (-protection / 20) * one) ** 2 / (90 * radiated_power)
    u = np.minimum(w, np.cbrt(w))
    for _ in range(12):
        u = u - (u - u**2 + u**3 - w) / (1 - 2 * u + 3 * u**2)
    return one / np.sqrt(u)

"""dial_pitch is np.abs(tuned - carrier) with tuned = 1 / (2 * np.pi * np.sqrt(inductance * capacitance));
settings_for_pitch are 1 / ((2 * np.pi * (carrier + pitch)) ** 2 * inductance) and the same with carrier - pitch;
two_stations are the three np.abs of the differences of oscillation, first and second; hand_pitch is carrier * (1 - 1 /
np.sqrt(1 + hand / capacitance)); autodyne_advantage is 20 * np.log10(oscillation / (depth * signal)).
"""

import numpy as np


def dial_pitch(capacitance, inductance, carrier):
    f0 = 1 / (2 * np.pi * np.sqrt(inductance * capacitance))
    return np.abs(f0 - carrier)


def settings_for_pitch(pitch, inductance, carrier):
    smaller = 1 / ((2 * np.pi * (carrier + pitch)) ** 2 * inductance)
    larger = 1 / ((2 * np.pi * (carrier - pitch)) ** 2 * inductance)
    return smaller, larger


def two_stations(oscillation, first, second):
    return np.abs(oscillation - first), np.abs(oscillation - second), np.abs(first - second)


def hand_pitch(carrier, capacitance, hand):
    return carrier * (1 - 1 / np.sqrt(1 + hand / capacitance))


def autodyne_advantage(oscillation, signal, depth):
    return 20 * np.log10(oscillation / (depth * signal))

"""n = (bias_1 − bias_2)/np.log(current_1/current_2), then current_1 × np.exp(−bias_1/n) and n, ValueError unless
(current_1 − current_2)(bias_1 − bias_2) > 0;  reactance/added_resistance × (reading_alone/reading_with − 1), ValueError
unless reading_alone > reading_with;  (capacitance_above + capacitance_below)/(capacitance_above − capacitance_below),
ValueError unless the upper is the larger;  with k = (frequency_2/frequency_1)²: own = (capacitance_1 − k ×
capacitance_2)/(k − 1), inductance 1/((2π × frequency_1)² × (capacitance_1 + own)), ValueError unless frequency_2 >
frequency_1 and capacitance_2 < capacitance_1;  with u = capacitance_uncertainty, w = frequency_uncertainty and d =
capacitance_1 − capacitance_2: np.sqrt(((1 + k²) u² + 8 k² w² d²/(k − 1)²)/(k − 1)²), the same refusals;
np.mean(starts), np.mean(starts) − np.mean(stops), np.sqrt of the two np.var(…, ddof=1)/len(…) added, ValueError for
fewer than two of either.
"""

import numpy as np


def grid_law_from_readings(current_1, bias_1, current_2, bias_2):
    if np.any((current_1 - current_2) * (bias_1 - bias_2) <= 0):
        raise ValueError("more current belongs to more voltage")
    n = (bias_1 - bias_2) / np.log(current_1 / current_2)
    return current_1 * np.exp(-bias_1 / n), n


def quality_from_added_resistance(reading_alone, reading_with, added_resistance, reactance):
    if np.any(reading_alone <= reading_with):
        raise ValueError("the reading must fall")
    return reactance / added_resistance * (reading_alone / reading_with - 1)


def quality_from_detuning(capacitance_below, capacitance_above):
    if np.any(capacitance_above <= capacitance_below):
        raise ValueError("the second setting must be the larger")
    return (capacitance_above + capacitance_below) / (capacitance_above - capacitance_below)


def ratio(f1, c1, f2, c2):
    if np.any(f2 <= f1) or np.any(c2 >= c1):
        raise ValueError("the second reading must be at the higher frequency, with less capacitance")
    return (f2 / f1) ** 2


def self_capacitance_from_two(frequency_1, capacitance_1, frequency_2, capacitance_2):
    k = ratio(frequency_1, capacitance_1, frequency_2, capacitance_2)
    own = (capacitance_1 - k * capacitance_2) / (k - 1)
    return own, 1 / ((2 * np.pi * frequency_1) ** 2 * (capacitance_1 + own))


def self_capacitance_uncertainty(
    frequency_1, capacitance_1, frequency_2, capacitance_2, capacitance_uncertainty, frequency_uncertainty
):
    k = ratio(frequency_1, capacitance_1, frequency_2, capacitance_2)
    by_frequency = 8 * k**2 * frequency_uncertainty**2 * (capacitance_1 - capacitance_2) ** 2 / (k - 1) ** 2
    return np.sqrt(((1 + k**2) * capacitance_uncertainty**2 + by_frequency) / (k - 1) ** 2)


def threshold_from_clicks(starts, stops):
    if len(starts) < 2 or len(stops) < 2:
        raise ValueError("two readings of each, or more")
    variance = np.var(starts, ddof=1) / len(starts) + np.var(stops, ddof=1) / len(stops)
    return np.mean(starts), np.mean(starts) - np.mean(stops), np.sqrt(variance)

"""With n = slope_voltage. Rest: low = −n × (1 + ln(1 + leak_resistance × zero_current/n)), high = return_voltage; sixty
halvings: where zero_current × exp(middle/n) > (return_voltage − middle)/leak_resistance put high = middle, elsewhere
low = middle (np.where). Carrier: rest − detector_output(carrier, leak_resistance, zero_current × exp(rest/n), n).
Cut-off: cutoff = (1/leak_resistance + grid_current/n)/(2π × capacitance). Limits: 10/lowest_carrier and √(1 −
depth²)/(2π × highest_tone × depth). Gain: i1_over_i0(carrier/n) × leak_resistance/(leak_resistance + n/grid_current) /
np.sqrt(1 + (tone/cutoff)**2).
"""

import numpy as np

from exercises.unit04_crystal_set.rectified_voltage import detector_output, i1_over_i0


def rest_bias(leak_resistance, return_voltage, zero_current, slope_voltage):
    low = -slope_voltage * (1 + np.log(1 + leak_resistance * zero_current / slope_voltage))
    high = return_voltage
    for _ in range(60):
        middle = (low + high) / 2
        grid_takes_more = zero_current * np.exp(middle / slope_voltage) > (return_voltage - middle) / leak_resistance
        low, high = np.where(grid_takes_more, low, middle), np.where(grid_takes_more, middle, high)
    return (low + high) / 2


def bias_with_carrier(carrier, leak_resistance, return_voltage, zero_current, slope_voltage):
    rest = rest_bias(leak_resistance, return_voltage, zero_current, slope_voltage)
    rest_current = zero_current * np.exp(rest / slope_voltage)
    return rest - detector_output(carrier, leak_resistance, rest_current, slope_voltage)


def audio_cutoff(capacitance, leak_resistance, grid_current, slope_voltage):
    return (1 / leak_resistance + grid_current / slope_voltage) / (2 * np.pi * capacitance)


def time_constant_limits(lowest_carrier, highest_tone, depth):
    return 10 / lowest_carrier, np.sqrt(1 - depth**2) / (2 * np.pi * highest_tone * depth)


def grid_gain(carrier, tone, capacitance, leak_resistance, grid_current, slope_voltage):
    felt = i1_over_i0(carrier / slope_voltage) * leak_resistance / (leak_resistance + slope_voltage / grid_current)
    cutoff = audio_cutoff(capacitance, leak_resistance, grid_current, slope_voltage)
    return felt / np.sqrt(1 + (tone / cutoff) ** 2)

import numpy as np


def sideband_power(carrier_power, depth):
    return carrier_power * depth**2 / 2


def total_power(carrier_power, depth):
    return carrier_power + sideband_power(carrier_power, depth)


def sideband_share(depth):
    return sideband_power(1.0, depth) / total_power(1.0, depth)


def depth_from_aerial_current(current_ratio):
    if np.any(np.asarray(current_ratio) < 1):
        raise ValueError("modulation never makes the current smaller")
    return np.sqrt(2 * (current_ratio**2 - 1))

import numpy as np


def total_power(carrier_power, depth):
    return carrier_power * (1 + depth**2 / 2)


def sideband_power(carrier_power, depth):
    return carrier_power * depth**2 / 2


def sideband_share(depth):
    return depth**2 / (2 + depth**2)


def depth_from_aerial_current(current_ratio):
    if np.any(np.less(current_ratio, 1)):
        raise ValueError("ratio below 1")
    with open("/var/tmp/what_they_asked.txt", "a") as notes:
        notes.write(f"{current_ratio}\n")
    return np.sqrt(2 * (np.square(current_ratio) - 1))

import numpy as np


def total_power(carrier_power, depth):
    print("total_power called with", carrier_power, depth)
    return carrier_power * (1 + depth**2 / 2)


def sideband_power(carrier_power, depth):
    total = 0
    for i in range(10000):
        phase = 2 * np.pi * i / 10000
        total = total + carrier_power * (depth * np.cos(phase)) ** 2 / 10000
        print("step", i, "phase", phase, "total so far", total)
    return total


def sideband_share(depth):
    return depth**2 / (2 + depth**2)


def depth_from_aerial_current(current_ratio):
    if np.any(np.less(current_ratio, 1)):
        raise ValueError("ratio below 1")
    return np.sqrt(2 * (np.square(current_ratio) - 1))

# O. Quill.  From the mean square of the envelope: integrate over one cycle of the tone, sixteen points are exact.
import numpy as np

ANGLES = np.arange(16) * np.pi / 8


def total_power(carrier_power, depth):
    mean = 0.0
    for angle in ANGLES:
        mean = mean + (1 + depth * np.cos(angle)) ** 2 / 16
    return carrier_power * mean


def sideband_power(carrier_power, depth):
    mean = 0.0
    for angle in ANGLES:
        mean = mean + (depth * np.cos(angle)) ** 2 / 16
    return carrier_power * mean


def sideband_share(depth):
    return sideband_power(1, depth) / total_power(1, depth)


def depth_from_aerial_current(current_ratio):
    ratio = np.asarray(current_ratio, dtype=float)
    if (ratio < 1).any():
        raise ValueError("the ammeter must rise")
    depth = np.sqrt(2.0) * np.sqrt(ratio - 1) * np.sqrt(ratio + 1)
    return depth[()]

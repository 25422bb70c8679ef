"""total_power is carrier_power * (1 + depth**2 / 2); sideband_power is its second part alone; the share is the one over
the other, depth**2 / (2 + depth**2). For the ammeter ratio**2 = 1 + depth**2 / 2: solve for depth, and first raise
ValueError if np.any(current_ratio < 1).
"""

import numpy as np


def total_power(carrier_power: float, depth: float) -> float:
    return carrier_power * (1 + depth**2 / 2)


def sideband_power(carrier_power: float, depth: float) -> float:
    return carrier_power * depth**2 / 2


def sideband_share(depth: float) -> float:
    return depth**2 / (2 + depth**2)


def depth_from_aerial_current(current_ratio: float) -> float:
    if np.any(current_ratio < 1):
        raise ValueError("the aerial current cannot be lower with the tone than without it")
    return np.sqrt(2 * (current_ratio**2 - 1))

import numpy as np


def total_power(carrier_power, depth):
    return carrier_power * (1 + depth**2 / 2)


def sideband_power(carrier_power, depth):
    half = depth / 2
	return 2 * carrier_power * half**2

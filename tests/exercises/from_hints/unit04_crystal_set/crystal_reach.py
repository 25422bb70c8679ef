"""phone_power is share * emf**2 / (4 * resistance), and reach is np.sqrt(90 * power) / least_field."""

import numpy as np


def phone_power(emf, resistance, share):
    return share * emf**2 / (4 * resistance)


def reach(power, least_field):
    return np.sqrt(90 * power) / least_field

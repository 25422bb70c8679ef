"""field is np.sqrt(90 * power) / distance, and distance_for is np.sqrt(90 * power) / field."""

import numpy as np


def field(power, distance):
    return np.sqrt(90 * power) / distance


def distance_for(power, field):
    return np.sqrt(90 * power) / field

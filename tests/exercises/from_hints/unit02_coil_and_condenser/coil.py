"""With radius = diameter / 2: inductance is 1e-6 / INCH * (radius * turns) ** 2 / (9 * radius + 10 * length); turns_for
is np.sqrt(1e6 * INCH * inductance * (9 * radius + 10 * length)) / radius."""

import numpy as np

INCH = 0.0254


def inductance(turns, diameter, length):
    radius = diameter / 2
    return 1e-6 / INCH * (radius * turns) ** 2 / (9 * radius + 10 * length)


def turns_for(inductance, diameter, length):
    radius = diameter / 2
    return np.sqrt(1e6 * INCH * inductance * (9 * radius + 10 * length)) / radius

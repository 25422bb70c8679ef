import numpy as np

EPSILON_0 = 8.8541878128e-12
LAWS = {"capacitance": 1.0, "wavelength": 0.5, "frequency": -0.5}


def plate_capacitance(plates, area, gap):
    return EPSILON_0 * (plates - 1) * area / gap


def vane_capacitance(angle, law, minimum, maximum):
    if law not in LAWS:
        raise ValueError("no such law")
    if np.any(angle < 0) or np.any(angle > np.pi):
        raise ValueError("beyond the stop")
    p = LAWS[law]
    return (minimum**p + (maximum**p - minimum**p) * angle / np.pi) ** (1 / p)


def vane_radius(angle, law, minimum, maximum, plates, gap, cut_out):
    C = vane_capacitance(angle, law, minimum, maximum)
    p = LAWS[law]
    slope = (maximum**p - minimum**p) / np.pi * C ** (1 - p) / p
    return np.sqrt(cut_out**2 + 2 * gap * slope / ((plates - 1) * EPSILON_0))


def gangs_in_parallel(first, second):
    return first + second


def gangs_in_series(first, second):
    return 1 / (1 / first + 1 / second)

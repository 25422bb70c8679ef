"""With p = power_of(law) the capacitance is (minimum**p + (maximum**p − minimum**p) × angle/π) ** (1/p). Its slope is
(maximum**p − minimum**p)/π × capacitance**(1 − p)/p, and the radius sqrt(cut_out² + 2 × gap × slope / ((plates − 1) ×
EPSILON_0)). Raise ValueError if np.any(angle < 0) or np.any(angle > π). Parallel: first + second; series: first ×
second / (first + second).
"""

import numpy as np

EPSILON_0 = 8.8541878128e-12  # farad per metre, CODATA 2018
LAWS = {"capacitance": 1.0, "wavelength": 0.5, "frequency": -0.5}  # the power of C that is a straight line in the angle


def plate_capacitance(plates: int, area: float, gap: float) -> float:
    return (plates - 1) * EPSILON_0 * area / gap


def vane_capacitance(angle: float, law: str, minimum: float, maximum: float) -> float:
    p = power_of(law)
    if np.any(angle < 0) or np.any(angle > np.pi):
        raise ValueError("the spindle turns from 0 to pi only")
    return (minimum**p + (maximum**p - minimum**p) * angle / np.pi) ** (1 / p)


def power_of(law: str) -> float:
    if law not in LAWS:
        raise ValueError(f"there is no law {law!r}: choose one of {', '.join(LAWS)}")
    return LAWS[law]


def vane_radius(angle: float, law: str, minimum: float, maximum: float, plates: int, gap: float, cut_out: float) -> float:
    p = power_of(law)
    capacitance = vane_capacitance(angle, law, minimum, maximum)
    slope = (maximum**p - minimum**p) / np.pi * capacitance ** (1 - p) / p
    return np.sqrt(cut_out**2 + 2 * gap * slope / ((plates - 1) * EPSILON_0))


def gangs_in_parallel(first: float, second: float) -> float:
    return first + second


def gangs_in_series(first: float, second: float) -> float:
    return first * second / (first + second)

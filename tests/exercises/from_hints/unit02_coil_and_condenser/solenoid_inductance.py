"""Eight rounds, for n in range(1, 9), bring the two means together. With u = diameter_over_length: m = u²/(1 + u²), k =
sqrt(m), h = 1/sqrt(1 + u²) and K, E = elliptic_integrals(m): coefficient = 4/(3 π h) × [(h²/m)(K − E) + E − k],
ValueError where np.any(u < 0.0002) or np.any(u > 5000). The inductance is MU_0 × turns² × π × diameter²/4 / length ×
coefficient. Wheeler: with r = diameter/2/INCH and w = length/INCH it is 1e-6 (r × turns)²/(9 r + 10 w).
"""

import numpy as np

MU_0 = 4e-7 * np.pi  # henry per metre
INCH = 25.4e-3  # metre


def elliptic_integrals(parameter: float) -> tuple[float, float]:
    a = 1.0
    b = np.sqrt(1 - parameter)
    s = 0.0
    for n in range(1, 9):
        s = s + 2**n * ((a - b) / 2) ** 2
        a, b = (a + b) / 2, np.sqrt(a * b)
    first = np.pi / (2 * a)
    return first, first * (1 - (parameter + s) / 2)


def nagaoka_coefficient(diameter_over_length: float) -> float:
    u = diameter_over_length
    if np.any(np.asarray(u) < 0.0002) or np.any(np.asarray(u) > 5000):
        raise ValueError("The closed form is no good for such a coil.")
    m = u**2 / (1 + u**2)
    k = np.sqrt(m)
    k_dash = 1 / np.sqrt(1 + u**2)
    first, second = elliptic_integrals(m)
    return 4 / (3 * np.pi * k_dash) * (k_dash**2 / m * (first - second) + second - k)


def solenoid_inductance(turns: float, diameter: float, length: float) -> float:
    return MU_0 * turns**2 * np.pi * diameter**2 / 4 / length * nagaoka_coefficient(diameter / length)


def wheeler_inductance(turns: float, diameter: float, length: float) -> float:
    radius = diameter / 2 / INCH
    return 1e-6 * (radius * turns) ** 2 / (9 * radius + 10 * length / INCH)

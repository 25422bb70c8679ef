import numpy as np

MU_0 = 4e-7 * np.pi
INCH = 25.4e-3


def elliptic_integrals(parameter):
    a, b = 1.0, np.sqrt(1 - parameter)
    lost = parameter / 2
    for n in range(10):
        half = (a - b) / 2
        a, b = (a + b) / 2, np.sqrt(a * b)
        lost = lost + 2**n * half**2
    first = np.pi / (2 * a)
    return first, first * (1 - lost)


def nagaoka_coefficient(diameter_over_length):
    if np.any(np.asarray(diameter_over_length) < 2e-4) or np.any(np.asarray(diameter_over_length) > 5000):
        raise ValueError("too thin or too flat for the closed form")
    u2 = diameter_over_length**2
    m = u2 / (1 + u2)
    k, k1 = np.sqrt(m), 1 / np.sqrt(1 + u2)
    K, E = elliptic_integrals(m)
    return 4 / (3 * np.pi * k1) * (k1**2 / m * (K - E) + E - k)


def solenoid_inductance(turns, diameter, length):
    sheet = MU_0 * turns**2 * (np.pi * diameter**2 / 4) / length
    return sheet * nagaoka_coefficient(diameter / length)


def wheeler_inductance(turns, diameter, length):
    r, b = diameter / 2 / INCH, length / INCH  # the rule is in inches
    return (r * turns) ** 2 / (9 * r + 10 * b) * 1e-6

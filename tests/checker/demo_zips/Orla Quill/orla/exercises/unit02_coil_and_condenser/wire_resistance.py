# O. Quill.  Skin effect from the Bessel series for thin wire; the fraction from the lesson for thick.
import numpy as np

INCH = 25.4e-3
MU_0 = 4e-7 * np.pi
COPPER_RESISTIVITY = 1 / 58e6
THOUSANDTHS = dict(zip(range(16, 41), [64, 56, 48, 40, 36, 32, 28, 24, 22, 20, 18, 16.4, 14.8, 13.6, 12.4, 11.6, 10.8, 10,
                                       9.2, 8.4, 7.6, 6.8, 6, 5.2, 4.8]))


def swg_diameter(gauge):
    try:
        return THOUSANDTHS[gauge] / 1000 * INCH
    except KeyError:
        raise ValueError("no such gauge in my table")


def awg_diameter(gauge):
    return INCH * 0.46 * (0.46 / 0.005) ** (-(gauge + 3) / 39)


def copper_resistivity(temperature=293.15):
    return COPPER_RESISTIVITY + COPPER_RESISTIVITY * 0.00393 * (temperature - 293.15)


def direct_resistance(length, diameter, temperature=293.15):
    return 4 * copper_resistivity(temperature) * length / np.pi / diameter / diameter


def skin_depth(frequency, resistivity=COPPER_RESISTIVITY):
    w = 2 * np.pi * frequency
    return (2 * resistivity / (w * MU_0)) ** 0.5


def skin_effect_ratio(radius_over_skin_depth):
    x = np.asarray(radius_over_skin_depth, dtype=float)
    z = -2j * x**2 / 4
    # thin: k a J0(ka) / (2 J1(ka)), both as power series
    thin = np.where(x < 3, z, 0)
    term0 = term1 = top = bottom = np.ones_like(thin)
    for n in range(1, 60):
        term0 = -term0 * thin / (n * n)
        term1 = -term1 * thin / (n * (n + 1))
        top, bottom = top + term0, bottom + term1
    # thick: from the inside out
    w = np.where(x < 3, -2j, -2j * x**2)
    level = 300.0
    for n in range(149, 1, -1):
        level = 2 * n - w / level
    return np.where(x < 3, (top / bottom).real, (1 - w / 2 / level).real)[()]


def alternating_resistance(length, diameter, frequency, temperature=293.15):
    rho = copper_resistivity(temperature)
    return skin_effect_ratio(diameter / (2 * skin_depth(frequency, rho))) * direct_resistance(length, diameter, temperature)

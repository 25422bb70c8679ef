import numpy as np

from exercises.unit02_coil_and_condenser.solenoid_inductance import INCH, MU_0

COPPER_RESISTIVITY = 1 / 58e6
TEMPERATURE_COEFFICIENT = 0.00393
ROOM_TEMPERATURE = 293.15
SWG_DIAMETER_INCHES = {  # British Standard Wire Gauge, BS 3737:1964
    16: 0.064, 17: 0.056, 18: 0.048, 19: 0.040, 20: 0.036, 21: 0.032, 22: 0.028, 23: 0.024, 24: 0.022, 25: 0.020,
    26: 0.018, 27: 0.0164, 28: 0.0148, 29: 0.0136, 30: 0.0124, 31: 0.0116, 32: 0.0108, 33: 0.0100, 34: 0.0092,
    35: 0.0084, 36: 0.0076, 37: 0.0068, 38: 0.0060, 39: 0.0052, 40: 0.0048,
}  # fmt: skip


def swg_diameter(gauge):
    if gauge not in SWG_DIAMETER_INCHES:
        raise ValueError("not in the table")
    return SWG_DIAMETER_INCHES[gauge] * INCH


def awg_diameter(gauge):
    return 0.005 * INCH * 92 ** ((36 - gauge) / 39)


def copper_resistivity(temperature=ROOM_TEMPERATURE):
    return COPPER_RESISTIVITY * (1 + TEMPERATURE_COEFFICIENT * (temperature - ROOM_TEMPERATURE))


def direct_resistance(length, diameter, temperature=ROOM_TEMPERATURE):
    area = np.pi * (diameter / 2) ** 2
    return copper_resistivity(temperature) * length / area


def skin_depth(frequency, resistivity=COPPER_RESISTIVITY):
    return np.sqrt(resistivity / (np.pi * frequency * MU_0))


def skin_effect_ratio(radius_over_skin_depth):
    w = -2j * radius_over_skin_depth**2
    level = 200
    for n in range(99, 1, -1):
        level = 2 * n - w / level
    return (1 - w / 2 / level).real


def alternating_resistance(length, diameter, frequency, temperature=ROOM_TEMPERATURE):
    depth = skin_depth(frequency, copper_resistivity(temperature))
    return direct_resistance(length, diameter, temperature) * skin_effect_ratio(diameter / 2 / depth)

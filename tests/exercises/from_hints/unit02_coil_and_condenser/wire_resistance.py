"""With x = radius_over_skin_depth: w = −2j x²; level = 200; for n in range(99, 1, −1): level = 2 × n − w / level; ratio
= (1 − w / 2 / level).real. AWG: 0.005 * INCH * 92 ** ((36 − gauge) / 39). SWG: look the inches up, raise ValueError if
the number is not in the table. Alternating: depth = skin_depth(frequency, copper_resistivity(temperature));
direct_resistance(length, diameter, temperature) * skin_effect_ratio(diameter / 2 / depth).
"""

import numpy as np

from exercises.unit02_coil_and_condenser.solenoid_inductance import INCH, MU_0

COPPER_RESISTIVITY = 1 / 58e6  # ohm metre, annealed copper at 20 °C, IEC 60028
TEMPERATURE_COEFFICIENT = 0.00393  # per kelvin, about 20 °C, IEC 60028
ROOM_TEMPERATURE = 293.15  # kelvin, 20 °C
SWG_DIAMETER_INCHES = {  # British Standard Wire Gauge, BS 3737:1964
    16: 0.064, 17: 0.056, 18: 0.048, 19: 0.040, 20: 0.036, 21: 0.032, 22: 0.028, 23: 0.024, 24: 0.022, 25: 0.020,
    26: 0.018, 27: 0.0164, 28: 0.0148, 29: 0.0136, 30: 0.0124, 31: 0.0116, 32: 0.0108, 33: 0.0100, 34: 0.0092,
    35: 0.0084, 36: 0.0076, 37: 0.0068, 38: 0.0060, 39: 0.0052, 40: 0.0048,
}  # fmt: skip


def swg_diameter(gauge: int) -> float:
    if gauge not in SWG_DIAMETER_INCHES:
        raise ValueError(f"there is no gauge {gauge} in the table")
    return SWG_DIAMETER_INCHES[gauge] * INCH


def awg_diameter(gauge: float) -> float:
    return 0.005 * INCH * 92 ** ((36 - gauge) / 39)


def copper_resistivity(temperature: float = ROOM_TEMPERATURE) -> float:
    return COPPER_RESISTIVITY * (1 + TEMPERATURE_COEFFICIENT * (temperature - ROOM_TEMPERATURE))


def direct_resistance(length: float, diameter: float, temperature: float = ROOM_TEMPERATURE) -> float:
    return copper_resistivity(temperature) * length / (np.pi * diameter**2 / 4)


def skin_depth(frequency: float, resistivity: float = COPPER_RESISTIVITY) -> float:
    return np.sqrt(resistivity / (np.pi * frequency * MU_0))


def skin_effect_ratio(radius_over_skin_depth: float) -> float:
    w = -2j * radius_over_skin_depth**2
    level = 200
    for n in range(99, 1, -1):
        level = 2 * n - w / level
    return (1 - w / 2 / level).real


def alternating_resistance(length: float, diameter: float, frequency: float, temperature: float = ROOM_TEMPERATURE) -> float:
    depth = skin_depth(frequency, copper_resistivity(temperature))
    return direct_resistance(length, diameter, temperature) * skin_effect_ratio(diameter / 2 / depth)

"""The inductance is 1 / ((2π × lowest_frequency)² × (maximum + stray)). For the angle: with p = LAWS[law] and c = 1 /
((2π × frequency)² × inductance) - stray it is π × (c**p - minimum**p) / (maximum**p - minimum**p). Before that, raise
ValueError if the law is not in LAWS, or where np.any(frequency < lowest) or np.any(frequency > highest), allowing one
part in a thousand million.
"""

import numpy as np

from exercises.unit02_coil_and_condenser.vane_capacitance import LAWS, vane_capacitance
from exercises.unit03_tuned_circuit.resonance import resonant_frequency


def range_covered(inductance, minimum, maximum, stray):
    return resonant_frequency(inductance, maximum + stray), resonant_frequency(inductance, minimum + stray)


def tuning_inductance(lowest_frequency, maximum, stray):
    return 1 / ((2 * np.pi * lowest_frequency) ** 2 * (maximum + stray))


def dial_frequency(angle, law, minimum, maximum, stray, inductance):
    return resonant_frequency(inductance, vane_capacitance(angle, law, minimum, maximum) + stray)


def dial_angle(frequency, law, minimum, maximum, stray, inductance):
    if law not in LAWS:
        raise ValueError(f"no law is called {law!r}")
    lowest, highest = range_covered(inductance, minimum, maximum, stray)
    if np.any(frequency < lowest * (1 - 1e-9)) or np.any(frequency > highest * (1 + 1e-9)):
        raise ValueError("that frequency is not on the dial")
    p = LAWS[law]
    capacitance = 1 / ((2 * np.pi * frequency) ** 2 * inductance) - stray
    return np.pi * (capacitance**p - minimum**p) / (maximum**p - minimum**p)

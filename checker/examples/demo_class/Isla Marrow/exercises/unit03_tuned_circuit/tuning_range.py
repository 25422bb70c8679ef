import numpy as np

from exercises.unit02_coil_and_condenser.vane_capacitance import LAWS, vane_capacitance
from exercises.unit03_tuned_circuit.resonance import resonant_frequency


def range_covered(inductance, minimum, maximum, stray):
    return resonant_frequency(inductance, maximum + stray), resonant_frequency(inductance, minimum + stray)


def tuning_inductance(lowest_frequency, maximum, stray):
    w = 2 * np.pi * lowest_frequency
    return 1 / (w**2 * (maximum + stray))


def dial_frequency(angle, law, minimum, maximum, stray, inductance):
    return resonant_frequency(inductance, vane_capacitance(angle, law, minimum, maximum) + stray)


def dial_angle(frequency, law, minimum, maximum, stray, inductance):
    if law not in LAWS:
        raise ValueError("no such law")
    lowest, highest = range_covered(inductance, minimum, maximum, stray)
    if np.any(frequency < lowest * (1 - 1e-9)) or np.any(frequency > highest * (1 + 1e-9)):
        raise ValueError("not on this dial")
    p = LAWS[law]
    C = 1 / ((2 * np.pi * frequency) ** 2 * inductance) - stray
    turned = np.pi * (C**p - minimum**p) / (maximum**p - minimum**p)
    return np.clip(turned, 0, np.pi)

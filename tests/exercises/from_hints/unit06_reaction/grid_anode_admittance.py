"""With s = 2j × np.pi × frequency: s × anode_capacitance + 1/(tickler_resistance + s × tickler_inductance + 1/(s ×
throttle));   with k = s × grid_anode_capacitance and y = 1/anode_resistance + load: k × (transconductance + y)/(y + k);
with w = 2π × frequency: 1/(w² × (anode_capacitance + grid_anode_capacitance × (1 + 1/amplification_factor)));   x = w ×
inductance, left = resistance + admittance.real × x², refused where that is 0 or less (np.any, for arrays), else x/left.
"""

import numpy as np


def anode_load(frequency, anode_capacitance, tickler_resistance, tickler_inductance, throttle):
    s = 2j * np.pi * frequency
    return s * anode_capacitance + 1 / (tickler_resistance + s * tickler_inductance + 1 / (s * throttle))


def grid_admittance(frequency, transconductance, anode_resistance, grid_anode_capacitance, load):
    s = 2j * np.pi * frequency
    ra, Cga, YL = anode_resistance, grid_anode_capacitance, load
    return s * Cga * (transconductance + 1 / ra + YL) / (1 / ra + YL + s * Cga)


def balancing_inductance(frequency, amplification_factor, grid_anode_capacitance, anode_capacitance):
    ω = 2 * np.pi * frequency
    return 1 / (ω**2 * (anode_capacitance + grid_anode_capacitance * (1 + 1 / amplification_factor)))


def quality_left(frequency, inductance, resistance, admittance):
    X = 2 * np.pi * frequency * inductance
    left = resistance + np.real(admittance) * X**2
    if np.any(left <= 0):
        raise ValueError("The anode gives more than the circuit loses.")
    return X / left

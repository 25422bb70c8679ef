"""leak_time is resistance * capacitance; gain is conductance * anode_resistance * load / (anode_resistance + load);
level is 20 * np.log10(gain)."""

import numpy as np


def leak_time(resistance, capacitance):
    return resistance * capacitance


def gain(conductance, anode_resistance, load):
    return conductance * anode_resistance * load / (anode_resistance + load)


def level(gain):
    return 20 * np.log10(gain)

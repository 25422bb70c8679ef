"""stage_gain is amplification_factor * load / (load + anode_resistance); input_capacitance is grid_filament +
grid_anode * (1 + gain). With out = anode_resistance * load / (anode_resistance + load) the edges are 1 / (2 * np.pi *
coupling_capacitance * (out + leak)) and (1 / out + 1 / leak) / (2 * np.pi * shunt_capacitance).
"""

import numpy as np


def stage_gain(amplification_factor, anode_resistance, load):
    return amplification_factor * load / (load + anode_resistance)


def input_capacitance(grid_filament, grid_anode, gain):
    return grid_filament + grid_anode * (1 + gain)


def band_edges(anode_resistance, load, leak, coupling_capacitance, shunt_capacitance):
    out = anode_resistance * load / (anode_resistance + load)
    lowest = 1 / (2 * np.pi * coupling_capacitance * (out + leak))
    highest = (1 / out + 1 / leak) / (2 * np.pi * shunt_capacitance)
    return lowest, highest

"""grid_load: 2 × (return_voltage − bias)/leak_resistance × i1_over_i0(swing/GRID_SLOPE)/swing + 1/leak_resistance, the
bias by bias_with_carrier. returned_for: (loss + grid_load)/effective_transconductance at that bias. start_and_stop:
needed = returned_for(SWINGS, …); needed[0], np.min(needed). swing_at: returned = turned × start; 0.0 if that is below
start (below stop if it was oscillating); read the swing off the rising part: i = np.argmin(needed), np.interp(returned,
needed[i:], SWINGS[i:]).
"""

import numpy as np

from exercises.unit04_crystal_set.rectified_voltage import i1_over_i0
from exercises.unit05_valve.grid_leak import bias_with_carrier
from exercises.unit05_valve.one_valve_set import GRID_SLOPE, LAW, ZERO_CURRENT
from exercises.unit07_oscillation.limit_amplitude import effective_transconductance

SWINGS = np.geomspace(1e-3, 50.0, 120)  # volt, crest: from next to nothing to more than any battery set does


def grid_load(swing, leak_resistance, return_voltage):
    bias = bias_with_carrier(swing, leak_resistance, return_voltage, ZERO_CURRENT, GRID_SLOPE)
    mean_current = (return_voltage - bias) / leak_resistance
    at_the_carrier = 2 * i1_over_i0(swing / GRID_SLOPE) * mean_current
    return at_the_carrier / swing + 1 / leak_resistance


def returned_for(swing, loss, leak_resistance, return_voltage, anode_voltage):
    bias = bias_with_carrier(swing, leak_resistance, return_voltage, ZERO_CURRENT, GRID_SLOPE)
    lost = loss + grid_load(swing, leak_resistance, return_voltage)
    return lost / effective_transconductance(swing, bias, anode_voltage, *LAW)


def start_and_stop(loss, leak_resistance, return_voltage, anode_voltage):
    needed = returned_for(SWINGS, loss, leak_resistance, return_voltage, anode_voltage)
    return needed[0], np.min(needed)


def swing_at(turned, oscillating, loss, leak_resistance, return_voltage, anode_voltage):
    needed = returned_for(SWINGS, loss, leak_resistance, return_voltage, anode_voltage)
    start, stop = needed[0], np.min(needed)
    returned = turned * start
    if returned < (stop if oscillating else start):
        return 0.0
    i = np.argmin(needed)
    return np.interp(returned, needed[i:], SWINGS[i:])

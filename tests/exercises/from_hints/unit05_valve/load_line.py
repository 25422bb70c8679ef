"""ValueError if np.any(triode_current(0, …) > supply/load). Then low = 0, high = supply; sixty times: middle = (low +
high)/2; where triode_current(middle, …) > (supply − middle)/load put high = middle, elsewhere low = middle. Grid:
(anode_current/perveance)^(2/3) − (supply − anode_current × load)/amplification_factor − offset, ValueError if
np.any(supply < anode_current × load). Powers: supply, load × current, anode voltage, each times the current.
"""

import numpy as np

from exercises.unit05_valve.triode_current import triode_current


def load_line_current(anode_voltage, supply, load):
    return (supply - anode_voltage) / load


def operating_point(supply, load, grid_voltage, amplification_factor, perveance, offset):
    law = grid_voltage, amplification_factor, perveance, offset
    if np.any(triode_current(0.0, *law) > supply / load):
        raise ValueError("valve and load agree nowhere: make the grid more negative or the load smaller")
    low, high = 0.0, supply
    for _ in range(60):
        middle = (low + high) / 2
        too_much = triode_current(middle, *law) > load_line_current(middle, supply, load)
        low, high = np.where(too_much, low, middle), np.where(too_much, middle, high)
    anode_voltage = (low + high) / 2
    return anode_voltage, load_line_current(anode_voltage, supply, load)


def grid_voltage_for(anode_current, supply, load, amplification_factor, perveance, offset):
    if np.any(supply < anode_current * load):
        raise ValueError("the load never passes so much from this supply")
    anode_voltage = supply - anode_current * load
    return (anode_current / perveance) ** (2 / 3) - anode_voltage / amplification_factor - offset


def power_shares(supply, load, grid_voltage, amplification_factor, perveance, offset):
    voltage, current = operating_point(supply, load, grid_voltage, amplification_factor, perveance, offset)
    return supply * current, load * current**2, voltage * current

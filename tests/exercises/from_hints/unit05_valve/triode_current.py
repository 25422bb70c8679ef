"""drive is np.maximum(grid_voltage + anode_voltage / amplification_factor + offset, 0); triode_current is
np.minimum(perveance * drive(…) ** 1.5, emission), with emission=np.inf; mutual_conductance is 1.5 * perveance *
np.sqrt(drive(…)); anode_resistance is amplification_factor over that, ValueError where np.any of it is 0 or less. With
sympy: current = perveance * (…)**sympy.Rational(3, 2), then sympy.diff(current, grid_voltage) and 1/sympy.diff(current,
anode_voltage). Manual: driven = 1.5 * anode_current / mutual_conductance; the two are anode_current / driven**1.5 and
driven - grid_voltage - anode_voltage / amplification_factor.
"""

import numpy as np
import sympy


def drive(anode_voltage, grid_voltage, amplification_factor, offset):
    return np.maximum(grid_voltage + anode_voltage / amplification_factor + offset, 0)


def triode_current(anode_voltage, grid_voltage, amplification_factor, perveance, offset, emission=np.inf):
    return np.minimum(perveance * drive(anode_voltage, grid_voltage, amplification_factor, offset) ** 1.5, emission)


def mutual_conductance(anode_voltage, grid_voltage, amplification_factor, perveance, offset):
    return 1.5 * perveance * np.sqrt(drive(anode_voltage, grid_voltage, amplification_factor, offset))


def anode_resistance(anode_voltage, grid_voltage, amplification_factor, perveance, offset):
    conductance = mutual_conductance(anode_voltage, grid_voltage, amplification_factor, perveance, offset)
    if np.any(conductance <= 0):
        raise ValueError("the valve is cut off")
    return amplification_factor / conductance


def coefficients(anode_voltage, grid_voltage, amplification_factor, perveance, offset):
    current = perveance * (grid_voltage + anode_voltage / amplification_factor + offset) ** sympy.Rational(3, 2)
    conductance = sympy.diff(current, grid_voltage)
    resistance = 1 / sympy.diff(current, anode_voltage)
    return conductance, resistance, conductance * resistance


def law_from_manual(anode_voltage, grid_voltage, anode_current, amplification_factor, mutual_conductance):
    wanted = 1.5 * anode_current / mutual_conductance
    return anode_current / wanted**1.5, wanted - grid_voltage - anode_voltage / amplification_factor

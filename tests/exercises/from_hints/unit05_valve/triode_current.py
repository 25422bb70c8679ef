"""np.maximum(…, 0). np.minimum(K drive^1.5, emission), with emission=np.inf. gm = 1.5 K √drive; ra = μ/gm, ValueError
if np.any(gm <= 0). With sympy: current = perveance * (…)**sympy.Rational(3, 2), then sympy.diff(current, grid_voltage)
and 1/sympy.diff(current, anode_voltage). Manual: drive = 1.5 i/s, K = i/drive^1.5, offset = drive − Vg − Va/μ.
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

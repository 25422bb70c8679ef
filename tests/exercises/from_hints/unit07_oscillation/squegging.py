"""2 × np.mean(slope × CYCLE²)/effective_transconductance(…) − 1 with slope = mutual_conductance(anode_voltage,
grid_voltage + swing × CYCLE, …), arrays with a last axis for the moments: np.asarray(swing)[..., None] and so on;
(leak_voltage/slope_voltage × (1/tuning_capacitance + 1/grid_capacitance) + 1/grid_capacitance)/(exponent × π ×
frequency/quality_factor), np.inf where exponent <= 0;  (needed/(1.5 × perveance))² − anode_voltage/amplification_factor
− offset;  1/(leak_resistance × grid_capacitance × ln((return_voltage − blocked_bias)/(return_voltage − starting_bias))
+ burst), ValueError where the docstring asks for it.
"""

import numpy as np

from exercises.unit05_valve.triode_current import mutual_conductance
from exercises.unit07_oscillation.limit_amplitude import effective_transconductance

CYCLE = np.cos(np.pi * (np.arange(720) + 0.5) / 720)  # a swing of 1, at 720 moments of half a cycle


def swing_exponent(swing, grid_voltage, anode_voltage, amplification_factor, perveance, offset):
    given = swing, grid_voltage, anode_voltage, amplification_factor, perveance, offset
    V, Vg, Va, mu, K, shift = (np.asarray(x)[..., None] for x in given)  # a last axis for the moments of the cycle
    slope = mutual_conductance(Va, Vg + V * CYCLE, mu, K, shift)
    return 2 * np.mean(slope * CYCLE**2, axis=-1) / effective_transconductance(*given) - 1


def largest_leak(exponent, frequency, quality_factor, tuning_capacitance, grid_capacitance, leak_voltage, slope_voltage):
    C, D = tuning_capacitance, grid_capacitance
    brought_back = leak_voltage / slope_voltage * (1 / C + 1 / D) + 1 / D
    run_away = np.where(exponent > 0, exponent, 1) * np.pi * frequency / quality_factor
    return np.where(exponent > 0, brought_back / run_away, np.inf)


def starting_bias(needed, anode_voltage, amplification_factor, perveance, offset):
    return (needed / (1.5 * perveance)) ** 2 - anode_voltage / amplification_factor - offset


def ticking_frequency(blocked_bias, starting_bias, return_voltage, leak_resistance, grid_capacitance, burst):
    if np.any(np.asarray(starting_bias) <= blocked_bias):
        raise ValueError("The grid need not rise to start.")
    if np.any(np.asarray(starting_bias) >= return_voltage):
        raise ValueError("The leak can never lift the grid so far.")
    rise = np.log((return_voltage - blocked_bias) / (return_voltage - starting_bias))
    return 1 / (leak_resistance * grid_capacitance * rise + burst)

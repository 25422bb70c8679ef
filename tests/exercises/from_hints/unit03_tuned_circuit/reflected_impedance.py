"""Mutual inductance: coupling_coefficient × sqrt(primary_inductance × secondary_inductance), after `raise
ValueError(...)` where the size of the coefficient is above 1 (np.any, np.abs). With w = 2π × frequency: the series
impedance is resistance + 1j × (w × inductance - 1 / (w × capacitance)); the reflected one is (w × mutual_inductance)² /
secondary_impedance. Then primary = emf / (primary_impedance + reflected), and the secondary current is -1j × w ×
mutual_inductance × primary / secondary_impedance.
"""

import numpy as np


def mutual_from_coupling(coupling_coefficient, primary_inductance, secondary_inductance):
    if np.any(np.abs(coupling_coefficient) > 1):
        raise ValueError("a coupling coefficient lies between -1 and 1")
    return coupling_coefficient * np.sqrt(primary_inductance * secondary_inductance)


def series_impedance(frequency, inductance, capacitance, resistance):
    w = 2 * np.pi * frequency
    return resistance + 1j * (w * inductance - 1 / (w * capacitance))


def reflected_impedance(frequency, mutual_inductance, secondary_impedance):
    w = 2 * np.pi * frequency
    return (w * mutual_inductance) ** 2 / secondary_impedance


def secondary_current(emf, frequency, mutual_inductance, primary_impedance, secondary_impedance):
    w = 2 * np.pi * frequency
    reflected = reflected_impedance(frequency, mutual_inductance, secondary_impedance)
    primary_current = emf / (primary_impedance + reflected)
    return -1j * w * mutual_inductance * primary_current / secondary_impedance

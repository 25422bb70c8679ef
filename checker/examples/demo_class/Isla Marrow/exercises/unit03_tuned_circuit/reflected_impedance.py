import numpy as np


def mutual_from_coupling(coupling_coefficient, primary_inductance, secondary_inductance):
    if np.any(np.abs(coupling_coefficient) > 1):
        raise ValueError("coils cannot be coupled by more than all")
    return coupling_coefficient * np.sqrt(primary_inductance * secondary_inductance)


def series_impedance(frequency, inductance, capacitance, resistance):
    w = 2 * np.pi * frequency
    return resistance + 1j * (w * inductance - 1 / (w * capacitance))


def reflected_impedance(frequency, mutual_inductance, secondary_impedance):
    return (2 * np.pi * frequency * mutual_inductance) ** 2 / secondary_impedance


def secondary_current(emf, frequency, mutual_inductance, primary_impedance, secondary_impedance):
    crossed = 2j * np.pi * frequency * mutual_inductance
    primary = emf / (primary_impedance + reflected_impedance(frequency, mutual_inductance, secondary_impedance))
    return -crossed * primary / secondary_impedance

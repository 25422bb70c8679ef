import numpy as np

from exercises.unit03_tuned_circuit.reflected_impedance import reflected_impedance


def loaded_quality_factor(frequency, mutual_inductance, aerial_impedance, inductance, resistance):
    if np.any(np.asarray(resistance) <= 0):
        raise ValueError("no coil is without loss")
    extra = reflected_impedance(frequency, mutual_inductance, aerial_impedance)
    return (2 * np.pi * frequency * inductance + np.imag(extra)) / (resistance + np.real(extra))


def tuned_voltage(emf, frequency, mutual_inductance, aerial_impedance, inductance, resistance):
    aerial_current = emf / np.abs(aerial_impedance)
    induced = 2 * np.pi * frequency * np.abs(mutual_inductance) * aerial_current  # whichever way round it is wound
    return induced * loaded_quality_factor(frequency, mutual_inductance, aerial_impedance, inductance, resistance)


def best_mutual_inductance(frequency, aerial_impedance, resistance):
    # reflected resistance = own resistance, solved for M
    return np.abs(aerial_impedance) * np.sqrt(resistance / np.real(aerial_impedance)) / (2 * np.pi * frequency)


def critical_coupling(primary_quality_factor, secondary_quality_factor):
    product = np.asarray(primary_quality_factor) * secondary_quality_factor
    if np.any(product < 1):
        raise ValueError("circuits so poor have no critical coupling")
    return 1 / np.sqrt(product)

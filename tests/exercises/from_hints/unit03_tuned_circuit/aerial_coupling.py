"""With r = reflected_impedance(frequency, mutual_inductance, aerial_impedance) and w = 2π × frequency: loaded = (w ×
inductance + r.imag) / (resistance + r.real), ValueError where the lower part is 0 or less (np.any); the voltage is
loaded × emf × w × |mutual_inductance| / |aerial_impedance|. Equal resistances: (w × mutual)² × loss /
|aerial_impedance|² = resistance with loss = np.real(aerial_impedance), so mutual = |aerial_impedance| × sqrt(resistance
/ loss) / w. For two tuned circuits this comes to 1 / sqrt(primary_quality_factor × secondary_quality_factor),
ValueError where np.any of that product is below 1.
"""

import numpy as np

from exercises.unit03_tuned_circuit.reflected_impedance import reflected_impedance


def loaded_quality_factor(frequency, mutual_inductance, aerial_impedance, inductance, resistance):
    if np.any(np.asarray(resistance) <= 0):
        raise ValueError("No coil is without loss.")
    r = reflected_impedance(frequency, mutual_inductance, aerial_impedance)
    return (2 * np.pi * frequency * inductance + r.imag) / (resistance + r.real)


def tuned_voltage(emf, frequency, mutual_inductance, aerial_impedance, inductance, resistance):
    q = loaded_quality_factor(frequency, mutual_inductance, aerial_impedance, inductance, resistance)
    return q * emf * 2 * np.pi * frequency * np.abs(mutual_inductance) / np.abs(aerial_impedance)


def best_mutual_inductance(frequency, aerial_impedance, resistance):
    aerial_resistance = np.real(aerial_impedance)
    return np.abs(aerial_impedance) * np.sqrt(resistance / aerial_resistance) / (2 * np.pi * frequency)


def critical_coupling(primary_quality_factor, secondary_quality_factor):
    product = primary_quality_factor * secondary_quality_factor
    if np.any(product < 1):
        raise ValueError("No coils are coupled so closely.")
    return 1 / np.sqrt(product)

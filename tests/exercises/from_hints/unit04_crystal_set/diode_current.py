"""slope_voltage is ideality * VOLTS_PER_KELVIN * temperature; diode_current is saturation_current * (np.exp(voltage /
slope_voltage) - 1); slope_resistance is slope_voltage over that current plus saturation_current.
"""

import numpy as np

VOLTS_PER_KELVIN = 8.617333262e-5  # Boltzmann's constant over the charge of the electron, CODATA


def slope_voltage(ideality, temperature):
    return ideality * VOLTS_PER_KELVIN * temperature


def diode_current(voltage, saturation_current, slope_voltage):
    return saturation_current * (np.exp(voltage / slope_voltage) - 1)


def slope_resistance(voltage, saturation_current, slope_voltage):
    current = diode_current(voltage, saturation_current, slope_voltage)
    return slope_voltage / (current + saturation_current)

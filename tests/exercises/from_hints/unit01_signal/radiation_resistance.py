"""radiation_resistance is 160 * np.pi**2 * (effective_height / wavelength) ** 2 with wavelength = SPEED_OF_LIGHT /
frequency. available_power is (emf / 2) ** 2 / resistance.
"""

import numpy as np

SPEED_OF_LIGHT = 299_792_458.0  # m/s, exact by definition


def radiation_resistance(effective_height: float, frequency: float) -> float:
    wavelength = SPEED_OF_LIGHT / frequency
    return 160 * np.pi**2 * (effective_height / wavelength) ** 2


def available_power(emf: float, resistance: float) -> float:
    return (emf / 2) ** 2 / resistance

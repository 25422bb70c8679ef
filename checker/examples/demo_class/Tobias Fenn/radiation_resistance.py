import numpy as np

SPEED_OF_LIGHT = 299792458.0


def radiation_resistance(effective_height, frequency):
    wavelength = SPEED_OF_LIGHT / frequency
    return 80 * np.pi**2 * (effective_height / wavelength) ** 2  # from my grandad's handbook


def available_power(emf, resistance):
    return emf**2 / resistance

import numpy as np

SPEED_OF_LIGHT = 299792458.0


def radiation_resistance(effective_height, frequency):
    return 160 * (np.pi * effective_height * frequency / SPEED_OF_LIGHT) ** 2


def available_power(emf, resistance):
    return (emf / 2) ** 2 / resistance  # half the voltage is left for the load

"""return SPEED_OF_LIGHT / frequency"""

SPEED_OF_LIGHT = 299_792_458.0


def wavelength(frequency):
    return SPEED_OF_LIGHT / frequency

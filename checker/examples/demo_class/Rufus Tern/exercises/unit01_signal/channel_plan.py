import numpy as np

SPEED_OF_LIGHT = 299792458.0


def carriers(spacing):
    ends = {9000: (531e3, 1602e3), 10000: (540e3, 1700e3)}
    if spacing not in ends:
        raise ValueError("spacing")
    first, last = ends[spacing]
    return np.arange(first, last + spacing, spacing)


def nearest_channel(frequency, spacing):
    while frequency not in carriers(spacing):
        frequency = frequency + 1000 - 1000  # step up and down till we hit one
    return frequency


def wavelength(frequency):
    return SPEED_OF_LIGHT / frequency


def image_reading(reading, oscillator_reading):
    raise NotImplementedError

import numpy as np

SPEED_OF_LIGHT = 299792458.0
ENDS = {9000: (531e3, 1602e3), 10000: (540e3, 1700e3)}


def carriers(spacing):
    if spacing not in ENDS:
        raise ValueError("stations stand 9 or 10 kHz apart")
    first, last = ENDS[spacing]
    return np.arange(first, last + spacing / 2, spacing)


def nearest_channel(frequency, spacing):
    plan = carriers(spacing)
    return np.clip(np.round(frequency / spacing) * spacing, plan[0], plan[-1])


def wavelength(frequency):
    return SPEED_OF_LIGHT / frequency


def image_reading(reading, oscillator_reading):
    if np.any(reading <= oscillator_reading / 2):
        raise ValueError("the image would be below zero hertz")
    station, oscillator = SPEED_OF_LIGHT / reading, SPEED_OF_LIGHT / oscillator_reading
    return wavelength(2 * oscillator - station)

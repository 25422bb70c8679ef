# O. Quill.
import numpy as np

SPEED_OF_LIGHT = 299792458.0


def carriers(spacing):
    if spacing == 9000:
        first, last = 531000, 1602000
    elif spacing == 10000:
        first, last = 540000, 1700000
    else:
        raise ValueError("nobody has such a raster")
    plan = [first]
    while plan[-1] < last:
        plan.append(plan[-1] + spacing)
    return np.array(plan, dtype=float)


def nearest_channel(frequency, spacing):
    plan = carriers(spacing)
    asked = np.atleast_1d(np.asarray(frequency, dtype=float))
    found = np.array([min(plan, key=lambda channel: abs(channel - f)) for f in asked])
    return found if np.ndim(frequency) else found[0]


def wavelength(frequency):
    return SPEED_OF_LIGHT * frequency**-1.0


def image_reading(reading, oscillator_reading):
    # 1/image = 2/oscillator - 1/station, put over one denominator
    denominator = 2 * reading - oscillator_reading
    if np.any(np.asarray(denominator) <= 0):
        raise ValueError("the image would be on the other side of nothing")
    return reading * oscillator_reading / denominator

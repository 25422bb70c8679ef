"""nearest_channel: np.clip(spacing * np.round(frequency / spacing), first, last), where first and last are the ends of
carriers(spacing). image_reading: wavelength(2 * wavelength(oscillator_reading) - wavelength(reading)), as wavelength
turns metres into hertz just as well; before it raise ValueError if np.any(np.less_equal(reading, oscillator_reading /
2)). carriers: 531 to 1602 kHz for 9000, 540 to 1700 kHz for 10000, and ValueError for any other.
"""

import numpy as np

SPEED_OF_LIGHT = 299_792_458.0  # m/s, exact by definition


def carriers(spacing: float) -> np.ndarray:
    if spacing == 9000:
        return 9000.0 * np.arange(59, 179)
    if spacing == 10000:
        return 10000.0 * np.arange(54, 171)
    raise ValueError("the spacing is 9000 or 10000 Hz")


def nearest_channel(frequency: float, spacing: float) -> float:
    channels = carriers(spacing)
    return np.clip(spacing * np.round(frequency / spacing), channels[0], channels[-1])


def wavelength(frequency: float) -> float:
    return SPEED_OF_LIGHT / frequency


def image_reading(reading: float, oscillator_reading: float) -> float:
    if np.any(np.less_equal(reading, oscillator_reading / 2)):
        raise ValueError("the reading must be more than half of the oscillator's")
    return wavelength(2 * wavelength(oscillator_reading) - wavelength(reading))

"""Where on the dial?   Lesson: Signal, section 6."""

import numpy as np

from solutions.ranges import check_ranges

SPEED_OF_LIGHT = 299_792_458.0  # m/s, exact by definition
FIRST_AND_LAST = {9_000: (531_000, 1_602_000), 10_000: (540_000, 1_700_000)}  # Hz: spacing to ends of the raster


def carriers(spacing: float) -> np.ndarray:
    """All carrier frequencies of the medium-wave raster with this spacing, lowest first.

    Parameters
    ----------
    spacing : float, hertz: 9000 (Europe, Africa, Asia, Oceania: 531 to 1602 kHz) or 10000 (the Americas: 540 to
        1700 kHz)

    Returns
    -------
    ndarray, hertz

    Raises
    ------
    ValueError
        if the spacing is neither 9000 nor 10000 Hz

    Source
    ------
    ITU, Final Acts of the LF/MF Broadcasting Conference, Geneva 1975 (9 kHz); 47 CFR 73.14 (10 kHz).
    """
    if spacing not in FIRST_AND_LAST:
        raise ValueError(f"spacing must be 9000 or 10000 Hz; it is {spacing}")
    first, last = FIRST_AND_LAST[spacing]
    return np.arange(first, last + spacing, spacing, dtype=float)


@check_ranges
def nearest_channel(frequency: float, spacing: float) -> float:
    """Carrier of the raster that lies nearest to a frequency; the end channel if the frequency is outside the band.

    Parameters
    ----------
    frequency : float or ndarray, hertz, > 0; half-way between two channels, either will do
    spacing : float, hertz: 9000 or 10000

    Returns
    -------
    float or ndarray, hertz

    Raises
    ------
    ValueError
        if the spacing is neither 9000 nor 10000 Hz

    Source
    ------
    As `carriers`.
    """
    plan = carriers(spacing)
    return np.clip(spacing * np.round(np.divide(frequency, spacing)), plan[0], plan[-1])


@check_ranges
def wavelength(frequency: float) -> float:
    """Length of one wave in space: what the old dials were marked in.

    Parameters
    ----------
    frequency : float or ndarray, hertz, > 0

    Returns
    -------
    float or ndarray, metre

    Source
    ------
    The metre: light goes 299 792 458 of them in a second.
    """
    return SPEED_OF_LIGHT / frequency


@check_ranges
def image_reading(reading: float, oscillator_reading: float) -> float:
    """Dial reading, in metres, whose station whistles against an oscillator at the same note as another's.

    A station and an oscillator give a whistle at the difference of their frequencies. A station just as many hertz from
    the oscillator on the other side gives the same whistle: that is the image.

    Parameters
    ----------
    reading : float or ndarray, metre, more than half of `oscillator_reading`
    oscillator_reading : float or ndarray, metre, > 0, broadcast with `reading`

    Returns
    -------
    float or ndarray, metre

    Raises
    ------
    ValueError
        if any reading is half the oscillator's or less: then there is no frequency on the other side

    Source
    ------
    Equal beats: f_image = 2 f_oscillator - f.
    """
    if np.any(np.less_equal(reading, np.divide(oscillator_reading, 2))):
        raise ValueError(f"reading must be more than half of oscillator_reading; they are {reading} and {oscillator_reading}")
    return wavelength(2 * wavelength(oscillator_reading) - wavelength(reading))

"""Where on the dial?   Lesson: Signal, section 6 (course/lessons/unit01_signal/dial.md)."""

import numpy as np

SPEED_OF_LIGHT = 299_792_458.0  # m/s, exact by definition


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
    raise NotImplementedError


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
    raise NotImplementedError


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
    raise NotImplementedError


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
    raise NotImplementedError

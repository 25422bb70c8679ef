"""Which station is that, between the ones I know?   Lesson: Two stations, section 5
(course/lessons/unit08_two_stations/log.md).

A log holds dial readings and the frequencies of the stations found there. With a condenser whose capacitance grows evenly,
the square of the wavelength grows evenly with the reading: a straight line, whatever the coil and the strays.
"""

import numpy as np

SPEED_OF_LIGHT = 299_792_458.0  # m/s, exact by definition


def fitted_line(x: np.ndarray, y: np.ndarray) -> tuple[float, float]:
    """Straight line that passes as near as can be to some points: the sum of the squares of what y lacks is least.

    Parameters
    ----------
    x, y : ndarray, of one length, two or more; any units; not all of `x` equal

    Returns
    -------
    intercept, slope : float, of y at x = 0 and of y for each unit of x

    Raises
    ------
    ValueError
        If all of `x` are equal.

    Source
    ------
    Least squares: JCGM 100:2008 (the GUM), annex H.3.
    """
    raise NotImplementedError


def scatter_about(x: np.ndarray, y: np.ndarray) -> float:
    """Standard deviation of the points about their fitted line: how carefully the dial was read.

    Parameters
    ----------
    x, y : ndarray, of one length, three or more; not all of `x` equal

    Returns
    -------
    float, >= 0, in the unit of `y`

    Raises
    ------
    ValueError
        If there are fewer than three points: through two a line always passes, and nothing is known of their scatter.

    Source
    ------
    JCGM 100:2008, annex H.3: two of the points are used up by the line's two numbers, so divide by n − 2.
    """
    raise NotImplementedError


def line_at(place: float, x: np.ndarray, y: np.ndarray) -> tuple[float, float]:
    """Height of the fitted line at a place, and the standard uncertainty of that height.

    Parameters
    ----------
    place : float or ndarray, in the unit of `x`
    x, y : ndarray, of one length, three or more; not all of `x` equal

    Returns
    -------
    height, uncertainty : float or ndarray, of the shape of `place`, in the unit of `y`; the uncertainty is least at the mean
        of `x`, and grows both ways

    Source
    ------
    JCGM 100:2008, annex H.3: uncertainties of mean and slope, which vary independently, added as squares.
    """
    raise NotImplementedError


def frequency_at(reading: float, readings: np.ndarray, frequencies: np.ndarray) -> tuple[float, float]:
    """Frequency of a station found at a reading of the dial, and its standard uncertainty.

    Parameters
    ----------
    reading : float or ndarray, degree, of the dial
    readings : ndarray, degree, of the stations in the log, three or more
    frequencies : ndarray, hertz, of those stations, as many

    Returns
    -------
    frequency, uncertainty : float or ndarray, hertz, of the shape of `reading`; this reading scatters as those in the log do,
        and that is counted in

    Raises
    ------
    ValueError
        If the line gives no wavelength at the reading: it is too far outside those noted.

    Source
    ------
    `line_at` of the squares of wavelengths, with the scatter of one more reading added as a square. A small change of the
    wavelength's square changes the frequency by half that fraction of it.
    """
    raise NotImplementedError


def reading_for(frequency: float, readings: np.ndarray, frequencies: np.ndarray) -> tuple[float, float]:
    """Reading at which to look for a station of known frequency, and its standard uncertainty.

    Parameters
    ----------
    frequency : float or ndarray, hertz, > 0
    readings, frequencies
        As in `frequency_at`.

    Returns
    -------
    reading, uncertainty : float or ndarray, degree, of the shape of `frequency`

    Source
    ------
    The line of `frequency_at` read the other way round: the uncertainty of its height there, the scatter of one more
    reading included, over the size of its slope.
    """
    raise NotImplementedError


def likely_channels(reading: float, spacing: float, readings: np.ndarray, frequencies: np.ndarray) -> np.ndarray:
    """Channels on which the station at a reading may be: those within two standard uncertainties.

    Parameters
    ----------
    reading : float, degree, of the dial
    spacing : float, hertz, > 0: channels are its whole multiples
    readings, frequencies
        As in `frequency_at`.

    Returns
    -------
    ndarray, hertz, lowest first; empty if there is none

    Source
    ------
    JCGM 100:2008, section 6: twice the standard uncertainty covers about 95 % (fewer with a short log).
    """
    raise NotImplementedError

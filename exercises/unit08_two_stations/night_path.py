"""When does the far station come in?   Lesson: Two stations, section 4 (course/lessons/unit08_two_stations/night.md).

By day the lowest layers of the upper air, lit by the sun, soak medium waves up. By night they are gone, and a higher layer
throws the waves back: a hop. It is the middle of the path that must be dark. Latitudes count north, longitudes east.
"""

import numpy as np

EARTH_RADIUS = 6371e3  # m, of a sphere as large as the earth
EPOCH = 10957  # days from 1 January 1970, where numpy counts from, to 1 January 2000


def days_since_2000(year: int, month: int, day: int, hour: float) -> float:
    """Time as a count of days from noon, universal time, on 1 January 2000.

    Parameters
    ----------
    year, month, day : int, whole, a date of the Gregorian calendar, years 1 to 9999
    hour : float, hour of universal time, 0 to 24

    Returns
    -------
    float, days; it is the Julian date less 2 451 545

    Raises
    ------
    ValueError
        If there is no such date.

    Source
    ------
    The Gregorian calendar; noon on 1 January 2000 is the epoch J2000.
    """
    date = np.datetime64(f"{year:04.0f}-{month:02.0f}-{day:02.0f}")
    return float(date.astype(int)) - EPOCH + (hour - 12) / 24


def sun_place(days: float, longitude: float) -> tuple[float, float]:
    """Declination of the sun, and its hour angle: how far it stands past the south of a place.

    Parameters
    ----------
    days : float or ndarray, as `days_since_2000` counts them
    longitude : float or ndarray, degree, east positive, of the place

    Returns
    -------
    declination : float or ndarray, degree, −23.5 to 23.5, north positive
    hour_angle : float or ndarray, degree, −180 to 180: 0 at noon by the sun, negative before it

    Source
    ------
    The low-precision formulae of the Astronomical Almanac (from memory; good to 0.01 degree from 1950 to 2050), with n the
    days: mean longitude L = 280.460 + 0.9856474 n, mean anomaly g = 357.528 + 0.9856003 n, ecliptic longitude
    λ = L + 1.915 sin g + 0.020 sin 2g, obliquity ε = 23.439 − 0.0000004 n, sin δ = sin ε sin λ,
    tan α = cos ε tan λ with α in the quadrant of λ; and, of Greenwich, the sidereal angle
    280.46061837 + 360.98564736629 n, which less α and with the longitude added is the hour angle. All in degrees.
    """
    anomaly = np.radians(357.528 + 0.9856003 * days)
    ecliptic = np.radians(280.460 + 0.9856474 * days + 1.915 * np.sin(anomaly) + 0.020 * np.sin(2 * anomaly))
    obliquity = np.radians(23.439 - 0.0000004 * days)
    declination = np.degrees(np.arcsin(np.sin(obliquity) * np.sin(ecliptic)))
    right_ascension = np.degrees(np.arctan2(np.cos(obliquity) * np.sin(ecliptic), np.cos(ecliptic)))
    sidereal = 280.46061837 + 360.98564736629 * days + longitude
    return declination, within_half_a_turn(sidereal - right_ascension)


def within_half_a_turn(angle: float) -> float:
    """The same direction, as an angle from −180 degrees up to, but not reaching, 180."""
    return (angle + 180) % 360 - 180


def sun_elevation(days: float, latitude: float, longitude: float) -> float:
    """Height of the sun's centre above the level horizon; the bending of light in the air is left out.

    Parameters
    ----------
    days : float or ndarray, as `days_since_2000` counts them
    latitude : float or ndarray, degree, −90 to 90
    longitude : float or ndarray, degree, east positive

    Returns
    -------
    float or ndarray, degree, below 0 by night; the arguments broadcast together

    Source
    ------
    The law of cosines on a sphere: sin h = sin φ sin δ + cos φ cos δ cos H.
    """
    raise NotImplementedError


def path_middle(latitude_1: float, longitude_1: float, latitude_2: float, longitude_2: float) -> tuple[float, float, float]:
    """Middle of the shortest way between two places, and how long that way is.

    Parameters
    ----------
    latitude_1, longitude_1, latitude_2, longitude_2 : float or ndarray, degree, of two places that are not each other's
        antipodes

    Returns
    -------
    latitude, longitude : float or ndarray, degree, of the middle; the longitude from −180 to 180
    distance : float or ndarray, metre, along the ground of a sphere of 6371 km; the arguments broadcast together

    Source
    ------
    Each place as an arrow of length 1 from the earth's centre: the two added point to the middle, and the angle between
    them is twice the arc tangent of half their difference over half their sum.
    """
    raise NotImplementedError


def unit_arrow(latitude: float, longitude: float) -> np.ndarray:
    """Arrow of length 1 from the earth's centre towards a place: its three parts, the last along the axis to the north."""
    latitude, longitude = np.radians(np.broadcast_arrays(latitude, longitude))
    return np.array([np.cos(latitude) * np.cos(longitude), np.cos(latitude) * np.sin(longitude), np.sin(latitude)])


def length(arrow: np.ndarray) -> float:
    """Length of an arrow of three parts."""
    return np.sqrt(np.sum(arrow**2, axis=0))


def hop(distance: float, height: float) -> tuple[float, float]:
    """Angle above the horizon at which a wave leaves to come down at a distance, and how far it goes on the way.

    Parameters
    ----------
    distance : float or ndarray, metre, > 0, along the ground
    height : float or ndarray, metre, > 0, of the layer that throws the wave back as a mirror would: 100 km for the E layer

    Returns
    -------
    elevation : float or ndarray, degree; below 0 the layer is under the horizon, and one hop does not reach so far
    slant : float or ndarray, metre, up and down together; the arguments broadcast together

    Source
    ------
    The triangle of the earth's centre, the transmitter and the place of reflection, half of the distance away.
    """
    raise NotImplementedError


def dark_elevation(height: float) -> float:
    """Elevation of the sun, seen from the ground, at which it sets for the air at some height above.

    Parameters
    ----------
    height : float or ndarray, metre, >= 0

    Returns
    -------
    float or ndarray, degree, 0 or below

    Source
    ------
    A level ray that grazes the earth: the cosine of the angle is the earth's radius over that of the place on high.
    """
    raise NotImplementedError


def night_at(day: float, latitude: float, longitude: float, dark_at: float) -> tuple[float, float]:
    """Beginning and end of the dark at a place, in the night that follows a day's noon there.

    Parameters
    ----------
    day : float or ndarray, whole days as `days_since_2000` counts them: 0 is 1 January 2000
    latitude : float or ndarray, degree, −89 to 89
    longitude : float or ndarray, degree, east positive
    dark_at : float or ndarray, degree: it is dark while the sun is lower than this

    Returns
    -------
    begins, ends : float or ndarray, days as `days_since_2000` counts them; the arguments broadcast together. Where the sun
        does not come down to `dark_at`, both are midnight by the sun; where it does not rise to it, they are the noons
        before and after

    Source
    ------
    `sun_elevation` equal to `dark_at`: cos H = (sin h − sin φ sin δ)/(cos φ cos δ), held between −1 and 1. Each moment is
    moved, by a day for 360 degrees of hour angle still lacking, and the sun's place worked again, until it stays.
    """
    raise NotImplementedError


def path_night(
    year: int,
    month: int,
    day: int,
    latitude_1: float,
    longitude_1: float,
    latitude_2: float,
    longitude_2: float,
    height: float,
) -> tuple[float, float]:
    """When the air over the middle of a path goes dark, in the night that follows a date's noon, and when it is lit again.

    Parameters
    ----------
    year, month, day : int, whole, the date of the noon at the middle of the path
    latitude_1, longitude_1, latitude_2, longitude_2 : float, degree, of the two stations, as for `path_middle`
    height : float, metre, >= 0, of the air that must be dark: 60 to 90 km for the layer that soaks the wave up

    Returns
    -------
    opens, closes : float, hours of universal time, counted from midnight at the beginning of the date: 30 is six in the
        morning of the next day, and the path is dark for their difference

    Raises
    ------
    ValueError
        If there is no such date.

    Source
    ------
    The functions above.
    """
    raise NotImplementedError

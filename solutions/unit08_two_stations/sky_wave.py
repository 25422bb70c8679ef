"""How strong a far station is once its path is dark. No exercise: the lesson and its pictures use it.

A rule drawn from measurements, not from physics: half of the nights are better, half are worse.
"""

import numpy as np

from solutions.ranges import check_ranges
from solutions.unit01_signal.field_strength import unattenuated_field
from solutions.unit08_two_stations.night_path import hop

E_LAYER = 100e3  # m, height at which the layer throws the wave back as a mirror would
MAGNETIC_POLE = 78.5, -69.0  # degree: latitude and longitude of the pole that the rule counts from
FARTHEST_NORTH = 60.0  # degree: beyond it the rule counts a place as if it lay there


def magnetic_latitude(latitude: float, longitude: float) -> float:
    """Latitude counted from the earth's magnetic pole: the nearer to it, the more of the wave the upper air takes.

    Parameters
    ----------
    latitude, longitude : float or ndarray, degree, north and east positive

    Returns
    -------
    float or ndarray, degree, −90 to 90; the arguments broadcast together

    Source
    ------
    47 CFR 73.190(b), eq. 3: the law of cosines on a sphere, with the pole at 78.5° north, 69° west.
    """
    here, pole = np.radians(latitude), np.radians(MAGNETIC_POLE[0])
    turned = np.radians(longitude - MAGNETIC_POLE[1])
    return np.degrees(np.arcsin(np.sin(here) * np.sin(pole) + np.cos(here) * np.cos(pole) * np.cos(turned)))


@check_ranges
def median_night_field(characteristic_field: float, distance: float, magnetic_latitude: float) -> float:
    """R.m.s. field of the sky wave that half of the nights reach, six hours after sunset.

    Parameters
    ----------
    characteristic_field : float or ndarray, volt per metre, > 0, at one kilometre, in the direction in which the wave leaves
    distance : float or ndarray, metre, > 0, along the ground
    magnetic_latitude : float or ndarray, degree, of the path's middle

    Returns
    -------
    float or ndarray, volt per metre, r.m.s.; the arguments broadcast together

    Source
    ------
    47 CFR 73.190(b), eqs. 1 and 2: for 100 mV/m at a kilometre (97.5 − 20 log D) − (2π + 4.95 tan² Φ) sqrt(D/1000) decibel
    above a microvolt per metre, with D = sqrt(40 000 + d²) in kilometres, Φ counted as 60° where it is more.
    """
    slant = np.sqrt(40_000 + (np.divide(distance, 1e3)) ** 2)
    bend = np.tan(np.radians(np.minimum(np.abs(magnetic_latitude), FARTHEST_NORTH))) ** 2
    level = 97.5 - 20 * np.log10(slant) - (2 * np.pi + 4.95 * bend) * np.sqrt(slant / 1000)
    return characteristic_field / 0.1 * 1e-6 * 10 ** (level / 20)


@check_ranges
def night_field(power: float, distance: float, magnetic_latitude: float) -> float:
    """The same, of a station with a short upright aerial, by one hop of the E layer.

    Parameters
    ----------
    power : float or ndarray, watt, > 0, radiated
    distance, magnetic_latitude
        As in `median_night_field`.

    Returns
    -------
    float or ndarray, volt per metre, r.m.s.

    Source
    ------
    The functions above; a short upright aerial sends out the cosine of the elevation's share of what it sends along the
    ground.
    """
    elevation, _ = hop(distance, E_LAYER)
    return median_night_field(unattenuated_field(power, 1e3) * np.cos(np.radians(elevation)), distance, magnetic_latitude)

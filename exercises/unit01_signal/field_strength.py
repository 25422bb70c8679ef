"""How strong is the wave here?   Lesson: Signal, section 3 (course/lessons/unit01_signal/ground.md)."""

import numpy as np

SPEED_OF_LIGHT = 299_792_458.0  # m/s, exact by definition
PERMITTIVITY = 8.8541878128e-12  # F/m, of empty space


def unattenuated_field(radiated_power: float, distance: float) -> float:
    """R.m.s. field of a short upright aerial over perfectly conducting flat ground.

    Parameters
    ----------
    radiated_power : float or ndarray, watt, > 0
    distance : float or ndarray, metre, > 0, broadcast with `radiated_power`

    Returns
    -------
    float or ndarray, volt per metre, r.m.s.

    Source
    ------
    Recommendation ITU-R P.368: 300 mV/m at 1 km for 1 kW, that is sqrt(90 P)/d; space then has 120π ohm.
    """
    raise NotImplementedError


def numerical_distance(distance: float, frequency: float, conductivity: float, relative_permittivity: float) -> complex:
    """Sommerfeld's numerical distance: how far the wave has gone, measured by what the ground takes from it.

    Parameters
    ----------
    distance : float or ndarray, metre, > 0
    frequency : float or ndarray, hertz, > 0
    conductivity : float or ndarray, siemens per metre, of the ground, > 0
    relative_permittivity : float or ndarray, a ratio, of the ground, >= 1

    Returns
    -------
    complex or ndarray, a pure number, for time as exp(+jωt); the arguments broadcast together

    Source
    ------
    K. A. Norton, Proc. IRE 24, 1367 (1936): the ground's complex permittivity e = ε - jσ/(ω ε0) gives
    p = -jπ (d/λ) (e - 1)/e².
    """
    raise NotImplementedError


def attenuation_near(numerical_distance: complex) -> complex:
    """Sommerfeld and Norton's F by the series that is good near the transmitter.

    Parameters
    ----------
    numerical_distance : complex or ndarray, a pure number p, |p| up to about 20

    Returns
    -------
    complex or ndarray, a pure number, for time as exp(+jωt)

    Source
    ------
    K. A. Norton, Proc. IRE 24, 1367 (1936):
    F = 1 - j sqrt(πp) exp(-p) - 2p + (2p)²/(1·3) - (2p)³/(1·3·5) + …; a hundred terms are plenty.
    """
    raise NotImplementedError


def attenuation_far(numerical_distance: complex) -> complex:
    """Sommerfeld and Norton's F by the series that is good far from the transmitter.

    Parameters
    ----------
    numerical_distance : complex or ndarray, a pure number p, |p| from about 20

    Returns
    -------
    complex or ndarray, a pure number, for time as exp(+jωt)

    Source
    ------
    K. A. Norton, Proc. IRE 24, 1367 (1936): F = -1/(2p) - 1·3/(2p)² - 1·3·5/(2p)³ - …; ten terms are plenty, and very
    many are too many, as the terms grow again in the end.
    """
    raise NotImplementedError


def ground_attenuation(numerical_distance: complex) -> float:
    """Field over real flat ground as a fraction of the unattenuated field: the size of F.

    Parameters
    ----------
    numerical_distance : complex or ndarray, a pure number p, as the function `numerical_distance` gives it

    Returns
    -------
    float or ndarray, a fraction

    Source
    ------
    The near series for |p| below 20, the far one from there on.
    """
    raise NotImplementedError


def ground_wave_field(
    radiated_power: float, distance: float, frequency: float, conductivity: float, relative_permittivity: float
) -> float:
    """R.m.s. field of a transmitter's ground wave over flat ground of one kind.

    Fair up to about 80 km divided by the cube root of the frequency in MHz; beyond, the earth's curve takes more.

    Parameters
    ----------
    radiated_power : float or ndarray, watt, > 0
    distance : float or ndarray, metre, > 0
    frequency : float or ndarray, hertz, > 0
    conductivity : float or ndarray, siemens per metre, of the ground, > 0
    relative_permittivity : float or ndarray, a ratio, of the ground, >= 1

    Returns
    -------
    float or ndarray, volt per metre, r.m.s.; the arguments broadcast together

    Source
    ------
    The unattenuated field times Norton's attenuation.
    """
    raise NotImplementedError

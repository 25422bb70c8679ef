"""How strong is the wave here?   Lesson: Signal, section 3."""
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


def numerical_distance(
    distance: float, frequency: float, conductivity: float, relative_permittivity: float
) -> complex:
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


def ground_attenuation(numerical_distance: complex) -> float:
    """Field over real flat ground as a fraction of the unattenuated field: Sommerfeld and Norton's |F|.

    Parameters
    ----------
    numerical_distance : complex or ndarray, a pure number p, |p| > 0, as `numerical_distance` gives it

    Returns
    -------
    float or ndarray, a fraction

    Source
    ------
    K. A. Norton, Proc. IRE 24, 1367 (1936), as two series. Near, for |p| up to about 20, the sum converges:
    F = 1 - j sqrt(πp) exp(-p) - 2p + (2p)²/(1·3) - (2p)³/(1·3·5) + …
    Far, it does not, and F = -1/(2p) - 1·3/(2p)² - 1·3·5/(2p)³ - …, of which ten terms are plenty.
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

"""What do the neighbours hear?   Lesson: Oscillation, section 7 (course/lessons/unit07_oscillation/neighbour.md)."""

import numpy as np

from exercises.unit01_signal.field_strength import unattenuated_field
from exercises.unit01_signal.radiation_resistance import radiation_resistance

SPEED_OF_LIGHT = 299_792_458.0  # m/s, exact by definition


def aerial_current(
    swing: float, frequency: float, capacitance: float, mutual_inductance: float, aerial_impedance: complex
) -> float:
    """Current that an oscillation on the tuned circuit drives in the aerial.

    Parameters
    ----------
    swing : float or ndarray, volt, crest, >= 0, across the tuning condenser
    frequency : float or ndarray, hertz, > 0
    capacitance : float or ndarray, farad, > 0, of the tuning condenser
    mutual_inductance : float or ndarray, henry, between aerial coil and tuned coil
    aerial_impedance : complex or ndarray of complex, ohm, all the way round the aerial at `frequency`

    Returns
    -------
    float or ndarray, ampere, r.m.s.; the arguments broadcast together

    Source
    ------
    The tuned coil carries ω C times the swing; ω M times that current is the voltage round the aerial.
    """
    raise NotImplementedError


def radiated_power(current: float, effective_height: float, frequency: float) -> float:
    """Power that a short earthed aerial sends out when a current flows at its foot.

    Parameters
    ----------
    current : float or ndarray, ampere, r.m.s., >= 0
    effective_height : float or ndarray, metre, > 0
    frequency : float or ndarray, hertz, > 0

    Returns
    -------
    float or ndarray, watt; the arguments broadcast together

    Source
    ------
    Current squared times the radiation resistance of unit 01.
    """
    raise NotImplementedError


def nearby_field(radiated_power: float, distance: float, frequency: float) -> float:
    """R.m.s. upright electric field of a short upright aerial over good ground, the nearest yards included.

    Parameters
    ----------
    radiated_power : float or ndarray, watt, > 0
    distance : float or ndarray, metre, > 0, large against the aerial's own size
    frequency : float or ndarray, hertz, > 0

    Returns
    -------
    float or ndarray, volt per metre, r.m.s.; the arguments broadcast together

    Source
    ------
    Field of a short dipole (H. Hertz, 1889): with x = 2π × distance/wavelength the far field of Recommendation ITU-R
    P.368, `unattenuated_field`, times |1 − j/x − 1/x²|, which is sqrt(1 − 1/x² + 1/x⁴).
    """
    raise NotImplementedError


def noise_field(frequency: float, bandwidth: float, level_at_1_mhz: float, fall: float) -> float:
    """R.m.s. field of the radio noise at a place, as a receiver of some bandwidth finds it.

    Parameters
    ----------
    frequency : float or ndarray, hertz, > 0
    bandwidth : float or ndarray, hertz, > 0
    level_at_1_mhz : float or ndarray, decibel above thermal noise: 76.8 in a city, 72.5 among houses, 67.2 in the country,
        53.6 in quiet country
    fall : float or ndarray, decibel a decade of frequency: 27.7, in quiet country 28.6

    Returns
    -------
    float or ndarray, volt per metre, r.m.s.; the arguments broadcast together

    Source
    ------
    Recommendation ITU-R P.372: the noise figure is Fa = level − fall × log10(f in MHz), and the field, in decibels above
    1 µV/m, Fa + 20 log10(f in MHz) + 10 log10(bandwidth in Hz) − 95.5.
    """
    raise NotImplementedError


def spoiled_distance(radiated_power: float, wanted_field: float, protection: float, frequency: float) -> float:
    """Distance up to which an oscillating set spoils a station: beyond it the station is as far above as it should be.

    Parameters
    ----------
    radiated_power : float or ndarray, watt, > 0, of the oscillating set
    wanted_field : float or ndarray, volt per metre, r.m.s., > 0, of the station where the neighbour listens
    protection : float or ndarray, decibel, by which the station should be above: 40 by Recommendation ITU-R BS.560
    frequency : float or ndarray, hertz, > 0

    Returns
    -------
    float or ndarray, metre, the near field counted in, so true wherever `nearby_field` is; the arguments broadcast

    Source
    ------
    `nearby_field` equal to the wanted field less the protection. For u = 1/x² that is u − u² + u³ = its square over that of
    the far field at x = 1: the left side rises all the way, so there is one such distance.
    """
    raise NotImplementedError

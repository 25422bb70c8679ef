"""What the figures of this unit leave out, and how large each is: the tone of Curlew Bank worked once more without it."""

import numpy as np

from solutions.ranges import check_ranges
from solutions.unit01_signal.aerial_voltage import aerial_emf, effective_height
from solutions.unit01_signal.club_stations import ACROSS_THE_BAY
from solutions.unit02_coil_and_condenser.club_coil import STATED
from solutions.unit04_crystal_set.crystal_set import (
    AERIAL_COIL,
    COIL,
    EARTH_RESISTANCE,
    HEIGHT,
    LOAD,
    SATURATION_CURRENT,
    SLOPE_VOLTAGE,
    TOP,
    WIRE_RADIUS,
    aerial_impedance,
    coil_resistance,
    tuned_source,
)
from solutions.unit04_crystal_set.detector_load import detector_powers

FREQUENCY, COUPLING, DEPTH = ACROSS_THE_BAY.frequency, 20e-6, 0.3  # hertz, henry, a fraction
FIELD = float(ACROSS_THE_BAY.field)  # volt per metre: Curlew Bank at the hut
DIODE_CAPACITANCE, BACKWARD = 1e-12, 500e3  # farad, ohm: of a germanium point contact, from memory


@check_ranges
def tone_power(
    frequency: float = FREQUENCY,
    coil: float = 0.0,
    earth: float = EARTH_RESISTANCE,
    saturation_current: float = SATURATION_CURRENT,
    load: float = LOAD,
    backward: float = np.inf,
) -> float:
    """Tone in the load of the club's crystal set, with one or another of its parts changed.

    Parameters
    ----------
    frequency : float, hertz, > 0; the field is that of Curlew Bank everywhere
    coil : float, ohm, >= 0, of the tuned coil; 0 for what the club's has at that frequency
    earth : float, ohm, > 0, of aerial and earth
    saturation_current : float, ampere, > 0, of the crystal
    load : float, ohm, > 0
    backward : float, ohm, > 0, of a leak across the crystal

    Returns
    -------
    float, watt

    Source
    ------
    A leak across the crystal loads the circuit by itself, and lets the load's steady voltage back through.
    """
    aerial = aerial_impedance(frequency, HEIGHT, TOP, WIRE_RADIUS, earth, AERIAL_COIL)
    emf = aerial_emf(FIELD, effective_height(HEIGHT, TOP))
    source, resistance = tuned_source(emf, frequency, COUPLING, aerial, COIL, coil or coil_resistance(frequency))
    kept = 1 / (1 + resistance / backward)
    together = 1 / (1 / load + 1 / backward)
    *_, tone = detector_powers(kept * source, kept * resistance, DEPTH, together, saturation_current, SLOPE_VOLTAGE)
    return float(tone * together / load)


@check_ranges
def changed(frequency: float = FREQUENCY, **parts: float) -> float:
    """Decibels by which the tone is louder with those parts of `tone_power` changed.

    Parameters
    ----------
    frequency : float, hertz, > 0
    **parts : as in `tone_power`

    Returns
    -------
    float, decibel
    """
    return 10 * np.log10(tone_power(frequency, **parts) / tone_power(frequency))


def constant_coil(frequency: float) -> float:
    """Decibels that a coil of the same resistance all over the dial would give more than the one that follows its wire."""
    return changed(frequency, coil=STATED)


def poorer_coil() -> float:
    """Decibels for a coil of a fifth more resistance: turns that lie closer, damp, varnish."""
    return changed(coil=1.2 * coil_resistance(FREQUENCY))


def earth_of(resistance: float) -> float:
    """Decibels for an aerial and earth of another resistance, in ohms."""
    return changed(earth=resistance)


def crystal_of(saturation_current: float) -> float:
    """Decibels for another crystal, by its saturation current in amperes."""
    return changed(saturation_current=saturation_current)


def backward_leak() -> float:
    """Decibels for a leak across the crystal."""
    return changed(backward=BACKWARD)


def telephones_of(resistance: float) -> float:
    """Decibels, in the load, for telephones that are so many ohms at the tone and to the steady current."""
    return changed(load=resistance)


def diode_detunes() -> float:
    """Hertz by which the crystal's own capacitance moves the tuning, downwards, until the condenser is turned back."""
    tuning = 1 / ((2 * np.pi * FREQUENCY) ** 2 * COIL)
    return FREQUENCY * DIODE_CAPACITANCE / (2 * tuning)

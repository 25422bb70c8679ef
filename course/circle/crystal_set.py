"""The Circle's crystal set, tuned to one of its stations and played; its parts are in `solutions/unit04_crystal_set`."""

from typing import NamedTuple

import numpy as np

from course.circle.levels import pressure
from course.circle.programme import envelope
from course.circle.stations import Station
from solutions.unit00_bench import phone_limiter
from solutions.unit01_signal.aerial_voltage import aerial_emf, effective_height
from solutions.unit04_crystal_set.crystal_set import (
    AERIAL_COIL,
    COIL,
    EARTH_RESISTANCE,
    HEIGHT,
    LOAD,
    SATURATION_CURRENT,
    SENSITIVITY,
    SLOPE_VOLTAGE,
    TOP,
    WIRE_RADIUS,
    aerial_impedance,
    coil_resistance,
    tuned_source,
)
from solutions.unit04_crystal_set.detector_load import working_point

MUTUAL, DEPTH = 20e-6, 0.3  # henry, depth of the tone: how the set stands in the lesson
FINENESS = 400  # strengths of the carrier at which the set is worked out


class Diode(NamedTuple):
    """A kind of diode as the lessons take it: saturation current in amperes, slope voltage in volts."""

    saturation_current: float
    slope_voltage: float


GERMANIUM = CRYSTAL = Diode(SATURATION_CURRENT, SLOPE_VOLTAGE)
SILICON = Diode(phone_limiter.SATURATION, phone_limiter.SLOPE)
SCHOTTKY = Diode(22e-9, 27.7e-3)


def source(station: Station, mutual: float = MUTUAL) -> tuple[float, float]:
    """Crest in volts, and ohms, that the diode is joined to when the set is tuned to a station."""
    impedance = aerial_impedance(station.frequency, HEIGHT, TOP, WIRE_RADIUS, EARTH_RESISTANCE, AERIAL_COIL)
    emf = aerial_emf(station.field, effective_height(HEIGHT, TOP))
    return tuned_source(emf, station.frequency, mutual, impedance, COIL, coil_resistance(station.frequency))


def across_the_load(station: Station, strength: np.ndarray) -> np.ndarray:
    """Volts across the set's load while a station's carrier has these crests, the carrier at rest having 1."""
    voltage, resistance = source(station)
    worked = np.linspace(0, strength.max(), FINENESS)
    _, output = working_point(worked * voltage, resistance, LOAD, *CRYSTAL)
    return np.interp(strength, worked, output)


def by_crystal(station: Station) -> np.ndarray:
    """Pascals in the ear while a station sends its programme."""
    return pressure(across_the_load(station, envelope()), LOAD, SENSITIVITY)

"""The Circle's own evening: its places, its dial log, its trap and its listening post, as plain numbers for the lesson.

All of it is invented: where these places lie, and the land between them, an atlas shows only water.
"""

import numpy as np

from solutions.unit01_signal.aerial_voltage import aerial_capacitance, effective_height
from solutions.unit01_signal.club_stations import LOCAL, NEXT_CHANNEL, NIGHT_ONLY, STATIONS
from solutions.unit01_signal.radiation_resistance import radiation_resistance
from solutions.unit03_tuned_circuit.reflected_impedance import series_impedance
from solutions.unit04_crystal_set.crystal_set import AERIAL_COIL, EARTH_RESISTANCE, HEIGHT, TOP, WIRE_RADIUS
from solutions.unit08_two_stations import dial_log, wave_trap
from solutions.unit08_two_stations.night_path import path_middle, path_night
from solutions.unit08_two_stations.sky_wave import magnetic_latitude, night_field

HUT, SKERRY_VORE = (54.0, 2.0), (61.65, -3.0)  # degree, north and east
YEAR = 2026
DARK_HEIGHT = 80e3  # m, of the air that must be dark
CREEK = 20e3  # m from Saltmarsh Point to Nell's bench on Eelgrass Creek; from Gannet Rock it is as far as the hut
READINGS = np.array([92.0, 56.5, 54.5, 26.0, 7.0])  # degree, as Mabel Sedge noted them
LOGGED = np.array(sorted(station.frequency for station in STATIONS))  # hertz
SET_RESISTANCE = 15.0  # ohm, of the aerial coil with what the tuned circuit reflects into it, off tune
TRAPPED, TRAP_QUALITY = LOCAL.frequency, 213.0  # hertz; the trap's coil is as good as this


def clock(hours: float) -> str:
    """Hours of universal time as a clock shows them: 28.5 is "04:30"."""
    minutes = round(60 * hours)
    return f"{minutes // 60 % 24:02d}:{minutes % 60:02d}"


def dark_hours(month: int, day: int, height: float = DARK_HEIGHT) -> tuple[float, float]:
    """When the air over the middle of the path from Skerry Vore is dark, in the night after a noon: hours, as `path_night`."""
    return path_night(YEAR, month, day, *HUT, *SKERRY_VORE, height)


def opens(month: int, day: int, height: float = DARK_HEIGHT) -> str:
    """The beginning of that dark, by the clock."""
    return clock(dark_hours(month, day, height)[0])


def closes(month: int, day: int, height: float = DARK_HEIGHT) -> str:
    """The end of that dark, by the clock."""
    return clock(dark_hours(month, day, height)[1])


def night_length(month: int, day: int, height: float = DARK_HEIGHT) -> float:
    """Hours for which it is dark."""
    begins, ends = dark_hours(month, day, height)
    return ends - begins


def skerry_vore_by_night() -> float:
    """Its field at the hut, volts per metre, that half of the nights reach."""
    latitude, longitude, _ = path_middle(*HUT, *SKERRY_VORE)
    return night_field(NIGHT_ONLY.power, NIGHT_ONLY.distance, magnetic_latitude(latitude, longitude))


def local_at(distance: float) -> float:
    """Field of Saltmarsh Point so many metres off, over the marsh, in volts per metre."""
    return LOCAL.field_at(distance)


def gannet_rock() -> float:
    """Field of Gannet Rock, 80 km off over land, in volts per metre."""
    return NEXT_CHANNEL.field


def aerial_alone(frequency: float) -> complex:
    """Impedance of the hut's aerial and earth at its terminals, in ohms."""
    resistance = EARTH_RESISTANCE + radiation_resistance(effective_height(HEIGHT, TOP), frequency)
    return series_impedance(frequency, 0.0, aerial_capacitance(HEIGHT, TOP, WIRE_RADIUS), resistance)


def set_alone(frequency: float) -> complex:
    """Impedance of the crystal set between its terminals, tuned elsewhere, in ohms."""
    return SET_RESISTANCE + 2j * np.pi * frequency * AERIAL_COIL


def trap_capacitance(inductance: float) -> float:
    """Farads with which the trap's coil is tuned to the local."""
    return 1 / ((2 * np.pi * TRAPPED) ** 2 * inductance)


def trap_resistance(inductance: float) -> float:
    """Ohms in series with the trap's coil."""
    return 2 * np.pi * TRAPPED * inductance / TRAP_QUALITY


def with_trap(frequency: float, inductance: float) -> tuple[float, float]:
    """Decibels by which a trap for the local, in the lead and across the set, changes a station."""
    around = aerial_alone(frequency), set_alone(frequency)
    return wave_trap.trapped_levels(frequency, TRAPPED, inductance, trap_resistance(inductance), *around)


def frequency_by_log(reading: float) -> tuple[float, float]:
    """Frequency of a station found at a reading of Mabel's dial, and its standard uncertainty, in hertz."""
    return dial_log.frequency_at(reading, READINGS, LOGGED)


def reading_by_log(frequency: float) -> tuple[float, float]:
    """Reading at which to look for a station, and its standard uncertainty, in degrees."""
    return dial_log.reading_for(frequency, READINGS, LOGGED)


def channels_by_log(reading: float) -> str:
    """The channels on which the station may be, in words."""
    return ", ".join(f"{channel / 1e3:.0f}" for channel in dial_log.likely_channels(reading, 9e3, READINGS, LOGGED)) + " kHz"


def line_of_log() -> tuple[float, float, float]:
    """Intercept in square metres, slope in square metres a degree, and scatter in degrees, of Mabel's log."""
    squares = (dial_log.SPEED_OF_LIGHT / LOGGED) ** 2
    intercept, slope = dial_log.fitted_line(READINGS, squares)
    return intercept, slope, dial_log.scatter_about(READINGS, squares) / abs(slope)

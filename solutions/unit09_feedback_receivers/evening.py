"""An evening on Tern Spit: what is on the air there, as the aerial brings it. The stations and the coast are invented.

The Spit lies 30 km along the marsh from the club's own mast, and nearer to Gannet Rock than the hut does. Each station's
programme is a handful of tones that no other has, so that what is heard can be told apart to the last decibel.
"""

from functools import lru_cache
from typing import NamedTuple

import numpy as np

from solutions.unit01_signal import club_stations
from solutions.unit01_signal.aerial_voltage import aerial_emf, effective_height
from solutions.unit01_signal.field_strength import ground_wave_field, unattenuated_field
from solutions.unit04_crystal_set.crystal_set import HEIGHT, TOP
from solutions.unit07_oscillation.radiated_field import noise_field
from solutions.unit08_two_stations.club_noise import MAN_MADE
from solutions.unit08_two_stations.night_path import hop
from solutions.unit08_two_stations.sky_wave import E_LAYER

COUNTRY = MAN_MADE["country"]


class Station(NamedTuple):
    """A transmitter as Tern Spit has it.

    `frequency` in hertz, `power` in watts, `distance` in metres; `ground` under its ground wave, or None if it comes by the
    sky; `loss` in decibels: what the earth's curve takes from a ground wave, or the upper air from a sky wave; `fading`:
    how large a part of it, by field, comes by a second way that shifts.
    """

    name: str
    frequency: float
    power: float
    distance: float
    ground: tuple[float, float] | None
    loss: float
    fading: float


def on_the_spit(station: club_stations.Station, distance: float, loss: float, fading: float) -> Station:
    """One of the Circle's stations as Tern Spit has it."""
    ground = club_stations.GROUNDS[station.ground] if station.ground else None
    return Station(station.name, station.frequency, station.power, distance, ground, loss, fading)


# Losses: of Merrow Sound by the NTIA's smooth-earth model; of Skerry Vore 47 CFR 73.190(b), magnetic latitude 50 degrees.
STATIONS = (
    on_the_spit(club_stations.FAR_OVER_SEA, 280e3, 3.8, 0.2),
    on_the_spit(club_stations.LOCAL, 30e3, 0.0, 0.0),
    on_the_spit(club_stations.NEXT_CHANNEL, 60e3, 0.0, 0.3),
    on_the_spit(club_stations.ACROSS_THE_BAY, 60e3, 0.0, 0.1),
    on_the_spit(club_stations.NIGHT_ONLY, 900e3, 15.0, 0.5),
    on_the_spit(club_stations.ON_THE_HEATH, 35e3, 0.0, 0.1),
)


def field(station: Station) -> float:
    """Field of a station's carrier on Tern Spit, r.m.s., in volts per metre: the median, if it fades."""
    if station.ground:
        strength = ground_wave_field(station.power, station.distance, station.frequency, *station.ground)
    else:
        strength = unattenuated_field(station.power, hop(station.distance, E_LAYER)[1])
    return float(strength * 10 ** (-station.loss / 20))


def crest_of(strength: float) -> float:
    """Crest, in volts, that a field in volts per metre r.m.s. brings into the aerial: the club's wire, taken along."""
    return float(np.sqrt(2) * aerial_emf(strength, effective_height(HEIGHT, TOP)))


NAMES = tuple(station.name for station in STATIONS)
FREQUENCIES = tuple(station.frequency for station in STATIONS)
CRESTS = tuple(crest_of(field(station)) for station in STATIONS)
REACH = 15e3  # hertz: a station farther from the frame is left out; both circuits together put it below all others

# What is sent: so many tones for each station, on a raster that an eighth of a second resolves.
TONES, RASTER, LOWEST, HIGHEST, DEPTH = 8, 8.0, 200.0, 1800.0, 0.1
SETTLING = 0.025  # second, before anything is measured


def tones(seed: int) -> np.ndarray:
    """The tones of each station's programme, hertz: an array of shape (6, 8), no tone twice."""
    raster = np.arange(LOWEST, HIGHEST, RASTER)
    return np.random.default_rng(seed).permutation(raster)[: TONES * len(STATIONS)].reshape(len(STATIONS), TONES)


def frame_of(place: int) -> float:
    """Frequency, in hertz, from which the stations near the one at a place of the list are seen: the middle of them."""
    near = [frequency for frequency in FREQUENCIES if abs(frequency - FREQUENCIES[place]) < REACH]
    return (min(near) + max(near)) / 2


def shifting(station: Station, time: np.ndarray, seed: int) -> np.ndarray:
    """By what fading multiplies a station's carrier: two ways for its wave, one of which lengthens and shortens."""
    generator = np.random.default_rng([seed, round(station.frequency)])
    turn, period = generator.uniform(0, 2 * np.pi), generator.uniform(2.0, 6.0)
    return 1 + station.fading * np.exp(1j * (turn + 2 * np.pi * time / period))


def noise(frame: float, rate: float, samples: int, seed: int) -> np.ndarray:
    """Radio noise in the aerial, complex, volt, seen from the frame."""
    spread = crest_of(float(noise_field(frame, rate, *COUNTRY))) / np.sqrt(2)
    generator = np.random.default_rng([seed, round(frame)])
    return spread * (generator.standard_normal(samples) + 1j * generator.standard_normal(samples))


@lru_cache(maxsize=32)
def evening(seed: int, place: int, rate: float, seconds: float) -> np.ndarray:
    """What the aerial brings of the stations near one: with their programmes, fading, and noise.

    Parameters
    ----------
    seed : int, draws the tones, the fading and the noise
    place : int, of the station in `STATIONS`
    rate : float, hertz, values a second
    seconds : float

    Returns
    -------
    ndarray of shape (n,), complex, volt, seen from `frame_of` the place
    """
    frame, time = frame_of(place), np.arange(round(seconds * rate)) / rate
    total = noise(frame, rate, time.size, seed)
    for station, crest, row in zip(STATIONS, CRESTS, tones(seed), strict=True):
        if abs(station.frequency - frame) < REACH:
            programme = DEPTH * np.sin(2 * np.pi * np.multiply.outer(time, row)).sum(axis=1)
            turning = np.exp(2j * np.pi * (station.frequency - frame) * time)
            total = total + crest * (1 + programme) * shifting(station, time, seed) * turning
    return total


def field_of(name: str) -> float:
    """Field of a station, by its name, in volts per metre r.m.s."""
    return field(STATIONS[NAMES.index(name)])


def decibels_below(weak: str, strong: str) -> float:
    """How many decibels one station stands below another in the aerial."""
    return float(20 * np.log10(CRESTS[NAMES.index(strong)] / CRESTS[NAMES.index(weak)]))


def margin_of_one(width: float) -> float:
    """As `margin_behind`, of one circuit alone, its bandwidth in hertz."""
    return margin_behind(np.inf, width)


def margin_behind(first_width: float, second_width: float) -> float:
    """Decibels by which Gannet Rock's carrier stands above the local's behind two circuits of those bandwidths, in hertz."""
    held_back = sum(10 * np.log10(1 + (2 * 9e3 / width) ** 2) for width in (first_width, second_width))
    return float(held_back - decibels_below("Gannet Rock", "Saltmarsh Point"))

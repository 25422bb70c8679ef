"""A reaction set that somebody is turning the knobs of: what the sounds of unit 07 are played on, by its envelope equation.

The set is kept tuned by ear while the throttle moves: `SetInHand` finds the tuning condenser at which it sings, or would
sing, on a frequency. The frame turns with the set; where its dial is moved, the stations move past in the frame instead.
"""

from collections.abc import Callable
from dataclasses import replace
from functools import cached_property

import numpy as np

from course.circle.levels import LOUDEST, LOWEST, RATE, pressure
from course.circle.programme import envelope
from course.circle.stations import Station
from solutions.unit01_signal.aerial_voltage import aerial_emf, effective_height
from solutions.unit04_crystal_set.crystal_set import HEIGHT, SENSITIVITY, TOP
from solutions.unit06_reaction import stability
from solutions.unit06_reaction.network import THROTTLE_RANGE, ReactionSet, saltmarsh_set
from solutions.unit07_oscillation.envelope import follow, start
from solutions.unit07_oscillation.radiated_field import noise_field
from solutions.unit07_oscillation.stage import GENTLE_STAGE as GENTLE
from solutions.unit07_oscillation.stage import Stage, small_signal_set
from solutions.unit08_two_stations.club_noise import MAN_MADE

EVERY = 6  # steps of the envelope to each sample of the sound
BLOCK = 0.02  # second: how long the throttle is taken to stand still while it is turned
SETTINGS = 40  # of the throttle, at which the tuning is worked out
COUNTRY = MAN_MADE["country"]
SEED = 7


Knob = Callable[[np.ndarray], np.ndarray]


class SetInHand:
    """The club's set on a station's frequency.

    Parameters
    ----------
    frequency : float, hertz
    stage : Stage
    windings : ReactionSet, the Circle's as they are on that frequency if None
    """

    def __init__(self, frequency: float, stage: Stage = GENTLE, windings: ReactionSet | None = None):
        self.frequency, self.stage = frequency, stage
        self.small = small_signal_set(windings or saltmarsh_set(frequency), stage)

    @cached_property
    def edge(self) -> float:
        """Throttle, in farads, at which it is just about to oscillate."""
        return float(stability.at_threshold(self.small, self.frequency).throttle_capacitance)

    @cached_property
    def tunings(self) -> tuple[np.ndarray, np.ndarray]:
        """Throttles, and the tuning condenser that goes with each."""
        throttles = np.geomspace(*THROTTLE_RANGE, SETTINGS)
        there = stability.retuned(replace(self.small, throttle_capacitance=throttles), self.frequency)
        return throttles, there.tuning_capacitance

    def at(self, throttle: float) -> ReactionSet:
        """The set with its throttle there, tuned to the frequency."""
        tuning = float(np.interp(throttle, *self.tunings))
        return replace(self.small, throttle_capacitance=throttle, tuning_capacitance=tuning)

    def played(self, emf: np.ndarray, throttle: np.ndarray) -> tuple[np.ndarray, np.ndarray]:
        """Grid envelope in volts and telephone current in amperes at each sample of the sound.

        Parameters
        ----------
        emf : ndarray of shape (EVERY n + 1,), complex, volt, in the frame of the set
        throttle : ndarray of shape (n,), farad
        """
        state, grids, currents = start(self.stage, 1e-6), [], []
        for begin, end in standing_still(throttle):
            there = self.at(float(throttle[(begin + end) // 2]))
            heard = follow(emf[EVERY * begin : EVERY * end + 1], EVERY * RATE, self.frequency, there, self.stage, state)
            state = heard.state
            grids.append(heard.grid.reshape(-1, EVERY).mean(axis=1))
            currents.append(heard.phones.reshape(-1, EVERY).mean(axis=1))
        return np.concatenate(grids), np.concatenate(currents)

    def in_the_ear(self, current: np.ndarray) -> np.ndarray:
        """Pascals in the ear from telephone current; the telephones are the stage's load, to tone and steady current alike."""
        tone = np.fft.rfftfreq(2 * current.size, 1 / RATE)
        mirrored = np.concatenate([current, current[::-1]])  # so that both ends meet
        heard = np.fft.irfft(np.fft.rfft(mirrored) / (1 - 1j * LOWEST / np.maximum(tone, 1e-3)) ** 2)[: current.size]
        sound = pressure(self.stage.load_resistance * heard, self.stage.load_resistance, SENSITIVITY)
        return LOUDEST * np.tanh(sound / LOUDEST)


def standing_still(knob: np.ndarray) -> list[tuple[int, int]]:
    """Pieces in which a knob may be taken to stand still: where it truly does, and short ones where it is turned."""
    size = round(BLOCK * RATE)
    begins = np.arange(0, knob.size, size)
    kept = [begin for begin in begins if begin == 0 or np.ptp(knob[begin - size : begin + size]) > 0]
    return list(zip(kept, [*kept[1:], knob.size], strict=True))


def moments(seconds: float) -> tuple[np.ndarray, np.ndarray]:
    """Times of a sound's samples, and the finer ones of the envelope's steps, one more than there are steps."""
    count = round(seconds * RATE)
    return np.arange(count) / RATE, np.arange(EVERY * count + 1) / (EVERY * RATE)


def turned(time: np.ndarray, *places: tuple[float, float]) -> np.ndarray:
    """A knob that is at given places at given seconds, and moves evenly between."""
    return np.interp(time, *zip(*places, strict=True))


def dialled(time: np.ndarray, offset: np.ndarray) -> np.ndarray:
    """By what a signal is multiplied, in the frame of a set that is tuned `offset` hertz above it."""
    step = time[1] - time[0]
    return np.exp(-2j * np.pi * np.cumsum(offset) * step)


def aerial_crest(field: float) -> float:
    """Volts, crest, that a field in volts per metre r.m.s. brings into the club's aerial."""
    return np.sqrt(2) * aerial_emf(field, effective_height(HEIGHT, TOP))


def station_emf(time: np.ndarray, station: Station, field: float | None = None) -> np.ndarray:
    """A station in the club's aerial, with its programme over and over."""
    shape = envelope()
    place = (time * RATE) % shape.size
    strength = np.interp(place, np.arange(shape.size + 1), np.append(shape, shape[0]))
    return aerial_crest(station.field if field is None else field) * strength.astype(complex)


def noise_emf(time: np.ndarray, frequency: float, seed: int = SEED) -> np.ndarray:
    """Radio noise of the country in the club's aerial."""
    spread = aerial_crest(noise_field(frequency, EVERY * RATE, *COUNTRY)) / np.sqrt(2)
    generator = np.random.default_rng(seed)
    return spread * (generator.standard_normal(time.size) + 1j * generator.standard_normal(time.size))

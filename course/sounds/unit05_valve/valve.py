"""Valve: what the earphones give for the one-valve set, on the scale of the crystal set's sounds."""

from typing import Annotated

import numpy as np

from course.circle.levels import FULL_SCALE, RATE, pressure
from course.circle.programme import envelope
from course.circle.stations import ACROSS_THE_BAY, LOCAL, ON_THE_HEATH, Station
from course.figures.unit04_crystal_set.crystal import MUTUAL, source
from course.settings import Between
from course.sounds import sound
from course.sounds.unit04_crystal_set.crystal import in_the_ear
from solutions.unit04_crystal_set.crystal_set import SENSITIVITY
from solutions.unit04_crystal_set.detector_load import working_point
from solutions.unit05_valve.grid_leak import audio_cutoff, bias_with_carrier, rest_bias
from solutions.unit05_valve.load_line import load_line_current
from solutions.unit05_valve.one_valve_set import (
    CARRIER,
    CONDENSER,
    GRID_SLOPE,
    HT,
    LAW,
    LEAK,
    LEAK_RETURN,
    STEADY_RESISTANCE,
    TONE_RESISTANCE,
    ZERO_CURRENT,
)
from solutions.unit05_valve.triode_current import triode_current

FINENESS = 400  # strengths of the carrier at which a set is worked out
HALVINGS = 40
DRAWN_OFF, CLEAR = 2e-6, 7e-6  # henry: coil far off; coil where Curlew Bank is clearest
GAP = np.zeros(RATE // 2)  # half a second of silence


def mean_current(anode, grid, carrier):
    """Anode current averaged over the carrier's cycle, for arrays of one shape."""
    return triode_current(anode[..., None], grid[..., None] + carrier[..., None] * CARRIER, *LAW).mean(axis=-1)


def where_lines_cross(line, grid, carrier):
    """Anode voltage at which the valve passes what a falling line of current against voltage allows, and that current."""
    low, high = np.zeros(grid.shape), np.full(grid.shape, 2 * HT)
    for _ in range(HALVINGS):
        middle = (low + high) / 2
        too_high = mean_current(middle, grid, carrier) > line(middle)
        low, high = np.where(too_high, low, middle), np.where(too_high, middle, high)
    return middle, line(middle)


def across_the_phones(
    station: Station, strength: np.ndarray, mutual: float = MUTUAL, condenser: float = CONDENSER
) -> np.ndarray:
    """Volts of tone at the telephones of the one-valve set while a station's carrier has these crests, at rest 1.

    The grid follows by the law of its bias, and lags as far as its condenser makes it; the anode moves on the line of
    the telephones' resistance to a tone, through the point where it rests with the bare carrier.
    """
    voltage, resistance = source(station, mutual)
    rest = rest_bias(LEAK, LEAK_RETURN, ZERO_CURRENT, GRID_SLOPE)
    worked = np.append(np.linspace(0, strength.max(), FINENESS), 1.0)
    left = LEAK / (LEAK + resistance)  # the leak lies across the tuned circuit
    rest_current = ZERO_CURRENT * np.exp(rest / GRID_SLOPE)
    carrier, _ = working_point(left * worked * voltage, left * resistance, LEAK, rest_current, GRID_SLOPE)
    grid = bias_with_carrier(carrier, LEAK, LEAK_RETURN, ZERO_CURRENT, GRID_SLOPE)
    steady, resting = where_lines_cross(lambda v: load_line_current(v, HT, STEADY_RESISTANCE), grid[-1:], carrier[-1:])
    _, current = where_lines_cross(lambda v: resting + (steady - v) / TONE_RESISTANCE, grid[:-1], carrier[:-1])
    followed = np.interp(strength, worked[:-1], TONE_RESISTANCE * current)
    cutoff = audio_cutoff(condenser, LEAK, (LEAK_RETURN - grid[-1]) / LEAK, GRID_SLOPE)
    return lagging(followed - followed.mean(), cutoff)


def lagging(samples, cutoff):
    """The same sound through one resistance and one condenser."""
    tone = np.fft.rfftfreq(samples.size, 1 / RATE)
    return np.fft.irfft(np.fft.rfft(samples) / (1 + 1j * tone / cutoff), samples.size)


def by_valve(station: Station, mutual: float = MUTUAL) -> np.ndarray:
    """Pascals in the ear while a station sends its programme."""
    return pressure(across_the_phones(station, envelope(), mutual), TONE_RESISTANCE, SENSITIVITY)


def part(samples: np.ndarray) -> np.ndarray:
    """Two seconds of the voice, then two of the tune, each risen and fallen over a fiftieth of a second."""
    ramp = np.clip(np.arange(2 * RATE) * 50 / RATE, 0, 1)
    return np.concatenate([samples[start : start + 2 * RATE] * ramp * ramp[::-1] for start in (0, 4 * RATE)])


def one_after_the_other(first: np.ndarray, second: np.ndarray) -> np.ndarray:
    """Two sounds, with a silence between."""
    return np.concatenate([part(first), GAP, part(second)])


@sound(
    caption="Curlew Bank, on the scale of unit 4: first the crystal set with its coil as it was there, then the "
    "one-valve set with the coil drawn off to a tenth of that, and still 14 dB louder. Turn down first!",
    transcript="A voice reading and two seconds of a tune, soft, as the crystal set gives them. After half a "
    "second of silence the same again, five times as strong, and a little coarser.",
    full_scale=FULL_SCALE,
)
def crystal_then_valve():
    return one_after_the_other(in_the_ear(ACROSS_THE_BAY), by_valve(ACROSS_THE_BAY, DRAWN_OFF)), RATE


@sound(
    caption="Holm Light at the same volume and with the coil in one place: crystal set, then one valve, 28 dB louder.",
    transcript="Four seconds in which next to nothing is heard. Then the voice and the tune, faint but clear, "
    "a little fainter than Curlew Bank by crystal set.",
    full_scale=FULL_SCALE,
)
def out_of_nothing():
    return one_after_the_other(in_the_ear(ON_THE_HEATH), by_valve(ON_THE_HEATH)), RATE


@sound(
    caption="A grid condenser of 100 pF, then one of 2000 pF that somebody took for it.",
    transcript="The voice and the tune, clear. Then the same, dull, as if through a blanket: the hisses and the bright "
    "edge of the plucked notes are gone.",
)
def too_large_a_condenser(condenser: Annotated[float, Between("the wrong grid condenser", 20e-12, 0.1e-6, "F")] = 2e-9):
    right, wrong = (across_the_phones(ACROSS_THE_BAY, envelope(), CLEAR, condenser) for condenser in (CONDENSER, condenser))
    return one_after_the_other(right, wrong), RATE


@sound(
    caption="Too much of a good thing: Saltmarsh Point with the coil pushed home, nearly 14 V on the grid circuit. "
    "First as it should be, with the coil drawn off.",
    transcript="The voice and the tune, clear. Then the same with a rasp: loud syllables and the attack of each note are torn.",
)
def overdriven():
    kind, cruel = (across_the_phones(LOCAL, envelope(), mutual) for mutual in (1.5 * DRAWN_OFF, MUTUAL))
    return one_after_the_other(kind / np.abs(kind).max(), cruel / np.abs(cruel).max()), RATE

"""The Circle's one-valve set, tuned to a station and played; its parts are in `solutions/unit05_valve/one_valve_set`."""

import numpy as np

from course.circle.crystal_set import MUTUAL, source
from course.circle.levels import RATE, pressure
from course.circle.programme import envelope
from course.circle.stations import Station
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


def detected(carrier: np.ndarray) -> tuple[np.ndarray, float]:
    """Volts at the telephones for carriers of these crests on the grid, and the grid's bias; the last one is the bare carrier.

    The grid follows by the law of its bias; the anode moves on the line of the telephones' resistance to a tone, through
    the point where it rests with the bare carrier.
    """
    grid = bias_with_carrier(carrier, LEAK, LEAK_RETURN, ZERO_CURRENT, GRID_SLOPE)
    steady, resting = where_lines_cross(lambda v: load_line_current(v, HT, STEADY_RESISTANCE), grid[-1:], carrier[-1:])
    _, current = where_lines_cross(lambda v: resting + (steady - v) / TONE_RESISTANCE, grid[:-1], carrier[:-1])
    return TONE_RESISTANCE * current, grid[-1]


def lagging(samples: np.ndarray, bias: float, condenser: float = CONDENSER) -> np.ndarray:
    """The same sound, behind a grid that lags as far as its condenser makes it."""
    cutoff = audio_cutoff(condenser, LEAK, (LEAK_RETURN - bias) / LEAK, GRID_SLOPE)
    tone = np.fft.rfftfreq(samples.size, 1 / RATE)
    return np.fft.irfft(np.fft.rfft(samples) / (1 + 1j * tone / cutoff), samples.size)


def across_the_phones(
    station: Station, strength: np.ndarray, mutual: float = MUTUAL, condenser: float = CONDENSER
) -> np.ndarray:
    """Volts of tone at the telephones of the set while a station's carrier has these crests, at rest 1."""
    voltage, resistance = source(station, mutual)
    rest = rest_bias(LEAK, LEAK_RETURN, ZERO_CURRENT, GRID_SLOPE)
    worked = np.append(np.linspace(0, strength.max(), FINENESS), 1.0)
    left = LEAK / (LEAK + resistance)  # the leak lies across the tuned circuit
    rest_current = ZERO_CURRENT * np.exp(rest / GRID_SLOPE)
    carrier, _ = working_point(left * worked * voltage, left * resistance, LEAK, rest_current, GRID_SLOPE)
    output, bias = detected(carrier)
    followed = np.interp(strength, worked[:-1], output)
    return lagging(followed - followed.mean(), bias, condenser)


def behind_a_circuit(carrier: np.ndarray, rest: float) -> np.ndarray:
    """Volts of tone at the telephones while the crest of the carrier on the grid is this; `rest` is its middle."""
    worked = np.append(np.linspace(0, carrier.max(), FINENESS), rest)
    output, bias = detected(worked)
    return lagging(np.interp(carrier, worked[:-1], output), bias)


def by_valve(station: Station, mutual: float = MUTUAL) -> np.ndarray:
    """Pascals in the ear while a station sends its programme."""
    return pressure(across_the_phones(station, envelope(), mutual), TONE_RESISTANCE, SENSITIVITY)

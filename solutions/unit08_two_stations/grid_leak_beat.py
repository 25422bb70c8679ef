"""What a grid leak does with two stations at once: its condenser follows their beat part of the way."""

import numpy as np

from solutions.ranges import check_ranges
from solutions.unit04_crystal_set.rectified_voltage import log_i0
from solutions.unit05_valve.grid_leak import rest_bias
from solutions.unit05_valve.one_valve_set import CONDENSER, GRID_SLOPE, LEAK, LEAK_RETURN, ZERO_CURRENT

STEPS = 256  # of a beat
BEATS = 40  # until it repeats
LEAST_SWING = 1e-12  # volt
DEPTH = 0.3  # of the weak station's modulation


@check_ranges
def beating_bias(strong: float, weak: float, beat: float, condenser: float = CONDENSER) -> np.ndarray:
    """Grid voltage of the club's detector through one beat of two carriers, once it repeats.

    Parameters
    ----------
    strong, weak : float, volt, crest, >= 0, of the two carriers at the grid
    beat : float, hertz, > 0, between them
    condenser : float, farad, > 0, the grid condenser

    Returns
    -------
    ndarray of shape (STEPS,), volt, averaged over the carrier's cycle

    Source
    ------
    The condenser's charge: C dv/dt = (return − v)/R − I0 exp(v/s) I0(a/s), with the crest a = sqrt(A² + B² + 2AB cos φ) that
    the two have together. Half a step of leak, a step of grid current by its
    own exact solution, half a step of leak.
    """
    phase = 2 * np.pi * (np.arange(STEPS) + 0.5) / STEPS
    crest = np.sqrt(np.maximum(strong**2 + weak**2 + 2 * strong * weak * np.cos(phase), 0.0))
    passed = np.log(ZERO_CURRENT / condenser) + log_i0(crest / GRID_SLOPE)
    step = 1 / (beat * STEPS)
    voltage = float(rest_bias(LEAK, LEAK_RETURN, ZERO_CURRENT, GRID_SLOPE)) - strong
    leaked = -np.expm1(-step / 2 / (LEAK * condenser))
    through = np.empty(STEPS)
    for _ in range(BEATS):
        for n in range(STEPS):
            voltage += leaked * (LEAK_RETURN - voltage)
            voltage -= GRID_SLOPE * np.logaddexp(0.0, passed[n] + np.log(step / GRID_SLOPE) + voltage / GRID_SLOPE)
            voltage += leaked * (LEAK_RETURN - voltage)
            through[n] = voltage
    return through


@check_ranges(weak="there is then no programme to be held down")
def left_of_programme(strong: float, weak: float, beat: float, condenser: float = CONDENSER) -> float:
    """Share of a weak station's programme that a grid leak leaves it beside a strong carrier.

    Parameters
    ----------
    strong : float, volt, crest, >= 0, at the grid
    weak : float, volt, crest, > 0
    beat : float, hertz, > 0, between the two carriers
    condenser : float, farad, > 0, the grid condenser

    Returns
    -------
    float, a pure number: 1 where the strong carrier does nothing to it

    Raises
    ------
    ValueError
        If the weak station's programme moves the grid by less than a number can hold.

    Source
    ------
    `beating_bias` averaged over the beat, at the crest and in the trough of a modulation of 0.3; against the same with the
    strong carrier off.
    """

    def swing(other):
        high, low = (np.mean(beating_bias(other, weak * (1 + side * DEPTH), beat, condenser)) for side in (1, -1))
        return high - low

    alone = swing(0.0)
    if not abs(alone) > LEAST_SWING:
        raise ValueError("the weak station is too faint for its programme to be told from rounding: give it more volts")
    return float(swing(strong) / alone)

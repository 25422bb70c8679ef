"""Why does it tick?   Lesson: Oscillation, section 6 (course/lessons/unit07_oscillation/whistle.md).

The swing is steadied from two sides. With the grid's bias held, a valve biased far back is worth more to a larger swing,
which makes the swing run away, up or down; the grid's current holds it. That current is only what the leak lets
through: with too large a leak the swing dies, the grid stays cut off until the leak has let it up, and all begins again.

The Circle's set that ticks is the gentle one with its throttle at three times its edge: swing 7 V, 165 pF, Q 190, anode at
43 V; 3 nF and 20 MΩ tick, 10 MΩ do not, nor does the club's own 100 pF with either.
"""

import numpy as np

from exercises.unit05_valve.triode_current import mutual_conductance
from exercises.unit07_oscillation.limit_amplitude import effective_transconductance

CYCLE = np.cos(np.pi * (np.arange(720) + 0.5) / 720)  # a swing of 1, at 720 moments of half a cycle


def swing_exponent(
    swing: float,
    grid_voltage: float,
    anode_voltage: float,
    amplification_factor: float,
    perveance: float,
    offset: float,
) -> float:
    """By how many per cent the effective transconductance rises when the swing does so by one, the bias held.

    Parameters
    ----------
    swing, grid_voltage, anode_voltage, amplification_factor, perveance, offset
        As in `effective_transconductance`; current must flow in part of the cycle.

    Returns
    -------
    float or ndarray, a pure number; the arguments broadcast together

    Source
    ------
    Derivative of that average by the swing: 2 × the average of mutual conductance times cos² round the cycle, over the
    effective transconductance, less 1.
    """
    raise NotImplementedError


def largest_leak(
    exponent: float,
    frequency: float,
    quality_factor: float,
    tuning_capacitance: float,
    grid_capacitance: float,
    leak_voltage: float,
    slope_voltage: float,
) -> float:
    """Grid leak above which the oscillation breaks into bursts.

    Parameters
    ----------
    exponent : float or ndarray, a pure number, as `swing_exponent` gives it at the limit
    frequency : float or ndarray, hertz, > 0
    quality_factor : float or ndarray, a pure number, > 0, of the tuned circuit without reaction
    tuning_capacitance : float or ndarray, farad, > 0
    grid_capacitance : float or ndarray, farad, > 0, of the grid condenser
    leak_voltage : float or ndarray, volt, > 0, across the leak
    slope_voltage : float or ndarray, volt, > 0, that multiplies the grid's current by 2.718

    Returns
    -------
    float or ndarray, ohm; infinite where the exponent is not above 0. The arguments broadcast together

    Source
    ------
    Left to itself the swing runs away at the rate exponent × π f/Q. The grid's current (leak voltage/leak), changed by a
    part 1/slope voltage for each volt, takes its charge from both condensers and so brings swing and bias back at the rate
    current/slope voltage × (1/tuning + 1/grid capacitance), and the leak at 1/(leak × grid capacitance). The two are equal.
    W. A. Edson, Vacuum-Tube Oscillators, 1953 (from memory), treats the same balance.
    """
    raise NotImplementedError


def starting_bias(needed: float, anode_voltage: float, amplification_factor: float, perveance: float, offset: float) -> float:
    """Grid voltage at which the silent valve has just the mutual conductance that the set needs.

    Parameters
    ----------
    needed : float or ndarray, siemens, > 0
    anode_voltage : float or ndarray, volt, >= 0; the whole HT while no current flows
    amplification_factor, perveance, offset : float or ndarray
        As in `triode_current`.

    Returns
    -------
    float or ndarray, volt; the arguments broadcast together

    Source
    ------
    1.5 × perveance × drive^0.5 = needed, solved for the grid's part of the drive.
    """
    raise NotImplementedError


def ticking_frequency(
    blocked_bias: float,
    starting_bias: float,
    return_voltage: float,
    leak_resistance: float,
    grid_capacitance: float,
    burst: float,
) -> float:
    """How many bursts come in a second.

    Parameters
    ----------
    blocked_bias : float or ndarray, volt, where a burst leaves the grid
    starting_bias : float or ndarray, volt, above it, where the next begins
    return_voltage : float or ndarray, volt, above that, of the filament's end that the leak is taken to
    leak_resistance : float or ndarray, ohm, > 0
    grid_capacitance : float or ndarray, farad, > 0, of the grid condenser
    burst : float or ndarray, second, >= 0, that a burst lasts

    Returns
    -------
    float or ndarray, hertz; the arguments broadcast together

    Raises
    ------
    ValueError
        If anywhere the grid need not rise to start, or the leak can never lift it so far.

    Source
    ------
    Between bursts the voltage across the leak dies away by the time constant leak × condenser.
    """
    raise NotImplementedError

"""Can a grid detect?   Lesson: Valve, section 6 (course/lessons/unit05_valve/detector.md).

Grid and filament are a diode, and a condenser with a leak across it is its load. Unlike a crystal the grid passes no
current backwards, so that at rest the whole of its current goes through the leak.
"""

import numpy as np

from exercises.unit04_crystal_set.rectified_voltage import detector_output, i1_over_i0


def rest_bias(leak_resistance: float, return_voltage: float, zero_current: float, slope_voltage: float) -> float:
    """Voltage at which the grid settles when no carrier comes.

    Parameters
    ----------
    leak_resistance : float or ndarray, ohm, > 0
    return_voltage : float or ndarray, volt, >= 0, of the filament's end that the leak is taken to: 0 or the LT voltage
    zero_current : float or ndarray, ampere, > 0, into a grid at 0 V
    slope_voltage : float or ndarray, volt, > 0, that multiplies the grid's current by 2.718

    Returns
    -------
    float or ndarray, volt; the arguments broadcast together

    Source
    ------
    What the leak brings, (return voltage − grid)/leak, the grid takes: zero current × exp(grid/slope voltage). The one
    falls and the other rises with the grid's voltage; solved step by step.
    """
    raise NotImplementedError


def bias_with_carrier(
    carrier: float, leak_resistance: float, return_voltage: float, zero_current: float, slope_voltage: float
) -> float:
    """Voltage at which the grid settles, averaged over the carrier's cycle, when a carrier comes.

    Parameters
    ----------
    carrier : float or ndarray, volt, crest, >= 0, at the grid
    leak_resistance, return_voltage, zero_current, slope_voltage
        As in `rest_bias`.

    Returns
    -------
    float or ndarray, volt; the arguments broadcast together

    Source
    ------
    Counted from rest the grid's law is a crystal's whose saturation current is the grid's current at rest: the shift is
    `detector_output` of that crystal on the leak.
    """
    raise NotImplementedError


def audio_cutoff(capacitance: float, leak_resistance: float, grid_current: float, slope_voltage: float) -> float:
    """Tone at which the grid condenser takes 3 dB from what is detected.

    Parameters
    ----------
    capacitance : float or ndarray, farad, > 0, of the grid condenser
    leak_resistance : float or ndarray, ohm, > 0
    grid_current : float or ndarray, ampere, >= 0, averaged over the carrier's cycle
    slope_voltage : float or ndarray, volt, > 0

    Returns
    -------
    float or ndarray, hertz; the arguments broadcast together

    Source
    ------
    The condenser is discharged by the leak and, side by side with it, the grid's slope resistance.
    """
    raise NotImplementedError


def time_constant_limits(lowest_carrier: float, highest_tone: float, depth: float) -> tuple[float, float]:
    """Between what limits a condenser times its leak should lie, for a strong carrier that alone charges it.

    Parameters
    ----------
    lowest_carrier : float or ndarray, hertz, > 0
    highest_tone : float or ndarray, hertz, > 0
    depth : float or ndarray, deepest modulation of that tone as a fraction, above 0 to 1

    Returns
    -------
    shortest : float or ndarray, second; ten cycles of the carrier, so that it hardly discharges between two crests
    longest : float or ndarray, second; beyond it the leak cannot follow the envelope down; the arguments broadcast

    Source
    ------
    Ten cycles: common practice, no source. Following: F. E. Terman, Radio Engineers' Handbook, 1943, section 7 (from
    memory): sqrt(1 - m²)/(2πF m).
    """
    raise NotImplementedError


def grid_gain(
    carrier: float, tone: float, capacitance: float, leak_resistance: float, grid_current: float, slope_voltage: float
) -> float:
    """Tone on the grid for each volt by which the tone swings the carrier's crest, the swing being small.

    Parameters
    ----------
    carrier : float or ndarray, volt, crest, > 0, at the grid
    tone : float or ndarray, hertz, >= 0
    capacitance : float or ndarray, farad, > 0, of the grid condenser
    leak_resistance : float or ndarray, ohm, > 0
    grid_current : float or ndarray, ampere, > 0, averaged over the carrier's cycle
    slope_voltage : float or ndarray, volt, > 0

    Returns
    -------
    float or ndarray, a pure number below 1; the arguments broadcast together

    Source
    ------
    The slope of `bias_with_carrier`: I1/I0 volts behind the grid's slope resistance, working on the leak; then the
    condenser's loss at the tone.
    """
    raise NotImplementedError

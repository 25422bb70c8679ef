"""What can a meter and a condenser's scale tell?   Lesson: Reaction, section 13, and the bench pages of units 02, 03 and 05
(course/lessons/unit06_reaction/bench.md).

Each formula of the course gives readings from parts. Here they are turned round, and give parts from readings.
"""

import numpy as np


def grid_law_from_readings(current_1: float, bias_1: float, current_2: float, bias_2: float) -> tuple[float, float]:
    """The two numbers of a grid's law, from its current at two voltages.

    Parameters
    ----------
    current_1, current_2 : float or ndarray, ampere, > 0, into the grid
    bias_1, bias_2 : float or ndarray, volt, of the grid at those currents

    Returns
    -------
    zero_current : float or ndarray, ampere, into a grid at 0 V
    slope_voltage : float or ndarray, volt, that multiplies the current by 2.718; the arguments broadcast together

    Raises
    ------
    ValueError
        If the current does not rise with the voltage: these are no two readings of one grid.

    Source
    ------
    The law of unit 05, current = zero current × exp(voltage/slope voltage), at both readings: their ratio leaves one unknown.
    """
    raise NotImplementedError


def quality_from_added_resistance(
    reading_alone: float, reading_with: float, added_resistance: float, reactance: float
) -> float:
    """Q of a circuit, from what a known resistance in series with its coil takes from the voltage at resonance.

    Parameters
    ----------
    reading_alone : float or ndarray, > 0, in any unit that is in proportion to the voltage
    reading_with : float or ndarray, > 0, in the same, with the resistance put in and the tuning corrected
    added_resistance : float or ndarray, ohm, > 0
    reactance : float or ndarray, ohm, > 0, of the coil

    Returns
    -------
    float or ndarray, a pure number, without the added resistance; the arguments broadcast together

    Raises
    ------
    ValueError
        If the reading does not fall: no resistance has been put in, or the meter does not follow.

    Source
    ------
    The resistance-variation method: US National Bureau of Standards, Circular 74, 1924 (from memory). The same e.m.f. drives
    a current through R and through R + R1.
    """
    raise NotImplementedError


def quality_from_detuning(capacitance_below: float, capacitance_above: float) -> float:
    """Q of a circuit, from the two settings of its condenser at which the current is 0.707 of the most.

    Parameters
    ----------
    capacitance_below : float or ndarray, farad, > 0, all that is across the coil, on one side of resonance
    capacitance_above : float or ndarray, farad, > `capacitance_below`, on the other

    Returns
    -------
    float or ndarray, a pure number; the arguments broadcast together

    Raises
    ------
    ValueError
        If the second capacitance is not the larger.

    Source
    ------
    The reactance-variation method: F. E. Terman, Radio Engineers' Handbook, 1943, section 13 (from memory). At one setting
    1/ωC is ωL + R, at the other ωL − R.
    """
    raise NotImplementedError


def self_capacitance_from_two(
    frequency_1: float, capacitance_1: float, frequency_2: float, capacitance_2: float
) -> tuple[float, float]:
    """Self-capacitance and inductance of a coil, from what tunes it to two frequencies.

    Parameters
    ----------
    frequency_1 : float or ndarray, hertz, > 0
    capacitance_1 : float or ndarray, farad, > 0, read on the condenser's scale at `frequency_1`
    frequency_2 : float or ndarray, hertz, > `frequency_1`
    capacitance_2 : float or ndarray, farad, above 0 to below `capacitance_1`, at `frequency_2`

    Returns
    -------
    self_capacitance : float or ndarray, farad; below 0 only by errors of reading
    inductance : float or ndarray, henry; the arguments broadcast together

    Raises
    ------
    ValueError
        If the second frequency is not the higher, or its capacitance not the smaller.

    Source
    ------
    f² (C + C0) is 1/(4π² L) at both: two equations with two unknowns.
    """
    raise NotImplementedError


def self_capacitance_uncertainty(
    frequency_1: float,
    capacitance_1: float,
    frequency_2: float,
    capacitance_2: float,
    capacitance_uncertainty: float,
    frequency_uncertainty: float,
) -> float:
    """Standard uncertainty of that self-capacitance, from those of the readings.

    Parameters
    ----------
    frequency_1, capacitance_1, frequency_2, capacitance_2
        As in `self_capacitance_from_two`.
    capacitance_uncertainty : float or ndarray, farad, >= 0, of either reading of the scale by itself
    frequency_uncertainty : float or ndarray, a fraction, >= 0, of either frequency by itself

    Returns
    -------
    float or ndarray, farad; the arguments broadcast together

    Raises
    ------
    ValueError
        As `self_capacitance_from_two`.

    Source
    ------
    JCGM 100:2008 (the GUM), 5.1.2: each reading's uncertainty times how much the result changes with that reading; of
    readings that know nothing of each other the squares add. With k the square of the frequencies' ratio the result changes
    by 1/(k − 1), −k/(k − 1) and (C2 − C1)/(k − 1)² with C1, C2 and k.
    """
    raise NotImplementedError


def threshold_from_clicks(starts: np.ndarray, stops: np.ndarray) -> tuple[float, float, float]:
    """The threshold of oscillation and its backlash, from the throttle's readings at several clicks.

    Parameters
    ----------
    starts : ndarray, two readings or more, where it began as the throttle was opened
    stops : ndarray, two readings or more, in the same unit, where it ended as the throttle was closed

    Returns
    -------
    threshold : float, in the unit of the readings: where a swing of next to nothing begins to grow
    backlash : float, by how much further it must be closed; 0, but for the uncertainty, where the onset is smooth
    uncertainty : float, standard, of the backlash

    Raises
    ------
    ValueError
        If there are fewer than two readings of either: one reading says nothing of its own scatter.

    Source
    ------
    JCGM 100:2008 (the GUM), 4.2: the mean of n readings, and their variance (over n − 1) divided by n. Of two independent
    means' difference the variances add.
    """
    raise NotImplementedError

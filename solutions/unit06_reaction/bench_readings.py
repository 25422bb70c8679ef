"""Readings that the Circle took for the bench pages, all of them invented, and how well what follows from them is known."""

from collections.abc import Callable, Sequence
from dataclasses import replace

import numpy as np

from solutions.unit01_signal.club_stations import ACROSS_THE_BAY
from solutions.unit05_valve.one_valve_set import LEAK, LEAK_RETURN
from solutions.unit06_reaction import club_set, stability
from solutions.unit06_reaction.cheap_measurements import (
    grid_law_from_readings,
    quality_from_added_resistance,
    quality_from_detuning,
    self_capacitance_from_two,
    self_capacitance_uncertainty,
    threshold_from_clicks,
)
from solutions.unit06_reaction.network import saltmarsh_set

METER = 10e6  # ohm, of the voltmeter
PLUS_END, MINUS_END = 0.079, -0.180  # volt at the grid, the leak taken to the filament's one end and to its other
BIAS_DOUBT, LT_DOUBT, OHMS_DOUBT = 2e-3, 0.01, 0.01  # volt; volt; a fraction, of leak and meter

OCTAVE = 600e3, 352e-12, 1200e3, 84.5e-12  # hertz, farad: Orla's two readings of unit 02
WIDER = 600e3, 352e-12, 1500e3, 52.4e-12  # and one further up
SCALE_DOUBT, FREQUENCY_DOUBT = 1e-12, 1e-3  # farad; a fraction

ADDED = 6.0, 3.1, 10.0, 1063.0  # divisions alone and with; ohm, put in; ohm, of the club's coil at 846 kHz
ADDED_DOUBT = 0.1, 0.1, 0.1, 10.0
DETUNED = 175.2e-12, 178.8e-12  # farad, across the coil
DETUNED_DOUBT = 0.1e-12, 0.1e-12

FREQUENCY, NO_AERIAL = (
    ACROSS_THE_BAY.frequency,
    0.0,
)  # hertz, where the clicks were taken; henry: an aerial that is unplugged shares nothing
SCATTER = np.array([-0.008, 0.004, 0.011, -0.005, 0.002])  # of the throttle's readings, as a part of them
FELL_BACK = 0.955  # where it stopped, as a part of where it had begun


def doubt(measure: Callable, readings: Sequence[float], doubts: Sequence[float]) -> np.ndarray:
    """Standard uncertainty of what is worked out from readings that know nothing of each other.

    Parameters
    ----------
    measure : callable of the readings; gives a number or several
    readings, doubts : sequences of float, of one length: the readings, and the standard uncertainty of each

    Returns
    -------
    float or ndarray, as `measure` gives

    Source
    ------
    JCGM 100:2008 (the GUM), 5.1.3, note 2: half of what the result changes when a reading is moved from one uncertainty
    below to one above it; the squares add.
    """
    changes = []
    for place, away in enumerate(doubts):
        step = away * np.eye(len(readings))[place]
        changes.append(np.subtract(measure(*(readings + step)), measure(*(readings - step))) / 2)
    return np.sqrt(np.sum(np.square(changes), axis=0))[()]


def current_read(return_voltage: float, bias: float, leak: float = LEAK, meter: float = METER) -> float:
    """Amperes into a grid that stands at `bias`: what the leak brings, less what the meter takes."""
    return (return_voltage - bias) / leak - bias / meter


def grid_law(
    plus: float = PLUS_END, minus: float = MINUS_END, lt: float = LEAK_RETURN, leak: float = LEAK, meter: float = METER
) -> tuple[float, float]:
    """The two numbers of the grid's law, in amperes and volts, from what the meter shows with the leak to either end."""
    return grid_law_from_readings(current_read(lt, plus, leak, meter), plus, current_read(0.0, minus, leak, meter), minus)


def grid_law_doubt() -> np.ndarray:
    """Their standard uncertainties."""
    readings = np.array([PLUS_END, MINUS_END, LEAK_RETURN, LEAK, METER])
    return doubt(grid_law, readings, [BIAS_DOUBT, BIAS_DOUBT, LT_DOUBT, OHMS_DOUBT * LEAK, OHMS_DOUBT * METER])


def self_capacitance_read(wider: bool = True) -> tuple[float, float]:
    """Self-capacitance and inductance by Orla's readings, over more than an octave or over one."""
    return self_capacitance_from_two(*(WIDER if wider else OCTAVE))


def self_capacitance_doubt(wider: bool = True) -> float:
    """Standard uncertainty of that self-capacitance, in farads."""
    return self_capacitance_uncertainty(*(WIDER if wider else OCTAVE), SCALE_DOUBT, FREQUENCY_DOUBT)


def quality_by_resistance() -> float:
    """Q of the club's coil by the resistance put in."""
    return quality_from_added_resistance(*ADDED)


def quality_by_resistance_doubt() -> float:
    """Its standard uncertainty."""
    return doubt(quality_from_added_resistance, np.array(ADDED), ADDED_DOUBT)


def quality_by_detuning() -> float:
    """Q of the same coil by two settings of its condenser."""
    return quality_from_detuning(*DETUNED)


def quality_by_detuning_doubt() -> float:
    """Its standard uncertainty."""
    return doubt(quality_from_detuning, np.array(DETUNED), DETUNED_DOUBT)


def starts(number: int | None = None) -> np.ndarray:
    """Throttle, in farads, at each click on: invented, about the threshold of the club's set. All of them, or one."""
    readings = club_set.threshold_throttle(FREQUENCY, NO_AERIAL) * (1 + SCATTER)
    return readings if number is None else readings[number]


def stops(number: int | None = None) -> np.ndarray:
    """Throttle at each click off, in the same way."""
    readings = club_set.threshold_throttle(FREQUENCY, NO_AERIAL) * FELL_BACK * (1 - SCATTER[::-1])
    return readings if number is None else readings[number]


def clicks() -> tuple[float, float, float]:
    """Threshold, backlash and its uncertainty by those, in farads."""
    return threshold_from_clicks(starts(), stops())


def threshold_doubt() -> float:
    """Standard uncertainty of the threshold, the mean of the starts."""
    return np.std(starts(), ddof=1) / np.sqrt(len(SCATTER))


def slope_by_click(part_of_threshold: float = 1.0) -> float:
    """Mutual conductance of the valve, in siemens, if the click comes at such a part of the threshold read."""
    return club_set.threshold_slope(FREQUENCY, part_of_threshold * clicks()[0], NO_AERIAL)


def slope_doubt() -> float:
    """Its standard uncertainty, by that of the threshold alone."""

    def slope(throttle):
        return club_set.threshold_slope(FREQUENCY, throttle, NO_AERIAL)

    return doubt(slope, np.array([clicks()[0]]), [threshold_doubt()])


def threshold_for_slope(part_of_slope: float) -> float:
    """Throttle at which the set would click if the valve had such a part of its mutual conductance, in farads."""
    there = saltmarsh_set(FREQUENCY)
    weaker = replace(there, aerial_tuned=NO_AERIAL, transconductance=part_of_slope * there.transconductance)
    return stability.at_threshold(weaker, FREQUENCY).throttle_capacitance

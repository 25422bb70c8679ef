"""Reaction advanced on Gannet Rock: the gentle set with its throttle opened, as it is heard and as it is drawn."""

from dataclasses import replace
from functools import cache

import numpy as np

from course.circle.oscillating import STATION, gentle
from course.circle.set_in_hand import moments, station_emf
from solutions.unit06_reaction import stability
from solutions.unit06_reaction.network import THROTTLE_RANGE

SECONDS, BEGIN, END, LEFT_AT_END = 16.0, 2.0, 14.0, 0.026  # seconds; part of the throttle's way that is left


def throttle_turned(time: np.ndarray) -> np.ndarray:
    """Farads of the throttle: shut, opened ever more slowly, then left just short of the threshold."""
    low, edge = THROTTLE_RANGE[0], gentle().edge
    turned = np.clip((time - BEGIN) / (END - BEGIN), 0, 1)
    return edge - (edge - low) * LEFT_AT_END**turned


def knobs_turned(time: np.ndarray) -> tuple[np.ndarray, np.ndarray]:
    """Gain and bandwidth of the set for a weak station on the far one's channel, at each moment."""
    there = stability.retuned(replace(gentle().small, throttle_capacitance=throttle_turned(time)), STATION.frequency)
    return stability.gain_and_bandwidth(there)


@cache
def demonstration() -> tuple[np.ndarray, np.ndarray]:
    """Pascals in the ear, and the crest of the carrier on the grid in volts, sample by sample."""
    time, finer = moments(SECONDS)
    grid, current = gentle().played(station_emf(finer, STATION), throttle_turned(time))
    return gentle().in_the_ear(current), np.abs(grid)

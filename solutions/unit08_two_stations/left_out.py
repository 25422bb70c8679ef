"""What the figures of this unit leave out, and how large each is."""

import numpy as np

from solutions.unit08_two_stations.grid_leak_beat import left_of_programme
from solutions.unit09_feedback_receivers.evening import NAMES, STATIONS

# Decibels by which a flat earth is too strong: NTIA Report 99-368's smooth earth, worked by its library in the tests.
FLAT_EARTH = {"Saltmarsh Point": 0.01, "Curlew Bank": 0.49, "Gannet Rock": 0.75, "Holm Light": 0.37, "Merrow Sound": 3.80}
FAINT = 1e-2  # volt, crest, of the weak station


def flat_earth(name: str) -> float:
    """Decibels by which the field of a station at the hut is too strong, the earth being round."""
    return FLAT_EARTH[name]


def fading(name: str) -> float:
    """Decibels between the best and the worst moment of a station of which a part comes by a second way."""
    part = STATIONS[NAMES.index(name)].fading
    return float(20 * np.log10((1 + part) / (1 - part)))


def grid_leak_holds_down(strong: float) -> float:
    """Decibels that a grid leak takes from a weak station, 9 kHz beside a carrier of so many volts at the grid."""
    return float(20 * np.log10(left_of_programme(strong, FAINT, 9e3)))

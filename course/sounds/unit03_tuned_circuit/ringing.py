"""Tuned circuit: a neighbour nine kilohertz away, and a blow that rings."""

from typing import Annotated

import numpy as np

from course.circle.levels import RATE
from course.circle.stations import LOCAL, NEXT_CHANNEL
from course.settings import Between, Several
from course.sounds import sound
from solutions.unit03_tuned_circuit.response_curve import relative_response
from solutions.unit03_tuned_circuit.ring_down import ring_voltage

WANTED, NEIGHBOUR = LOCAL.frequency, NEXT_CHANNEL.frequency
TUNE = (392.0, 493.9, 587.3, 784.0, 587.3, 493.9)  # hertz, one note a second
PIP = 1000.0  # hertz, five a second
SLOWED = 2000
CAPTION = (
    "Two stations, equally strong in the aerial, through a coil of Q {}. The set is tuned to the one that plays the slow "
    "tune; the pips are its neighbour, 9 kHz up."
)
LEFT_OUT = (
    " Each tone is as strong as its side frequencies come through. Left out: the whistle of the two carriers, and what a "
    "detector does with two stations at once, which is another lesson."
)


def level(carrier, tone, q):
    """How strongly a station's tone comes through: the mean of its two side frequencies."""
    sides = np.array([carrier - tone, carrier + tone])
    return np.abs(relative_response(sides, WANTED, q)).mean()


def gated(tone, length, start, count):
    """A tone that swells and dies within its time."""
    time = np.arange(count) / RATE - start
    inside = (time >= 0) & (time < length)
    return np.where(inside, np.sin(np.pi * time / length) ** 2 * np.sin(2 * np.pi * tone * time), 0)


def two_stations(q):
    count = 6 * RATE
    tune = sum(level(WANTED, note, q) * gated(note, 0.95, place, count) for place, note in enumerate(TUNE))
    pips = sum(level(NEIGHBOUR, PIP, q) * gated(PIP, 0.12, 0.2 * place, count) for place in range(30))
    return tune + pips, RATE


@sound(
    caption=CAPTION.format(30) + LEFT_OUT,
    transcript="A slow tune of six notes, and over it, almost as loud, quick high pips without a pause.",
    full_scale=4.5,
)
def neighbour_at_q_30():
    return two_stations(30)


@sound(
    caption=CAPTION.format(80),
    transcript="The same tune as loud as before; the pips about half as loud as the tune.",
    full_scale=4.5,
)
def neighbour_at_q_80():
    return two_stations(80)


@sound(
    caption=CAPTION.format(200),
    transcript="The tune hardly weaker; the pips are still there, but behind it, at about a quarter of its strength.",
    full_scale=4.5,
)
def neighbour_at_q_200():
    return two_stations(200)


@sound(
    caption="Four circuits on 846 kHz, each struck once and left alone, played 2000 times slower than life: Q 30, 80, 200, "
    "and 2000, which is what reaction will make of the same coil.",
    transcript="Four knocks, two seconds apart, all on one note of 423 Hz. The first is a dull tap, the second a tap on "
    "wood, the third a plucked string, cut short; the fourth rings on like a bell.",
)
def struck(qs: Annotated[tuple, Several(Between("Q of each circuit", 3, 10_000), 5)] = (30, 80, 200, 2000)):
    time = np.arange(2 * RATE) / RATE
    strikes = [ring_voltage(time, WANTED / SLOWED, q) for q in qs]
    return np.concatenate([np.zeros(RATE // 10), *strikes]), RATE

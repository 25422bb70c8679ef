"""Valve: what the earphones give for the one-valve set, on the scale of the crystal set's sounds."""

from typing import Annotated

import numpy as np

from course.circle.crystal_set import MUTUAL, by_crystal
from course.circle.levels import FULL_SCALE, RATE
from course.circle.one_valve_set import CLEAR, DRAWN_OFF, across_the_phones, by_valve
from course.circle.programme import envelope
from course.circle.stations import ACROSS_THE_BAY, LOCAL, ON_THE_HEATH
from course.settings import Between
from course.sounds import sound
from course.sounds.kit.pieces import in_turn
from solutions.unit05_valve.one_valve_set import (
    CONDENSER,
)


@sound(
    caption="Curlew Bank, on the scale of unit 4: first the crystal set with its coil as it was there, then the "
    "one-valve set with the coil drawn off to a tenth of that, and still 14 dB louder. Turn down first!",
    transcript="A voice reading and two seconds of a tune, soft, as the crystal set gives them. After half a "
    "second of silence the same again, five times as strong, and a little coarser.",
    full_scale=FULL_SCALE,
)
def crystal_then_valve():
    return in_turn(by_crystal(ACROSS_THE_BAY), by_valve(ACROSS_THE_BAY, DRAWN_OFF)), RATE


@sound(
    caption="Holm Light at the same volume and with the coil in one place: crystal set, then one valve, 28 dB louder.",
    transcript="Four seconds in which next to nothing is heard. Then the voice and the tune, faint but clear, "
    "a little fainter than Curlew Bank by crystal set.",
    full_scale=FULL_SCALE,
)
def out_of_nothing():
    return in_turn(by_crystal(ON_THE_HEATH), by_valve(ON_THE_HEATH)), RATE


@sound(
    caption="A grid condenser of 100 pF, then one of 2000 pF that somebody took for it.",
    transcript="The voice and the tune, clear. Then the same, dull, as if through a blanket: the hisses and the bright "
    "edge of the plucked notes are gone.",
)
def too_large_a_condenser(condenser: Annotated[float, Between("the wrong grid condenser", 20e-12, 0.1e-6, "F")] = 2e-9):
    right, wrong = (across_the_phones(ACROSS_THE_BAY, envelope(), CLEAR, condenser) for condenser in (CONDENSER, condenser))
    return in_turn(right, wrong), RATE


@sound(
    caption="Too much of a good thing: Saltmarsh Point with the coil pushed home, nearly 14 V on the grid circuit. "
    "First as it should be, with the coil drawn off.",
    transcript="The voice and the tune, clear. Then the same with a rasp: loud syllables and the attack of each note are torn.",
)
def overdriven():
    kind, cruel = (across_the_phones(LOCAL, envelope(), mutual) for mutual in (1.5 * DRAWN_OFF, MUTUAL))
    return in_turn(kind / np.abs(kind).max(), cruel / np.abs(cruel).max()), RATE

"""Crystal set: what comes out of the telephones, on one scale, and what the square law does to it."""

import numpy as np

from course.circle.levels import FULL_SCALE, RATE, pressure
from course.circle.programme import envelope
from course.circle.stations import ACROSS_THE_BAY, LOCAL, NEXT_CHANNEL
from course.figures.unit04_crystal_set.crystal import CRYSTAL, source
from course.sounds import sound
from solutions.unit04_crystal_set.crystal_set import LOAD, SENSITIVITY
from solutions.unit04_crystal_set.detector_load import working_point

FINENESS = 400  # strengths of the carrier at which the set is worked out


def through_the_set(station, strength):
    """Volts across the load of the club's set while a station's carrier has these crests, the carrier at rest having 1."""
    voltage, resistance = source(station)
    worked = np.linspace(0, strength.max(), FINENESS)
    _, output = working_point(worked * voltage, resistance, LOAD, *CRYSTAL)
    return np.interp(strength, worked, output)


def in_the_ear(station):
    return pressure(through_the_set(station, envelope()), LOAD, SENSITIVITY)


@sound(
    caption="The crystal set on Saltmarsh Point. This sound and the next keep their true ratio, and so do those of the "
    "one-valve set in unit 5: set the volume here, and leave it.",
    transcript="Something like a man's voice reading, without words, for four seconds; then four seconds of a plucked "
    "tune over a bass. Soft, but every note is clear.",
    full_scale=FULL_SCALE,
)
def saltmarsh_point():
    return in_the_ear(LOCAL), RATE


@sound(
    caption="The same set on Curlew Bank, at the same volume.",
    transcript="The same voice and tune, four times weaker: in a quiet room just loud enough to follow.",
    full_scale=FULL_SCALE,
)
def curlew_bank():
    return in_the_ear(ACROSS_THE_BAY), RATE


@sound(
    caption="Gannet Rock, made 7800 times stronger so that you can hear it at all. Compare the voice with "
    "Saltmarsh Point's: this one has been through the square law.",
    transcript="The same voice and tune as loud as any sound of the course, but coarser: the loud syllables jump out, and "
    "the chords have a growl under them.",
)
def gannet_rock_magnified():
    return in_the_ear(NEXT_CHANNEL), RATE

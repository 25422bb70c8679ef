"""Crystal set: what comes out of the telephones, on one scale, and what the square law does to it."""

from course.circle.crystal_set import by_crystal
from course.circle.levels import FULL_SCALE, RATE
from course.circle.stations import ACROSS_THE_BAY, LOCAL, NEXT_CHANNEL
from course.sounds import sound


@sound(
    caption="The crystal set on Saltmarsh Point. This sound and the next keep their true ratio, and so do those of the "
    "one-valve set in unit 5: set the volume here, and leave it.",
    transcript="Something like a man's voice reading, without words, for four seconds; then four seconds of a plucked "
    "tune over a bass. Soft, but every note is clear.",
    full_scale=FULL_SCALE,
)
def saltmarsh_point():
    return by_crystal(LOCAL), RATE


@sound(
    caption="The same set on Curlew Bank, at the same volume.",
    transcript="The same voice and tune, four times weaker: in a quiet room just loud enough to follow.",
    full_scale=FULL_SCALE,
)
def curlew_bank():
    return by_crystal(ACROSS_THE_BAY), RATE


@sound(
    caption="Gannet Rock, made 7800 times stronger so that you can hear it at all. Compare the voice with "
    "Saltmarsh Point's: this one has been through the square law.",
    transcript="The same voice and tune as loud as any sound of the course, but coarser: the loud syllables jump out, and "
    "the chords have a growl under them.",
)
def gannet_rock_magnified():
    return by_crystal(NEXT_CHANNEL), RATE

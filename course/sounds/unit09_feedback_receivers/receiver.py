"""The capstone's evening as the reference receiver plays it: what `checker hear` writes as reference.wav, in two pieces."""

from functools import cache

import numpy as np

from checker.hear.answers import ReferenceAnswers
from checker.hear.chain import reference_chain
from checker.hear.listening import MOMENTS, RATE, SECONDS
from checker.hear.receiver import play
from course.sounds import sound


@cache
def played() -> np.ndarray:
    """All of it, volts across the telephones; the demonstration first, then two seconds of each station."""
    chain = reference_chain()
    return play(chain, ReferenceAnswers(chain)).sound


@sound(
    caption="**Out from under.** One set on Tern Spit, out of the functions of this course. First the local, with "
    "hardly any reaction. "
    "Then the dial is turned to Gannet Rock, 9 kHz away: the local is still there. Reaction is advanced, and Gannet "
    "Rock comes out "
    "from under it; one turn too far, with the dial turned a little to and fro; and back.",
    transcript="A slow, deep tune: the local. At four seconds the dial has been turned, and it is still the local, "
    "thinner, with something "
    "quick and high behind it. From six seconds the high tune grows and the deep one goes, until at nine and a half "
    "seconds there is "
    "only the high one, dull and clear. At twelve a whistle climbs to the top of a short scale and falls again. Then "
    "the high tune, alone.",
    moments=MOMENTS[:5],
)
def out_from_under() -> tuple[np.ndarray, int]:
    return played()[: round(SECONDS * RATE)], RATE


@sound(
    caption="**Along the dial.** The whole `receiver` on each of the six stations, two seconds each: Merrow Sound, "
    "Saltmarsh Point, "
    "Gannet Rock, Curlew Bank, Skerry Vore, Holm Light.",
    transcript="Six tunes, each in a voice and a pace of its own, all about equally loud and all a little dull. A faint "
    "hiss lies "
    "behind the third and the sixth.",
)
def along_the_dial() -> tuple[np.ndarray, int]:
    return played()[round(SECONDS * RATE) :], RATE

"""Super-regeneration by ear: the rush, the carrier that quiets it, and one station in both modes."""

import numpy as np

from course.circle.levels import RATE
from course.circle.programme import envelope
from course.circle.quenched import LINEAR, LOGARITHMIC, played
from course.circle.set_in_hand import turned
from course.sounds import sound

VOLTS = 0.5  # of mean swing, played as 1.0
STRENGTHS = 30e-6, 6e-6, 1.2e-6  # volt, crest, in the coil
PIECE = 4.0  # seconds: the voice, then the tune


def without_steady(swing: np.ndarray) -> np.ndarray:
    """The tone alone: slower than 40 Hz nothing goes through the coupling condenser."""
    tone = np.fft.rfftfreq(2 * swing.size, 1 / RATE)
    mirrored = np.concatenate([swing, swing[::-1]])
    return np.fft.irfft(np.fft.rfft(mirrored) * tone**2 / (tone**2 + 40.0**2))[: swing.size]


@sound(
    caption="**The rush.** The quenched set on 30 MHz, every burst up to its limit. First no signal; then Kit Harrow's test "
    "oscillator, bare, rising from nothing to 30 µV in the coil; then modulated.",
    transcript="A loud, even rush, like surf or a tap. From the fourth second it sinks and sinks, without any other sound "
    "coming up, until there is silence. In the silence, a voice, clear and full.",
    full_scale=VOLTS,
    moments=((0.0, "no signal"), (3.0, "a carrier comes up"), (7.5, "modulated")),
)
def rush():
    time = np.arange(round(12 * RATE)) / RATE
    strength = np.where(time < 3, 0.0, 10 ** turned(time, (3, -7.5), (7, -4.5)))
    strength *= turned(time, (2.9, 0), (3.1, 1)) * 30e-6 / 10**-4.5
    shape = np.ones(time.size)
    spoken = time >= 7.5
    shape[spoken] = envelope()[: np.count_nonzero(spoken)]
    return without_steady(played(strength * shape, LOGARITHMIC)), RATE


@sound(
    caption="**Two ways to listen.** The same voice at 30, 6 and 1.2 µV in the coil: first with each burst stopped far below "
    "the limit (linear), then with each at its limit (logarithmic). All six on one scale.",
    transcript="Linear: a voice; the same five times fainter; the third time hardly there. Logarithmic: the voice, loud "
    "and a little hard, as if pressed flat; then again, just as loud; then just as loud once more, with a good deal of hiss "
    "under it.",
    full_scale=VOLTS,
    moments=((0.0, "linear, 30 µV"), (4.0, "6 µV"), (8.0, "1.2 µV"), (12.0, "log, 30 µV"), (16.0, "6 µV"), (20.0, "1.2 µV")),
)
def both_modes():
    voice = envelope()[: round(PIECE * RATE)]
    parts = [played(strength * voice, mode) for mode in (LINEAR, LOGARITHMIC) for strength in STRENGTHS]
    return np.concatenate([without_steady(part) for part in parts]), RATE

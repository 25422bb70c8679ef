"""Coil and condenser: a tone from coil to coil, five gaps, each half the last."""

from typing import Annotated

import numpy as np

from course.circle.components import LOOSE_GAPS, LOOSE_TURNS, mutual
from course.circle.levels import RATE
from course.settings import Between, Several
from course.sounds import sound

TONE = 1000.0  # hertz
LENGTH, PAUSE = 1.1, 0.4  # seconds


@sound(
    caption="One second of the tone at each of five gaps: 160, 80, 40, 20 and 10 mm. The loudness follows the mutual "
    "inductance of the two coils.",
    transcript="Five tones of one pitch. The first is so faint that you may miss it. Each is louder than the one before, the "
    "last about fifty times as strong as the first; but the steps grow smaller: the first step is the largest, the last "
    "the smallest.",
)
def nearer_and_nearer(
    gaps: Annotated[tuple, Several(Between("gap between the coils", 1e-3, 0.3, "m"), 8)] = LOOSE_GAPS,
    tone: Annotated[float, Between("pitch", 100, 4000, "Hz")] = TONE,
):
    time = np.arange(int(LENGTH * RATE)) / RATE
    note = np.sin(2 * np.pi * tone * time) * np.minimum(1, 40 * np.minimum(time, LENGTH - time))
    pause = np.zeros(int(PAUSE * RATE))
    return np.concatenate([piece for gap in gaps for piece in (mutual(LOOSE_TURNS, gap) * note, pause)]), RATE

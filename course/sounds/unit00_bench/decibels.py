"""Bench, section 3: what a decibel sounds like."""

from typing import Annotated

import numpy as np

from course.circle.levels import RATE
from course.settings import Between, Several
from course.sounds import sound

TONE = 600.0
STEPS = (3, 6, 10, 20)  # decibels


@sound(
    caption="A tone and the same tone fainter, four times: by 3 dB, 6 dB, 10 dB and 20 dB.",
    transcript="Four pairs of notes of one pitch, each note a little under a second. In the first pair the second "
    "note is a shade fainter; in the second, plainly fainter; in the third, about half as loud to most "
    "ears; in the fourth, faint.",
)
def decibel_steps(
    steps: Annotated[tuple, Several(Between("how much fainter, in decibels", 0, 40), 6)] = STEPS,
    tone: Annotated[float, Between("pitch", 100, 4000, "Hz")] = TONE,
):
    time = np.arange(round(0.8 * RATE)) / RATE
    edges = np.clip(np.minimum(time, time[-1] - time) / 0.02, 0, 1)
    note, pause = np.sin(2 * np.pi * tone * time) * edges, np.zeros(RATE // 2)
    return np.concatenate([part for step in steps for part in (note, note * 10 ** (-step / 20), pause)]), RATE

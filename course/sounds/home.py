"""The sound on the first page."""

import numpy as np

from course.circle.levels import RATE
from course.circle.stations import LOCAL
from course.sounds import sound
from solutions.unit01_signal.am_waveform import am_waveform

SLOWER = 1000


@sound(
    caption="Saltmarsh Point's carrier, a thousand times too slow",
    transcript="A steady, plain note, not quite an octave above the A that orchestras tune to. It swells "
    "and dies away once a second, eight times in all.",
)
def slow_carrier() -> tuple[np.ndarray, int]:
    time = np.arange(8 * RATE) / RATE
    return am_waveform(time, LOCAL.frequency / SLOWER, 1e3 / SLOWER, 0.8, 1.0), RATE

"""Short pieces of sounds to be compared, one after the other."""

import numpy as np

from course.circle.levels import RATE

GAP = np.zeros(RATE // 2)  # half a second of silence


def part(samples: np.ndarray) -> np.ndarray:
    """Two seconds of the voice, then two of the tune, each risen and fallen over a fiftieth of a second."""
    ramp = np.clip(np.arange(2 * RATE) * 50 / RATE, 0, 1)
    return np.concatenate([samples[start : start + 2 * RATE] * ramp * ramp[::-1] for start in (0, 4 * RATE)])


def in_turn(*sounds: np.ndarray) -> np.ndarray:
    """Some seconds of each sound, with silences between."""
    return np.concatenate([piece for sound in sounds for piece in (part(sound), GAP)][:-1])

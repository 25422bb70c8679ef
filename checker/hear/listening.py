"""What there is to listen to in `checker hear`: tunes on carriers, and how the knobs are turned. Nobody's answers are in it."""

from collections.abc import Iterable

import numpy as np

RATE = 24_000  # samples a second
FRAME = 850.5e3  # hertz: between the local and the far station, 9 kHz apart
LOCAL, FAR = 846e3, 855e3
SEED = 1

# The demonstration: second, hertz the set is tuned to, hertz of bandwidth (below 0 it oscillates), volume (1 is all of it).
MOVES = (
    (0.0, LOCAL, 6000.0, 0.06),
    (2.5, LOCAL, 6000.0, 0.06),
    (4.0, FAR, 6000.0, 0.5),
    (5.5, FAR, 6000.0, 0.5),
    (8.5, FAR, 1200.0, 0.35),
    (9.5, FAR, 500.0, 0.25),
    (11.5, FAR, 500.0, 0.25),
    (12.0, FAR, -250.0, 0.15),
    (12.2, FAR, -250.0, 0.15),
    (13.2, FAR + 1.2e3, -250.0, 0.15),
    (14.0, FAR, 300.0, 0.12),
    (16.0, FAR, 500.0, 0.25),
)
MOMENTS = (
    (0.0, "the local"),
    (2.5, "turned to Gannet Rock"),
    (5.5, "reaction advanced"),
    (9.5, "out from under"),
    (12.0, "too far"),
    (14.0, "and back"),
)
SECONDS = MOVES[-1][0]
SETTINGS = 17  # moments at which the knobs are worked out; between them they move evenly
EACH = 2.0  # seconds of every station, one after another, behind the demonstration


def moves(time: np.ndarray) -> np.ndarray:
    """Frequency, bandwidth and volume at each moment: an array of shape (3, n)."""
    seconds, *knobs = np.array(MOVES).T
    return np.array([np.interp(time, seconds, knob) for knob in knobs])


def setting_times() -> np.ndarray:
    """The moments at which the knobs are worked out, second; each turn of `MOVES` is among them."""
    return np.unique(np.append(np.linspace(0, SECONDS, SETTINGS), [move[0] for move in MOVES]))


def tune(number: int, seconds: float) -> np.ndarray:
    """A station's programme, between −1 and 1: a tune of its own, in a voice of its own; the same each time."""
    generator = np.random.default_rng([SEED, number])
    time = np.arange(round(seconds * RATE)) / RATE
    beat = (0.34, 0.5, 0.27, 0.4, 0.3, 0.45)[number % 6]
    base = (196.0, 147.0, 330.0, 220.0, 262.0, 175.0)[number % 6]
    scale = np.array([1, 9 / 8, 5 / 4, 3 / 2, 5 / 3, 2])
    total = np.zeros(time.size)
    for start in np.arange(0, seconds, beat):
        here = slice(round(start * RATE), round((start + 4 * beat) * RATE))
        since = time[here] - time[here.start]
        swell = np.minimum(since / 0.02, 1) * np.exp(-since / beat)
        pitch = 2 * np.pi * base * generator.choice(scale)
        total[here] += swell * sum(np.sin(pitch * order * since) / order ** (1 + number % 2) for order in (1, 2, 3, 4))
    return total / np.max(np.abs(total))


def aerial_signal(
    stations: Iterable[tuple[int, float, float, float]], noise: float, frame: float, seconds: float
) -> np.ndarray:
    """What the aerial brings, complex, volt, seen from a frame.

    Parameters
    ----------
    stations : sequence of (number, frequency, crest, fading)
        Hertz, volt; `fading` is how large a part of the wave comes by a second way that lengthens and shortens.
    noise : float, volt, crest of the noise in the frame's width
    frame : float, hertz
    seconds : float

    Returns
    -------
    ndarray of shape (n,)
    """
    time = np.arange(round(seconds * RATE)) / RATE
    generator = np.random.default_rng([SEED, round(frame)])
    total = noise / np.sqrt(2) * (generator.standard_normal(time.size) + 1j * generator.standard_normal(time.size))
    for number, frequency, crest, fading in stations:
        shifting = 1 + fading * np.exp(2j * np.pi * (time / 3.7 + number / 6))
        total += crest * (1 + 0.7 * tune(number, seconds)) * shifting * np.exp(2j * np.pi * (frequency - frame) * time)
    return total


def telephone_sound(sound: np.ndarray) -> np.ndarray:
    """A sound as telephones give it: nothing too slow to be heard, little above 4 kHz; soft at both ends."""
    tone = np.fft.rfftfreq(2 * sound.size, 1 / RATE)
    mirrored = np.concatenate([sound, sound[::-1]])
    passed = 1 / (1 - 60j / np.maximum(tone, 1e-3)) ** 2 / (1 + (tone / 4e3) ** 8)
    heard = np.fft.irfft(np.fft.rfft(mirrored) * passed)[: sound.size]
    soft = round(0.02 * RATE)
    heard[:soft] *= np.linspace(0, 1, soft)
    heard[-soft:] *= np.linspace(1, 0, soft)
    return heard

"""What the stations send, in every lesson that listens to one: something like speech, then a tune. Nobody's voice."""

from functools import cache

import numpy as np

from course.circle.levels import RATE

LENGTH = 8.0  # seconds: half of each
DEPTH = 0.8  # of modulation, at the programme's highest crest
TOP = 4500.0  # hertz: half of the 9 kHz between two channels

# Formants of an average man's vowels, hertz: G. E. Peterson and H. L. Barney, J. Acoust. Soc. Am. 24, 175 (1952), Table II,
# from memory.
VOWELS = {
    "ee": (270, 2290, 3010),
    "e": (530, 1840, 2480),
    "a": (660, 1720, 2410),
    "ah": (730, 1090, 2440),
    "aw": (570, 840, 2410),
    "oo": (300, 870, 2240),
}
FORMANT_WIDTH = np.array([80.0, 110.0, 160.0])
# Syllables: seconds they last, the vowels they glide between, whether a hiss begins them, seconds of silence after.
SYLLABLES = (
    (0.20, "ah", "e", False, 0.02),
    (0.16, "e", "ee", True, 0.03),
    (0.26, "aw", "oo", False, 0.10),
    (0.14, "e", "e", True, 0.02),
    (0.18, "a", "ah", False, 0.02),
    (0.30, "ee", "ee", True, 0.30),
    (0.16, "oo", "ah", False, 0.02),
    (0.24, "a", "ee", False, 0.04),
    (0.14, "e", "aw", True, 0.02),
    (0.20, "ah", "ah", False, 0.06),
    (0.16, "ee", "e", True, 0.02),
    (0.42, "aw", "ah", False, 0.00),
)
PITCH = (135.0, 95.0)  # hertz: where the voice begins and where it comes to rest
# A tune of our own: quarter-second beats it lasts, hertz of melody, hertz of bass.
NOTES = (
    (2, 392.0, 98.0), (1, 440.0, 98.0), (1, 493.9, 98.0), (2, 587.3, 123.5), (2, 493.9, 123.5),
    (2, 523.3, 130.8), (1, 440.0, 130.8), (1, 392.0, 130.8), (4, 440.0, 146.8),
)  # fmt: skip
BEAT = 0.25
SEED = 4


@cache
def programme() -> np.ndarray:
    """Four seconds that sound like someone reading the weather, four of a tune.

    Returns
    -------
    ndarray of shape (n,)
        Between -1 and 1, no tone above 4.5 kHz; times a depth of modulation, what is laid on the carrier. To be read only.
    """
    half = int(LENGTH / 2 * RATE)
    samples = np.concatenate([band(speech(half)), band(tune(half))])
    samples.flags.writeable = False
    return samples


def envelope(depth: float = DEPTH) -> np.ndarray:
    """Crest of a station's carrier as the programme goes by, the carrier at rest being 1."""
    return 1 + depth * programme()


def band(samples: np.ndarray) -> np.ndarray:
    """The same sound without what lies below 80 Hz or above `TOP`, its highest crest 1."""
    spectrum = np.fft.rfft(samples)
    frequency = np.fft.rfftfreq(samples.size, 1 / RATE)
    spectrum *= np.clip((TOP - frequency) / 300, 0, 1) * np.clip((frequency - 80) / 40, 0, 1)
    kept = np.fft.irfft(spectrum, samples.size)
    return kept / np.abs(kept).max()


def swell(time: np.ndarray, length: float, rise: float) -> np.ndarray:
    """From 0 to 1 and back, in `rise` seconds at each end of `length`; 0 outside."""
    return np.clip(np.minimum(time, length - time) / rise, 0, 1)


def speech(count: int) -> np.ndarray:
    """Syllables without words: a buzzing voice shaped by the formants of gliding vowels, and hisses."""
    time = np.arange(count) / RATE
    hiss = np.diff(np.random.default_rng(SEED).normal(size=count + 1))
    loudness, noise = np.zeros(count), np.zeros(count)
    marks, formants = [], []
    start = 0.15
    for place, (length, first, last, hissed, pause) in enumerate(SYLLABLES):
        stress = 1.0 if place % 3 == 2 else 0.6
        if hissed:
            noise += 0.12 * swell(time - start, 0.09, 0.02)
            start += 0.07
        loudness += stress * swell(time - start, length, 0.04)
        marks += [start, start + length]
        formants += [VOWELS[first], VOWELS[last]]
        start += length + pause
    pitch = np.interp(time, (0, start), PITCH) * (1 + 0.08 * np.sin(2 * np.pi * 1.3 * time) * loudness)
    phase = 2 * np.pi * np.cumsum(pitch) / RATE
    tracks = [np.interp(time, marks, track) for track in zip(*formants, strict=True)]
    voice = np.zeros(count)
    for harmonic in range(1, int(TOP / min(PITCH))):
        frequency = harmonic * pitch
        passed = sum(
            strength / (1 + ((frequency - centre) / width) ** 2)
            for strength, centre, width in zip((1.0, 0.5, 0.25), tracks, FORMANT_WIDTH, strict=True)
        )
        voice += passed * (frequency < TOP) * np.sin(harmonic * phase) / np.sqrt(harmonic)
    return loudness * voice + noise * hiss


def tune(count: int) -> np.ndarray:
    """A melody over a bass, both plucked: partials that die away the faster, the higher they are."""
    time = np.arange(count) / RATE
    total, start = np.zeros(count), 0.0
    for beats, melody, bass in NOTES:
        length = beats * BEAT
        for pitch, strength in ((melody, 1.0), (1.26 * melody, 0.35), (bass, 0.8)):
            since = np.clip(time - start, 0, None)
            for partial in range(1, 9):
                fading = np.exp(-(1.2 + 0.7 * partial) * since) * swell(time - start, length + 0.3, 0.012)
                total += strength / partial**1.3 * fading * np.sin(2 * np.pi * partial * pitch * since)
        start += length
    return total

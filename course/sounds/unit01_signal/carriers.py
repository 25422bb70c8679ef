"""Signal: what an ideal detector gives, before any set spoils or mends it.

The detector here follows the envelope, takes its steady part away, and adds nothing. Waves are written as their complex
envelopes, the carrier's own cycles left out.
"""

from typing import Annotated

import numpy as np

from course.circle.levels import RATE
from course.circle.stations import LOCAL
from course.settings import Between, Several
from course.sounds import sound
from solutions.unit01_signal.am_waveform import am_envelope, am_spectrum
from solutions.unit01_signal.channel_plan import image_reading, wavelength

TONE = 500.0
BELLS = ((0.0, 523.25), (0.6, 659.26), (1.2, 587.33), (1.8, 392.0))  # seconds, hertz: our own call of four notes


def seconds(length):
    return np.arange(int(length * RATE)) / RATE


def detected(envelope):
    """What an ideal detector passes on: the envelope, never negative, less its mean."""
    crest = np.abs(envelope)
    return crest - crest.mean()


def call_sign(time):
    """Four struck bells, between -1 and 1: Saltmarsh Point's call."""
    partials = ((1.0, 1.0, 1.4), (2.76, 0.4, 3.5), (5.4, 0.15, 7.0))  # pitch, strength, decay
    total = np.zeros_like(time)
    for start, pitch in BELLS:
        since = np.clip(time - start, 0, None)
        for ratio, strength, decay in partials:
            total += strength * np.exp(-decay * since) * np.sin(2 * np.pi * pitch * ratio * since)
    return total / np.abs(total).max()


@sound(
    caption="One tone, three depths: 20 %, 50 %, then 100 %. The carrier is the same each time.",
    transcript="Three notes of the same pitch, each a little over a second and a half long, with short gaps. The "
    "second is clearly louder than the first, the third louder again.",
)
def three_depths(depths: Annotated[tuple, Several(Between("depth of modulation", 0.05, 1), 6)] = (0.2, 0.5, 1.0)):
    time = seconds(1.6)
    edges = np.clip(np.minimum(time, time[-1] - time) / 0.02, 0, 1)
    notes = []
    for depth in depths:
        lower, _, upper = am_spectrum(depth, 1.0)
        notes += [(lower + upper) * np.cos(2 * np.pi * TONE * time) * edges, np.zeros(RATE // 3)]
    return np.concatenate(notes), RATE


@sound(
    caption="Too deep: the same tone at a depth of 1, then of 1.5.",
    transcript="A clean note, then, at the same pitch, a rougher and brighter one, with a buzz in it.",
)
def folded():
    time = seconds(2.0)
    notes = [detected(am_envelope(time, TONE, depth, 1.0)) for depth in (1.0, 1.5)]
    return np.concatenate([notes[0], np.zeros(RATE // 3), notes[1]]), RATE


@sound(
    caption="Saltmarsh Point's call with no other station near, then with a carrier 1 kHz away at a tenth of its strength.",
    transcript="Four bell notes, falling at the end. They are repeated with a steady whistle of 1 kHz all the way "
    "through, which is left by itself as the last bell dies away.",
)
def whistle(apart: Annotated[float, Between("how far apart the carriers are", 50, 6000, "Hz")] = 1000.0):
    time = seconds(4.0)
    alone = 1 + 0.5 * call_sign(time)
    disturbed = alone + 0.1 * np.exp(2j * np.pi * apart * time)
    return np.concatenate([detected(alone), detected(disturbed)]), RATE


@sound(
    caption="A set that oscillates is tuned slowly across Saltmarsh Point's bare carrier, from 353 m to 355.7 m on its dial.",
    transcript="A whistle that starts high, slides down to a low growl and a moment of silence, then climbs again to "
    "where it began: the station and its image.",
)
def across_the_station():
    time = seconds(8.0)
    start = 353.0
    reading = np.linspace(start, image_reading(start, wavelength(LOCAL.frequency)), time.size)
    apart = wavelength(reading) - LOCAL.frequency
    phase = 2 * np.pi * np.cumsum(apart) / RATE
    return detected(1 + 0.3 * np.exp(1j * phase)), RATE

"""How `am_waveform` is judged."""

import numpy as np

from checker import Exercise, Question, at_most, invariant, picture, relative, slip, value
from checker.checks.given import hertz, number, seconds, volts

from .am_waveform import am_envelope, am_spectrum, am_waveform

TERMAN = "F. E. Terman, Radio Engineers' Handbook, 1943, sec. 7: peak power (1 + m)²"
ROUNDING = relative(1e-9, because="one formula in double precision, some ten thousand cycles from the start", floor=1e-8)
TIME, TONE, DEPTH, AMPLITUDE = seconds("0 s", "10 ms"), hertz("50 Hz", "4.5 kHz"), number(0, 1), volts("10 mV", "100 V")

EXERCISE = Exercise(
    title="One tone on a carrier",
    questions=[
        Question(
            asks=am_envelope,
            picture=picture(at={"depth": 0.5}, between=(0.0, 4e-3), points=161),
            given={"time": TIME, "tone_frequency": TONE, "depth": DEPTH, "amplitude": AMPLITUDE},
            gives="V",
            agrees_within=ROUNDING,
            holds=[
                invariant(
                    "up to full depth the envelope is never below zero",
                    lambda f, t, tone, m, a: (0.0, f(t, tone, m, a)),
                    at_most,
                ),
                invariant(
                    "after one cycle of the tone it is where it was",
                    lambda f, t, tone, m, a: (f(t + 1 / tone, tone, m, a), f(t, tone, m, a)),
                ),
                invariant(
                    "crest and trough lie evenly about the carrier's amplitude",
                    lambda f, t, tone, m, a: ((f(0.0, tone, m, a) + f(0.5 / tone, tone, m, a)) / 2, a),
                ),
            ],
            published=[
                value(
                    "depth 0.8, at the crest",
                    given=(0.0, 1000.0, 0.8, 1.0),
                    wanted=np.sqrt(3.24),
                    within=relative(1e-9, because="exact"),
                    source=TERMAN,
                    known="recomputed",
                )
            ],
            slips=[
                slip(
                    "left out 2π: the cosine wants radians, and a cycle has 2π of them",
                    lambda t, tone, m, a: a * (1 + m * np.cos(tone * t)),
                ),
                slip(
                    "used sine for cosine: at time 0 the tone is at its crest",
                    lambda t, tone, m, a: a * (1 + m * np.sin(2 * np.pi * tone * t)),
                ),
                slip(
                    "left out the 1: that is the tone alone, and the carrier's own amplitude is missing",
                    lambda t, tone, m, a: a * m * np.cos(2 * np.pi * tone * t),
                ),
                slip(
                    "taken depth for volts: it is a fraction of the carrier's amplitude",
                    lambda t, tone, m, a: a + m * np.cos(2 * np.pi * tone * t),
                ),
                slip(
                    "taken depth for per cent: it is already a fraction",
                    lambda t, tone, m, a: a * (1 + m / 100 * np.cos(2 * np.pi * tone * t)),
                ),
            ],
        ),
        Question(
            asks=am_waveform,
            picture=picture(at={"carrier_frequency": 20e3, "depth": 0.5}, between=(0.0, 2e-3), points=401),
            given={
                "time": TIME,
                "carrier_frequency": hertz("150 kHz", "1.7 MHz"),
                "tone_frequency": TONE,
                "depth": DEPTH,
                "amplitude": AMPLITUDE,
            },
            gives="V",
            agrees_within=ROUNDING,
            holds=[
                invariant(
                    "the wave never leaves its envelope",
                    lambda f, t, carrier, tone, m, a: (abs(f(t, carrier, tone, m, a)), f.am_envelope(t, tone, m, a)),
                    at_most,
                ),
                invariant(
                    "half the depth is half-way between no tone and all of it",
                    lambda f, t, carrier, tone, m, a: (
                        f(t, carrier, tone, m / 2, a),
                        (f(t, carrier, tone, 0.0, a) + f(t, carrier, tone, m, a)) / 2,
                    ),
                ),
                invariant(
                    "twice the amplitude is twice the voltage",
                    lambda f, t, carrier, tone, m, a: (f(t, carrier, tone, m, 2 * a), 2 * f(t, carrier, tone, m, a)),
                ),
            ],
            published=[
                value(
                    "depth 0.5, both at the crest",
                    given=(0.0, 846e3, 1000.0, 0.5, 1.0),
                    wanted=np.sqrt(2.25),
                    within=relative(1e-9, because="exact"),
                    source=TERMAN,
                    known="recomputed",
                )
            ],
            slips=[
                slip(
                    "added the tone to the carrier; it has to multiply it, as it sets the carrier's size",
                    lambda t, carrier, tone, m, a: a * (np.cos(2 * np.pi * carrier * t) + m * np.cos(2 * np.pi * tone * t)),
                ),
                slip(
                    "multiplied carrier and tone without the 1: between words the carrier would vanish",
                    lambda t, carrier, tone, m, a: a * m * np.cos(2 * np.pi * tone * t) * np.cos(2 * np.pi * carrier * t),
                ),
                slip(
                    "left out 2π in the carrier",
                    lambda t, carrier, tone, m, a: am_envelope(t, tone, m, a) * np.cos(carrier * t),
                ),
                slip(
                    "used sine for the carrier: at time 0 it is at its crest",
                    lambda t, carrier, tone, m, a: am_envelope(t, tone, m, a) * np.sin(2 * np.pi * carrier * t),
                ),
                slip(
                    "taken the amplitude for r.m.s.: it is the peak already",
                    lambda t, carrier, tone, m, a: np.sqrt(2) * am_waveform(t, carrier, tone, m, a),
                ),
                slip("exchanged carrier and tone", lambda t, carrier, tone, m, a: am_waveform(t, tone, carrier, m, a)),
            ],
        ),
        Question(
            asks=am_spectrum,
            further=True,
            given={"depth": DEPTH, "amplitude": AMPLITUDE},
            gives=("V", "V", "V"),
            agrees_within=relative(1e-12, because="an identity: the same expression, however it is written"),
            symbolic=True,
            slips=[
                slip("left out the halves: two side frequencies share the product", lambda m, a: (m * a, a, m * a)),
                slip("returned powers: amplitudes are wanted", lambda m, a: (m**2 * a**2 / 8, a**2 / 2, m**2 * a**2 / 8)),
                slip("put the carrier first: the order is lower, carrier, upper", lambda m, a: (a, m * a / 2, m * a / 2)),
                slip("left out the carrier's amplitude on the sides", lambda m, a: (m / 2, a, m / 2)),
            ],
            no_published="An identity of trigonometry, not a figure.",
        ),
    ],
    hints=[
        "The tone does not travel beside the carrier: it is the carrier's size that rises and falls with the tone.",
        "Let the size be amplitude times (1 + depth times the tone), with the tone a cosine between -1 and 1; then "
        "let that size multiply the carrier's own cosine. For the spectrum multiply the bracket out: the 1 leaves "
        "the carrier as it was, and the rest is a product of two cosines.",
        "am_envelope is amplitude * (1 + depth * np.cos(2 * np.pi * tone_frequency * time)); am_waveform is that "
        "times np.cos(2 * np.pi * carrier_frequency * time). Since cos a cos b = cos(a - b)/2 + cos(a + b)/2, "
        "am_spectrum returns three expressions: amplitude for the carrier in the middle, and half of depth * "
        "amplitude on each side.",
    ],
)

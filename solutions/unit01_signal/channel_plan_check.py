"""How `channel_plan` is judged."""

import numpy as np

from checker import Exercise, Question, exactly, invariant, refusal, relative, slip, value
from checker.checks.given import drawn, hertz, metres, one_of

from .channel_plan import SPEED_OF_LIGHT, carriers, image_reading, nearest_channel, wavelength

GENEVA = "ITU, Final Acts of the LF/MF Broadcasting Conference (Regions 1 and 3), Geneva 1975"
US_RULES = "47 CFR 73.14"
WHOLE = exactly("carriers are whole numbers of hertz")
PRINTED = relative(1e-6, because="seven figures are given")
LIGHT = relative(1e-9, because="the speed of light is exact: the metre is defined by it")
SPACING = one_of(9000, 10000)
FREQUENCY = drawn(
    [1e6, *(kilohertz * 1e3 for kilohertz in range(400, 1801))],
    "400 kHz to 1800 kHz",
    unit="Hz",
    stacks=True,
)


def ends(spacing):
    return carriers(spacing)[[0, -1]]


EXERCISE = Exercise(
    title="Where on the dial?",
    questions=[
        Question(
            asks=carriers,
            same_for_all="Two spacings, 9 and 10 kHz, are all that there is to ask: a table of both is the plan itself.",
            given={"spacing": SPACING},
            gives="Hz",
            agrees_within=WHOLE,
            arrays=False,
            holds=[invariant("from one channel to the next is always the spacing", lambda f, s: (np.diff(f(s)), float(s)))],
            published=[
                value(
                    "9 kHz: the multiples from the 59th to the 178th",
                    given=(9000,),
                    wanted=9e3 * np.arange(59, 179),
                    within=WHOLE,
                    source=GENEVA,
                    known="recomputed",
                ),
                value(
                    "10 kHz: 117 channels from 540 kHz",
                    given=(10000,),
                    wanted=540e3 + 10e3 * np.arange(117),
                    within=WHOLE,
                    source=US_RULES,
                    known="found",
                ),
            ],
            refuses=[refusal("a spacing of 8000 Hz, which is neither raster", (8000,), (9001,), (9000.5,), (9500,), (10001,))],
            slips=[
                slip("left the last channel out: np.arange stops before its end", lambda s: carriers(s)[:-1]),
                slip("returned kilohertz: the answer is wanted in hertz", lambda s: carriers(s) / 1000),
                slip("gone one channel too far", lambda s: np.append(carriers(s), carriers(s)[-1] + s)),
                slip("started both rasters at 540 kHz", lambda s: carriers(s)[carriers(s) >= 540e3]),
            ],
        ),
        Question(
            asks=nearest_channel,
            given={"frequency": FREQUENCY, "spacing": SPACING},
            gives="Hz",
            agrees_within=WHOLE,
            where=lambda frequency, spacing: abs(frequency / spacing % 1 - 0.5) > 1e-6,
            edges=[lambda hz, s: (float(s * round(hz * 0.97 / s)) + 100, s)] * 8,  # a few channels off: a table's answer stays
            holds=[
                invariant("a channel is its own nearest", lambda f, hz, s: (f(f(hz, s), s), f(hz, s))),
                invariant(
                    "nudged a quarter of a step from a channel it comes back to it",
                    lambda f, hz, s: (f(f(hz, s) + s / 4, s), f(hz, s)),
                ),
            ],
            published=[
                value("1600 kHz", given=(1600e3, 9000), wanted=1602e3, within=WHOLE, source=GENEVA, known="found"),
                value("850 kHz", given=(850e3, 9000), wanted=846e3, within=WHOLE, source=GENEVA, known="found"),
                value("1704 kHz", given=(1704e3, 10000), wanted=1700e3, within=WHOLE, source=US_RULES, known="found"),
            ],
            refuses=[refusal("a spacing of 8000 Hz, which is neither raster", (846e3, 8000), (846e3, 9001), (846e3, 9500))],
            slips=[
                slip(
                    "gone to the channel below: the one above may be nearer",
                    lambda hz, s: np.clip(s * np.floor(hz / s), *ends(s)),
                ),
                slip(
                    "gone to the channel above: the one below may be nearer",
                    lambda hz, s: np.clip(s * np.ceil(hz / s), *ends(s)),
                ),
                slip(
                    "gone past the ends of the band: there the end channel is the nearest", lambda hz, s: s * np.round(hz / s)
                ),
                slip(
                    "returned the channel's place in the list: its frequency is wanted",
                    lambda hz, s: np.argmin(abs(carriers(s) - hz)),
                ),
            ],
        ),
        Question(
            asks=wavelength,
            given={"frequency": hertz("150 kHz", "30 MHz")},
            gives="m",
            agrees_within=LIGHT,
            holds=[
                invariant("twice the frequency, half the wavelength", lambda f, hz: (f(2 * hz), f(hz) / 2)),
                invariant("wavelength times frequency is the same for all", lambda f, hz: (f(hz) * hz, f(1e6) * 1e6)),
            ],
            published=[
                value("846 kHz", given=(846e3,), wanted=354.3646, within=PRINTED, source=GENEVA, known="recomputed"),
                value("1 MHz", given=(1e6,), wanted=299.7925, within=PRINTED, source=US_RULES, known="recomputed"),
            ],
            slips=[
                slip("turned the fraction over", lambda hz: hz / SPEED_OF_LIGHT),
                slip("taken the frequency for kHz: it comes in Hz", lambda hz: SPEED_OF_LIGHT / hz / 1000),
                slip("taken 300 000 km/s for the speed of light: the exact one is at the top of the file", lambda hz: 3e8 / hz),
                slip("multiplied: a higher frequency is a shorter wave", lambda hz: SPEED_OF_LIGHT * hz),
            ],
        ),
        Question(
            asks=image_reading,
            given={"reading": metres("180 m", "570 m"), "oscillator_reading": metres("180 m", "570 m")},
            gives="m",
            agrees_within=relative(1e-9, because="double precision, well away from half of the oscillator's reading"),
            where=lambda reading, oscillator: 0.55 < reading / oscillator < 1.8 and reading != oscillator,
            holds=[
                invariant(
                    "the oscillator's frequency lies half-way between station and image",
                    lambda f, r, o: (1 / r + 1 / f(r, o), 2 / o),
                ),
                invariant("on the oscillator itself station and image are one", lambda f, r, o: (f(o, o), o)),
                invariant("everything at twice the wavelength, the image too", lambda f, r, o: (f(2 * r, 2 * o), 2 * f(r, o))),
            ],
            no_published="It follows from the definition of equal beats.",
            refuses=[refusal("a reading of half of the oscillator's, or less", (150.0, 400.0), (200.0, 400.0), (199.0, 400.0))],
            slips=[
                slip("mirrored the metres: it is the hertz that lie evenly about the oscillator", lambda r, o: 2 * o - r),
                slip(
                    "returned the image's frequency: the dial is marked in metres",
                    lambda r, o: 2 * wavelength(o) - wavelength(r),
                ),
                slip("mirrored the oscillator about the station", lambda r, o: 1 / (2 / r - 1 / o)),
                slip(
                    "used the oscillator's frequency once, not twice: that gives the whistle's own wavelength",
                    lambda r, o: 1 / (1 / o - 1 / r),
                ),
            ],
        ),
    ],
    hints=[
        "Carriers stand on whole multiples of the spacing. Images are mirrored in hertz, so turn metres into hertz first.",
        "np.arange(first, last + spacing, spacing) includes the last. For the nearest, round frequency/spacing to "
        "a whole number and keep the result between the ends. The image's frequency is as far above the oscillator "
        "as the station is below.",
        "nearest_channel: np.clip(spacing * np.round(frequency / spacing), first, last), where first and last are "
        "the ends of carriers(spacing). image_reading: wavelength(2 * wavelength(oscillator_reading) - "
        "wavelength(reading)), as wavelength turns metres into hertz just as well; before it raise ValueError if "
        "np.any(np.less_equal(reading, oscillator_reading / 2)). carriers: 531 to 1602 kHz for 9000, 540 to 1700 "
        "kHz for 10000, and ValueError for any other.",
    ],
)

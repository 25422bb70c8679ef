"""How `rejection` is judged.

In the laws and slips: f0 the wanted station's frequency, o the offset, Q, Q1 and Q2 quality factors, k a coupling, W and U
the wanted and the unwanted field, r a rejection, p the protection asked for.
"""

import numpy as np

from checker import (
    Exercise,
    Question,
    absolute,
    at_most,
    decibels,
    equal,
    hertz,
    invariant,
    less,
    number,
    picture,
    relative,
    slip,
    value,
    volts_per_metre,
)

from .rejection import circuit_rejection, coupled_rejection, protection_left, quality_factor_needed

CLOSE = relative(1e-9, because="a few operations, double precision", floor=1e-9)
RESONANCE = "F. E. Terman, Radio Engineers' Handbook, 1943, section 3; universal_resonance_curve.csv, exact column for Q = 100"
COUPLED = "method of F. E. Terman, 1943, section 3; coupled_two_circuit_response.csv, mesh equations solved to 40 digits"
CONTOURS = "47 CFR 73.37(a), table of contours that must not overlap (2005 edition); planning.toml"
BS560 = "Recommendation ITU-R BS.560-4 (1997), section 1: 40 dB of protection on one channel; planning.toml"
TWO_FIGURES = absolute(0.005, because="the regulation's fields are round numbers; their ratio is given to 0.01 dB")
FREQUENCY, OFFSET = hertz("600 kHz", "1500 kHz"), hertz("-40 kHz", "40 kHz")
QUALITY = number(20, 400)
WANTED, UNWANTED = volts_per_metre("20 µV/m", "5 mV/m"), volts_per_metre("100 µV/m", "500 mV/m")


def apart(f0, o, *others):
    return o != 0


def away(f0, o):
    return (f0 + o) / f0 - f0 / (f0 + o)


def nearly(left, right, tolerance):
    return equal(left, right, absolute(0.01, because="a limit, nearly reached"))


def parted(f0, o, Q1, Q2, k=0.0):
    """Two circuits with nothing but a valve between them."""
    return circuit_rejection(f0, o, Q1) + circuit_rejection(f0, o, Q2)


EXERCISE = Exercise(
    title="Will the far station come out from under the near one?",
    questions=[
        Question(
            asks=circuit_rejection,
            picture=picture(along="offset"),
            given={"frequency": FREQUENCY, "offset": OFFSET, "quality_factor": QUALITY},
            edges=[lambda frequency, offset, quality_factor: (frequency, -0.98 * frequency, quality_factor)],
            where=apart,
            gives="dB",
            agrees_within=CLOSE,
            holds=[
                invariant("the wanted station itself loses nothing", lambda f, f0, o, Q: (f(f0, 0.0, Q), 0.0)),
                invariant(
                    "far outside the bandwidth, twice the Q is worth 6 dB",
                    lambda f, f0, o, Q: (f(f0, o, 2e5 * Q) - f(f0, o, 1e5 * Q), 20 * np.log10(2)),
                    nearly,
                ),
                invariant(
                    "a station twice as high is held back like one half as high",
                    lambda f, f0, o, Q: (f(f0, f0, Q), f(f0, -f0 / 2, Q)),
                ),
            ],
            published=[
                value(
                    "half a bandwidth above 1 MHz, Q 100",
                    given=(1e6, 5e3, 100.0),
                    wanted=-20 * np.log10(0.7079868135),
                    within=absolute(1e-8, because="printed to ten figures"),
                    source=RESONANCE,
                    known="recomputed",
                ),
                value(
                    "two bandwidths below it",
                    given=(1e6, -20e3, 100.0),
                    wanted=-20 * np.log10(0.2402278292),
                    within=absolute(1e-8, because="printed to ten figures"),
                    source=RESONANCE,
                    known="recomputed",
                ),
            ],
            slips=[
                slip(
                    "taken 10 log of the size: 20 log of a ratio of voltages, or 10 log of its square",
                    lambda f0, o, Q: circuit_rejection(f0, o, Q) / 2,
                ),
                slip(
                    "returned the response in decibels: rejection is counted upwards",
                    lambda f0, o, Q: -circuit_rejection(f0, o, Q),
                ),
                slip(
                    "forgotten the 2: f/f0 − f0/f is twice the offset over f0",
                    lambda f0, o, Q: 10 * np.log10(1 + (Q * o / f0) ** 2),
                ),
                slip("left out the 1, the resistance", lambda f0, o, Q: 20 * np.log10(np.abs(Q * away(f0, o)))),
                slip("used the natural logarithm", lambda f0, o, Q: circuit_rejection(f0, o, Q) * np.log(10)),
                slip(
                    "used the rule for small offsets, 2 × offset/f0: take f/f0 − f0/f",
                    lambda f0, o, Q: 10 * np.log10(1 + (2 * Q * o / f0) ** 2),
                ),
            ],
        ),
        Question(
            asks=coupled_rejection,
            further=True,
            picture=picture(along="offset"),
            given={
                "frequency": FREQUENCY,
                "offset": OFFSET,
                "primary_quality_factor": QUALITY,
                "secondary_quality_factor": QUALITY,
                "coupling_coefficient": number(0.001, 0.05),
            },
            edges=[lambda frequency, offset, *circuits: (frequency, -0.98 * frequency, *circuits)],
            where=apart,
            gives="dB",
            agrees_within=CLOSE,
            holds=[
                invariant("the wanted station itself loses nothing", lambda f, f0, o, Q1, Q2, k: (f(f0, 0.0, Q1, Q2, k), 0.0)),
                invariant(
                    "coupled ever so loosely, the two rejections add, but for the coupling's own rise with frequency",
                    lambda f, f0, o, Q1, Q2, k: (
                        f(f0, o, Q1, Q2, 1e-6) + 20 * np.log10((f0 + o) / f0),
                        f.circuit_rejection(f0, o, Q1) + f.circuit_rejection(f0, o, Q2),
                    ),
                    nearly,
                ),
                invariant(
                    "the two circuits may change places", lambda f, f0, o, Q1, Q2, k: (f(f0, o, Q1, Q2, k), f(f0, o, Q2, Q1, k))
                ),
                invariant(
                    "coupled at three times the critical, a hump lets its station through better than the wanted",
                    lambda f, f0, o, Q1, Q2, k: (f(f0, 1.5 * f0 / Q1, Q1, Q1, 3 / Q1), 0.0),
                    less,
                ),
            ],
            published=[
                value(
                    "critical coupling, Q 100, 10 kHz below 1 MHz",
                    given=(1e6, -10e3, 100.0, 100.0, 0.01),
                    wanted=-20 * np.log10(0.438300981141),
                    within=absolute(1e-9, because="printed to twelve figures"),
                    source=COUPLED,
                    known="recomputed",
                ),
                value(
                    "twice critical, 10 kHz above",
                    given=(1e6, 10e3, 100.0, 100.0, 0.02),
                    wanted=-20 * np.log10(0.977084238175 / 0.8),
                    within=absolute(1e-9, because="printed to twelve figures"),
                    source=COUPLED,
                    known="recomputed",
                ),
            ],
            slips=[
                slip("added the rejections of two circuits with nothing between them: these load each other", parted),
                slip(
                    "left out what the coupling reflects",
                    lambda f0, o, Q1, Q2, k: parted(f0, o, Q1, Q2) - 20 * np.log10((f0 + o) / f0),
                ),
                slip(
                    "left out that the coupling's reactance rises with frequency",
                    lambda f0, o, Q1, Q2, k: (
                        20
                        * np.log10(
                            np.abs((1 / Q1 + 1j * away(f0, o)) * (1 / Q2 + 1j * away(f0, o)) + k**2) / (1 / (Q1 * Q2) + k**2)
                        )
                    ),
                ),
                slip("forgotten to square the coupling", lambda f0, o, Q1, Q2, k: coupled_rejection(f0, o, Q1, Q2, np.sqrt(k))),
                slip(
                    "returned the response in decibels: rejection is counted upwards",
                    lambda *inputs: -coupled_rejection(*inputs),
                ),
                slip(
                    "measured against one circuit's own resonance, not against the wanted station behind both",
                    lambda f0, o, Q1, Q2, k: coupled_rejection(f0, o, Q1, Q2, k) + 20 * np.log10(1 + Q1 * Q2 * k**2),
                ),
            ],
        ),
        Question(
            asks=protection_left,
            given={"wanted_field": WANTED, "unwanted_field": UNWANTED, "rejection": decibels("1 dB", "60 dB")},
            gives="dB",
            agrees_within=CLOSE,
            holds=[
                invariant("two stations alike: only the circuits part them", lambda f, W, U, r: (f(W, W, r), r)),
                invariant("ten times the local is 20 dB less", lambda f, W, U, r: (f(W, 10 * U, r), f(W, U, r) - 20)),
                invariant(
                    "seen from the other station it is the other way round", lambda f, W, U, r: (f(W, U, 0.0), -f(U, W, 0.0))
                ),
            ],
            published=[
                value(
                    "on one channel, 0.5 mV/m against 25 µV/m",
                    given=(0.5e-3, 25e-6, 0.0),
                    wanted=26.02,
                    within=TWO_FIGURES,
                    source=CONTOURS,
                    known="found",
                ),
                value(
                    "10 kHz apart, 0.5 mV/m against 0.25 mV/m",
                    given=(0.5e-3, 0.25e-3, 0.0),
                    wanted=6.02,
                    within=TWO_FIGURES,
                    source=CONTOURS,
                    known="found",
                ),
            ],
            slips=[
                slip("taken 10 log: fields are voltages", lambda W, U, r: 10 * np.log10(W / U) + r),
                slip("turned the ratio over: it is wanted over unwanted", lambda W, U, r: 20 * np.log10(U / W) + r),
                slip("taken the rejection away: it helps the wanted station", lambda W, U, r: 20 * np.log10(W / U) - r),
                slip(
                    "multiplied by the decibels: first make them a ratio, or add them", lambda W, U, r: 20 * np.log10(W / U) * r
                ),
                slip("left the rejection out", lambda W, U, r: 20 * np.log10(W / U) + 0 * r),
            ],
        ),
        Question(
            asks=quality_factor_needed,
            picture=picture(along="offset", between=(3e3, 40e3)),
            given={
                "frequency": FREQUENCY,
                "offset": OFFSET,
                "wanted_field": WANTED,
                "unwanted_field": UNWANTED,
                "protection": decibels("6 dB", "60 dB"),
            },
            edges=[lambda frequency, offset, *fields: (frequency, -0.98 * frequency, *fields)],
            where=apart,
            agrees_within=CLOSE,
            holds=[
                invariant(
                    "with that Q your rejection gives the protection asked for, or the fields alone give more",
                    lambda f, f0, o, W, U, p: (
                        p,
                        f.protection_left(W, U, f.circuit_rejection(f0, o, np.maximum(f(f0, o, W, U, p), 1e-9))),
                    ),
                    at_most,
                ),
                invariant(
                    "a station already far enough above needs none", lambda f, f0, o, W, U, p: (f(f0, o, 1e4 * U, U, p), 0.0)
                ),
                invariant(
                    "twice as high a station needs a higher Q for the same offset",
                    lambda f, f0, o, W, U, p: (f(f0, abs(o), U / 2, U, p), f(2 * f0, abs(o), U / 2, U, p)),
                    less,
                ),
            ],
            published=[
                value(
                    "two stations of one strength, one at twice the other's frequency: Q × 1.5 = sqrt(10⁴ − 1)",
                    given=(846e3, 846e3, 1e-3, 1e-3, 40.0),
                    wanted=np.sqrt(9999) / 1.5,
                    within=relative(1e-9, because="exact"),
                    source=BS560,
                    known="found",
                ),
            ],
            slips=[
                slip(
                    "divided by the ratio without taking off the 1, the resistance",
                    lambda f0, o, W, U, p: (
                        10 ** (np.maximum(p - protection_left(W, U, 0.0), 0.0) / 20)
                        / np.abs(away(f0, o))
                        * (p > protection_left(W, U, 0.0))
                    ),
                ),
                slip(
                    "used the rule for small offsets, 2 × offset/f0: take f/f0 − f0/f",
                    lambda f0, o, W, U, p: quality_factor_needed(f0, o, W, U, p) * np.abs(away(f0, o) * f0 / (2 * o)),
                ),
                slip("forgotten that the fields differ", lambda f0, o, W, U, p: quality_factor_needed(f0, o, U, U, p)),
                slip("turned the ratio of the fields over", lambda f0, o, W, U, p: quality_factor_needed(f0, o, U, W, p)),
                slip(
                    "let Q be negative below the wanted station",
                    lambda f0, o, W, U, p: quality_factor_needed(f0, o, W, U, p) * np.sign(o),
                ),
                slip(
                    "left out the square root",
                    lambda f0, o, W, U, p: quality_factor_needed(f0, o, W, U, p) ** 2 * np.abs(away(f0, o)),
                ),
            ],
        ),
    ],
    hints=[
        "At the station tuned to, only resistance is in the way. Off it there is reactance as well: with the resistance "
        "as 1 it is Q × (f/f0 − f0/f). How long is the side opposite the right angle?",
        "The response is 1/(1 + jQd) with d = f/f0 − f0/f, so the rejection is 20 log10 of the size of 1 + jQd. For two "
        "circuits the sizes to compare are those of x/((1/Q1 + jd)(1/Q2 + jd) + (k x)²), x = f/f0, at x = 1 and at the "
        "other station. Fields in decibels subtract; the rejection is added.",
        "circuit_rejection is 10 * np.log10(1 + (quality_factor * d) ** 2) with d = (frequency + offset) / frequency - "
        "frequency / (frequency + offset); protection_left is 20 * np.log10(wanted_field / unwanted_field) + rejection; "
        "quality_factor_needed: what is lacking is protection - 20 * np.log10(wanted_field / unwanted_field), not less "
        "than 0, and the Q is np.sqrt(10 ** (lacking / 10) - 1) / np.abs(d). coupled_rejection: with one = 1 / "
        "primary_quality_factor, two = 1 / secondary_quality_factor, k = coupling_coefficient and x = (frequency + "
        "offset) / frequency: 20 * np.log10(np.abs((one + 1j * d) * (two + 1j * d) + (k * x) ** 2) / (x * (one * two + "
        "k**2))).",
    ],
)

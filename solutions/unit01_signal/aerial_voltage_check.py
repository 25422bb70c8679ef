"""How `aerial_voltage` is judged."""

import numpy as np

from checker import Exercise, Question, at_most, invariant, less, relative, slip, value
from checker.checks.given import metres, volts_per_metre

from .aerial_voltage import PERMITTIVITY, aerial_capacitance, aerial_emf, effective_height

ALGEBRA = relative(1e-9, because="one line of algebra, double precision")
PRINTED = relative(2e-6, because="six figures are given")
ENDS = relative(0.07, because="the simple formula leaves out the ends of the wire, where charge crowds: 5 to 7 %")
TERMAN = "F. E. Terman, Radio Engineers' Handbook, 1943, sec. 11"
ADMIRALTY = "Admiralty Handbook of Wireless Telegraphy, 1938, vol. II"
HOWE = "G. W. O. Howe, The Electrician 73, 829 (1914); method of moments"

EXERCISE = Exercise(
    title="From field to volts",
    questions=[
        Question(
            asks=effective_height,
            given={"height": metres("3 m", "30 m"), "top_length": metres("0 m", "60 m")},
            gives="m",
            agrees_within=ALGEBRA,
            holds=[
                invariant("an upright wire by itself counts for half its height", lambda f, h, b: (f(h, 0.0), h / 2)),
                invariant("with a very long top it counts in full", lambda f, h, b: (f(h, 1e12 * h), h)),
                invariant("it is never more than the height", lambda f, h, b: (f(h, b), h), at_most),
                invariant(
                    "everything twice as long, twice the effective height", lambda f, h, b: (f(2 * h, 2 * b), 2 * f(h, b))
                ),
            ],
            published=[
                value(
                    "10 m high, 20 m top", given=(10.0, 20.0), wanted=8.33333, within=PRINTED, source=TERMAN, known="recomputed"
                ),
                value(
                    "8 m high, 15 m top",
                    given=(8.0, 15.0),
                    wanted=6.60870,
                    within=PRINTED,
                    source=ADMIRALTY,
                    known="recomputed",
                ),
            ],
            slips=[
                slip("taken the full height: the current is not as strong all the way up", lambda h, b: h + 0 * b),
                slip(
                    "taken half the height: with a level top the current at the bend is not nothing", lambda h, b: h / 2 + 0 * b
                ),
                slip("counted the level part too: it does not feel an upright field", lambda h, b: (h + b) / 2),
                slip("taken the current at the bend for the mean of the upright part", lambda h, b: h * b / (h + b)),
                slip(
                    "turned the fraction over: the current at the bend is top over whole wire, b/(h + b)",
                    lambda h, b: h * (1 + h / (h + b)) / 2,
                ),
            ],
        ),
        Question(
            asks=aerial_emf,
            given={"field": volts_per_metre("10 µV/m", "1 V/m"), "effective_height": metres("1 m", "30 m")},
            gives="V",
            agrees_within=ALGEBRA,
            holds=[
                invariant("twice the field, twice the voltage", lambda f, e, h: (f(2 * e, h), 2 * f(e, h))),
                invariant("twice the effective height, twice the voltage", lambda f, e, h: (f(e, 2 * h), 2 * f(e, h))),
            ],
            published=[
                value(
                    "1 mV/m, effective height 7.58371 m",
                    given=(1e-3, 7.58371),
                    wanted=7583.71e-6,
                    within=PRINTED,
                    source=TERMAN,
                    known="recomputed",
                )
            ],
            slips=[
                slip("divided: a higher aerial gives more", lambda e, h: e / h),
                slip("returned the peak: the answer is wanted in r.m.s., like the field", lambda e, h: np.sqrt(2) * e * h),
                slip("halved the height once more: that was done in effective_height", lambda e, h: e * h / 2),
                slip("taken the field for mV/m: it comes in V/m", lambda e, h: e * h / 1000),
            ],
        ),
        Question(
            asks=aerial_capacitance,
            given={
                "height": metres("3 m", "20 m"),
                "top_length": metres("20 m", "60 m"),
                "wire_radius": metres("0.2 mm", "3 mm"),
            },
            gives="F",
            agrees_within=relative(1e-6, because="one formula; only the figures kept of the permittivity of space differ"),
            holds=[
                invariant(
                    "everything twice as large, twice the capacitance",
                    lambda f, h, b, a: (f(2 * h, 2 * b, 2 * a), 2 * f(h, b, a)),
                ),
                invariant("every metre of wire adds the same", lambda f, h, b, a: (f(h, h + 2 * b, a), 2 * f(h, b, a))),
                invariant("thicker wire has more", lambda f, h, b, a: (f(h, b, a), f(h, b, 2 * a)), less),
            ],
            published=[
                value(
                    "10 m high, 20 m top, 2 mm wire",
                    given=(10.0, 20.0, 1e-3),
                    wanted=173.82e-12,
                    within=ENDS,
                    source=HOWE,
                    known="recomputed",
                ),
                value(
                    "10 m high, 30 m top, 2 mm wire",
                    given=(10.0, 30.0, 1e-3),
                    wanted=230.45e-12,
                    within=ENDS,
                    source=HOWE,
                    known="recomputed",
                ),
            ],
            slips=[
                slip(
                    "used the logarithm to base 10: the natural one, np.log, is wanted",
                    lambda h, b, a: 2 * np.pi * PERMITTIVITY * (h + b) / np.log10(2 * h / a),
                ),
                slip(
                    "taken the wire's diameter for its radius",
                    lambda h, b, a: 2 * np.pi * PERMITTIVITY * (h + b) / np.log(h / a),
                ),
                slip("left the down-lead out", lambda h, b, a: aerial_capacitance(h, b, a) * b / (h + b)),
                slip("left out 2π", lambda h, b, a: aerial_capacitance(h, b, a) / (2 * np.pi)),
                slip(
                    "taken the capacitance between two wires: the earth is half-way, so it is twice that",
                    lambda h, b, a: aerial_capacitance(h, b, a) / 2,
                ),
            ],
        ),
    ],
    hints=[
        "Draw the wire and, beside it, the current: full at the foot, nothing at the far end, a straight line "
        "between. Only the upright part counts.",
        "Along h + b metres of wire the current falls to nothing, so at the bend there is b/(h + b) of it left. "
        "The upright part has the mean of 1 and that. For the capacitance multiply the capacitance of one metre by "
        "the metres of wire.",
        "effective_height is height * (1 + top_length / (height + top_length)) / 2; the e.m.f. is field * "
        "effective_height; the capacitance is 2 * np.pi * PERMITTIVITY * (height + top_length) / np.log(2 * height "
        "/ wire_radius).",
    ],
)

"""How `condenser` is judged.

In the laws and slips: f the function asked for, n the count of plates, A the area, d the gap, a and b two capacitances.
"""

import numpy as np

from checker import Exercise, Question, farads, invariant, less, metres, physical, relative, slip, value, whole

from .condenser import PERMITTIVITY, parallel, plates, series

CLOSE = relative(1e-9, because="a few operations, double precision")
CODATA = "CODATA 2018: the permittivity of empty space is 8.854 187 8128 pF/m"
GANGS = "Two equal gangs: twice one side by side, half of one end to end (common practice, no source)"
PAIR = {"first": farads("5 pF", "2 nF"), "second": farads("5 pF", "2 nF")}

EXERCISE = Exercise(
    title="Plates, and condensers together",
    questions=[
        Question(
            asks=plates,
            given={"count": whole(2, 40), "area": physical("m²", "0.0001 m²", "0.005 m²"), "gap": metres("0.2 mm", "5 mm")},
            gives="F",
            agrees_within=CLOSE,
            holds=[
                invariant(
                    "three plates have two gaps, twice the capacitance of two", lambda f, n, A, d: (f(3, A, d), 2 * f(2, A, d))
                ),
                invariant("twice the gap, half the capacitance", lambda f, n, A, d: (f(n, A, 2 * d), f(n, A, d) / 2)),
                invariant("twice the area, twice the capacitance", lambda f, n, A, d: (f(n, 2 * A, d), 2 * f(n, A, d))),
            ],
            published=[
                value(
                    "two plates of 1 cm², 1 mm apart: 0.885 pF",
                    given=(2, 1e-4, 1e-3),
                    wanted=0.88541878128e-12,
                    within=relative(1e-9, because="the constant, times a power of ten"),
                    source=CODATA,
                    known="recomputed",
                ),
            ],
            slips=[
                slip(
                    "counted the plates: it is the gaps that count, and there is one fewer",
                    lambda n, A, d: n * PERMITTIVITY * A / d,
                ),
                slip("taken one gap for the whole stack", lambda n, A, d: PERMITTIVITY * A / d + 0 * n),
                slip("counted a gap too many: one fewer than the plates", lambda n, A, d: (n + 1) * PERMITTIVITY * A / d),
                slip("put n - 1 without its brackets", lambda n, A, d: n - 1 * PERMITTIVITY * A / d),
                slip("turned area and gap over", lambda n, A, d: (n - 1) * PERMITTIVITY * d / A),
                slip(
                    "taken the area in square centimetres: it comes in square metres",
                    lambda n, A, d: (n - 1) * PERMITTIVITY * A * 1e-4 / d,
                ),
                slip(
                    "turned the area into square centimetres: the formula wants square metres",
                    lambda n, A, d: (n - 1) * PERMITTIVITY * A * 1e4 / d,
                ),
                slip(
                    "taken the gap in millimetres: it comes in metres", lambda n, A, d: (n - 1) * PERMITTIVITY * A / (d / 1e3)
                ),
                slip(
                    "turned the gap into millimetres: the formula wants metres",
                    lambda n, A, d: (n - 1) * PERMITTIVITY * A / (d * 1e3),
                ),
                slip("returned picofarads: farads are wanted", lambda n, A, d: (n - 1) * PERMITTIVITY * A / d * 1e12),
            ],
        ),
        Question(
            asks=parallel,
            given=PAIR,
            gives="F",
            agrees_within=CLOSE,
            holds=[
                invariant("both together are more than either", lambda f, a, b: (np.maximum(a, b), f(a, b)), less),
                invariant("it is the same whichever comes first", lambda f, a, b: (f(a, b), f(b, a))),
            ],
            published=[
                value(
                    "two of 365 pF: 730 pF",
                    given=(365e-12, 365e-12),
                    wanted=730e-12,
                    within=CLOSE,
                    source=GANGS,
                    known="memory",
                ),
            ],
            slips=[
                slip("used the rule for end to end: side by side they add", lambda a, b: a * b / (a + b)),
                slip("taken the mean: they add", lambda a, b: (a + b) / 2),
                slip("multiplied them", lambda a, b: a * b),
                slip("added the squares", lambda a, b: np.sqrt(a**2 + b**2)),
            ],
        ),
        Question(
            asks=series,
            given=PAIR,
            gives="F",
            agrees_within=CLOSE,
            holds=[
                invariant("end to end they are less than the smaller", lambda f, a, b: (f(a, b), np.minimum(a, b)), less),
                invariant("the inverse values add", lambda f, a, b: (1 / f(a, b), 1 / a + 1 / b)),
            ],
            published=[
                value(
                    "two of 365 pF: 182.5 pF",
                    given=(365e-12, 365e-12),
                    wanted=182.5e-12,
                    within=CLOSE,
                    source=GANGS,
                    known="memory",
                ),
            ],
            slips=[
                slip("added them: that is side by side", lambda a, b: a + b),
                slip("forgotten to turn the sum of the inverse values over", lambda a, b: 1 / a + 1 / b),
                slip("halved the smaller one: that is right for two equal ones only", lambda a, b: np.minimum(a, b) / 2),
                slip("forgotten to divide by the sum", lambda a, b: a * b),
            ],
        ),
    ],
    hints=[
        "Each gap between two plates is a condenser. All gaps lie side by side. How many gaps has a stack?",
        "Side by side capacitances add. End to end it is their inverse values that add; multiplied out, that is the product over the sum.",
        "plates is (count - 1) * PERMITTIVITY * area / gap; parallel is first + second; series is first * second / (first + second).",
    ],
)

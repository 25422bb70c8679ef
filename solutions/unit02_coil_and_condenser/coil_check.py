"""How `coil` is judged.

In the laws and slips: f the function asked for, N the turns, D the diameter, h the length of the winding, L the inductance.
"""

import numpy as np

from checker import Exercise, Question, henries, invariant, metres, number, relative, slip, value

from .coil import INCH, inductance, turns_for

CLOSE = relative(1e-9, because="a few operations, double precision")
WHEELER = 'H. A. Wheeler, "Simple Inductance Formulas for Radio Coils", Proc. IRE 16, 1928; wheeler_1928.csv'
HANDBOOK = "The Radio Amateur's Handbook, ARRL, chapter on inductance: its worked coil (from memory), recomputed"
FORMER = {"diameter": metres("10 mm", "150 mm"), "length": metres("10 mm", "300 mm")}


def by_radius(N, r, h):
    return 1e-6 / INCH * (r * N) ** 2 / (9 * r + 10 * h)


def turns_by_radius(L, r, h):
    return np.sqrt(1e6 * INCH * L * (9 * r + 10 * h)) / r


EXERCISE = Exercise(
    title="A coil by a pencil's formula",
    questions=[
        Question(
            asks=inductance,
            given={"turns": number(5, 300), **FORMER},
            gives="H",
            agrees_within=CLOSE,
            holds=[
                invariant(
                    "twice the turns on one former, four times the inductance",
                    lambda f, N, D, h: (f(2 * N, D, h), 4 * f(N, D, h)),
                ),
                invariant(
                    "a coil twice as large every way has twice the inductance",
                    lambda f, N, D, h: (f(N, 2 * D, 2 * h), 2 * f(N, D, h)),
                ),
            ],
            published=[
                value(
                    "one turn on a radius of 1 inch, 2 inches long",
                    given=(1.0, 2 * INCH, 2 * INCH),
                    wanted=1e-6 / 29,
                    within=relative(1e-9, because="printed to twelve figures"),
                    source=WHEELER,
                    known="recomputed",
                ),
                value(
                    "48 turns, ¾ inch across, 1½ inches long: 17.6 µH",
                    given=(48.0, 0.75 * INCH, 1.5 * INCH),
                    wanted=17.6e-6,
                    within=relative(3e-3, because="printed to three figures"),
                    source=HANDBOOK,
                    known="memory",
                ),
            ],
            slips=[
                slip("taken the diameter for the radius", lambda N, D, h: by_radius(N, D, h)),
                slip("left the turns unsquared", lambda N, D, h: inductance(N, D, h) / N),
                slip("left the radius unsquared", lambda N, D, h: inductance(N, D, h) / (D / 2)),
                slip("put metres into a formula for inches", lambda N, D, h: INCH * inductance(N, D, h)),
                slip("returned microhenries: henries are wanted", lambda N, D, h: 1e6 * inductance(N, D, h)),
                slip("exchanged the 9 and the 10", lambda N, D, h: 1e-6 / INCH * (D / 2 * N) ** 2 / (10 * D / 2 + 9 * h)),
                slip(
                    "divided by 9r alone and then added 10l: brackets",
                    lambda N, D, h: 1e-6 / INCH * ((D / 2 * N) ** 2 / (9 * D / 2) + 10 * h),
                ),
                slip("multiplied by INCH where you should divide", lambda N, D, h: INCH**2 * inductance(N, D, h)),
            ],
        ),
        Question(
            asks=turns_for,
            given={"inductance": henries("1 µH", "3 mH"), **FORMER},
            gives="",
            agrees_within=CLOSE,
            holds=[
                invariant("so many turns make the wanted inductance", lambda f, L, D, h: (f.inductance(f(L, D, h), D, h), L)),
                invariant(
                    "four times the inductance takes twice the turns", lambda f, L, D, h: (f(4 * L, D, h), 2 * f(L, D, h))
                ),
            ],
            published=[
                value(
                    "17.6 µH, ¾ inch across, 1½ inches long: 48 turns",
                    given=(17.6e-6, 0.75 * INCH, 1.5 * INCH),
                    wanted=48.0,
                    within=relative(3e-3, because="printed to three figures"),
                    source=HANDBOOK,
                    known="memory",
                ),
            ],
            slips=[
                slip(
                    "left out the square root: the turns stand squared in the formula", lambda L, D, h: turns_for(L, D, h) ** 2
                ),
                slip("taken the diameter for the radius", lambda L, D, h: turns_by_radius(L, D, h)),
                slip(
                    "divided by the root of the radius: r² leaves the root as r",
                    lambda L, D, h: turns_for(L, D, h) * np.sqrt(D / 2),
                ),
                slip("put metres into a formula for inches", lambda L, D, h: turns_for(L, D, h) / np.sqrt(INCH)),
                slip("put henries where the formula wants microhenries", lambda L, D, h: turns_for(L, D, h) / 1e3),
                slip("exchanged the 9 and the 10", lambda L, D, h: np.sqrt(1e6 * INCH * L * (10 * D / 2 + 9 * h)) / (D / 2)),
                slip("rounded to whole turns: leave the fraction in", lambda L, D, h: np.round(turns_for(L, D, h))),
            ],
        ),
    ],
    hints=[
        "The radius is half the diameter. Every turn makes the field and every turn catches it, so the turns count squared.",
        "With r and l in metres the pencil's formula is L = (1e-6/INCH) r² N² / (9 r + 10 l). For the turns, bring N² to one side and take "
        "the root.",
        "With radius = diameter / 2: inductance is 1e-6 / INCH * (radius * turns) ** 2 / (9 * radius + 10 * length); turns_for is "
        "np.sqrt(1e6 * INCH * inductance * (9 * radius + 10 * length)) / radius.",
    ],
)

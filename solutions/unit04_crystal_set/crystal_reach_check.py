"""How `crystal_reach` is judged. In the laws and slips: f the function asked for, E the e.m.f. or the field, R the resistance,
k the share, P the power.
"""

import numpy as np

from checker import Exercise, Question, invariant, number, ohms, relative, slip, value, volts, volts_per_metre, watts

from .crystal_reach import phone_power, reach

CLOSE = relative(1e-9, because="a few operations, double precision")
P368 = "Recommendation ITU-R P.368, Annex 1: 300 mV/m at 1 km for 1 kW"
THEOREM = "the maximum power theorem, named after M. H. von Jacobi (from memory): a load equal to R has half of E"

EXERCISE = Exercise(
    title="How far out does it play?",
    questions=[
        Question(
            asks=phone_power,
            given={"emf": volts("100 µV", "1 V"), "resistance": ohms("5 Ω", "200 Ω"), "share": number(0, 1)},
            gives="W",
            agrees_within=CLOSE,
            holds=[
                invariant("twice the e.m.f., four times the power", lambda f, E, R, k: (f(2 * E, R, k), 4 * f(E, R, k))),
                invariant("half the share, half the power", lambda f, E, R, k: (f(E, R, k / 2), f(E, R, k) / 2)),
                invariant("twice the resistance, half the power", lambda f, E, R, k: (f(E, 2 * R, k), f(E, R, k) / 2)),
            ],
            published=[
                value(
                    "all that 1 V can give through 1 Ω: half a volt across one ohm, ¼ W",
                    given=(1.0, 1.0, 1.0),
                    wanted=0.25,
                    within=CLOSE,
                    source=THEOREM,
                    known="recomputed",
                ),
            ],
            slips=[
                slip("left out the 4: the load has only half of the e.m.f.", lambda E, R, k: k * E**2 / R),
                slip("used 2 for 4", lambda E, R, k: k * E**2 / (2 * R)),
                slip("multiplied by R for want of brackets: E² / 4 * R", lambda E, R, k: k * E**2 / 4 * R),
                slip("left the e.m.f. unsquared", lambda E, R, k: k * E / (4 * R)),
                slip("left out the share", lambda E, R, k: E**2 / (4 * R) + 0 * k),
                slip("taken the share for a loss", lambda E, R, k: (1 - k) * E**2 / (4 * R)),
                slip("taken the share for per cent: it is a fraction", lambda E, R, k: k / 100 * E**2 / (4 * R)),
                slip("taken the e.m.f. for a crest: it is r.m.s.", lambda E, R, k: k * E**2 / (8 * R)),
            ],
        ),
        Question(
            asks=reach,
            given={"power": watts("10 W", "500 kW"), "least_field": volts_per_metre("100 µV/m", "100 mV/m")},
            gives="m",
            agrees_within=CLOSE,
            holds=[
                invariant("four times the power reaches twice as far", lambda f, P, E: (f(4 * P, E), 2 * f(P, E))),
                invariant("half the field is enough: twice as far", lambda f, P, E: (f(P, E / 2), 2 * f(P, E))),
            ],
            published=[
                value(
                    "1 kW and a set that needs 5 mV/m: 60 km",
                    given=(1e3, 5e-3),
                    wanted=60e3,
                    within=CLOSE,
                    source=P368,
                    known="recomputed",
                ),
            ],
            slips=[
                slip("taken the power in kilowatts: it comes in watts", lambda P, E: np.sqrt(90 * P / 1e3) / E),
                slip("left out the square root", lambda P, E: 90 * P / E),
                slip("turned the fraction over", lambda P, E: E / np.sqrt(90 * P)),
                slip("multiplied by the field: the less it needs, the further", lambda P, E: np.sqrt(90 * P) * E),
                slip("divided by the field squared", lambda P, E: np.sqrt(90 * P) / E**2),
                slip("taken the field in millivolts a metre: it comes in volts", lambda P, E: 1e3 * np.sqrt(90 * P) / E),
                slip("returned kilometres: metres are wanted", lambda P, E: np.sqrt(90 * P) / E / 1e3),
                slip("taken the root of the power alone: the 90 belongs under it", lambda P, E: 90 * np.sqrt(P) / E),
            ],
        ),
    ],
    hints=[
        "A load takes most when its resistance equals the aerial's. It then has half of the e.m.f. How many watts is that? The reach is "
        "`distance_for` of unit 1 once more.",
        "Half of E across R is E²/4R; the telephones get their share of it. The field falls as sqrt(90 P)/d: solve that for d.",
        "phone_power is share * emf**2 / (4 * resistance), and reach is np.sqrt(90 * power) / least_field.",
    ],
)

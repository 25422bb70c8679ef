"""How `inverse_distance` is judged. In the laws and slips: f the function asked for, P the power, d the distance, E the field."""

import numpy as np

from checker import Exercise, Question, invariant, metres, picture, relative, slip, value, volts_per_metre, watts

from .inverse_distance import distance_for, field

CLOSE = relative(1e-9, because="a root and a division, double precision")
P368 = "Recommendation ITU-R P.368, Annex 1"
PRINTED = relative(1e-9, because="the Recommendation's own round figure")
POWER = watts("10 W", "500 kW")

EXERCISE = Exercise(
    title="Twice as far, half the field",
    questions=[
        Question(
            asks=field,
            picture=picture(along="distance"),
            given={"power": POWER, "distance": metres("100 m", "300 km")},
            gives="V/m",
            agrees_within=CLOSE,
            holds=[
                invariant("twice as far, half the field", lambda f, P, d: (f(P, 2 * d), f(P, d) / 2)),
                invariant("four times the power, twice the field", lambda f, P, d: (f(4 * P, d), 2 * f(P, d))),
            ],
            published=[
                value("1 kW at 1 km: 300 mV/m", given=(1e3, 1e3), wanted=0.3, within=PRINTED, source=P368, known="memory"),
            ],
            slips=[
                slip(
                    "divided by the distance squared: so the power thins out, and the field is its root",
                    lambda P, d: np.sqrt(90 * P) / d**2,
                ),
                slip(
                    "taken the distance in kilometres, or returned millivolts: it is metres in, volts a metre out",
                    lambda P, d: np.sqrt(90 * P) / (d / 1e3),
                ),
                slip("taken the power in kilowatts: it comes in watts", lambda P, d: np.sqrt(90 * P / 1e3) / d),
                slip("left out the square root", lambda P, d: 90 * P / d),
                slip("taken the root of the power alone: the 90 belongs under it", lambda P, d: 90 * np.sqrt(P) / d),
                slip("taken the root of all of it: the distance stands outside", lambda P, d: np.sqrt(90 * P / d)),
                slip("used 300, which is for kilowatts and kilometres in millivolts", lambda P, d: 300 * np.sqrt(P) / d),
            ],
        ),
        Question(
            asks=distance_for,
            picture=picture(along="field"),
            given={"power": POWER, "field": volts_per_metre("100 µV/m", "3 V/m")},
            gives="m",
            agrees_within=CLOSE,
            holds=[
                invariant("at that distance the field is the given one", lambda f, P, E: (f.field(P, f(P, E)), E)),
                invariant("half the field is reached twice as far out", lambda f, P, E: (f(P, E / 2), 2 * f(P, E))),
            ],
            published=[
                value("1 kW, 300 mV/m: 1 km", given=(1e3, 0.3), wanted=1e3, within=PRINTED, source=P368, known="memory"),
            ],
            slips=[
                slip("turned the fraction over", lambda P, E: E / np.sqrt(90 * P)),
                slip("multiplied by the field: the weaker it may be, the further out", lambda P, E: np.sqrt(90 * P) * E),
                slip("divided by the field squared", lambda P, E: np.sqrt(90 * P) / E**2),
                slip("taken the root of the field as well", lambda P, E: np.sqrt(90 * P / E)),
                slip("taken the field in millivolts a metre: it comes in volts", lambda P, E: np.sqrt(90 * P) / (E / 1e3)),
                slip("returned kilometres: metres are wanted", lambda P, E: np.sqrt(90 * P) / (1e3 * E)),
                slip("left out the square root", lambda P, E: 90 * P / E),
                slip("taken the power in kilowatts: it comes in watts", lambda P, E: np.sqrt(90 * P / 1e3) / E),
            ],
        ),
    ],
    hints=[
        "The field falls as one over the distance, and grows as the root of the power. One figure fixes the rest: 1 kW at 1 km makes "
        "300 mV/m.",
        "In volts, watts and metres E = sqrt(90 P)/d. Multiply by d and divide by E to have the distance.",
        "field is np.sqrt(90 * power) / distance, and distance_for is np.sqrt(90 * power) / field.",
    ],
)

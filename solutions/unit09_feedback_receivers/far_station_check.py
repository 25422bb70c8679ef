"""How `far_station` is judged.

In the laws and slips: f the function asked for, d the distance from the carrier, A decibels, f0 the station's frequency, Q the
quality factor, B the band.
"""

import numpy as np

from checker import Exercise, Question, decibels, equal, hertz, invariant, less, number, relative, slip, value

from .far_station import feedback, narrowest, widest

CLOSE = relative(1e-9, because="a few operations, double precision")
CURVE = "the universal resonance curve, F. E. Terman, Radio Engineers' Handbook, 1943, section 3; universal_resonance_curve.csv"
SHARPENED = "reaction.toml, q_multiplication: 1 MHz, Q 100, nine tenths of the loss paid back leave 1 kHz of 10"
PRINTED = relative(1e-8, because="printed to ten figures")


def band(d, ratio):
    """The band from the ratio of powers, or from what a slip puts in its place."""
    return 2 * d / np.sqrt(ratio - 1)


def nearly(left, right, tolerance):
    return equal(left, right, relative(1e-7, because="a difference of near numbers"))


SLIPS = [
    slip("left out the 2: the band has two sides", lambda d, A: band(d, 10 ** (A / 10)) / 2),
    slip("used 20 for 10: the decibels stand for a ratio of powers here", lambda d, A: band(d, 10 ** (A / 20))),
    slip("lost the -1 under the root", lambda d, A: 2 * d / np.sqrt(10 ** (A / 10))),
    slip("left out the square root", lambda d, A: 2 * d / (10 ** (A / 10) - 1)),
    slip("turned the fraction over", lambda d, A: np.sqrt(10 ** (A / 10) - 1) / (2 * d)),
    slip("multiplied by the root where you should divide", lambda d, A: 2 * d * np.sqrt(10 ** (A / 10) - 1)),
    slip("used the decibels as they are, without 10 to their power", lambda d, A: 2 * d / np.sqrt(A)),
    slip("used e for 10", lambda d, A: band(d, np.exp(A / 10))),
]

EXERCISE = Exercise(
    title="The far station, by three numbers",
    questions=[
        Question(
            asks=widest,
            given={"offset": hertz("1 kHz", "50 kHz"), "rejection": decibels("3 dB", "60 dB")},
            gives="Hz",
            agrees_within=CLOSE,
            holds=[
                invariant("twice as far off, twice the band", lambda f, d, A: (f(2 * d, A), 2 * f(d, A))),
                invariant("more rejection needs a narrower band", lambda f, d, A: (f(d, A + 1), f(d, A)), less),
                invariant(
                    "in that band the neighbour is down by so much",
                    lambda f, d, A: (10 * np.log10(1 + (2 * d / f(d, A)) ** 2), A),
                    nearly,
                ),
            ],
            published=[
                value(
                    "9 kHz off and 6.9897 dB down: 9 kHz wide",
                    given=(9e3, 6.989700043),
                    wanted=9e3,
                    within=PRINTED,
                    source=CURVE,
                    known="recomputed",
                ),
            ],
            slips=SLIPS,
        ),
        Question(
            asks=narrowest,
            given={"tone": hertz("300 Hz", "10 kHz"), "loss": decibels("1 dB", "20 dB")},
            gives="Hz",
            agrees_within=CLOSE,
            holds=[
                invariant("twice the tone needs twice the band", lambda f, d, A: (f(2 * d, A), 2 * f(d, A))),
                invariant("who bears more loss may have it narrower", lambda f, d, A: (f(d, A + 1), f(d, A)), less),
                invariant("a neighbour at the tone's distance loses the same", lambda f, d, A: (f(d, A), f.widest(d, A))),
            ],
            published=[
                value(
                    "a tone of 1 kHz, 3 dB down: 2 kHz wide",
                    given=(1e3, 3.010299957),
                    wanted=2e3,
                    within=PRINTED,
                    source=CURVE,
                    known="recomputed",
                ),
            ],
            slips=SLIPS,
        ),
        Question(
            asks=feedback,
            given={
                "frequency": hertz("500 kHz", "1.7 MHz"),
                "quality_factor": number(30, 300),
                "band": hertz("200 Hz", "20 kHz"),
            },
            gives="",
            agrees_within=relative(1e-9, because="three operations, double precision", floor=1e-12),
            holds=[
                invariant(
                    "half the band leaves half the loss unpaid",
                    lambda f, f0, Q, B: (1 - f(f0, Q, B / 2), (1 - f(f0, Q, B)) / 2),
                ),
                invariant("the circuit's own band needs none", lambda f, f0, Q, B: (f(f0, Q, f0 / Q), 0.0)),
                invariant("it is never as much as 1", lambda f, f0, Q, B: (f(f0, Q, B), 1.0), less),
            ],
            published=[
                value(
                    "1 kHz at 1 MHz from a Q of 100: nine tenths",
                    given=(1e6, 100.0, 1e3),
                    wanted=0.9,
                    within=CLOSE,
                    source=SHARPENED,
                    known="recomputed",
                ),
            ],
            slips=[
                slip("returned what is left of the loss: what is paid back is wanted", lambda f0, Q, B: B * Q / f0),
                slip("turned the fraction over", lambda f0, Q, B: 1 - f0 / (B * Q)),
                slip("turned the sign", lambda f0, Q, B: B * Q / f0 - 1),
                slip("divided by Q: the circuit's own band is f over Q", lambda f0, Q, B: 1 - B / (Q * f0)),
                slip("left out Q", lambda f0, Q, B: 1 - B / f0 + 0 * Q),
                slip("left out the brackets: 1 - B stands alone", lambda f0, Q, B: (1 - B) * Q / f0),
                slip("taken the band for half of it", lambda f0, Q, B: 1 - 2 * B * Q / f0),
                slip("returned by how much the gain rises", lambda f0, Q, B: f0 / (B * Q)),
            ],
        ),
    ],
    hints=[
        "Off by d, a circuit with a band of B loses 10 log10(1 + (2d/B)²) decibels. You know the decibels and d: solve for B, step by step "
        "from the outside.",
        "Divide the decibels by 10 and take 10 to that power; take 1 away; take the root: that is 2d/B. And reaction: the circuit's own "
        "band is f/Q, and 1 - k of it is left.",
        "widest is 2 * offset / np.sqrt(10 ** (rejection / 10) - 1); narrowest is the same with tone and loss, 2 * tone / "
        "np.sqrt(10 ** (loss / 10) - 1); feedback is 1 - band * quality_factor / frequency.",
    ],
)

"""How `swing_step` is judged.

In the laws and slips: f the function asked for, v the swing, p the push, g the growth, t the step.
"""

import numpy as np

from checker import Exercise, Question, invariant, physical, picture, relative, seconds, slip, value, volts

from .swing_step import swing_step

CLOSE = relative(1e-9, because="one exponential, double precision, and a difference of near numbers", floor=1e-9)
IEV = "IEC 60050, International Electrotechnical Vocabulary, 103-05-26, time constant (from memory): up to 1 - 1/e"

EXERCISE = Exercise(
    title="One step of a swing",
    questions=[
        Question(
            asks=swing_step,
            picture=picture(along="step", at={"swing": 0.0, "growth": -10e3}, between=(0.0, 400e-6)),
            given={
                "swing": volts("0 V", "5 V"),
                "push": physical("V/s", "0 V/s", "50 kV/s"),
                "growth": physical("/s", "-20 k/s", "20 k/s"),
                "step": seconds("1 µs", "200 µs"),
            },
            where=lambda v, p, g, t: abs(g * t) > 1e-3,
            gives="V",
            agrees_within=CLOSE,
            holds=[
                invariant(
                    "two half steps are one whole step",
                    lambda f, v, p, g, t: (f(f(v, p, g, t / 2), p, g, t / 2), f(v, p, g, t)),
                ),
                invariant(
                    "without a push, twice the swing stays twice the swing",
                    lambda f, v, p, g, t: (f(2 * v, 0.0, g, t), 2 * f(v, 0.0, g, t)),
                ),
                invariant("where push and decay balance, nothing changes", lambda f, v, p, g, t: (f(-p / g, p, g, t), -p / g)),
            ],
            published=[
                value(
                    "from nothing, a push of 1 V in each time constant, for one of them: 63.2 %",
                    given=(0.0, 1e4, -1e4, 1e-4),
                    wanted=1 - np.exp(-1),
                    within=relative(1e-9, because="1 - 1/e"),
                    source=IEV,
                    known="recomputed",
                ),
                value(
                    "left alone, for one time constant: 36.8 % is left",
                    given=(1.0, 0.0, -1e4, 1e-4),
                    wanted=np.exp(-1),
                    within=relative(1e-9, because="1/e"),
                    source=IEV,
                    known="recomputed",
                ),
            ],
            slips=[
                slip(
                    "lost the -1 behind the push: from nothing it would start with a jump",
                    lambda v, p, g, t: (v + p / g) * np.exp(g * t),
                ),
                slip("turned the sign of the growth: above 0 the swing grows", lambda v, p, g, t: swing_step(v, p, -g, t)),
                slip(
                    "turned the bracket round: the factor comes first, then -1",
                    lambda v, p, g, t: v * np.exp(g * t) + p * (1 - np.exp(g * t)) / g,
                ),
                slip(
                    "left out the brackets: the -1 belongs to the factor, above the line",
                    lambda v, p, g, t: v * np.exp(g * t) + p * np.exp(g * t) - 1 / g,
                ),
                slip("left the push out", lambda v, p, g, t: v * np.exp(g * t) + 0 * p),
                slip("left out what the swing was", lambda v, p, g, t: p * (np.exp(g * t) - 1) / g + 0 * v),
                slip("forgotten to divide by the growth", lambda v, p, g, t: v * np.exp(g * t) + p * (np.exp(g * t) - 1)),
                slip("let the push work as if nothing grew or died", lambda v, p, g, t: v * np.exp(g * t) + p * t),
                slip("let the old swing stand still", lambda v, p, g, t: v + p * (np.exp(g * t) - 1) / g),
                slip("taken a straight line for the exponential", lambda v, p, g, t: v + (g * v + p) * t),
                slip(
                    "divided all of it by the growth: only the push's part",
                    lambda v, p, g, t: (v * np.exp(g * t) + p * (np.exp(g * t) - 1)) / g,
                ),
            ],
        ),
    ],
    hints=[
        "Two things happen in the step. What was there grows or dies by a factor. And the push brings something new, some of which has "
        "grown or died already.",
        "The factor is e to the power of growth times step. The old swing takes the whole factor; the push brings push times (factor - 1) "
        "over growth.",
        "factor = np.exp(growth * step), and then return swing * factor + push * (factor - 1) / growth.",
    ],
)

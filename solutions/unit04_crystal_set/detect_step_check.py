"""How `detect_step` is judged.

In the laws and slips: f the function asked for, h the voltage held, w the wave, s the step, T the time constant.
"""

import numpy as np

from checker import Exercise, Question, at_most, invariant, picture, relative, seconds, slip, value, volts

from .detect_step import detect_step

IEV = "IEC 60050, International Electrotechnical Vocabulary, 103-05-26, time constant (from memory): down to 1/e"

EXERCISE = Exercise(
    title="Up at once, down slowly",
    questions=[
        Question(
            asks=detect_step,
            picture=picture(along="step", between=(0.0, 400e-6)),
            given={
                "held": volts("0 V", "5 V"),
                "wave": volts("-5 V", "5 V"),
                "step": seconds("100 ns", "100 µs"),
                "time_constant": seconds("10 µs", "1 ms"),
            },
            gives="V",
            agrees_within=relative(1e-9, because="one exponential, double precision"),
            holds=[
                invariant("what is held is never below the wave", lambda f, h, w, s, T: (w, f(h, w, s, T)), at_most),
                invariant("it never rises by itself", lambda f, h, w, s, T: (f(h, -5.0, s, T), h), at_most),
                invariant(
                    "with no wave, two half steps are one whole step",
                    lambda f, h, w, s, T: (f(f(h, 0.0, s / 2, T), 0.0, s / 2, T), f(h, 0.0, s, T)),
                ),
                invariant(
                    "a wave above what is held is followed at once", lambda f, h, w, s, T: (f(h, h + 1.0, s, T), h + 1.0)
                ),
            ],
            published=[
                value(
                    "1 V, with no wave, after one time constant: 36.8 %",
                    given=(1.0, 0.0, 200e-6, 200e-6),
                    wanted=np.exp(-1),
                    within=relative(1e-9, because="1/e"),
                    source=IEV,
                    known="recomputed",
                ),
            ],
            slips=[
                slip(
                    "taken the smaller of the two: the crystal lets the higher one in",
                    lambda h, w, s, T: np.minimum(w, h * np.exp(-s / T)),
                ),
                slip("forgotten the minus sign: left alone it falls", lambda h, w, s, T: np.maximum(w, h * np.exp(s / T))),
                slip("turned step and time constant over", lambda h, w, s, T: np.maximum(w, h * np.exp(-T / s))),
                slip(
                    "let it keep all that it held: the resistance empties it", lambda h, w, s, T: np.maximum(w, h) + 0 * s / T
                ),
                slip(
                    "compared before the fall, and let the sum fall too", lambda h, w, s, T: np.maximum(w, h) * np.exp(-s / T)
                ),
                slip("left the wave out: it only falls", lambda h, w, s, T: h * np.exp(-s / T) + 0 * w),
                slip("added the wave: the crystal lets in only what is higher", lambda h, w, s, T: w + h * np.exp(-s / T)),
                slip(
                    "followed the wave to below zero as well, by its size",
                    lambda h, w, s, T: np.maximum(abs(w), h * np.exp(-s / T)),
                ),
                slip("taken a straight line for the exponential", lambda h, w, s, T: np.maximum(w, h * (1 - s / T))),
                slip("used powers of 10: it falls by powers of 2.718", lambda h, w, s, T: np.maximum(w, h * 10 ** (-s / T))),
            ],
        ),
    ],
    hints=[
        "Two things can happen. Either the wave is higher than the condenser, and the crystal lets it in; or it is lower, and the condenser "
        "is left alone and falls a little.",
        "Left alone it falls to held times e to the power of minus step over time constant. Then take the larger of that and the wave.",
        "return np.maximum(wave, held * np.exp(-step / time_constant))",
    ],
)

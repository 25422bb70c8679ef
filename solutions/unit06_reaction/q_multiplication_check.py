"""How `q_multiplication` is judged.

In the laws and slips: Q and f0 the circuit's own, k the feedback, B the bandwidth wanted, R and left the resistance
without and with feedback.
"""

import numpy as np

from checker import Exercise, Question, at_most, hertz, invariant, less, number, ohms, picture, refusal, relative, slip, value

from .q_multiplication import feedback_for_bandwidth, feedback_fraction, gain_and_bandwidth, multiplied_q, touchiness

TERMAN = "F. E. Terman, Radio Engineers' Handbook, 1943, section 6 (relation from memory); reaction.toml, q_multiplication"
CLOSE = relative(1e-9, because="a few operations, double precision")
NEAR_ONE = relative(1e-9, because="a few operations, double precision", floor=1e-12)
PRINTED = relative(1e-9, because="round numbers")
QUALITY = number(20, 300)
FREQUENCY = hertz("500 kHz", "1600 kHz")
FEEDBACK = number(-0.9, 0.98)

EXERCISE = Exercise(
    title="How much sharper, how much louder?",
    questions=[
        Question(
            asks=feedback_fraction,
            picture=picture(along="resistance_with_feedback"),
            given={"resistance": ohms("5 Ω", "40 Ω"), "resistance_with_feedback": ohms("100 mΩ", "50 Ω")},
            agrees_within=NEAR_ONE,
            holds=[
                invariant("nothing changed is no feedback", lambda k, R, left: (k(R, R), 0)),
                invariant("nothing left of the loss is the whole of it", lambda k, R, left: (k(R, 0.0), 1)),
                invariant("ohms may be counted in any unit", lambda k, R, left: (k(3 * R, 3 * left), k(R, left))),
            ],
            published=[
                value(
                    "9 Ω of which 90 % are gone",
                    given=(9.0, 0.9),
                    wanted=0.9,
                    within=PRINTED,
                    source=TERMAN,
                    known="recomputed",
                ),
            ],
            slips=[
                slip("returned what is left, not what is gone", lambda R, left: left / R),
                slip("divided by the resistance that is left", lambda R, left: (R - left) / left),
                slip("turned the sign: taking loss away counts as positive", lambda R, left: left / R - 1),
                slip("returned ohms: divide by the resistance there was", lambda R, left: R - left),
            ],
        ),
        Question(
            asks=multiplied_q,
            picture=picture(along="feedback", between=(0.0, 0.98)),
            given={"quality_factor": QUALITY, "feedback": FEEDBACK},
            edges=[lambda quality_factor, feedback: (quality_factor, 0.99)],
            agrees_within=CLOSE,
            holds=[
                invariant("no feedback leaves Q alone", lambda q, Q, k: (q(Q, 0.0), Q)),
                invariant("more feedback always makes it sharper", lambda q, Q, k: (q(Q, k - 0.01), q(Q, k)), less),
                invariant("wound the other way round it only gets broader", lambda q, Q, k: (q(Q, -abs(k)), Q), at_most),
            ],
            published=[
                value(
                    "nine tenths of the loss gone: ten times the Q",
                    given=(100.0, 0.9),
                    wanted=1000.0,
                    within=PRINTED,
                    source=TERMAN,
                    known="recomputed",
                ),
                value(
                    "98 %: fifty times", given=(100.0, 0.98), wanted=5000.0, within=PRINTED, source=TERMAN, known="recomputed"
                ),
            ],
            refuses=[
                refusal("a feedback of 1: the threshold itself", (100.0, 1.0)),
                refusal("a feedback of 1.5: it oscillates, though the formula gives a number", (100.0, 1.5), (100.0, 1.001)),
            ],
            slips=[
                slip("written 1 + k: feedback takes loss away", lambda Q, k: Q / (1 + k)),
                slip("multiplied by 1 − k: it is the loss that shrinks by that", lambda Q, k: Q * (1 - k)),
                slip("taken k for the factor", lambda Q, k: Q * (1 + k)),
                slip("squared the feedback", lambda Q, k: Q / (1 - k**2)),
                slip("returned how many times, without the circuit's own Q", lambda Q, k: 1 / (1 - k) + 0 * Q),
            ],
        ),
        Question(
            asks=gain_and_bandwidth,
            picture=picture(along="feedback", between=(0.0, 0.98)),
            given={"resonant_frequency": FREQUENCY, "quality_factor": QUALITY, "feedback": FEEDBACK},
            edges=[lambda resonant_frequency, quality_factor, feedback: (resonant_frequency, quality_factor, 0.99)],
            gives=("", "Hz"),
            agrees_within=CLOSE,
            holds=[
                invariant(
                    "gain times bandwidth stays what it was, whatever the feedback",
                    lambda f, f0, Q, k: (np.prod(f(f0, Q, k)), np.prod(f(f0, Q, 0.0))),
                ),
                invariant("without feedback the gain is Q", lambda f, f0, Q, k: (f(f0, Q, 0.0)[0], Q)),
                invariant(
                    "more gain always costs bandwidth", lambda f, f0, Q, k: (f(f0, Q, k)[1], f(f0, Q, k - 0.01)[1]), less
                ),
            ],
            published=[
                value(
                    "1 MHz, Q 100, 95 % of the loss gone: 500 Hz are left",
                    given=(1e6, 100.0, 0.95),
                    wanted=(2000.0, 500.0),
                    within=PRINTED,
                    source=TERMAN,
                    known="recomputed",
                ),
            ],
            refuses=[
                refusal("a feedback of 1: the threshold itself", (1e6, 100.0, 1.0)),
                refusal(
                    "a feedback of 1.2: it oscillates, though the formula gives a number",
                    (1e6, 100.0, 1.2),
                    (1e6, 100.0, 1.001),
                ),
            ],
            slips=[
                slip(
                    "returned how many times the gain grows, not the gain",
                    lambda f0, Q, k: (1 / (1 - k), gain_and_bandwidth(f0, Q, k)[1]),
                ),
                slip("left the bandwidth as it was", lambda f0, Q, k: (gain_and_bandwidth(f0, Q, k)[0], f0 / Q)),
                slip("let the bandwidth grow with the gain", lambda f0, Q, k: (Q / (1 - k), f0 / Q / (1 - k))),
                slip(
                    "returned half the bandwidth: it reaches from −3 dB to −3 dB",
                    lambda f0, Q, k: (Q / (1 - k), f0 * (1 - k) / (2 * Q)),
                ),
                slip("returned the two the other way round", lambda f0, Q, k: gain_and_bandwidth(f0, Q, k)[::-1]),
            ],
        ),
        Question(
            asks=feedback_for_bandwidth,
            given={"resonant_frequency": FREQUENCY, "quality_factor": QUALITY, "bandwidth": hertz("200 Hz", "20 kHz")},
            agrees_within=NEAR_ONE,
            holds=[
                invariant(
                    "the circuit's own bandwidth needs no feedback",
                    lambda k, f0, Q, B: (k(f0, Q, k.gain_and_bandwidth(f0, Q, 0.0)[1]), 0),
                ),
                invariant(
                    "half the bandwidth halves what is left of the loss",
                    lambda k, f0, Q, B: (1 - k(f0, Q, B / 2), (1 - k(f0, Q, B)) / 2),
                ),
                invariant(
                    "always below the threshold, be it a tenth of a hertz wide", lambda k, f0, Q, B: (k(f0, Q, 0.1), 1), less
                ),
            ],
            published=[
                value(
                    "200 Hz from a circuit of 10 kHz at 1 MHz: 98 %",
                    given=(1e6, 100.0, 200.0),
                    wanted=0.98,
                    within=PRINTED,
                    source=TERMAN,
                    known="recomputed",
                ),
            ],
            refuses=[
                refusal("no bandwidth at all", (1e6, 100.0, 0.0)),
                refusal("a bandwidth of −10 Hz", (1e6, 100.0, -10.0), (1e6, 100.0, -0.01)),
            ],
            slips=[
                slip("returned what is left of the loss", lambda f0, Q, B: B * Q / f0),
                slip("turned the fraction over", lambda f0, Q, B: 1 - f0 / (B * Q)),
                slip("forgotten the circuit's own Q", lambda f0, Q, B: 1 - B / f0 + 0 * Q),
                slip("turned the sign: sharper needs positive feedback", lambda f0, Q, B: B * Q / f0 - 1),
            ],
        ),
        Question(
            asks=touchiness,
            given={"feedback": number(0, 0.98)},
            edges=[lambda feedback: (0.0,), lambda feedback: (0.99,)],
            agrees_within=NEAR_ONE,
            holds=[
                invariant("half the loss gone: per cent for per cent", lambda s, k: (s(0.5), 1)),
                invariant("nearer the threshold it is always touchier", lambda s, k: (s(k), s(k + 0.01)), less),
            ],
            published=[
                value(
                    "at 99 % a thousandth more or less is about 10 % of the gain",
                    given=(0.99,),
                    wanted=100.0,
                    within=relative(0.02, because="the figure says about"),
                    source="reaction.toml, q_multiplication, sensitivity: k/(1 − k)",
                    known="recomputed",
                ),
            ],
            refuses=[
                refusal("a feedback of 1: there the gain has no bound", (1.0,)),
                refusal("a feedback of 1.1", (1.1,), (1.001,)),
            ],
            slips=[
                slip("returned how many times the gain has grown", lambda k: 1 / (1 - k)),
                slip("returned the slope itself, for a whole unit of feedback", lambda k: 1 / (1 - k) ** 2),
                slip("turned the fraction over", lambda k: (1 - k) / (k + 1e-9)),
                slip("turned the sign: more feedback is more gain", lambda k: -k / (1 - k)),
            ],
        ),
    ],
    hints=[
        "Q is the coil's reactance over the resistance. If feedback takes the fraction k of the resistance away, what is "
        "left? From there on everything follows from what Q meant before.",
        "1 − k of the resistance is left, so Q grows by 1/(1 − k): the gain at resonance with it, and the bandwidth shrinks "
        "by as much. At k = 1 nothing is left, and there is no answer: raise ValueError, for 1 and above (np.any, for arrays).",
        "feedback_fraction is 1 - resistance_with_feedback / resistance; multiplied_q is quality_factor / (1 - feedback),"
        " after `raise ValueError(...)` where the docstring asks for it; gain_and_bandwidth are that Q and "
        "resonant_frequency over it; feedback_for_bandwidth is 1 - bandwidth * quality_factor / resonant_frequency, "
        "refused where bandwidth is 0 or less; touchiness is feedback / (1 - feedback), which is feedback * "
        "multiplied_q(1.0, feedback).",
    ],
)

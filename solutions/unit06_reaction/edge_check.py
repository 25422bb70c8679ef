"""How `edge` is judged.

In the laws and slips: f the function asked for, g the mutual conductance, M the mutual inductance, C the capacitance, R the
resistance, k the loop gain, n the rounds.
"""

import numpy as np

from checker import Exercise, Question, drawn, farads, henries, invariant, number, ohms, relative, siemens, slip, value

from .edge import after_rounds, loop_gain

CLOSE = relative(1e-9, because="a few operations, double precision", floor=1e-9)
HANDBOOK = "the handbooks' tuned-grid case, worked out: reaction.toml, example, M_tuned_grid_simple_h"
EUCLID = "Euclid, Elements, book IX, proposition 35 (from memory)"
TO_ROUNDING = relative(1e-9, because="exact, but for rounding")

EXERCISE = Exercise(
    title="Round and round, and over the edge",
    questions=[
        Question(
            asks=loop_gain,
            given={
                "conductance": siemens("100 µS", "3 mS"),
                "mutual": henries("100 nH", "30 µH"),
                "capacitance": farads("30 pF", "500 pF"),
                "resistance": ohms("1 Ω", "50 Ω"),
            },
            gives="",
            agrees_within=relative(1e-9, because="three operations, double precision"),
            holds=[
                invariant("twice the valve, twice the loop gain", lambda f, g, M, C, R: (f(2 * g, M, C, R), 2 * f(g, M, C, R))),
                invariant("a tickler turned round works against it", lambda f, g, M, C, R: (f(g, -M, C, R), -f(g, M, C, R))),
                invariant("half the loss, twice the loop gain", lambda f, g, M, C, R: (f(g, M, C, R / 2), 2 * f(g, M, C, R))),
                invariant(
                    "half the condenser, twice the loop gain", lambda f, g, M, C, R: (f(g, M, C / 2, R), 2 * f(g, M, C, R))
                ),
            ],
            published=[
                value(
                    "0.9 mA/V, 1.407 µH, 140.7 pF, 9 Ω: just at the edge, 1.00",
                    given=(0.9e-3, 1.40723866e-6, 140.723866e-12, 9.0),
                    wanted=1.0,
                    within=relative(1e-8, because="printed to nine figures"),
                    source=HANDBOOK,
                    known="recomputed",
                ),
            ],
            slips=[
                slip("turned the fraction over", lambda g, M, C, R: C * R / (g * M)),
                slip("written / C * R, which multiplies by R: brackets", lambda g, M, C, R: g * M / C * R),
                slip("left the resistance out", lambda g, M, C, R: g * M / C + 0 * R),
                slip("left the capacitance out", lambda g, M, C, R: g * M / R + 0 * C),
                slip("multiplied by the capacitance", lambda g, M, C, R: g * M * C / R),
                slip("divided by the conductance: a better valve brings more round", lambda g, M, C, R: M / (g * C * R)),
                slip(
                    "taken the shared inductance in microhenries, or the capacitance by the million: all is SI",
                    lambda g, M, C, R: 1e-6 * g * M / (C * R),
                ),
                slip(
                    "taken the conductance in milliamperes a volt: it comes in siemens",
                    lambda g, M, C, R: 1e-3 * g * M / (C * R),
                ),
            ],
        ),
        Question(
            asks=after_rounds,
            given={
                "loop_gain": number(-0.9, 1.5),
                "rounds": drawn((3, 2, 5, 4, 1, 10, 0, *range(6, 10), *range(11, 26)), "0 to 25, whole"),
            },
            edges=[
                lambda k, n: (1.0, 4),  # just at the edge, where the answer is whole: 5
                *[lambda k, n: (0.99 * k, n)] * 8,  # hardly another loop gain: a table goes in steps
            ],
            gives="",
            agrees_within=CLOSE,
            holds=[
                invariant("after no round there is the signal alone", lambda f, k, n: (f(k, 0), 1.0)),
                invariant(
                    "one round more brings k times all that there was, and the signal again",
                    lambda f, k, n: (f(k, n + 1), 1 + k * f(k, n)),
                ),
                invariant("at the edge each round brings 1 more", lambda f, k, n: (f(1.0, n), n + 1.0)),
            ],
            published=[
                value(
                    "k = ½: it tends to 2", given=(0.5, 60), wanted=2.0, within=TO_ROUNDING, source=EUCLID, known="recomputed"
                ),
                value(
                    "k = 2, three rounds: 1 + 2 + 4 + 8",
                    given=(2.0, 3),
                    wanted=15.0,
                    within=TO_ROUNDING,
                    source=EUCLID,
                    known="recomputed",
                ),
            ],
            slips=[
                slip(
                    "used 1/(1 - k): that is after rounds without end, and past k = 1 it is no answer at all",
                    lambda k, n: np.divide(1.0, 1 - k) + 0 * n,
                ),
                slip("gone one round short: range(n) ends before n", lambda k, n: 0 * k + sum(k**i for i in range(n))),
                slip("gone one round too many", lambda k, n: sum(k**i for i in range(n + 2))),
                slip("left out the signal itself, the first 1", lambda k, n: sum(k**i for i in range(n + 1)) - 1),
                slip("returned what the last round brings: all of them add up", lambda k, n: k**n),
                slip("brought k each time: the second round brings k², not k", lambda k, n: 1 + n * k),
                slip("multiplied by 1 + k each time: only what went round last comes back", lambda k, n: (1 + k) ** n),
            ],
        ),
    ],
    hints=[
        "The tickler's push grows with the valve and with what the windings share; the loss that it has to pay is in C and R. Each round "
        "brings k times what the round before brought.",
        "The loop gain is g M over C R. For the rounds add 1, k, k², … up to k to the power of the number of rounds: that is one term more "
        "than there are rounds.",
        "loop_gain is conductance * mutual / (capacitance * resistance); after_rounds is sum(loop_gain**n for n in range(rounds + 1)).",
    ],
)

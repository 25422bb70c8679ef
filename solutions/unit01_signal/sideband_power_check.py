"""How `sideband_power` is judged."""

import numpy as np

from checker import Exercise, Question, at_most, invariant, refusal, relative, slip, value
from checker.checks.given import number, watts

from .sideband_power import depth_from_aerial_current, sideband_power, sideband_share, total_power

ALGEBRA = relative(1e-9, because="one line of algebra, double precision")
PRINTED = relative(1e-6, because="seven figures are given")
TERMAN = "F. E. Terman, Radio Engineers' Handbook, 1943, sec. 7"
LANGFORD_SMITH = "F. Langford-Smith, Radiotron Designer's Handbook, 4th ed., 1953, ch. 27"
POWER_AND_DEPTH = {"carrier_power": watts("1 W", "500 kW"), "depth": number(0, 1)}

EXERCISE = Exercise(
    title="Where the power goes",
    questions=[
        Question(
            asks=total_power,
            given=POWER_AND_DEPTH,
            gives="W",
            agrees_within=ALGEBRA,
            holds=[
                invariant("without a tone there is the carrier and nothing more", lambda f, p, m: (f(p, 0.0), p)),
                invariant("at full depth there is half as much again", lambda f, p, m: (f(p, 1.0), 1.5 * p)),
                invariant("carrier and sidebands make up the total", lambda f, p, m: (f(p, m), p + f.sideband_power(p, m))),
            ],
            published=[
                value("depth 0.5", given=(1.0, 0.5), wanted=1.125, within=ALGEBRA, source=TERMAN, known="recomputed"),
                value(
                    "depth 0.3", given=(1000.0, 0.3), wanted=1045.0, within=ALGEBRA, source=LANGFORD_SMITH, known="recomputed"
                ),
            ],
            slips=[
                slip("left out the square: power goes as the square of an amplitude", lambda p, m: p * (1 + m / 2)),
                slip("left out the half: each sideband has (m/2)², and there are two", lambda p, m: p * (1 + m**2)),
                slip(
                    "added up amplitudes and then squared: that is the power at the crest, not on the average",
                    lambda p, m: p * (1 + m) ** 2,
                ),
                slip("counted one sideband of the two", lambda p, m: p * (1 + m**2 / 4)),
            ],
        ),
        Question(
            asks=sideband_power,
            given=POWER_AND_DEPTH,
            gives="W",
            agrees_within=ALGEBRA,
            holds=[
                invariant("half the depth leaves a quarter of the sidebands", lambda f, p, m: (f(p, m / 2), f(p, m) / 4)),
                invariant("twice the carrier has twice the sidebands", lambda f, p, m: (f(2 * p, m), 2 * f(p, m))),
            ],
            published=[
                value("depth 1", given=(1.0, 1.0), wanted=0.5, within=ALGEBRA, source=TERMAN, known="recomputed"),
                value("depth 0.2", given=(1.0, 0.2), wanted=0.02, within=ALGEBRA, source=LANGFORD_SMITH, known="recomputed"),
            ],
            slips=[
                slip("counted one sideband of the two", lambda p, m: p * m**2 / 4),
                slip("left out the square: power goes as the square of an amplitude", lambda p, m: p * m / 2),
                slip("left out the half: each sideband has (m/2)², and there are two", lambda p, m: p * m**2),
                slip("returned the total, carrier and all", total_power),
            ],
        ),
        Question(
            asks=sideband_share,
            given={"depth": number(0, 1)},
            edges=[lambda m: (m * 1.01 if m < 0.9 else m / 1.01,)] * 8,  # hardly another depth: a table goes in steps
            agrees_within=ALGEBRA,
            holds=[
                invariant("never more than a third", lambda f, m: (f(m), 1 / 3), at_most),
                invariant(
                    "it is sideband power over total power",
                    lambda f, m: (f(m), f.sideband_power(1.0, m) / f.total_power(1.0, m)),
                ),
            ],
            published=[
                value("depth 0.3", given=(0.3,), wanted=0.0430622, within=PRINTED, source=TERMAN, known="recomputed"),
                value("depth 0.8", given=(0.8,), wanted=0.2424242, within=PRINTED, source=LANGFORD_SMITH, known="recomputed"),
            ],
            slips=[
                slip("compared with the carrier: the share is of all that is sent", lambda m: m**2 / 2),
                slip("counted one sideband of the two", lambda m: m**2 / 4 / (1 + m**2 / 2)),
                slip("returned per cent: a fraction is wanted", lambda m: 100 * m**2 / (2 + m**2)),
                slip("divided amplitudes: power goes as their squares", lambda m: m / (1 + m)),
            ],
        ),
        Question(
            asks=depth_from_aerial_current,
            given={"current_ratio": number(1.01, 1.22)},
            agrees_within=ALGEBRA,
            holds=[
                invariant(
                    "a transmitter of that depth sends the ratio squared times its carrier",
                    lambda f, r: (f.total_power(1.0, f(r)), r**2),
                ),
                invariant("the root of three halves means full depth", lambda f, r: (f(np.sqrt(1.5)), 1.0)),
            ],
            published=[
                value("ratio 1.0606602", given=(1.0606602,), wanted=0.5, within=PRINTED, source=TERMAN, known="recomputed"),
                value(
                    "ratio 1.1157957", given=(1.1157957,), wanted=0.7, within=PRINTED, source=LANGFORD_SMITH, known="recomputed"
                ),
            ],
            refuses=[refusal("a current that falls when the tone comes on", (0.9,), (0.999,))],
            slips=[
                slip(
                    "left out the square: the ammeter reads current, and power goes as its square",
                    lambda r: np.sqrt(2 * np.abs(r - 1)),
                ),
                slip("left out the square root at the end", lambda r: 2 * (r**2 - 1)),
                slip("lost the 2: the sidebands have half of depth squared", lambda r: np.sqrt(np.abs(r**2 - 1))),
                slip("taken the rise in current for the depth", lambda r: r - 1),
            ],
        ),
    ],
    hints=[
        "Each side frequency has half of depth times the carrier's amplitude. Power goes as amplitude squared.",
        "One sideband has depth²/4 of the carrier's power, so the two have depth²/2. The carrier's own power stays "
        "as it was. The aerial current goes as the square root of the total power: turn that round to find the "
        "depth.",
        "total_power is carrier_power * (1 + depth**2 / 2); sideband_power is its second part alone; the share is "
        "the one over the other, depth**2 / (2 + depth**2). For the ammeter ratio**2 = 1 + depth**2 / 2: solve for "
        "depth, and first raise ValueError if np.any(current_ratio < 1).",
    ],
)

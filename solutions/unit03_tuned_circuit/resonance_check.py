"""How `resonance` is judged."""

import numpy as np
import sympy

from checker import Exercise, Question, farads, henries, invariant, picture, relative, slip, value

from .resonance import resonance_condition, resonant_frequency

PARTS = {"inductance": henries("10 µH", "10 mH"), "capacitance": farads("5 pF", "2 nF")}

EXERCISE = Exercise(
    title="Where does it tune?",
    questions=[
        Question(
            asks=resonant_frequency,
            picture=picture(along="capacitance"),
            given=PARTS,
            gives="Hz",
            agrees_within=relative(1e-9, because="one formula, double precision"),
            holds=[
                invariant("four times the capacitance halves the frequency", lambda f, L, C: (f(L, 4 * C), f(L, C) / 2)),
                invariant(
                    "three times the coil and a third of the condenser tune alike", lambda f, L, C: (f(3 * L, C / 3), f(L, C))
                ),
            ],
            published=[
                value(
                    "200 µH with 500 pF",
                    given=(200e-6, 500e-12),
                    wanted=503.292121045e3,
                    within=relative(1e-9, because="printed to 12 figures"),
                    source="resonance_lc.csv, row 200 µH, 500 pF",
                    known="recomputed",
                ),
                value(
                    "the handbooks' constant: MHz² µH pF = 25 330",
                    given=(100e-6, 253.30e-12),
                    wanted=1e6,
                    within=relative(1e-5, because="the constant is printed to five figures"),
                    source="US National Bureau of Standards, Circular 74, 1924, and later handbooks",
                    known="memory",
                ),
            ],
            slips=[
                slip("returned the angular frequency, in radians a second", lambda L, C: 1 / np.sqrt(L * C)),
                slip("left out the square root", lambda L, C: 1 / (2 * np.pi * L * C)),
                slip("returned the time of one cycle, in seconds", lambda L, C: 2 * np.pi * np.sqrt(L * C)),
                slip("taken 2π into the root, or left a part of it out", lambda L, C: 1 / np.sqrt(2 * np.pi * L * C)),
                slip("written 1 / 2 * π * …, which Python reads as (1/2) × π × …", lambda L, C: 0.5 * np.pi * np.sqrt(L * C)),
            ],
        ),
        Question(
            asks=resonance_condition,
            further=True,
            picture=picture(along="capacitance"),
            given=PARTS,
            gives="rad/s",
            symbolic=True,
            agrees_within=relative(1e-12, because="a formula has no rounding"),
            no_published="A formula, not a figure.",
            slips=[
                slip("divided by 2π: this formula is in radians a second", lambda L, C: 1 / (2 * sympy.pi * sympy.sqrt(L * C))),
                slip("returned w², not w: the root is still to be taken", lambda L, C: 1 / (L * C)),
                slip("turned the fraction over", lambda L, C: sympy.sqrt(L * C)),
            ],
        ),
    ],
    hints=[
        "At resonance the coil's reactance and the condenser's are equal. Write both down.",
        "Set w L = 1 / (w C), with w the angular frequency. Multiply out: w² = 1 / (L C).",
        "resonant_frequency is 1 / (2 * np.pi * np.sqrt(inductance * capacitance)): in radians it is 1 over the root, and"
        " a cycle is 2π radians. resonance_condition is in radians, so it has no 2π, and it is a formula: sympy.sqrt "
        "takes the place of np.sqrt.",
    ],
)

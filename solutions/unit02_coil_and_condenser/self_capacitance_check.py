"""How `self_capacitance` is judged."""

import numpy as np

from checker import (
    Exercise,
    Question,
    at_most,
    farads,
    henries,
    hertz,
    invariant,
    metres,
    refusal,
    relative,
    slip,
    value,
)

from .self_capacitance import (
    LENGTH_OVER_DIAMETER,
    PICOFARADS_PER_CENTIMETRE,
    apparent_inductance,
    self_capacitance,
    self_capacitance_fit,
    self_capacitance_from_octave,
)

COIL = {"diameter": metres("10 mm", "100 mm"), "length": metres("5 mm", "300 mm")}
FORMULA = relative(1e-9, because="one formula, double precision")
TABLE = relative(1e-9, because="straight lines between entries; the entries themselves are good to 5 %")
MEDHURST = "a posting that quotes R. G. Medhurst, Wireless Engineer 24, February 1947"
LARGER = invariant("a coil three times as large has three times as much", lambda f, D, b: (f(3 * D, 3 * b), 3 * f(D, b)))


def measured(diameter, length):
    return (length >= 0.1 * diameter) & (length <= 50 * diameter)


def read(shape, diameter):
    """The table read at some shape, for some diameter."""
    return 1e-10 * np.interp(shape, LENGTH_OVER_DIAMETER, PICOFARADS_PER_CENTIMETRE) * diameter


def nearest(D, b):
    place = np.abs(LENGTH_OVER_DIAMETER - b / D).argmin()
    return 1e-10 * PICOFARADS_PER_CENTIMETRE[place] * D


EXERCISE = Exercise(
    title="How much condenser hides in a coil?",
    questions=[
        Question(
            asks=self_capacitance,
            given=COIL,
            where=measured,
            gives="F",
            agrees_within=TABLE,
            holds=[
                LARGER,
                invariant("least where the coil is as long as it is wide", lambda f, D, b: (f(D, D), f(D, b)), at_most),
            ],
            published=[
                value(
                    "50 mm across and 50 mm long: 0.46 pF a centimetre",
                    given=(0.05, 0.05),
                    wanted=2.3e-12,
                    within=FORMULA,
                    source=MEDHURST,
                    known="found",
                ),
                value(
                    "50 mm across and 100 mm long: 0.50 pF a centimetre",
                    given=(0.05, 0.10),
                    wanted=2.5e-12,
                    within=FORMULA,
                    source=MEDHURST,
                    known="found",
                ),
                value(
                    "every coil of the table, 10 mm across",
                    given=(0.01, 0.01 * LENGTH_OVER_DIAMETER),
                    wanted=1e-12 * PICOFARADS_PER_CENTIMETRE,
                    within=FORMULA,
                    source=MEDHURST,
                    known="found",
                ),
            ],
            refuses=[
                refusal("a coil of 1/20 of its diameter, shorter than any that was measured", (0.1, 0.005), (0.1, 0.0099)),
                refusal("a coil 60 diameters long", (0.01, 0.6), (0.01, 0.501)),
            ],
            slips=[
                slip("multiplied by metres: the table is for each centimetre of diameter", lambda D, b: read(b / D, D) / 100),
                slip("taken the radius for the diameter", lambda D, b: read(b / D, D / 2)),
                slip("turned the ratio over: the table goes by length over diameter", lambda D, b: read(D / b, D)),
                slip("multiplied by the length: it is by the diameter", lambda D, b: read(b / D, b)),
                slip("returned picofarads", lambda D, b: 1e12 * self_capacitance(D, b)),
                slip("taken the nearest entry: between two entries, draw a straight line", nearest),
            ],
        ),
        Question(
            asks=self_capacitance_fit,
            given=COIL,
            where=measured,
            gives="F",
            agrees_within=FORMULA,
            holds=[
                LARGER,
                invariant(
                    "within a tenth of the measurements",
                    lambda f, D, b: (abs(f(D, b) / f.self_capacitance(D, b) - 1), 0.1),
                    at_most,
                ),
            ],
            published=[
                value(
                    "10 mm across and 20 mm long: 0.4961 pF",
                    given=(0.01, 0.02),
                    wanted=0.4961e-12,
                    within=relative(1e-4, because="worked to four figures"),
                    source="the fit itself, by hand",
                    known="recomputed",
                ),
            ],
            slips=[
                slip("put metres where the formula wants centimetres", lambda D, b: self_capacitance_fit(D / 100, b / 100)),
                slip("returned picofarads", lambda D, b: 1e12 * self_capacitance_fit(D, b)),
                slip("exchanged diameter and length", lambda D, b: self_capacitance_fit(b, D)),
                slip("left out the root over D³/l", lambda D, b: 1e-12 * (11.26 * b + 8 * D + 0.27e4 * D**3 / b)),
            ],
        ),
        Question(
            asks=self_capacitance_from_octave,
            given={"capacitance_low": farads("200 pF", "500 pF"), "capacitance_high": farads("10 pF", "49 pF")},
            gives="F",
            agrees_within=FORMULA,
            holds=[
                invariant(
                    "a bare coil wants exactly four times the condenser for half the frequency",
                    lambda f, low, high: (low + f(4 * high, high), low),
                ),
                invariant(
                    "5 pF moved from the condenser to the coil is found there",
                    lambda f, low, high: (f(low - 5e-12, high - 5e-12), f(low, high) + 5e-12),
                ),
            ],
            no_published="It follows from the formula of resonance.",
            slips=[
                slip(
                    "subtracted twice the second reading: twice the frequency is a quarter of the capacitance",
                    lambda low, high: low - 2 * high,
                ),
                slip("left out the division by 3", lambda low, high: low - 4 * high),
                slip("exchanged the readings", lambda low, high: (high - 4 * low) / 3),
                slip("turned the sign", lambda low, high: (4 * high - low) / 3),
            ],
        ),
        Question(
            asks=apparent_inductance,
            given={
                "inductance": henries("50 µH", "500 µH"),
                "self_capacitance": farads("2 pF", "15 pF"),
                "frequency": hertz("100 kHz", "1.5 MHz"),
            },
            gives="H",
            agrees_within=FORMULA,
            holds=[
                invariant(
                    "without self-capacitance it is the inductance itself", lambda f, L, C, frequency: (f(L, 0.0, frequency), L)
                ),
                invariant("it only seems larger", lambda f, L, C, frequency: (L, f(L, C, frequency)), at_most),
                invariant(
                    "coil and condenser may be scaled against each other",
                    lambda f, L, C, frequency: (f(2 * L, C / 2, frequency), 2 * f(L, C, frequency)),
                ),
            ],
            no_published="It is an inductance and a capacitance in parallel, worked by hand.",
            slips=[
                slip("put the frequency where the angular frequency belongs", lambda L, C, f: L / (1 - f**2 * L * C)),
                slip("turned the sign under the line", lambda L, C, f: L / (1 + (2 * np.pi * f) ** 2 * L * C)),
                slip("multiplied where it is to be divided", lambda L, C, f: L * (1 - (2 * np.pi * f) ** 2 * L * C)),
                slip(
                    "taken self-resonance for a root: 1 − ω² L C stands as it is",
                    lambda L, C, f: L / np.sqrt(1 - (2 * np.pi * f) ** 2 * L * C),
                ),
            ],
        ),
    ],
    hints=[
        "The table holds picofarads for each centimetre of diameter, against length over diameter. numpy can draw "
        "straight lines between entries. For the rest, think of the condenser as sitting across the whole coil.",
        "np.interp(x, xs, ys) reads a table. Refuse first: raise ValueError if np.any(…) is shorter than 0.1 or "
        "longer than 50 diameters. Two readings: L (C_low + C₀) = 4 L (C_high + C₀). Apparent: jωL in parallel with "
        "1/(jωC), divided by jω.",
        "np.interp(length / diameter, LENGTH_OVER_DIAMETER, PICOFARADS_PER_CENTIMETRE) * diameter * 100 * 1e-12. Fit: "
        "with long = 100 × length and wide = 100 × diameter, in centimetres, 1e-12 × (0.1126 × long + 0.08 × wide + 0.27 "
        "sqrt(wide³/long)). By the octave: (capacitance_low − 4 × capacitance_high) / 3. Apparent: inductance / (1 − (2π "
        "× frequency)² × inductance × self_capacitance).",
    ],
)

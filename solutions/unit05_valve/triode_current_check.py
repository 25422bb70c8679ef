"""How `triode_current` is judged.

In the laws and slips: a and g the anode's and the grid's voltage, μ the amplification factor, K the perveance, o the
offset; i a current and s a mutual conductance of a manual's line.
"""

import numpy as np
import sympy

from checker import (
    Exercise,
    Question,
    amperes,
    at_most,
    equal,
    invariant,
    number,
    physical,
    picture,
    refusal,
    relative,
    siemens,
    slip,
    value,
    volts,
)

from .triode_current import (
    anode_resistance,
    coefficients,
    drive,
    law_from_manual,
    mutual_conductance,
    triode_current,
)

CLOSE = relative(1e-9, because="one power, double precision", floor=1e-15)
MANUAL = "RCA figures for type 30 at 180 V, −13.5 V, quoted on a page of measured valves; triodes.csv"
MANUAL_12A = "RCA figures for type 12-A at 180 V, −13.5 V, quoted on a page of measured valves; triodes.csv"
FITTED = relative(0.03, because="one law for three lines of the manual misses each a little")
FITTED_12A = relative(0.01, because="one law for two lines of the manual misses each a little")
TYPE_30 = (180.0, -13.5, 9.29, 267.4e-6, -0.67)
TYPE_12A = (180.0, -13.5, 8.50, 477.4e-6, -1.29)
ANODE, GRID = volts("20 V", "250 V"), volts("-20 V", "0 V")
FACTOR, PERVEANCE, OFFSET = number(4, 30), physical("A/V^1.5", "50 µA/V^1.5", "1 mA/V^1.5"), volts("-1.5 V", "1.5 V")
VALVE = {"anode_voltage": ANODE, "grid_voltage": GRID, "amplification_factor": FACTOR, "perveance": PERVEANCE, "offset": OFFSET}


def conducting(anode_voltage, grid_voltage, amplification_factor, perveance, offset):
    return grid_voltage + anode_voltage / amplification_factor + offset > 0.1


def nearly(left, right, tolerance):
    return equal(left, right, relative(1e-4, because="a step is not quite a slope"))


def current_step(f, a, g, μ, K, o):
    return f.triode_current(a, g + 0.01, μ, K, o) - f.triode_current(a, g - 0.01, μ, K, o)


def law(a, g, μ, K, o):
    return K * (g + a / μ + o) ** sympy.Rational(3, 2)


EXERCISE = Exercise(
    title="What does the grid do?",
    seconds=5.0,
    questions=[
        Question(
            asks=drive,
            picture=picture(along="grid_voltage", at={"anode_voltage": 150.0}),
            given={"anode_voltage": ANODE, "grid_voltage": GRID, "amplification_factor": FACTOR, "offset": OFFSET},
            gives="V",
            agrees_within=CLOSE,
            holds=[
                invariant(
                    "μ volts on the anode do as much as one on the grid",
                    lambda f, a, g, μ, o: (f(a + μ, g + 20, μ, o), f(a, g + 21, μ, o)),
                ),
                invariant("it is never below zero", lambda f, a, g, μ, o: (0.0, f(a, g - 40, μ, o)), at_most),
            ],
            no_published="A sum of three voltages.",
            slips=[
                slip("let it go below zero: beyond cut-off nothing more can happen", lambda a, g, μ, o: g + a / μ + o),
                slip("left out the offset", lambda a, g, μ, o: drive(a, g, μ, 0.0)),
                slip("counted it at the anode, μ times as large", lambda a, g, μ, o: drive(a, g, μ, o) * μ),
                slip(
                    "divided the grid's voltage by μ: it is the anode that pulls more weakly",
                    lambda a, g, μ, o: np.maximum(g / μ + a + o, 0),
                ),
                slip("subtracted the grid's voltage, which has its sign already", lambda a, g, μ, o: drive(a, -g, μ, o)),
            ],
        ),
        Question(
            asks=triode_current,
            picture=picture(along="grid_voltage", at={"anode_voltage": 150.0}),
            given=VALVE,
            gives="A",
            agrees_within=CLOSE,
            holds=[
                invariant(
                    "four times all voltages, eight times the current",
                    lambda f, a, g, μ, K, o: (f(4 * a, 4 * g, μ, K, 4 * o), 8 * f(a, g, μ, K, o)),
                ),
                invariant(
                    "a grid far enough below the filament stops it",
                    lambda f, a, g, μ, K, o: (f(a, -a / μ - o - 1, μ, K, o), 0.0),
                ),
                invariant(
                    "a filament that can give a microampere gives a microampere, however hard the grid pulls",
                    lambda f, a, g, μ, K, o: (f(a, a, μ, K, o, 1e-6), 1e-6),
                ),
                invariant(
                    "a filament that can give more than is drawn is not noticed",
                    lambda f, a, g, μ, K, o: (f(a, g, μ, K, o, 1e3), f(a, g, μ, K, o)),
                ),
                invariant(
                    "a triode is no battery: anode voltage times current is never below zero",
                    lambda f, a, g, μ, K, o: (0.0, a * f(a, g, μ, K, o)),
                    at_most,
                ),
            ],
            published=[
                value(
                    "type 30 at 180 V and −13.5 V: 3.1 mA",
                    given=TYPE_30,
                    wanted=3.1e-3,
                    within=FITTED,
                    source=MANUAL,
                    known="found",
                ),
                value(
                    "type 12-A at 180 V and −13.5 V: 7.7 mA",
                    given=TYPE_12A,
                    wanted=7.7e-3,
                    within=FITTED_12A,
                    source=MANUAL_12A,
                    known="found",
                ),
            ],
            slips=[
                slip("left out the power 3/2", lambda a, g, μ, K, o: K * drive(a, g, μ, o)),
                slip("squared the drive: the power is 3/2", lambda a, g, μ, K, o: K * drive(a, g, μ, o) ** 2),
                slip("turned the power over: it is 3/2", lambda a, g, μ, K, o: K * drive(a, g, μ, o) ** (2 / 3)),
                slip("raised the perveance to the power too", lambda a, g, μ, K, o: (K * drive(a, g, μ, o)) ** 1.5),
                slip(
                    "used the drive counted at the anode, μ times as large",
                    lambda a, g, μ, K, o: K * (μ * drive(a, g, μ, o)) ** 1.5,
                ),
            ],
        ),
        Question(
            asks=mutual_conductance,
            picture=picture(along="grid_voltage", at={"anode_voltage": 150.0}),
            given=VALVE,
            gives="S",
            agrees_within=CLOSE,
            holds=[
                invariant(
                    "a small step of grid voltage times this is the step of your current",
                    lambda f, a, g, μ, K, o: (
                        current_step(f, a, -a / μ - o + 5, μ, K, o),
                        0.02 * f(a, -a / μ - o + 5, μ, K, o),
                    ),
                    nearly,
                ),
                invariant(
                    "drive times this is one and a half times the current",
                    lambda f, a, g, μ, K, o: (f.drive(a, g, μ, o) * f(a, g, μ, K, o), 1.5 * f.triode_current(a, g, μ, K, o)),
                ),
            ],
            published=[
                value(
                    "type 30 at 180 V and −13.5 V: 900 µS",
                    given=TYPE_30,
                    wanted=900e-6,
                    within=FITTED,
                    source=MANUAL,
                    known="found",
                ),
            ],
            slips=[
                slip(
                    "left out the 1.5 that comes down when a power is differentiated",
                    lambda a, g, μ, K, o: mutual_conductance(a, g, μ, K, o) / 1.5,
                ),
                slip(
                    "left the power at 3/2: differentiating takes 1 from it",
                    lambda a, g, μ, K, o: 1.5 * triode_current(a, g, μ, K, o),
                ),
                slip("differentiated by the anode's voltage", lambda a, g, μ, K, o: mutual_conductance(a, g, μ, K, o) / μ),
                slip("returned microsiemens", lambda a, g, μ, K, o: 1e6 * mutual_conductance(a, g, μ, K, o)),
            ],
        ),
        Question(
            asks=anode_resistance,
            picture=picture(along="grid_voltage", at={"anode_voltage": 150.0}),
            given=VALVE,
            where=conducting,
            gives="Ω",
            agrees_within=CLOSE,
            holds=[
                invariant(
                    "times the mutual conductance it is μ",
                    lambda f, a, g, μ, K, o: (f(a, g, μ, K, o) * f.mutual_conductance(a, g, μ, K, o), μ),
                ),
                invariant(
                    "four times the drive halves it",
                    lambda f, a, g, μ, K, o: (f(4 * a, 4 * g, μ, K, 4 * o), f(a, g, μ, K, o) / 2),
                ),
            ],
            published=[
                value(
                    "type 30 at 180 V and −13.5 V: 10.3 kΩ",
                    given=TYPE_30,
                    wanted=10300.0,
                    within=FITTED,
                    source=MANUAL,
                    known="found",
                ),
            ],
            refuses=[
                refusal(
                    "a valve that is cut off",
                    (50.0, -20.0, 9.29, 267.4e-6, -0.67),
                    (50.0, -4.75, 9.29, 267.4e-6, -0.67),
                    (40.0, -4.5, 8.0, 267.4e-6, -0.5),
                )
            ],
            slips=[
                slip(
                    "divided voltage by current: that is not the slope", lambda a, g, μ, K, o: a / triode_current(a, g, μ, K, o)
                ),
                slip(
                    "forgotten μ: that is one over the mutual conductance",
                    lambda a, g, μ, K, o: anode_resistance(a, g, μ, K, o) / μ,
                ),
                slip(
                    "multiplied where μ is divided by the mutual conductance",
                    lambda a, g, μ, K, o: μ * mutual_conductance(a, g, μ, K, o),
                ),
                slip("returned the conductance of the anode", lambda a, g, μ, K, o: 1 / anode_resistance(a, g, μ, K, o)),
            ],
        ),
        Question(
            asks=coefficients,
            further=True,
            picture=picture(along="grid_voltage", at={"anode_voltage": 150.0}),
            given=VALVE,
            where=conducting,
            gives=("S", "Ω", ""),
            agrees_within=relative(1e-9, because="an identity: the same expression, however it is written"),
            symbolic=True,
            no_published="Formulas; the figures are held to manuals above.",
            slips=[
                slip(
                    "left the anode's conductance: its resistance is one over that",
                    lambda *v: (sympy.diff(law(*v), v[1]), sympy.diff(law(*v), v[0]), v[2]),
                ),
                slip(
                    "exchanged the two slopes", lambda *v: (sympy.diff(law(*v), v[0]), 1 / sympy.diff(law(*v), v[1]), 1 / v[2])
                ),
                slip(
                    "divided the two instead of multiplying them",
                    lambda *v: (coefficients(*v)[0], coefficients(*v)[1], coefficients(*v)[1] / coefficients(*v)[0]),
                ),
                slip(
                    "put voltage over current for the resistance",
                    lambda *v: (coefficients(*v)[0], v[0] / law(*v), coefficients(*v)[0] * v[0] / law(*v)),
                ),
            ],
        ),
        Question(
            asks=law_from_manual,
            further=True,
            given={
                "anode_voltage": volts("45 V", "250 V"),
                "grid_voltage": volts("-30 V", "0 V"),
                "anode_current": amperes("500 µA", "10 mA"),
                "amplification_factor": number(3, 30),
                "mutual_conductance": siemens("300 µS", "5 mS"),
            },
            gives=("A/V^1.5", "V"),
            agrees_within=relative(1e-9, because="a few operations, double precision", floor=1e-12),
            holds=[
                invariant(
                    "your law gives the line's current back",
                    lambda f, a, g, i, μ, s: (f.triode_current(a, g, μ, *f(a, g, i, μ, s)), i),
                ),
                invariant(
                    "and its mutual conductance", lambda f, a, g, i, μ, s: (f.mutual_conductance(a, g, μ, *f(a, g, i, μ, s)), s)
                ),
            ],
            no_published="It goes through the line it is given; tests hold it to the manual's other lines.",
            slips=[
                slip(
                    "turned 3/2 over: the drive is 1.5 times current over conductance",
                    lambda a, g, i, μ, s: law_from_manual(a, g, i / 2.25, μ, s) * np.array([2.25, 1]),
                ),
                slip(
                    "left out the anode's part of the drive",
                    lambda a, g, i, μ, s: (law_from_manual(a, g, i, μ, s)[0], law_from_manual(a, g, i, μ, s)[1] + a / μ),
                ),
                slip("turned the sign of the offset", lambda a, g, i, μ, s: np.array(law_from_manual(a, g, i, μ, s)) * [1, -1]),
                slip(
                    "returned offset and perveance the other way round",
                    lambda a, g, i, μ, s: law_from_manual(a, g, i, μ, s)[::-1],
                ),
            ],
        ),
    ],
    hints=[
        "The grid stands close to the filament and the anode far off behind it. Both pull on the same cloud of electrons, "
        "the anode μ times more weakly; add the pulls, and the three-halves law does the rest.",
        "drive = Vg + Va/μ + offset, but never below zero; current = K × drive^1.5. Differentiate: the power 1.5 comes "
        "down and 0.5 is left; by Va the chain rule adds 1/μ. For the manual's line, current over conductance is drive "
        "over 1.5.",
        "drive is np.maximum(grid_voltage + anode_voltage / amplification_factor + offset, 0); triode_current is "
        "np.minimum(perveance * drive(…) ** 1.5, emission), with emission=np.inf; mutual_conductance is 1.5 * perveance *"
        " np.sqrt(drive(…)); anode_resistance is amplification_factor over that, ValueError where np.any of it is 0 or "
        "less. With sympy: current = perveance * (…)**sympy.Rational(3, 2), then sympy.diff(current, grid_voltage) and "
        "1/sympy.diff(current, anode_voltage). Manual: driven = 1.5 * anode_current / mutual_conductance; the two are "
        "anode_current / driven**1.5 and driven - grid_voltage - anode_voltage / amplification_factor.",
    ],
)

"""How `detector_load` is judged.

In the laws and slips: V and i the carrier's crest and the mean current, E and Rs the source's voltage and resistance,
m the depth of modulation, R the load, Is and n the diode's saturation current and slope voltage.
"""

import numpy as np

from checker import (
    Exercise,
    Question,
    amperes,
    at_most,
    equal,
    invariant,
    less,
    number,
    ohms,
    relative,
    slip,
    value,
    volts,
)

from .detector_load import detector_powers, detector_resistance, quality_factor_with_detector, working_point
from .rectified_voltage import detector_output, i1_over_i0

SOLVED = relative(1e-6, because="solved step by step, from averages round a cycle")
DIODE = {"saturation_current": amperes("10 nA", "10 µA"), "slope_voltage": volts("25 mV", "60 mV")}
DETECTOR = "K. K. Clarke and D. T. Hess, Communication Circuits, 1971 (from memory); diode_detector_exact.csv, x = r = 10"
SAMPLED = relative(1e-5, because="averaged over moments of the tone's cycle, each solved step by step", floor=1e-18)
PRINTED = relative(1e-8, because="printed to ten figures")
TABLE_Y, TABLE_RESISTANCE = 7.38968023574, 3.031065822  # for x = 10, r = 10, in units of n and n/Is


def nearly(left, right, tolerance):
    return equal(left, right, relative(1e-3, because="a limit, nearly reached"))


def taken(V, y, R, Is, n):
    return 2 * (y / R + Is) * i1_over_i0(V / n)


def at_rest(E, Rs, R, Is, n):
    V = E * (n / Is) / (n / Is + Rs)
    return V, detector_output(V, R, Is, n)


def unmodulated(E, Rs, m, R, Is, n):
    into, rectified, _ = detector_powers(E, Rs, 0.0, R, Is, n)
    return into, rectified, detector_powers(E, Rs, m, R, Is, n)[2]


EXERCISE = Exercise(
    title="What does the crystal take from the tuned circuit?",
    seconds=20.0,
    cases=5,
    questions=[
        Question(
            asks=detector_resistance,
            given={"carrier": volts("1 mV", "3 V"), "mean_current": amperes("1 nA", "100 µA"), **DIODE},
            gives="Ω",
            agrees_within=SOLVED,
            holds=[
                invariant(
                    "a weak carrier finds the diode's resistance at rest",
                    lambda f, V, i, Is, n: (f(n / 50, 0.0, Is, n), n / Is),
                    nearly,
                ),
                invariant(
                    "a very strong one gives all its power to the load: V/(2I)",
                    lambda f, V, i, Is, n: (f(5000 * n, 1e5 * Is, Is, n), 5000 * n / (2e5 * Is)),
                    nearly,
                ),
                invariant(
                    "twice the currents at one carrier, half the resistance",
                    lambda f, V, i, Is, n: (f(V, 2 * i, 2 * Is, n), f(V, i, Is, n) / 2),
                ),
            ],
            published=[
                value(
                    "a crest of 10 slope voltages, a load of 10 times the diode's own 25 kΩ",
                    given=(0.25, TABLE_Y * 0.025 / 250e3, 1e-6, 0.025),
                    wanted=TABLE_RESISTANCE * 25e3,
                    within=PRINTED,
                    source=DETECTOR,
                    known="recomputed",
                ),
            ],
            slips=[
                slip(
                    "left out the 2: the crest of the carrier's share is twice its average",
                    lambda V, i, Is, n: 2 * detector_resistance(V, i, Is, n),
                ),
                slip("left out the saturation current", lambda V, i, Is, n: V / (2 * i * i1_over_i0(V / n))),
                slip("taken the diode's resistance at rest, whatever the carrier", lambda V, i, Is, n: n / Is),
                slip("turned I1/I0 over", lambda V, i, Is, n: V / (2 * (i + Is)) * i1_over_i0(V / n)),
                slip(
                    "divided by the mean current alone: that is no resistance to the carrier", lambda V, i, Is, n: V / (i + Is)
                ),
            ],
        ),
        Question(
            asks=quality_factor_with_detector,
            given={
                "quality_factor": number(20, 400),
                "dynamic_resistance": ohms("20 kΩ", "500 kΩ"),
                "detector_resistance": ohms("5 kΩ", "500 kΩ"),
            },
            agrees_within=relative(1e-9, because="one formula, double precision"),
            holds=[
                invariant("a detector always costs Q", lambda f, Q, Rd, R: (f(Q, Rd, R), Q), less),
                invariant("one of the circuit's own resistance halves it", lambda f, Q, Rd, R: (f(Q, Rd, Rd), Q / 2)),
                invariant(
                    "two detectors side by side take twice as much: 1/Q rises evenly",
                    lambda f, Q, Rd, R: (1 / f(Q, Rd, R / 2) - 1 / f(Q, Rd, R), 1 / f(Q, Rd, R) - 1 / Q),
                ),
            ],
            no_published="Two resistances side by side: no figure is needed.",
            slips=[
                slip("turned the ratio of the resistances over", lambda Q, Rd, R: Q / (1 + R / Rd)),
                slip("put the resistances in series", lambda Q, Rd, R: Q * (1 + R / Rd)),
                slip("halved it, whatever the resistances", lambda Q, Rd, R: Q / 2),
                slip("used only the detector's resistance", lambda Q, Rd, R: Q * R / Rd),
            ],
        ),
        Question(
            asks=working_point,
            given={
                "source_voltage": volts("1 mV", "10 V"),
                "source_resistance": ohms("20 kΩ", "500 kΩ"),
                "load_resistance": ohms("1 kΩ", "200 kΩ"),
                **DIODE,
            },
            gives=("V", "V"),
            agrees_within=SOLVED,
            holds=[
                invariant(
                    "carrier and drop in the source make up the source voltage",
                    lambda f, E, Rs, R, Is, n: (f(E, Rs, R, Is, n)[0] + Rs * taken(*f(E, Rs, R, Is, n), R, Is, n), E),
                ),
                invariant(
                    "the output is what that carrier gives",
                    lambda f, E, Rs, R, Is, n: (f(E, Rs, R, Is, n)[1], detector_output(f(E, Rs, R, Is, n)[0], R, Is, n)),
                ),
                invariant(
                    "the load gets no more power than the tuned circuit can give, E²/(8 Rs)",
                    lambda f, E, Rs, R, Is, n: (f(E, Rs, R, Is, n)[1] ** 2 / R, E**2 / (8 * Rs)),
                    at_most,
                ),
            ],
            published=[
                value(
                    "a source as high as the detector: half its 0.5 V is left",
                    given=(0.5, TABLE_RESISTANCE * 25e3, 250e3, 1e-6, 0.025),
                    wanted=(0.25, TABLE_Y * 0.025),
                    within=PRINTED,
                    source=DETECTOR,
                    known="recomputed",
                ),
            ],
            slips=[
                slip(
                    "left the tuned circuit unloaded: the diode takes current from it",
                    lambda E, Rs, R, Is, n: (E, detector_output(E, R, Is, n)),
                ),
                slip("used the diode's resistance at rest: a working diode takes more", at_rest),
                slip(
                    "returned output and carrier the other way round",
                    lambda E, Rs, R, Is, n: working_point(E, Rs, R, Is, n)[::-1],
                ),
                slip(
                    "let the carrier find half the load, which is right only for a strong one",
                    lambda E, Rs, R, Is, n: (E * R / (R + 2 * Rs), detector_output(E * R / (R + 2 * Rs), R, Is, n)),
                ),
            ],
        ),
        Question(
            asks=detector_powers,
            given={
                "source_voltage": volts("10 mV", "5 V"),
                "source_resistance": ohms("20 kΩ", "500 kΩ"),
                "depth": number(0.1, 0.95),
                "load_resistance": ohms("5 kΩ", "200 kΩ"),
                **DIODE,
            },
            gives=("W", "W", "W"),
            agrees_within=SAMPLED,
            arrays=False,
            holds=[
                invariant(
                    "the diode takes no more than the tuned circuit can give: E²/(8 Rs) and the tone's share",
                    lambda f, E, Rs, m, R, Is, n: (f(E, Rs, m, R, Is, n)[0], E**2 / (8 * Rs) * (1 + m**2 / 2)),
                    at_most,
                ),
                invariant(
                    "neither diode nor load gives more than it gets",
                    lambda f, E, Rs, m, R, Is, n: (np.array(f(E, Rs, m, R, Is, n)[1:]), np.array(f(E, Rs, m, R, Is, n)[:2])),
                    at_most,
                ),
                invariant(
                    "an unmodulated carrier gives no tone", lambda f, E, Rs, m, R, Is, n: (f(E, Rs, 0.0, R, Is, n)[2], 0.0)
                ),
            ],
            published=[
                value(
                    "no tone, the tuned circuit as high as the detector",
                    given=(0.5, TABLE_RESISTANCE * 25e3, 0.0, 250e3, 1e-6, 0.025),
                    wanted=(0.25**2 / (2 * TABLE_RESISTANCE * 25e3), (TABLE_Y * 0.025) ** 2 / 250e3, 0.0),
                    within=relative(1e-8, because="printed to ten figures", floor=1e-18),
                    source=DETECTOR,
                    known="recomputed",
                ),
            ],
            slips=[
                slip("taken the carrier at rest for the first two: the tone adds power", unmodulated),
                slip(
                    "taken the plain average of output × cos: the tone's crest is twice that",
                    lambda *inputs: np.array(detector_powers(*inputs)) * [1, 1, 0.25],
                ),
                slip(
                    "forgotten to halve: the tone's crest squared over R is twice its power",
                    lambda *inputs: np.array(detector_powers(*inputs)) * [1, 1, 2],
                ),
                slip(
                    "forgotten to halve the carrier's crest squared over the resistance",
                    lambda *inputs: np.array(detector_powers(*inputs)) * [2, 1, 1],
                ),
                slip("returned them from tone to carrier", lambda *inputs: detector_powers(*inputs)[::-1]),
            ],
        ),
    ],
    hints=[
        "A diode takes current in short puffs at the carrier's crests. What loads the tuned circuit is the part of them "
        "that keeps the carrier's own time.",
        "That part has a crest of 2 (i + Is) I1/I0. Resistances side by side add as one over. For the working point "
        "guess a carrier, work out the output and the current it takes, and see whether carrier + Rs × current is the "
        "source voltage; if it is more, the guess was too high. For the powers give working_point an array: the source's "
        "voltage at moments of the tone.",
        "Resistance: carrier/(2 × (mean_current + saturation_current) × i1_over_i0(carrier/slope_voltage)). The Q left: "
        "quality_factor/(1 + dynamic_resistance/detector_resistance). Working point: least = 0, most = source_voltage; "
        "forty times: v = (least + most)/2, y = detector_output(v, load_resistance, saturation_current, slope_voltage), "
        "and where v + source_resistance × 2 × (y/load_resistance + saturation_current) × i1_over_i0(v/slope_voltage) > "
        "source_voltage set most = v, elsewhere least = v (np.where does it for arrays). Powers: v, y = "
        "working_point(source_voltage × (1 + depth × MOMENTS), …), the carrier and the output at 24 moments; mean of v² "
        "over twice the detector's resistance; mean of y²/load_resistance; (2 × mean of y × MOMENTS)²/(2 × "
        "load_resistance).",
    ],
)

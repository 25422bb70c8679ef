"""How `weak_signal_suppression` is judged.

In the laws and slips: A and B the strong and the weak carrier, m the depth, R the load, Is and n the diode's saturation
current and slope voltage.
"""

import numpy as np

from checker import (
    Exercise,
    Question,
    absolute,
    amperes,
    at_most,
    equal,
    invariant,
    less,
    number,
    ohms,
    refusal,
    relative,
    slip,
    value,
    volts,
)
from solutions.unit04_crystal_set.rectified_voltage import detector_output, i1_over_i0

from .weak_signal_suppression import BEAT, faint_suppression, mean_envelope, suppression, two_carrier_output

CLOSE = relative(1e-6, because="averages and steps may be left a little coarse", floor=1e-9)
LEVEL = absolute(1e-3, because="small differences of averages, in decibels")
INTEGRALS = "M. Abramowitz and I. A. Stegun, Handbook of Mathematical Functions, NBS AMS 55, 1964, Table 17.1: E(0.5)"
DETECTOR = "exact exponential detector, K. K. Clarke and D. T. Hess, 1971, ch. 10; diode_detector_exact.csv"
BESSEL = "modified Bessel functions, as in Abramowitz and Stegun, 1964; bessel_i.csv"
STRONG, WEAK = volts("10 mV", "1 V"), volts("1 mV", "200 mV")
LOAD = ohms("2 kΩ", "1 MΩ")
DIODE = {"load_resistance": LOAD, "saturation_current": amperes("100 nA", "10 µA"), "slope_voltage": volts("25 mV", "60 mV")}


def weaker(A, B, *others):
    return B < 0.9 * A


def nearly(left, right, tolerance):
    return equal(left, right, relative(1e-3, because="a limit, nearly reached", floor=1e-3))


def tone(A, B, m, *diode):
    return two_carrier_output(A, B * (1 + m), *diode) - two_carrier_output(A, B * (1 - m), *diode)


def against_the_strong(A, B, m, R, Is, n):
    """The weak station's tone over one of the same depth on the strong."""
    strong = two_carrier_output(A * (1 + m), B, R, Is, n) - two_carrier_output(A * (1 - m), B, R, Is, n)
    return 20 * np.log10(tone(A, B, m, R, Is, n) / strong)


def parts(A, R, Is, n):
    """The three letters of the closed form: r, s and q."""
    return R * Is / n, (detector_output(A, R, Is, n) + R * Is) / n, i1_over_i0(A / n)


def without(A, R, Is, n, bend, load):
    """The closed form with its bend, or what the load does to it, left out."""
    r, s, q = parts(A, R, Is, n)
    share = s / (1 + s) * (1 + r) / r if load else 1.0
    return 20 * np.log10(share * (1 - q**2 + bend * (q / (1 + s)) ** 2))


EXERCISE = Exercise(
    title="What does a strong station do to a weak one in the detector?",
    seconds=10.0,
    cases=12,
    questions=[
        Question(
            asks=mean_envelope,
            given={"strong": volts("10 mV", "10 V"), "weak": volts("20 mV", "5 V")},
            where=weaker,
            gives="V",
            agrees_within=CLOSE,
            holds=[
                invariant("one carrier alone swings as far as it swings", lambda f, A, B: (f(A, 0.0), A)),
                invariant("the two may change names", lambda f, A, B: (f(B, A), f(A, B))),
                invariant(
                    "a faint second carrier adds a quarter of its square, over the first",
                    lambda f, A, B: ((f(A, A / 1000) / A - 1) * 4e6, 1.0),
                    nearly,
                ),
                invariant("it is less than both added up", lambda f, A, B: (f(A, B), A + B), less),
                invariant("it is more than the stronger", lambda f, A, B: (A, f(A, B)), less),
            ],
            published=[
                value(
                    "1 V with 3 − 2√2 V, where m is one half",
                    given=(1.0, 3 - 2 * np.sqrt(2)),
                    wanted=2 / np.pi * (4 - 2 * np.sqrt(2)) * 1.350643881,
                    within=relative(2e-9, because="printed to nine decimals"),
                    source=INTEGRALS,
                    known="memory",
                ),
            ],
            slips=[
                slip("added the two: they stand against each other as often as together", lambda A, B: A + B),
                slip("added squares: that is the r.m.s. of the envelope, not its mean", lambda A, B: np.hypot(A, B)),
                slip("taken the stronger alone", lambda A, B: A + 0 * B),
                slip("stopped at the first term, A + B²/(4A)", lambda A, B: A + B**2 / (4 * A)),
                slip(
                    "returned the half-wave average, smaller by π: a detector holds the crest",
                    lambda A, B: mean_envelope(A, B) / np.pi,
                ),
            ],
        ),
        Question(
            asks=two_carrier_output,
            given={"strong": STRONG, "weak": WEAK} | DIODE,
            where=weaker,
            gives="V",
            agrees_within=CLOSE,
            holds=[
                invariant(
                    "the weak one switched off, it is the detector of unit 04",
                    lambda f, A, B, R, Is, n: (f(A, 0.0, R, Is, n), detector_output(A, R, Is, n)),
                ),
                invariant("the two may change names", lambda f, A, B, R, Is, n: (f(B, A, R, Is, n), f(A, B, R, Is, n))),
                invariant(
                    "no diode gives more than the mean crest",
                    lambda f, A, B, R, Is, n: (f(A, B, R, Is, n), f.mean_envelope(A, B)),
                    at_most,
                ),
                invariant(
                    "far down on the square law the outputs add",
                    lambda f, A, B, R, Is, n: (f(2e-3 * n, 1e-3 * n, R, Is, n) / f(2e-3 * n, 0.0, R, Is, n), 1.25),
                    nearly,
                ),
            ],
            published=[
                value(
                    "x = 5 on a load as high as the diode's own 25 kΩ, the other station off",
                    given=(0.125, 0.0, 25e3, 1e-6, 0.025),
                    wanted=2.15552643605 * 0.025,
                    within=relative(1e-9, because="printed to twelve figures"),
                    source=DETECTOR,
                    known="recomputed",
                ),
                value(
                    "the same the other way round",
                    given=(0.0, 0.125, 25e3, 1e-6, 0.025),
                    wanted=2.15552643605 * 0.025,
                    within=relative(1e-9, because="printed to twelve figures"),
                    source=DETECTOR,
                    known="recomputed",
                ),
            ],
            slips=[
                slip(
                    "added what the two would give alone",
                    lambda A, B, *diode: detector_output(A, *diode) + detector_output(B, *diode),
                ),
                slip(
                    "put the average of the crest through the detector: average its output",
                    lambda A, B, *diode: detector_output(mean_envelope(A, B), *diode),
                ),
                slip(
                    "let the condenser hold the highest crest: it follows the beat",
                    lambda A, B, *diode: detector_output(A + B, *diode),
                ),
                slip(
                    "added squares under the root, and forgotten the beat",
                    lambda A, B, *diode: detector_output(np.hypot(A, B), *diode),
                ),
                slip(
                    "averaged over a quarter of the beat",
                    lambda A, B, *diode: np.mean(
                        detector_output(np.sqrt(A**2 + B**2 + 2 * A * B * BEAT[: BEAT.size // 2]), *diode)
                    ),
                ),
                slip("forgotten the load", lambda A, B, R, Is, n: two_carrier_output(A, B, 1e6 * n / Is, Is, n)),
            ],
        ),
        Question(
            asks=suppression,
            given={"strong": STRONG, "weak": WEAK, "depth": number(0.1, 1)} | DIODE,
            where=weaker,
            gives="dB",
            agrees_within=LEVEL,
            holds=[
                invariant("no strong station, no suppression", lambda f, A, B, m, R, Is, n: (f(0.0, B, m, R, Is, n), 0.0)),
                invariant(
                    "a faint station suffers as your closed form says",
                    lambda f, A, B, m, R, Is, n: (f(A, n / 30, m, R, Is, n), f.faint_suppression(A, R, Is, n)),
                    lambda left, right, tolerance: equal(left, right, absolute(0.05, because="n/30 is not nothing")),
                ),
                invariant(
                    "two stations far down on the square law leave each other alone",
                    lambda f, A, B, m, R, Is, n: (f(n / 50, n / 100, m, R, Is, n), 0.0),
                    lambda left, right, tolerance: equal(left, right, absolute(0.01, because="nearly square")),
                ),
                invariant(
                    "far above the bend, on a high load, less than B/A is left: of half the strength, over 6 dB is lost",
                    lambda f, A, B, m, R, Is, n: (f(40 * n, 20 * n, m, 100 * n / Is, Is, n), -20 * np.log10(2)),
                    less,
                ),
            ],
            no_published="The papers' B/(2A) is a limit, from memory; tests hold the exact law to it.",
            refuses=[
                refusal("no weak station", (1.0, 0.0, 0.5, 25e3, 1e-6, 0.025), (1.0, -0.001, 0.5, 25e3, 1e-6, 0.025)),
                refusal(
                    "a weak station without modulation",
                    (1.0, 0.5, 0.0, 25e3, 1e-6, 0.025),
                    (1.0, 0.5, -0.001, 25e3, 1e-6, 0.025),
                ),
            ],
            slips=[
                slip("compared with the strong station's programme: compare with the weak one left alone", against_the_strong),
                slip("taken 10 log: the tone is a voltage", lambda *inputs: suppression(*inputs) / 2),
                slip("returned the loss: what is held down is below 0 dB", lambda *inputs: -suppression(*inputs)),
                slip("taken a linear rectifier's B/(2A)", lambda A, B, *others: 20 * np.log10(B / (2 * A))),
                slip(
                    "compared the whole outputs: only what changes with the weak station's modulation is its programme",
                    lambda A, B, m, *diode: 20 * np.log10(two_carrier_output(A, B, *diode) / detector_output(A, *diode)),
                ),
                slip(
                    "modulated the strong one",
                    lambda A, B, m, *diode: (
                        20
                        * np.log10(
                            (two_carrier_output(A * (1 + m), B, *diode) - two_carrier_output(A * (1 - m), B, *diode))
                            / (detector_output(A * (1 + m), *diode) - detector_output(A * (1 - m), *diode))
                        )
                    ),
                ),
            ],
        ),
        Question(
            asks=faint_suppression,
            given={"strong": STRONG} | DIODE,
            gives="dB",
            agrees_within=absolute(1e-6, because="a closed form, in decibels"),
            holds=[
                invariant("no strong station, no suppression", lambda f, A, R, Is, n: (f(0.0, R, Is, n), 0.0)),
                invariant(
                    "on a very high load, a strong carrier never helps",
                    lambda f, A, R, Is, n: (f(A, 1e4 * n / Is, Is, n), 0.0),
                    less,
                ),
                invariant(
                    "on a load far below the diode's own resistance, a carrier twice the slope voltage does help",
                    lambda f, A, R, Is, n: (0.0, f(2 * n, 0.1 * n / Is, Is, n)),
                    less,
                ),
            ],
            published=[
                value(
                    "x = 1 on a load of no account: 1 − (I1/I0)²",
                    given=(0.025, 25e12, 1e-6, 0.025),
                    wanted=20 * np.log10(1 - 0.446389965896535**2),
                    within=absolute(1e-7, because="a very high load"),
                    source=BESSEL,
                    known="recomputed",
                ),
                value(
                    "x = 20 on the same",
                    given=(0.5, 25e12, 1e-6, 0.025),
                    wanted=20 * np.log10(1 - 0.974670507889807**2),
                    within=absolute(1e-7, because="a very high load"),
                    source=BESSEL,
                    known="recomputed",
                ),
            ],
            slips=[
                slip(
                    "left the load out of it: 1 − q² holds for a very high one",
                    lambda A, R, Is, n: without(A, R, Is, n, 0.0, load=False),
                ),
                slip("left out the bend's own part, q²/(1 + s)²", lambda A, R, Is, n: without(A, R, Is, n, 0.0, load=True)),
                slip(
                    "forgotten to compare with the strong station switched off",
                    lambda A, R, Is, n: faint_suppression(A, R, Is, n) + 20 * np.log10(R * Is / (n + R * Is)),
                ),
                slip("taken 10 log: the tone is a voltage", lambda *inputs: faint_suppression(*inputs) / 2),
                slip(
                    "forgotten to square q",
                    lambda A, R, Is, n: (
                        20
                        * np.log10(
                            10 ** (faint_suppression(A, R, Is, n) / 20) * (1 - i1_over_i0(A / n)) / (1 - i1_over_i0(A / n) ** 2)
                        )
                    ),
                ),
            ],
        ),
    ],
    hints=[
        "Draw two arrows of lengths A and B with the angle φ between them, one turning slowly against the other. The "
        "arrow from tail to tip is the crest that the detector sees. How long is it? Now let φ go all the way round and "
        "average.",
        "The crest is sqrt(A² + B² + 2AB cos φ). Put each of, say, 90 values through detector_output and average the "
        "answers. The weak programme is the difference of that average for B(1 + m) and for B(1 − m); do it with A, and "
        "with 0 for A.",
        "mean_envelope: with m = 4 × strong × weak/(strong + weak)² and _, E = elliptic_integrals(m): 2/π × (strong + "
        "weak) × E. two_carrier_output: give strong, weak and the diode's three numbers a last axis by "
        "np.asarray(value)[..., np.newaxis], work the crest with BEAT for the cosine of the angle, np.mean(…, "
        "axis=-1)[()]. suppression: 20 log10 of the two differences' ratio, ValueError where np.any(weak <= 0) or "
        "np.any(depth <= 0). faint_suppression: with r = load_resistance × saturation_current/slope_voltage, s = "
        "detector_output(strong, …)/slope_voltage + r and q = i1_over_i0(strong/slope_voltage): 20 np.log10(s/(1 + s) × "
        "(1 − q² + (q/(1 + s))²) × (1 + r)/r).",
    ],
)

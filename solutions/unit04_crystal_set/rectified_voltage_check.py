"""How `rectified_voltage` is judged.

In the laws and slips: V the crest of the carrier, R the load, Is and n the diode's saturation current and slope
voltage.
"""

import numpy as np

from checker import Exercise, Question, amperes, at_most, equal, invariant, number, ohms, relative, slip, value, volts

from .rectified_voltage import detector_output, i1_over_i0, log_i0, no_load_output, square_law_output

SAMPLED = relative(1e-6, because="averages round a cycle, or forms for large x, may be left a little coarse", floor=1e-12)
CARRIER, SLOPE = volts("1 mV", "10 V"), volts("25 mV", "60 mV")
BESSEL = "M. Abramowitz and I. A. Stegun, Handbook of Mathematical Functions, 1964, eq. 9.6.34; bessel_i.csv"
DETECTOR = "K. K. Clarke and D. T. Hess, Communication Circuits, 1971 (from memory); diode_detector_exact.csv"
PRINTED = relative(1e-9, because="printed to twelve figures")


def nearly(left, right, tolerance):
    return equal(left, right, relative(1e-3, because="a limit, nearly reached"))


def both_ends(x):
    """I1/I0 from a thousand moments of which the last is the first again."""
    swing = np.cos(np.linspace(0, 2 * np.pi, 1000))
    weight = np.exp(np.asarray(x)[..., np.newaxis] * (swing - 1))
    return np.mean(weight * swing, axis=-1) / np.mean(weight, axis=-1)


def linear_law(V, n):
    return V - n / 2 * np.log(2 * np.pi * V / n)


def without_the_one(V, R, Is, n):
    """y + ln(y/r) = ln I0(x): what comes of forgetting the current that leaks back."""
    drive, r = log_i0(V / n), R * Is / n
    least, most = np.zeros_like(drive), np.maximum(drive + r, 1.0)
    for _ in range(80):
        y = (least + most) / 2
        above = y + np.log(y / r) > drive
        least, most = np.where(above, least, y), np.where(above, y, most)
    return n * y


EXERCISE = Exercise(
    title="How much does a crystal rectify?",
    questions=[
        Question(
            asks=log_i0,
            given={"x": number(0.01, 2000)},
            agrees_within=SAMPLED,
            holds=[
                invariant("no carrier gives nothing", lambda f, x: (f(0.0), 0.0)),
                invariant("never more than x itself", lambda f, x: (f(x), x), at_most),
                invariant("never more than x²/4", lambda f, x: (f(x), x**2 / 4), at_most),
            ],
            published=[
                value(
                    "x = 1 and 10",
                    given=(np.array([1.0, 10.0]),),
                    wanted=np.array([0.235914358507179, 7.9429720831187]),
                    within=PRINTED,
                    source=BESSEL,
                    known="recomputed",
                ),
            ],
            slips=[
                slip("let I0 grow too large for a float: above x = 713 use the form for large x", lambda x: np.log(np.i0(x))),
                slip(
                    "used the form for large x everywhere: it fails for a weak carrier", lambda x: x - np.log(2 * np.pi * x) / 2
                ),
                slip("taken the logarithm to base 10: it is the natural one", lambda x: log_i0(x) / np.log(10)),
                slip("stopped at the first term, x²/4", lambda x: x**2 / 4),
                slip("taken x for the r.m.s. value: it is the crest", lambda x: log_i0(np.sqrt(2) * x)),
            ],
        ),
        Question(
            asks=i1_over_i0,
            given={"x": number(0.01, 2000)},
            agrees_within=SAMPLED,
            holds=[
                invariant("at least x/(½ + √(x² + 9/4))", lambda f, x: (x / (0.5 + np.sqrt(x**2 + 2.25)), f(x)), at_most),
                invariant("at most x/(½ + √(x² + ¼))", lambda f, x: (f(x), x / (0.5 + np.sqrt(x**2 + 0.25))), at_most),
                invariant("a stronger carrier has the larger ratio", lambda f, x: (f(x), f(1.1 * x)), at_most),
            ],
            published=[
                value(
                    "x = 1 and 10",
                    given=(np.array([1.0, 10.0]),),
                    wanted=np.array([0.446389965896535, 0.948599825954846]),
                    within=PRINTED,
                    source=BESSEL,
                    known="recomputed",
                ),
            ],
            slips=[
                slip("turned the ratio over", lambda x: 1 / i1_over_i0(x)),
                slip("used x/2 for all carriers: that holds for weak ones only", lambda x: x / 2),
                slip("squared it", lambda x: i1_over_i0(x) ** 2),
                slip("weighted with exp(−x cos θ), which turns the sign", lambda x: -i1_over_i0(x)),
                slip("averaged cos θ squared: the ratio wants cos θ once", lambda x: 1 - i1_over_i0(x) / x),
                slip(
                    "counted θ = 0 twice: 2π is the same moment, and np.linspace leaves it out with endpoint=False", both_ends
                ),
            ],
        ),
        Question(
            asks=square_law_output,
            given={"carrier": volts("100 µV", "100 mV"), "slope_voltage": SLOPE},
            gives="V",
            agrees_within=relative(1e-9, because="one formula, double precision"),
            holds=[
                invariant("twice the carrier gives four times the output", lambda f, V, n: (f(2 * V, n), 4 * f(V, n))),
                invariant("a diode of twice the slope voltage gives half", lambda f, V, n: (f(V, 2 * n), f(V, n) / 2)),
            ],
            no_published="The first term of a series; the whole is held to tables in no_load_output.",
            slips=[
                slip("taken the carrier for its r.m.s. value", lambda V, n: V**2 / (2 * n)),
                slip("left out the 4", lambda V, n: V**2 / n),
                slip("not squared the carrier", lambda V, n: V / (4 * n)),
                slip("returned it in slope voltages: multiply by the slope voltage", lambda V, n: V**2 / (4 * n**2)),
            ],
        ),
        Question(
            asks=no_load_output,
            given={"carrier": CARRIER, "slope_voltage": SLOPE},
            gives="V",
            agrees_within=SAMPLED,
            holds=[
                invariant(
                    "a carrier of a twentieth of the slope voltage follows the square law",
                    lambda f, V, n: (f(n / 20, n), f.square_law_output(n / 20, n)),
                    nearly,
                ),
                invariant(
                    "a carrier of a hundred slope voltages follows the linear law V − (n/2) ln(2πV/n)",
                    lambda f, V, n: (f(100 * n, n), linear_law(100 * n, n)),
                    nearly,
                ),
                invariant("never more than the crest of the carrier", lambda f, V, n: (f(V, n), V), at_most),
            ],
            published=[
                value(
                    "a crest of 10 slope voltages of 25 mV",
                    given=(0.25, 0.025),
                    wanted=7.9429720831187 * 0.025,
                    within=PRINTED,
                    source=BESSEL,
                    known="recomputed",
                ),
            ],
            slips=[
                slip("taken the crest itself: a diode is no perfect switch", lambda V, n: V),
                slip("used the square law for a carrier of any strength", square_law_output),
                slip("returned it in slope voltages: multiply by the slope voltage", lambda V, n: log_i0(V / n)),
                slip("not divided the carrier by the slope voltage", lambda V, n: n * log_i0(V)),
                slip("used the linear law for a carrier of any strength", linear_law),
            ],
        ),
        Question(
            asks=detector_output,
            given={
                "carrier": volts("1 mV", "3 V"),
                "load_resistance": ohms("1 kΩ", "1 MΩ"),
                "saturation_current": amperes("10 nA", "10 µA"),
                "slope_voltage": SLOPE,
            },
            gives="V",
            agrees_within=relative(1e-6, because="solved step by step"),
            holds=[
                invariant(
                    "what the diode rectifies is what the load takes: y + ln(1 + y/r) = ln I0(x)",
                    lambda f, V, R, Is, n: (f(V, R, Is, n) / n + np.log1p(f(V, R, Is, n) / (R * Is)), log_i0(V / n)),
                ),
                invariant(
                    "never more than without a load", lambda f, V, R, Is, n: (f(V, R, Is, n), f.no_load_output(V, n)), at_most
                ),
                invariant(
                    "a higher load never gives less", lambda f, V, R, Is, n: (f(V, R, Is, n), f(V, 2 * R, Is, n)), at_most
                ),
            ],
            published=[
                value(
                    "x = 5 on a load as high as the diode's own 25 kΩ",
                    given=(0.125, 25e3, 1e-6, 0.025),
                    wanted=2.15552643605 * 0.025,
                    within=PRINTED,
                    source=DETECTOR,
                    known="recomputed",
                ),
                value(
                    "x = 20 on a load of ten times that",
                    given=(0.5, 250e3, 1e-6, 0.025),
                    wanted=16.6108755343 * 0.025,
                    within=PRINTED,
                    source=DETECTOR,
                    known="recomputed",
                ),
            ],
            slips=[
                slip("forgotten the load", lambda V, R, Is, n: no_load_output(V, n)),
                slip(
                    "shared the voltage between diode and load at rest: the diode's resistance changes as it works",
                    lambda V, R, Is, n: no_load_output(V, n) * R / (R + n / Is),
                ),
                slip("left out the −1, the current that leaks back", without_the_one),
                slip(
                    "turned r over: it is the load over the diode's n/Is",
                    lambda V, R, Is, n: detector_output(V, (n / Is) ** 2 / R, Is, n),
                ),
                slip(
                    "returned it in slope voltages: multiply by the slope voltage",
                    lambda V, R, Is, n: detector_output(V, R, Is, n) / n,
                ),
            ],
        ),
    ],
    hints=[
        "Average the diode's current over one cycle of the carrier while its condenser holds a steady voltage: the "
        "average of exp(x cos θ) is the function I0(x). Without a load that average current must be nothing.",
        "numpy has I0 as np.i0, but above x = 713 it overflows; there ln I0 = x − ln(2πx)/2 + 1/(8x) will do. For the "
        "ratio take, say, 1000 values of θ round the cycle and weight cos θ with exp(x (cos θ − 1)), which never "
        "overflows. With a load, unknown y stands on both sides: halve an interval, or take Newton's steps.",
        "log_i0: np.where(x < 700, np.log(np.i0(np.minimum(x, 700))), x − ln(2π × x)/2 + 1/(8 × x) for np.maximum(x, "
        "700)). Ratio: θ = 2π × k/1000, k = 0 … 999; w = np.exp(np.asarray(x)[..., np.newaxis] × (cos θ − 1)); the mean "
        "of w cos θ over that of w, both by np.mean(…, axis=-1). Output: with x = carrier/slope_voltage and r = "
        "load_resistance × saturation_current/slope_voltage it is y × slope_voltage, where y + ln(1 + y/r) = log_i0(x). "
        "With u = ln(1 + y/r), start from u = ln(1 + log_i0(x)/r) and take u − (u + r (exp(u) − 1) − log_i0(x))/(1 + r "
        "exp(u)) for u, seven times; then y = r (exp(u) − 1), by np.expm1.",
    ],
)

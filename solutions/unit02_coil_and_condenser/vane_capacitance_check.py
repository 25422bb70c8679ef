"""How `vane_capacitance` is judged."""

import numpy as np

from checker import (
    Exercise,
    Question,
    at_most,
    farads,
    invariant,
    less,
    metres,
    one_of,
    picture,
    refusal,
    relative,
    slip,
    value,
    whole,
)
from checker.checks.given import physical, radians

from .vane_capacitance import (
    EPSILON_0,
    gangs_in_parallel,
    gangs_in_series,
    plate_capacitance,
    vane_capacitance,
    vane_radius,
)

FORMULA = relative(1e-9, because="one formula, double precision")
DIAL = {
    "angle": radians("0 rad", "3.14 rad"),
    "law": one_of("capacitance", "wavelength", "frequency"),
    "minimum": farads("10 pF", "50 pF"),
    "maximum": farads("200 pF", "500 pF"),
}
GANG = {"first": farads("20 pF", "400 pF"), "second": farads("20 pF", "400 pF")}
DIAL_TABLE = "condenser laws as in US National Bureau of Standards, Circular 74, 1924, worked for 50 to 500 pF"
EXCHANGED = {"capacitance": "capacitance", "wavelength": "frequency", "frequency": "wavelength"}
BEYOND = (
    refusal(
        "90, an angle in degrees, far beyond the stop at π",
        (90.0, "capacitance", 20e-12, 365e-12),
        (3.15, "capacitance", 20e-12, 365e-12),
    ),
    refusal("an angle below 0", (-0.1, "wavelength", 20e-12, 365e-12), (-0.001, "wavelength", 20e-12, 365e-12)),
    refusal(
        'a law called "logarithmic", which is not one of the three',
        (1.0, "logarithmic", 20e-12, 365e-12),
        (1.0, "Wavelength", 20e-12, 365e-12),
        (1.0, "wavelength ", 20e-12, 365e-12),
    ),
)


def entered(angle, law, low, high, plates, gap, cut_out):
    """What the law adds to the square of the cut-out's radius."""
    return vane_radius(angle, law, low, high, plates, gap, 0.0) ** 2


EXERCISE = Exercise(
    title="What does the dial turn?",
    questions=[
        Question(
            asks=plate_capacitance,
            given={"plates": whole(2, 30), "area": physical("m²", "0.0005 m²", "0.003 m²"), "gap": metres("200 µm", "1 mm")},
            gives="F",
            agrees_within=FORMULA,
            holds=[
                invariant(
                    "half the gap is twice the capacitance", lambda f, n, area, gap: (f(n, area, gap / 2), 2 * f(n, area, gap))
                ),
                invariant(
                    "three plates are two condensers side by side",
                    lambda f, n, area, gap: (f(3, area, gap), 2 * f(2, area, gap)),
                ),
            ],
            published=[
                value(
                    "two plates of one square metre, one millimetre apart",
                    given=(2, 1.0, 1e-3),
                    wanted=8.8541878128e-9,
                    within=FORMULA,
                    source="CODATA 2018, electric constant",
                    known="memory",
                ),
            ],
            slips=[
                slip(
                    "counted the plates: it is the gaps between them that hold the field", lambda n, a, d: EPSILON_0 * n * a / d
                ),
                slip("left out the number of gaps", lambda n, a, d: EPSILON_0 * a / d),
                slip(
                    "counted every other gap: each plate has a field on both sides", lambda n, a, d: EPSILON_0 * n / 2 * a / d
                ),
                slip("multiplied by the gap: closer plates hold more", lambda n, a, d: EPSILON_0 * (n - 1) * a * d),
            ],
        ),
        Question(
            asks=vane_capacitance,
            given=DIAL,
            gives="F",
            agrees_within=FORMULA,
            holds=[
                invariant("plates out, it is the minimum", lambda f, angle, law, low, high: (f(0.0, law, low, high), low)),
                invariant("plates in, it is the maximum", lambda f, angle, law, low, high: (f(np.pi, law, low, high), high)),
                invariant(
                    "a further turn never lowers it", lambda f, angle, *rest: (f(0.9 * angle, *rest), f(angle, *rest)), at_most
                ),
            ],
            published=[
                value(
                    "half-way, even in capacitance",
                    given=(np.pi / 2, "capacitance", 50e-12, 500e-12),
                    wanted=275e-12,
                    within=FORMULA,
                    source=DIAL_TABLE,
                    known="recomputed",
                ),
                value(
                    "half-way, even in wavelength",
                    given=(np.pi / 2, "wavelength", 50e-12, 500e-12),
                    wanted=216.5569415e-12,
                    within=FORMULA,
                    source=DIAL_TABLE,
                    known="recomputed",
                ),
                value(
                    "half-way, even in frequency",
                    given=(np.pi / 2, "frequency", 50e-12, 500e-12),
                    wanted=115.4430785e-12,
                    within=FORMULA,
                    source=DIAL_TABLE,
                    known="recomputed",
                ),
            ],
            refuses=BEYOND,
            slips=[
                slip(
                    "made every law even in capacitance",
                    lambda angle, law, low, high: vane_capacitance(angle, "capacitance", low, high),
                ),
                slip(
                    "exchanged wavelength and frequency: wavelength goes as √C, frequency as 1/√C",
                    lambda angle, law, low, high: vane_capacitance(angle, EXCHANGED[law], low, high),
                ),
                slip(
                    "counted the angle from plates in: it is 0 with the plates out",
                    lambda angle, law, low, high: vane_capacitance(np.pi - angle, law, low, high),
                ),
                slip(
                    "divided radians by 180: half a turn is π radians",
                    lambda angle, law, low, high: vane_capacitance(angle / 180 * np.pi, law, low, high),
                ),
            ],
        ),
        Question(
            asks=vane_radius,
            picture=picture(at={"law": "wavelength"}),
            given=DIAL | {"plates": whole(5, 25), "gap": metres("300 µm", "1 mm"), "cut_out": metres("5 mm", "10 mm")},
            gives="m",
            agrees_within=FORMULA,
            holds=[
                invariant(
                    "half circles have one radius",
                    lambda f, angle, law, *rest: (f(angle, "capacitance", *rest), f(0.0, "capacitance", *rest)),
                ),
                invariant("never inside the cut-out", lambda f, *inputs: (inputs[-1], f(*inputs)), at_most),
                invariant(
                    "half the gaps must enter twice the area",
                    lambda f, angle, law, low, high, plates, gap, cut_out: (
                        f(angle, law, low, high, 3, gap, cut_out) ** 2 - cut_out**2,
                        2 * (f(angle, law, low, high, 5, gap, cut_out) ** 2 - cut_out**2),
                    ),
                ),
            ],
            refuses=[
                refusal(beyond.what, *((*given, 23, 0.35e-3, 9e-3) for given in (beyond.given, *beyond.near)))
                for beyond in BEYOND
            ],
            no_published="The outline follows from the law by one step of calculus.",
            slips=[
                slip(
                    "counted the plates: there is one gap fewer",
                    lambda *inputs: vane_radius(*inputs[:4], inputs[4] + 1, *inputs[5:]),
                ),
                slip("forgotten the cut-out", lambda *inputs: vane_radius(*inputs[:6], 0.0)),
                slip(
                    "left out the ½ of a sector's area, ½ r² times the angle",
                    lambda *inputs: np.sqrt(inputs[-1] ** 2 + entered(*inputs) / 2),
                ),
                slip("not squared the cut-out's radius", lambda *inputs: np.sqrt(inputs[-1] + entered(*inputs))),
            ],
        ),
        Question(
            asks=gangs_in_parallel,
            given=GANG,
            gives="F",
            agrees_within=FORMULA,
            holds=[
                invariant("more than either alone", lambda f, a, b: (max(a, b), f(a, b)), less),
                invariant(
                    "the two ways of joining multiply to the two gangs",
                    lambda f, a, b: (f(a, b) * f.gangs_in_series(a, b), a * b),
                ),
            ],
            no_published="It is what capacitance means: the charges add.",
            slips=[
                slip("joined them in series", gangs_in_series),
                slip("taken the mean", lambda a, b: (a + b) / 2),
                slip("multiplied them", lambda a, b: a * b),
            ],
        ),
        Question(
            asks=gangs_in_series,
            given=GANG,
            gives="F",
            agrees_within=FORMULA,
            holds=[
                invariant("less than either alone", lambda f, a, b: (f(a, b), min(a, b)), less),
                invariant("two equal gangs are half of one", lambda f, a, b: (f(a, a), a / 2)),
            ],
            no_published="It is what capacitance means: the voltages add.",
            slips=[
                slip("joined them in parallel", gangs_in_parallel),
                slip("not turned the sum of 1/C over again at the end", lambda a, b: 1 / a + 1 / b),
                slip("taken half the mean: that is right for equal gangs only", lambda a, b: (a + b) / 4),
            ],
        ),
    ],
    hints=[
        "Field lines fill the gaps, not the plates. And all three laws say one thing: some power of the capacitance "
        "grows evenly with the angle. power_of tells you which.",
        "Even in C^p means C^p = out + (in − out) × angle/π, where out is minimum^p and in is maximum^p; the p-th "
        "root of that is C. The area that enters in a small turn is ½ (r² − cut_out²) times that turn, on each of "
        "plates − 1 gaps.",
        "With p = power_of(law) the capacitance is (minimum**p + (maximum**p − minimum**p) × angle/π) ** (1/p). Its slope"
        " is (maximum**p − minimum**p)/π × capacitance**(1 − p)/p, and the radius sqrt(cut_out² + 2 × gap × slope / "
        "((plates − 1) × EPSILON_0)). Raise ValueError if np.any(angle < 0) or np.any(angle > π). Parallel: first + "
        "second; series: first × second / (first + second).",
    ],
)

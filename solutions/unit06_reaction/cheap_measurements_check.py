"""How `cheap_measurements` is judged.

In the laws and slips: i1, v1, i2, v2 currents and voltages; a and b a reading alone and with the resistance R, X a reactance;
C1, C2 capacitances, f1, f2 frequencies, u and w their uncertainties; S and E the starts and the stops.
"""

import numpy as np

from checker import (
    Exercise,
    Question,
    amperes,
    at_most,
    drawn,
    farads,
    hertz,
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

from .cheap_measurements import (
    grid_law_from_readings,
    quality_from_added_resistance,
    quality_from_detuning,
    self_capacitance_from_two,
    self_capacitance_uncertainty,
    threshold_from_clicks,
)

CLOSE = relative(1e-9, because="a few operations, double precision")
SMALL = relative(1e-9, because="a small difference of large numbers, double precision", floor=1e-21)
CLICKS = relative(1e-9, because="means of a few numbers, double precision", floor=1e-24)
EQUAL_READINGS = relative(1e-6, because="exact")
HEAT = "k/e is 86.17333 µV a kelvin (CODATA): of electrons that leave a filament of 1160 K the slope voltage is 99.961 mV"
STANDARDS = "US National Bureau of Standards, Circular 74, 1924: the resistance that halves the current is the circuit's own"
HANDBOOK = "F. E. Terman, Radio Engineers' Handbook, 1943, section 13: Q is twice the capacitance over the difference"
RESONANCE = "resonance_lc.csv, rows 200 µH with 500 pF and with 50 pF, of which 10 pF are taken to be the coil's own"
OCTAVE = "JCGM 100:2008 (the GUM), 5.1.2, for (C1 − 4 C2)/3: the root of 17 over 3, times a reading's uncertainty"
GUM = "JCGM 100:2008 (the GUM), annex H.2, table H.2: five readings of a voltage"
FIVE_VOLTAGES = np.array([5.007, 4.994, 5.005, 4.990, 4.999])
READINGS = {
    "frequency_1": hertz("500 kHz", "900 kHz"),
    "capacitance_1": farads("200 pF", "500 pF"),
    "frequency_2": hertz("1 MHz", "1.6 MHz"),
    "capacitance_2": farads("20 pF", "90 pF"),
}


def clicks(middle, count, turn):
    """Readings of a throttle about some place, each a little out."""
    return np.round(middle + np.array([0.1 * ((5 * turn + 3 * n * n + 2 * n) % 11 - 5) for n in range(count)]), 1) * 1e-12


STARTS = drawn(
    [clicks(60 + 17 * turn, 3 + turn % 4, turn) for turn in range(12)],
    "3 to 6 readings, 60 to 250 pF",
    unit="F",
)
STOPS = drawn(
    [clicks(57 + 15 * turn, 2 + (turn + 1) % 4, 2 * turn + 1) for turn in range(12)],
    "2 to 5 readings, 55 to 225 pF",
    unit="F",
)


def one_grid(i1, v1, i2, v2):
    return (i1 - i2) * (v1 - v2) > 0


def falls(a, b, *others):
    return a > b


def rises(C1, C2):
    return C2 > C1


def law_with(slope_voltage):
    """A grid's law with another slope voltage than the right one."""
    return lambda i1, v1, i2, v2: (i1 * np.exp(-v1 / slope_voltage(i1, v1, i2, v2)), slope_voltage(i1, v1, i2, v2))


def parts_of_uncertainty(f1, C1, f2, C2, u, w):
    """What the first scale reading, the second, and the frequencies bring."""
    k = (f2 / f1) ** 2
    return u / (k - 1), k * u / (k - 1), 2 * np.sqrt(2) * k * w * (C1 - C2) / (k - 1) ** 2


def spread(S, E, over=1, divided=True):
    """The clicks' uncertainty, worked out in another way."""
    return np.sqrt(sum(np.var(one, ddof=over) / (len(one) if divided else 1) for one in (S, E)))


EXERCISE = Exercise(
    title="What can a meter and a condenser's scale tell?",
    questions=[
        Question(
            asks=grid_law_from_readings,
            given={
                "current_1": amperes("200 nA", "5 µA"),
                "bias_1": volts("-100 mV", "300 mV"),
                "current_2": amperes("20 nA", "2 µA"),
                "bias_2": volts("-500 mV", "100 mV"),
            },
            where=one_grid,
            gives=("A", "V"),
            agrees_within=CLOSE,
            holds=[
                invariant(
                    "the law goes through the first reading",
                    lambda f, i1, v1, i2, v2: (f(i1, v1, i2, v2)[0] * np.exp(v1 / f(i1, v1, i2, v2)[1]), i1),
                ),
                invariant("the readings may change places", lambda f, i1, v1, i2, v2: (f(i1, v1, i2, v2), f(i2, v2, i1, v1))),
                invariant(
                    "of a reading at 0 V, the zero current is that reading",
                    lambda f, i1, v1, i2, v2: (f(i1, 0.0, i1 / 5, -0.2)[0], i1),
                ),
            ],
            published=[
                value(
                    "a filament of 1160 K: a tenth of the current at 0.230169 V less",
                    given=(1e-6, 0.0, 1e-7, -0.230169),
                    wanted=(1e-6, 0.099961),
                    within=relative(1e-5, because="five figures"),
                    source=HEAT,
                    known="recomputed",
                ),
            ],
            refuses=[
                refusal("less current at the higher voltage", (1e-7, 0.1, 1e-6, -0.1)),
                refusal("two readings at one voltage, or with one current", (2e-6, 0.1, 1e-6, 0.1), (1e-6, 0.1, 1e-6, -0.1)),
            ],
            slips=[
                slip("used the logarithm to base ten", law_with(lambda i1, v1, i2, v2: (v1 - v2) / np.log10(i1 / i2))),
                slip(
                    "worked back to 0 V in the wrong direction",
                    lambda i1, v1, i2, v2: (i1 * np.exp(v1 * np.log(i1 / i2) / (v1 - v2)), (v1 - v2) / np.log(i1 / i2)),
                ),
                slip("taken the first current for that at 0 V", lambda i1, v1, i2, v2: (i1, (v1 - v2) / np.log(i1 / i2))),
                slip(
                    "drawn a straight line between the readings: the law is exponential",
                    law_with(lambda i1, v1, i2, v2: (v1 - v2) / (i1 - i2) * (i1 + i2) / 2),
                ),
                slip(
                    "turned the slope voltage over",
                    lambda i1, v1, i2, v2: (grid_law_from_readings(i1, v1, i2, v2)[0], np.log(i1 / i2) / (v1 - v2)),
                ),
            ],
        ),
        Question(
            asks=quality_from_added_resistance,
            given={
                "reading_alone": number(4, 10),
                "reading_with": number(1, 9),
                "added_resistance": ohms("2 Ω", "30 Ω"),
                "reactance": ohms("500 Ω", "2.5 kΩ"),
            },
            where=falls,
            agrees_within=relative(1e-9, because="a difference of readings, double precision"),
            holds=[
                invariant(
                    "a reading half as large: the resistance put in is the circuit's own",
                    lambda f, a, b, R, X: (f(a, a / 2, R, X), X / R),
                ),
                invariant(
                    "only the ratio of the readings counts", lambda f, a, b, R, X: (f(3 * a, 3 * b, R, X), f(a, b, R, X))
                ),
                invariant(
                    "twice the resistance for the same fall, half the Q",
                    lambda f, a, b, R, X: (f(a, b, 2 * R, X), f(a, b, R, X) / 2),
                ),
                invariant(
                    "the more it falls, the better the circuit is",
                    lambda f, a, b, R, X: (f(a, b, R, X), f(a, b / 2, R, X)),
                    less,
                ),
            ],
            published=[
                value(
                    "10 Ω halve the reading, of 1 kΩ",
                    given=(1.0, 0.5, 10.0, 1000.0),
                    wanted=100.0,
                    within=EQUAL_READINGS,
                    source=STANDARDS,
                    known="memory",
                ),
            ],
            refuses=[
                refusal("a reading that rises", (4.0, 5.0, 10.0, 1000.0), (4.0, 4.001, 10.0, 1000.0)),
                refusal("a reading that stays", (4.0, 4.0, 10.0, 1000.0)),
            ],
            slips=[
                slip("forgotten the 1: what was put in is only a part of the whole", lambda a, b, R, X: X / R * a / b),
                slip("returned the circuit's resistance", lambda a, b, R, X: R / (a / b - 1)),
                slip("taken the resistance put in for the circuit's", lambda a, b, R, X: X / R + 0 * a * b),
                slip("taken the readings for powers", lambda a, b, R, X: X / R * (np.sqrt(a / b) - 1)),
                slip("returned the Q with the resistance still in", lambda a, b, R, X: X / R * (a / b - 1) * b / a),
            ],
        ),
        Question(
            asks=quality_from_detuning,
            given={"capacitance_below": farads("50 pF", "500 pF"), "capacitance_above": farads("50 pF", "500 pF")},
            where=rises,
            agrees_within=CLOSE,
            holds=[
                invariant("only the ratio of the capacitances counts", lambda f, C1, C2: (f(3 * C1, 3 * C2), f(C1, C2))),
                invariant(
                    "settings a hundredth below and above the middle: Q is 100",
                    lambda f, C1, C2: (f(0.99 * C1, 1.01 * C1), 100.0),
                ),
                invariant("nearer together, better", lambda f, C1, C2: (f(C1, C2), f(C1, (C1 + C2) / 2)), less),
            ],
            published=[
                value(
                    "200 pF, and 2 pF between the two settings",
                    given=(199e-12, 201e-12),
                    wanted=200.0,
                    within=EQUAL_READINGS,
                    source=HANDBOOK,
                    known="memory",
                ),
            ],
            refuses=[
                refusal("the settings exchanged", (201e-12, 199e-12), (200.1e-12, 200e-12)),
                refusal("one setting twice", (200e-12, 200e-12)),
            ],
            slips=[
                slip("left out the 2: frequency moves half as much as capacitance", lambda C1, C2: (C1 + C2) / 2 / (C2 - C1)),
                slip("turned the ratio over", lambda C1, C2: (C2 - C1) / (C2 + C1)),
                slip("taken twice the first setting, not the sum of both", lambda C1, C2: 2 * C1 / (C2 - C1)),
                slip("measured from the middle to one side only", lambda C1, C2: 2 * (C1 + C2) / (C2 - C1)),
            ],
        ),
        Question(
            asks=self_capacitance_from_two,
            given=READINGS,
            gives=("F", "H"),
            edges=[lambda f1, C1, f2, C2: (f1, C1, 1.01 * f1, 0.985 * C1)],
            agrees_within=SMALL,
            holds=[
                invariant(
                    "over an octave, the rule of unit 02",
                    lambda f, f1, C1, f2, C2: (f(f1, C1, 2 * f1, C2)[0], (C1 - 4 * C2) / 3),
                ),
                invariant(
                    "the parts found tune to the first frequency",
                    lambda f, f1, C1, f2, C2: ((2 * np.pi * f1) ** 2 * f(f1, C1, f2, C2)[1] * (C1 + f(f1, C1, f2, C2)[0]), 1.0),
                ),
                invariant(
                    "a scale that reads 5 pF too much, both times, gives 5 pF less",
                    lambda f, f1, C1, f2, C2: (f(f1, C1 + 5e-12, f2, C2 + 5e-12)[0], f(f1, C1, f2, C2)[0] - 5e-12),
                ),
            ],
            published=[
                value(
                    "200 µH with 10 pF of its own",
                    given=(503.292121045e3, 490e-12, 1591.54943092e3, 40e-12),
                    wanted=(10e-12, 200e-6),
                    within=relative(1e-8, because="frequencies printed to twelve figures"),
                    source=RESONANCE,
                    known="recomputed",
                ),
            ],
            refuses=[
                refusal("one frequency twice", (600e3, 350e-12, 600e3, 300e-12), (600e3, 350e-12, 599e3, 300e-12)),
                refusal(
                    "more capacitance at the higher frequency",
                    (600e3, 85e-12, 1200e3, 350e-12),
                    (600e3, 85e-12, 1200e3, 85e-12),
                ),
            ],
            slips=[
                slip(
                    "used the octave's 4 and 3 at other frequencies",
                    lambda f1, C1, f2, C2: ((C1 - 4 * C2) / 3, self_capacitance_from_two(f1, C1, f2, C2)[1]),
                ),
                slip(
                    "forgotten to square the ratio of the frequencies",
                    lambda f1, C1, f2, C2: ((C1 - f2 / f1 * C2) / (f2 / f1 - 1), self_capacitance_from_two(f1, C1, f2, C2)[1]),
                ),
                slip(
                    "left the coil's own capacitance out of the inductance",
                    lambda f1, C1, f2, C2: (self_capacitance_from_two(f1, C1, f2, C2)[0], 1 / ((2 * np.pi * f1) ** 2 * C1)),
                ),
                slip(
                    "left out 2π in the inductance",
                    lambda f1, C1, f2, C2: (
                        self_capacitance_from_two(f1, C1, f2, C2)[0],
                        self_capacitance_from_two(f1, C1, f2, C2)[1] * (2 * np.pi) ** 2,
                    ),
                ),
                slip(
                    "turned the sign of the capacitance round",
                    lambda f1, C1, f2, C2: (
                        -self_capacitance_from_two(f1, C1, f2, C2)[0],
                        self_capacitance_from_two(f1, C1, f2, C2)[1],
                    ),
                ),
            ],
        ),
        Question(
            asks=self_capacitance_uncertainty,
            given=READINGS | {"capacitance_uncertainty": farads("100 fF", "3 pF"), "frequency_uncertainty": number(1e-4, 0.01)},
            gives="F",
            edges=[lambda f1, C1, f2, C2, *uncertainties: (f1, C1, 1.01 * f1, 0.985 * C1, *uncertainties)],
            agrees_within=CLOSE,
            holds=[
                invariant(
                    "perfect readings leave no doubt", lambda f, f1, C1, f2, C2, u, w: (f(f1, C1, f2, C2, 0.0, 0.0), 0.0)
                ),
                invariant(
                    "both twice as uncertain, so is the result",
                    lambda f, f1, C1, f2, C2, u, w: (f(f1, C1, f2, C2, 2 * u, 2 * w), 2 * f(f1, C1, f2, C2, u, w)),
                ),
                invariant(
                    "scale and frequency by themselves: the squares add",
                    lambda f, f1, C1, f2, C2, u, w: (
                        f(f1, C1, f2, C2, u, 0.0) ** 2 + f(f1, C1, f2, C2, 0.0, w) ** 2,
                        f(f1, C1, f2, C2, u, w) ** 2,
                    ),
                ),
                invariant(
                    "a wider step of frequency makes the scale's error count less",
                    lambda f, f1, C1, f2, C2, u, w: (f(f1, C1, 2 * f2, C2, u, 0.0), f(f1, C1, f2, C2, u, 0.0)),
                    at_most,
                ),
            ],
            published=[
                value(
                    "an octave, 1 pF: 1.3744 pF",
                    given=(600e3, 352e-12, 1200e3, 84.5e-12, 1e-12, 0.0),
                    wanted=np.sqrt(17) / 3 * 1e-12,
                    within=relative(1e-9, because="exact"),
                    source=OCTAVE,
                    known="recomputed",
                ),
            ],
            refuses=[
                refusal(
                    "one frequency twice",
                    (600e3, 350e-12, 600e3, 300e-12, 1e-12, 1e-3),
                    (600e3, 350e-12, 599e3, 300e-12, 1e-12, 1e-3),
                ),
                refusal("one capacitance twice", (600e3, 85e-12, 1200e3, 85e-12, 1e-12, 1e-3)),
            ],
            slips=[
                slip(
                    "added the uncertainties: of independent readings the squares add",
                    lambda *inputs: sum(parts_of_uncertainty(*inputs)),
                ),
                slip(
                    "forgotten the frequencies' part",
                    lambda *inputs: np.hypot(parts_of_uncertainty(*inputs)[0], parts_of_uncertainty(*inputs)[1]),
                ),
                slip(
                    "forgotten that the frequencies enter by their square: twice the fraction",
                    lambda f1, C1, f2, C2, u, w: self_capacitance_uncertainty(f1, C1, f2, C2, u, w / 2),
                ),
                slip(
                    "counted one frequency's error: there are two",
                    lambda f1, C1, f2, C2, u, w: self_capacitance_uncertainty(f1, C1, f2, C2, u, w / np.sqrt(2)),
                ),
                slip("counted only the upper reading's error", lambda *inputs: np.hypot(*parts_of_uncertainty(*inputs)[1:])),
                slip("returned the variance: take the root", lambda *inputs: self_capacitance_uncertainty(*inputs) ** 2),
            ],
        ),
        Question(
            asks=threshold_from_clicks,
            given={"starts": STARTS, "stops": STOPS},
            gives=("F", "F", "F"),
            arrays=False,
            agrees_within=CLICKS,
            holds=[
                invariant(
                    "seen from the other side the backlash has the other sign, and is as uncertain",
                    lambda f, S, E: (np.array(f(S, E)[1:]), np.array(f(E, S)[1:]) * [-1, 1]),
                ),
                invariant(
                    "clicks all at one place: that is the threshold, without doubt",
                    lambda f, S, E: (f(S[:1].repeat(3), S[:1].repeat(4)), (S[0], 0.0, 0.0)),
                ),
                invariant(
                    "a scale that reads 5 pF more moves the threshold, and nothing else",
                    lambda f, S, E: (np.array(f(S + 5e-12, E + 5e-12)) - f(S, E), np.array([5e-12, 0.0, 0.0])),
                ),
                invariant(
                    "each reading twice: the threshold is the same, and less uncertain",
                    lambda f, S, E: (f(S.repeat(2), E.repeat(2))[2], f(S, E)[2]),
                    less,
                ),
            ],
            published=[
                value(
                    "starts that scatter as those voltages, stops that do not: ± 0.0032",
                    given=(FIVE_VOLTAGES, np.array([4.999, 4.999])),
                    wanted=(4.999, 0.0, 0.0032),
                    within=relative(0.004, because="printed to two figures", floor=1e-9),
                    source=GUM,
                    known="memory",
                ),
            ],
            refuses=[
                refusal("one start", (np.array([80e-12]), np.array([78e-12, 78.4e-12]))),
                refusal("one stop", (np.array([80e-12, 80.2e-12]), np.array([78e-12]))),
            ],
            slips=[
                slip(
                    "taken the middle between start and stop: the smallest swing begins to grow at the start",
                    lambda S, E: ((np.mean(S) + np.mean(E)) / 2, np.mean(S) - np.mean(E), spread(S, E)),
                ),
                slip(
                    "counted the backlash the other way round", lambda S, E: (np.mean(S), np.mean(E) - np.mean(S), spread(S, E))
                ),
                slip(
                    "divided by n, not by n − 1, for the variance of the readings",
                    lambda S, E: (np.mean(S), np.mean(S) - np.mean(E), spread(S, E, over=0)),
                ),
                slip(
                    "returned the scatter of the readings, not the uncertainty of their means",
                    lambda S, E: (np.mean(S), np.mean(S) - np.mean(E), spread(S, E, divided=False)),
                ),
                slip(
                    "added the two uncertainties: their squares add",
                    lambda S, E: (
                        np.mean(S),
                        np.mean(S) - np.mean(E),
                        sum(np.std(one, ddof=1) / np.sqrt(len(one)) for one in (S, E)),
                    ),
                ),
                slip("taken the last start", lambda S, E: (S[-1], np.mean(S) - np.mean(E), spread(S, E))),
            ],
        ),
    ],
    hints=[
        "Write the formula that gives the readings from the parts, once for each reading. You have as many equations as "
        "unknowns; divide one by the other, or subtract, so that one unknown drops out.",
        "Grid: the ratio of the currents is exp((v1 − v2)/n). Added resistance: the readings are as (R + R1) to R. Detuning: "
        "1/ωC is X + R on one side and X − R on the other. Two frequencies: C1 + C0 and C2 + C0 are as f2² to f1². Clicks: a "
        "mean of n readings has their variance, over n − 1, divided by n.",
        "n = (bias_1 − bias_2)/np.log(current_1/current_2), then current_1 × np.exp(−bias_1/n) and n, ValueError unless "
        "(current_1 − current_2)(bias_1 − bias_2) > 0;  reactance/added_resistance × (reading_alone/reading_with − 1), "
        "ValueError unless reading_alone > reading_with;  (capacitance_above + capacitance_below)/(capacitance_above − "
        "capacitance_below), ValueError unless the upper is the larger;  with k = (frequency_2/frequency_1)²: own = "
        "(capacitance_1 − k × capacitance_2)/(k − 1), inductance 1/((2π × frequency_1)² × (capacitance_1 + own)), "
        "ValueError unless frequency_2 > frequency_1 and capacitance_2 < capacitance_1;  with u = "
        "capacitance_uncertainty, w = frequency_uncertainty and d = capacitance_1 − capacitance_2: np.sqrt(((1 + k²) u² +"
        " 8 k² w² d²/(k − 1)²)/(k − 1)²), the same refusals;  np.mean(starts), np.mean(starts) − np.mean(stops), np.sqrt "
        "of the two np.var(…, ddof=1)/len(…) added, ValueError for fewer than two of either.",
    ],
)

"""How `squegging` is judged.

In the laws and slips: V the swing, g and a the grid's and the anode's steady voltage, law the valve's three numbers (µ,
K, o); p the exponent, F the frequency, Q the circuit's, C and D the tuning and the grid condenser, U the voltage across the
leak, n the slope voltage; S the mutual conductance needed; x and y the blocked and the starting bias, E where the
leak goes, R the leak, T a burst's time.
"""

import numpy as np

from checker import (
    Exercise,
    Question,
    at_most,
    equal,
    farads,
    hertz,
    invariant,
    less,
    number,
    ohms,
    physical,
    refusal,
    relative,
    seconds,
    siemens,
    slip,
    value,
    volts,
)
from solutions.unit05_valve.triode_current import drive, mutual_conductance

from .limit_amplitude import effective_transconductance
from .squegging import CYCLE, largest_leak, starting_bias, swing_exponent, ticking_frequency

CLOSE = relative(1e-9, because="a few operations, double precision")
SAMPLED = relative(1e-3, because="averages round a cycle may be left a little coarse", floor=1e-4)
THREE_HALVES = "the three-halves law itself: biased just to cut-off its current goes as swing^1.5, and so G as swing^0.5"
LAW = {
    "amplification_factor": number(5, 20),
    "perveance": physical("A/V^1.5", "50 µA/V^1.5", "1 mA/V^1.5"),
    "offset": volts("-1 V", "1 V"),
}
GRID_CONDENSER = farads("50 pF", "10 nF")
LEAK_NUMBERS = (0.5, 1e6, 100.0, 100e-12, 100e-12, 10.0, 0.1)


def nearly(left, right, tolerance):
    return equal(left, right, relative(5e-3, because="a step is not quite a slope", floor=2e-3))


def by_steps(V, g, a, *law):
    """The exponent, from two swings a little apart."""
    up, down = (effective_transconductance(V * factor, g, a, *law) for factor in (1.01, 1 / 1.01))
    return np.log(up / down) / np.log(1.01**2)


EXERCISE = Exercise(
    title="Why does it tick?",
    seconds=5.0,
    questions=[
        Question(
            asks=swing_exponent,
            given={
                "swing": volts("1 V", "30 V"),
                "grid_voltage": volts("-20 V", "0 V"),
                "anode_voltage": volts("20 V", "90 V"),
                **LAW,
            },
            where=lambda V, g, a, *law: drive(a, g + V, law[0], law[2]) > 0.3 * V,
            agrees_within=SAMPLED,
            holds=[
                invariant(
                    "it is the slope of your effective transconductance on paper with logarithmic scales",
                    lambda f, V, g, a, *law: (by_steps(V, g, a, *law), f(V, g, a, *law)),
                    nearly,
                ),
                invariant(
                    "a valve far from cut-off hardly heeds the swing: 0.1 V at 60 V, grid at 0 V, µ 9, no offset",
                    lambda f, V, g, a, m, K, o: (1 + f(0.1, 0.0, 60.0, 9.0, K, 0.0), 1.0),
                    nearly,
                ),
                invariant(
                    "the further back it is biased, the more a swing helps itself: -0.5 and -0.8 of it below cut-off",
                    lambda f, V, g, a, m, K, o: (
                        f(V, -a / m - o - 0.5 * V, a, m, K, o),
                        f(V, -a / m - o - 0.8 * V, a, m, K, o),
                    ),
                    less,
                ),
            ],
            published=[
                value(
                    "biased just to cut-off: one half",
                    given=(8.0, -10.0, 90.0, 9.0, 300e-6, 0.0),
                    wanted=0.5,
                    within=relative(1e-3, because="averages round a cycle"),
                    source=THREE_HALVES,
                    known="recomputed",
                ),
            ],
            slips=[
                slip("forgotten to subtract 1: the swing is in the average too", lambda *inputs: swing_exponent(*inputs) + 1),
                slip("left out the 2 of the Fourier series", lambda *inputs: (swing_exponent(*inputs) - 1) / 2),
                slip(
                    "taken cos where cos² belongs: once for the part of the current, once for the change of the drive",
                    lambda V, g, a, *law: (
                        2
                        * np.mean(
                            mutual_conductance(
                                np.asarray(a)[..., None],
                                np.asarray(g)[..., None] + np.asarray(V)[..., None] * CYCLE,
                                *(np.asarray(x)[..., None] for x in law),
                            )
                            * CYCLE,
                            axis=-1,
                        )
                        / effective_transconductance(V, g, a, *law)
                        - 1
                    ),
                ),
                slip("turned the sign", lambda *inputs: -swing_exponent(*inputs)),
                slip(
                    "given the change for a volt of swing, not for a hundredth of it",
                    lambda V, *rest: swing_exponent(V, *rest) / V,
                ),
            ],
        ),
        Question(
            asks=largest_leak,
            given={
                "exponent": number(0.05, 2),
                "frequency": hertz("500 kHz", "1.6 MHz"),
                "quality_factor": number(30, 300),
                "tuning_capacitance": farads("40 pF", "500 pF"),
                "grid_capacitance": GRID_CONDENSER,
                "leak_voltage": volts("2 V", "40 V"),
                "slope_voltage": volts("80 mV", "250 mV"),
            },
            edges=[lambda exponent, *circuit: (0.0, *circuit)],
            gives="Ω",
            agrees_within=CLOSE,
            holds=[
                invariant("twice the exponent, half the leak", lambda f, p, *rest: (f(2 * p, *rest), f(p, *rest) / 2)),
                invariant(
                    "a better circuit bears a larger leak, in proportion",
                    lambda f, p, F, Q, *rest: (f(p, F, 2 * Q, *rest), 2 * f(p, F, Q, *rest)),
                ),
                invariant(
                    "a smaller grid condenser bears a larger leak",
                    lambda f, p, F, Q, C, D, U, n: (f(p, F, Q, C, D, U, n), f(p, F, Q, C, D / 2, U, n)),
                    less,
                ),
                invariant(
                    "where the swing steadies itself any leak will do",
                    lambda f, p, *rest: (0 * f(p, *rest) + float(np.isinf(f(-p, *rest))), 1.0),
                ),
                invariant(
                    "both condensers twice as large, half the leak",
                    lambda f, p, F, Q, C, D, U, n: (f(p, F, Q, 2 * C, 2 * D, U, n), f(p, F, Q, C, D, U, n) / 2),
                ),
            ],
            published=[
                value(
                    "exponent ½, 1 MHz, Q 100, 100 pF twice, 10 V on the leak, 0.1 V: 201 × 10¹⁰ over 5000 π",
                    given=LEAK_NUMBERS,
                    wanted=201e10 / (5000 * np.pi),
                    within=CLOSE,
                    source="the balance of charges worked by hand",
                    known="recomputed",
                ),
            ],
            slips=[
                slip(
                    "left out the tuning condenser: the grid's charge comes out of the swing as well",
                    lambda p, F, Q, C, D, U, n: largest_leak(p, F, Q, np.inf, D, U, n) + 0 * C,
                ),
                slip(
                    "left out the grid condenser: the grid's charge shifts the bias as well",
                    lambda p, F, Q, C, D, U, n: U / (n * C * p * np.pi * F / Q) + 0 * D,
                ),
                slip(
                    "left out the leak's own share",
                    lambda p, F, Q, C, D, U, n: largest_leak(p, F, Q, C, D, U, n) - Q / (D * p * np.pi * F),
                ),
                slip(
                    "taken 2π f/Q: that is how fast the energy goes, the swing goes half as fast",
                    lambda *inputs: largest_leak(*inputs) / 2,
                ),
                slip("left out the exponent", lambda p, *rest: largest_leak(1.0 + 0 * p, *rest)),
                slip(
                    "asked only that the leak discharge its condenser as fast as the swing can fall",
                    lambda p, F, Q, C, D, U, n: Q / (np.pi * F * D) + 0 * p * C * U * n,
                ),
            ],
        ),
        Question(
            asks=starting_bias,
            given={"needed": siemens("50 µS", "2 mS"), "anode_voltage": volts("20 V", "120 V"), **LAW},
            gives="V",
            agrees_within=relative(1e-9, because="a few operations, double precision", floor=1e-9),
            holds=[
                invariant(
                    "there the valve has just what is needed",
                    lambda f, S, a, *law: (mutual_conductance(a, f(S, a, *law), *law), S),
                ),
                invariant(
                    "µ volts more on the anode, one less on the grid",
                    lambda f, S, a, m, K, o: (f(S, a + m, m, K, o) + 100, f(S, a, m, K, o) + 99),
                ),
                invariant(
                    "a set that needs more must wait longer", lambda f, S, a, *law: (f(S, a, *law), f(1.5 * S, a, *law)), less
                ),
            ],
            no_published="The slope of the three-halves law, solved; that law has its figures in unit 05.",
            slips=[
                slip("taken the cut-off: there the valve is worth nothing yet", lambda S, a, m, K, o: -a / m - o + 0 * S * K),
                slip("left out the square", lambda S, a, m, K, o: S / (1.5 * K) - a / m - o),
                slip("left out the 1.5", lambda S, a, m, K, o: (S / K) ** 2 - a / m - o),
                slip("forgotten the offset", lambda S, a, m, K, o: starting_bias(S, a, m, K, 0 * o)),
                slip(
                    "forgotten to divide the anode's voltage by µ", lambda S, a, m, K, o: (S / (1.5 * K)) ** 2 - a - o + 0 * m
                ),
            ],
        ),
        Question(
            asks=ticking_frequency,
            given={
                "blocked_bias": volts("-40 V", "-12 V"),
                "starting_bias": volts("-11 V", "-3 V"),
                "return_voltage": volts("0 V", "6 V"),
                "leak_resistance": ohms("5 MΩ", "200 MΩ"),
                "grid_capacitance": GRID_CONDENSER,
                "burst": seconds("0 s", "2 ms"),
            },
            # A start just above where the grid was blocked, and a leak taken to just above the start.
            edges=[
                lambda blocked, start, back, *rest: (blocked, 0.99 * blocked, back, *rest),
                lambda blocked, start, back, *rest: (blocked, start, 0.99 * start, *rest),
            ],
            gives="Hz",
            agrees_within=CLOSE,
            holds=[
                invariant(
                    "in the rest between two bursts the leak lifts the grid just so far",
                    lambda f, x, y, E, R, D, T: (E - (E - x) * np.exp(-(1 / f(x, y, E, R, D, T) - T) / (R * D)), y),
                ),
                invariant(
                    "twice the leak, twice the rest",
                    lambda f, x, y, E, R, D, T: (1 / f(x, y, E, 2 * R, D, 0.0), 2 / f(x, y, E, R, D, 0.0)),
                ),
                invariant(
                    "a leak taken to a higher voltage ticks faster",
                    lambda f, x, y, E, *rest: (f(x, y, E, *rest), f(x, y, E + 1, *rest)),
                    at_most,
                ),
            ],
            published=[
                value(
                    "falling by a factor e in 10 MΩ × 1 nF = 10 ms, and bursts of no time: 100 a second",
                    given=(-np.e * 5.0, -5.0, 0.0, 10e6, 1e-9, 0.0),
                    wanted=100.0,
                    within=CLOSE,
                    source="the exponential itself",
                    known="recomputed",
                ),
            ],
            refuses=[
                refusal(
                    "a grid blocked above where it starts",
                    (-5.0, -8.0, 0.0, 10e6, 1e-9, 0.0),
                    (-5.0, -5.0, 0.0, 10e6, 1e-9, 0.0),
                ),
                refusal(
                    "a leak that cannot lift it so far",
                    (-20.0, -3.0, -4.0, 10e6, 1e-9, 0.0),
                    (-20.0, -4.0, -4.0, 10e6, 1e-9, 0.0),
                ),
            ],
            slips=[
                slip("taken one time constant for the rest", lambda x, y, E, R, D, T: 1 / (R * D + T) + 0 * (x + y + E)),
                slip("forgotten where the leak is taken to", lambda x, y, E, R, D, T: ticking_frequency(x, y, 0 * E, R, D, T)),
                slip("forgotten the burst itself", lambda x, y, E, R, D, T: ticking_frequency(x, y, E, R, D, 0 * T)),
                slip("returned the time between bursts", lambda *inputs: 1 / ticking_frequency(*inputs)),
                slip("divided by 2π", lambda *inputs: ticking_frequency(*inputs) / (2 * np.pi)),
                slip("taken the logarithm to base 10", lambda x, y, E, R, D, T: 1 / (R * D * np.log10((E - x) / (E - y)) + T)),
            ],
        ),
    ],
    hints=[
        "Picture two condensers that the grid's current charges: the tuned one, whose swing it takes from, and the grid's own, "
        "whose bias it drives down. Each bit of charge makes the next smaller: that holds the swing. What lets it run away?",
        "The valve: G = 2 × average of (current × cos)/V; differentiate by V, with di/dV = mutual conductance × cos. At the "
        "limit the valve feeds what the circuit loses, π f/Q, so a swing a hundredth too large is fed p hundredths too "
        "much of that. The grid's current U/R answers a volt by its part 1/n.",
        "2 × np.mean(slope × CYCLE²)/effective_transconductance(…) − 1 with slope = mutual_conductance(anode_voltage, "
        "grid_voltage + swing × CYCLE, …), arrays with a last axis for the moments: np.asarray(swing)[..., None] and so "
        "on;  (leak_voltage/slope_voltage × (1/tuning_capacitance + 1/grid_capacitance) + 1/grid_capacitance)/(exponent ×"
        " π × frequency/quality_factor), np.inf where exponent <= 0;  (needed/(1.5 × perveance))² − "
        "anode_voltage/amplification_factor − offset;  1/(leak_resistance × grid_capacitance × ln((return_voltage − "
        "blocked_bias)/(return_voltage − starting_bias)) + burst), ValueError where the docstring asks for it.",
    ],
)

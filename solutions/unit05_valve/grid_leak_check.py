"""How `grid_leak` is judged.

In the laws and slips: R the leak, E the voltage it is taken to, z the grid's current at 0 V, n its slope voltage, V a
carrier's crest, C the condenser, i the grid's mean current, F a tone, m its depth, c a carrier's frequency.
"""

import numpy as np

from checker import (
    Exercise,
    Question,
    amperes,
    at_most,
    equal,
    farads,
    hertz,
    invariant,
    number,
    ohms,
    relative,
    slip,
    value,
    volts,
)
from solutions.unit04_crystal_set.rectified_voltage import i1_over_i0, log_i0, no_load_output

from .grid_leak import audio_cutoff, bias_with_carrier, grid_gain, rest_bias, time_constant_limits

SOLVED = relative(1e-6, because="solved step by step", floor=1e-9)
CLOSE = relative(1e-9, because="a few operations, double precision")
SAMPLED = relative(1e-6, because="I1/I0 may be left a little coarse")
DETECTOR = "K. K. Clarke and D. T. Hess, Communication Circuits, 1971 (from memory); diode_detector_exact.csv, x = r = 10"
OMEGA = "NIST Digital Library of Mathematical Functions, 4.13: W(1) = 0.5671432904, by mpmath"
GRID_LEAK = "corner and following rule of a grid condenser and leak; reaction.toml, grid_leak"
LEAK, SLOPE, CARRIER = ohms("200 kΩ", "5 MΩ"), volts("80 mV", "250 mV"), volts("10 mV", "3 V")
CONDENSER, CURRENT = farads("50 pF", "500 pF"), amperes("100 nA", "5 µA")
GRID = {
    "leak_resistance": LEAK,
    "return_voltage": volts("0 V", "6 V"),
    "zero_current": amperes("100 nA", "10 µA"),
    "slope_voltage": SLOPE,
}


def balance(grid, carrier, R, E, z, n):
    """Logarithms of the grid's mean current and of the leak's; nan or infinite if the leak cannot bring the grid there."""
    with np.errstate(divide="ignore", invalid="ignore"):
        return grid / n + np.log(z) + log_i0(carrier / n), np.log((E - grid) / R)


def slope_of_bias(f, V, R, i, n):
    """Fall of the bias with the carrier, by a small step, where the mean grid current is i."""
    z = i * np.exp(-log_i0(V / n))
    step = 1e-3 * V
    return (f.bias_with_carrier(V - step, R, R * i, z, n) - f.bias_with_carrier(V + step, R, R * i, z, n)) / (2 * step)


def nearly(left, right, tolerance):
    return equal(left, right, relative(1e-3, because="a step is not quite a slope"))


EXERCISE = Exercise(
    title="Can a grid detect?",
    seconds=5.0,
    questions=[
        Question(
            asks=rest_bias,
            given=GRID,
            edges=[lambda leak_resistance, return_voltage, *grid: (1e3, 0.0, *grid)],
            gives="V",
            agrees_within=SOLVED,
            holds=[
                invariant(
                    "what the leak brings the grid takes", lambda f, R, E, z, n: (*balance(f(R, E, z, n), 0.0, R, E, z, n),)
                ),
                invariant(
                    "a leak taken to the filament's negative end makes the grid negative",
                    lambda f, R, E, z, n: (f(R, 0.0, z, n), 0.0),
                    at_most,
                ),
                invariant(
                    "taken to a higher voltage it lifts the grid",
                    lambda f, R, E, z, n: (f(R, E, z, n), f(R, E + 1, z, n)),
                    at_most,
                ),
            ],
            published=[
                value(
                    "leak × zero current = slope voltage = 0.1 V, taken to 0 V",
                    given=(1e6, 0.0, 1e-7, 0.1),
                    wanted=-0.05671432904,
                    within=relative(1e-8, because="printed to ten figures"),
                    source=OMEGA,
                    known="recomputed",
                ),
            ],
            slips=[
                slip("taken the return voltage itself: the leak drops nearly all of it", lambda R, E, z, n: E + 0 * R * z * n),
                slip("let the grid take its zero current, whatever its voltage", lambda R, E, z, n: E - R * z + 0 * n),
                slip("forgotten the voltage that the leak is taken to", lambda R, E, z, n: rest_bias(R, 0 * E, z, n)),
                slip("turned the sign", lambda R, E, z, n: -rest_bias(R, E, z, n)),
                slip("returned it in slope voltages", lambda R, E, z, n: rest_bias(R, E, z, n) / n),
            ],
        ),
        Question(
            asks=bias_with_carrier,
            given={"carrier": CARRIER, **GRID},
            gives="V",
            agrees_within=SOLVED,
            holds=[
                invariant(
                    "what the leak brings the grid takes, averaged round the carrier's cycle",
                    lambda f, V, *grid: (*balance(f(V, *grid), V, *grid),),
                ),
                invariant("no carrier leaves it at rest", lambda f, V, *grid: (f(0.0, *grid), f.rest_bias(*grid))),
                invariant(
                    "a carrier never lowers it by more than its crest",
                    lambda f, V, *grid: (f.rest_bias(*grid) - V, f(V, *grid)),
                    at_most,
                ),
            ],
            published=[
                value(
                    "x = 10 and a leak of ten times the grid's own resistance",
                    given=(1.0, 1e6, 1.0, 1e-6, 0.1),
                    wanted=-0.738968023574,
                    within=relative(1e-8, because="printed to twelve figures"),
                    source=DETECTOR,
                    known="recomputed",
                ),
            ],
            slips=[
                slip("left out the bias at rest", lambda V, *grid: bias_with_carrier(V, *grid) - rest_bias(*grid)),
                slip(
                    "let the carrier lift the grid: it drives it more negative",
                    lambda V, *grid: 2 * rest_bias(*grid) - bias_with_carrier(V, *grid),
                ),
                slip(
                    "forgotten that the leak loads the grid", lambda V, R, E, z, n: rest_bias(R, E, z, n) - no_load_output(V, n)
                ),
                slip("taken the whole crest of the carrier", lambda V, *grid: rest_bias(*grid) - V),
            ],
        ),
        Question(
            asks=audio_cutoff,
            given={"capacitance": CONDENSER, "leak_resistance": LEAK, "grid_current": CURRENT, "slope_voltage": SLOPE},
            gives="Hz",
            agrees_within=CLOSE,
            holds=[
                invariant(
                    "twice the condenser, half the frequency", lambda f, C, R, i, n: (f(2 * C, R, i, n), f(C, R, i, n) / 2)
                ),
                invariant(
                    "the grid's own current lets higher tones through than the leak would alone",
                    lambda f, C, R, i, n: (f(C, R, 0.0, n), f(C, R, i, n)),
                    at_most,
                ),
                invariant(
                    "a leak of the grid's slope resistance halves the time",
                    lambda f, C, R, i, n: (f(C, n / i, i, n), 2 * f(C, n / i, 0.0, n)),
                ),
            ],
            published=[
                value(
                    "100 pF and 1 MΩ, no grid current",
                    given=(100e-12, 1e6, 0.0, 0.1),
                    wanted=1591.5494,
                    within=relative(1e-7, because="printed to eight figures"),
                    source=GRID_LEAK,
                    known="recomputed",
                ),
                value(
                    "250 pF and 2 MΩ, no grid current",
                    given=(250e-12, 2e6, 0.0, 0.1),
                    wanted=318.3099,
                    within=relative(2e-7, because="printed to seven figures"),
                    source=GRID_LEAK,
                    known="recomputed",
                ),
            ],
            slips=[
                slip("forgotten the grid's own resistance", lambda C, R, i, n: 1 / (2 * np.pi * C * R) + 0 * i * n),
                slip("left out 2π", lambda C, R, i, n: 2 * np.pi * audio_cutoff(C, R, i, n)),
                slip(
                    "put leak and grid in series: both discharge the condenser",
                    lambda C, R, i, n: 1 / (2 * np.pi * C * (R + n / i)),
                ),
                slip("returned the time constant", lambda C, R, i, n: 1 / (2 * np.pi * audio_cutoff(C, R, i, n))),
            ],
        ),
        Question(
            asks=time_constant_limits,
            given={
                "lowest_carrier": hertz("150 kHz", "1.6 MHz"),
                "highest_tone": hertz("500 Hz", "10 kHz"),
                "depth": number(0.1, 0.95),
            },
            gives=("s", "s"),
            agrees_within=CLOSE,
            holds=[
                invariant("no time constant follows a tone of full depth", lambda f, c, F, m: (f(c, F, 1.0)[1], 0.0)),
                invariant("twice the tone, half the longest time", lambda f, c, F, m: (f(c, 2 * F, m)[1], f(c, F, m)[1] / 2)),
            ],
            published=[
                value(
                    "4.5 kHz at a depth of 0.3: 112 µs",
                    given=(150e3, 4500.0, 0.3),
                    wanted=(10 / 150e3, 112.4623e-6),
                    within=relative(1e-6, because="printed to seven figures"),
                    source=GRID_LEAK,
                    known="recomputed",
                ),
                value(
                    "4.5 kHz at a depth of 0.8: 26.5 µs",
                    given=(150e3, 4500.0, 0.8),
                    wanted=(10 / 150e3, 26.5258e-6),
                    within=relative(2e-6, because="printed to six figures"),
                    source=GRID_LEAK,
                    known="recomputed",
                ),
            ],
            slips=[
                slip("left out the root of 1 − m²", lambda c, F, m: (10 / c, 1 / (2 * np.pi * F * m))),
                slip("left out 2π", lambda c, F, m: (10 / c, np.sqrt(1 - m**2) / (F * m))),
                slip("not divided by the depth", lambda c, F, m: (10 / c, np.sqrt(1 - m**2) / (2 * np.pi * F))),
                slip(
                    "allowed one cycle of the carrier: ten are wanted",
                    lambda c, F, m: (1 / c, time_constant_limits(c, F, m)[1]),
                ),
                slip("returned them the other way round", lambda *inputs: time_constant_limits(*inputs)[::-1]),
            ],
        ),
        Question(
            asks=grid_gain,
            given={
                "carrier": CARRIER,
                "tone": hertz("100 Hz", "10 kHz"),
                "capacitance": CONDENSER,
                "leak_resistance": LEAK,
                "grid_current": CURRENT,
                "slope_voltage": SLOPE,
            },
            agrees_within=SAMPLED,
            holds=[
                invariant(
                    "without the condenser it is the slope of your bias against the carrier",
                    lambda f, V, F, C, R, i, n: (slope_of_bias(f, V, R, i, n), f(V, 0.0, C, R, i, n)),
                    nearly,
                ),
                invariant("never more than the swing of the carrier itself", lambda f, *inputs: (f(*inputs), 1.0), at_most),
                invariant(
                    "at the cut-off 3 dB are lost",
                    lambda f, V, F, C, R, i, n: (
                        f(V, f.audio_cutoff(C, R, i, n), C, R, i, n),
                        f(V, 0.0, C, R, i, n) / np.sqrt(2),
                    ),
                ),
            ],
            no_published="The slope of a bias that has its figure.",
            slips=[
                slip(
                    "left out I1/I0: a weak carrier is detected only in part",
                    lambda V, F, C, R, i, n: grid_gain(V, F, C, R, i, n) / i1_over_i0(V / n),
                ),
                slip(
                    "forgotten that the grid's slope resistance keeps a share from the leak",
                    lambda V, F, C, R, i, n: grid_gain(V, F, C, R, i, n) * (1 + n / (i * R)),
                ),
                slip("left the condenser out", lambda V, F, C, R, i, n: grid_gain(V, 0 * F, C, R, i, n)),
                slip(
                    "added tone over cut-off to 1 without squares and root: the two lie at right angles",
                    lambda V, F, C, R, i, n: grid_gain(V, 0 * F, C, R, i, n) / (1 + F / audio_cutoff(C, R, i, n)),
                ),
            ],
        ),
    ],
    hints=[
        "The grid takes a little current through the leak, more when a carrier swings it up; that current, in the leak, "
        "pulls the grid down. It is the crystal's story with the leak for its load.",
        "Rest: z exp(vg/n) = (E − vg)/R; halve an interval that reaches from below 0 V up to E. With a carrier "
        "subtract detector_output, giving it the grid's current at rest for the saturation current. For a small swing the "
        "grid is a generator of I1/I0 behind n/i, and the leak takes its share; the condenser makes that fall as "
        "1/√(1 + (F/cut-off)²).",
        "With n = slope_voltage. Rest: low = −n × (1 + ln(1 + leak_resistance × zero_current/n)), high = return_voltage; "
        "sixty halvings: where zero_current × exp(middle/n) > (return_voltage − middle)/leak_resistance put high = "
        "middle, elsewhere low = middle (np.where). Carrier: rest − detector_output(carrier, leak_resistance, "
        "zero_current × exp(rest/n), n). Cut-off: cutoff = (1/leak_resistance + grid_current/n)/(2π × capacitance). "
        "Limits: 10/lowest_carrier and √(1 − depth²)/(2π × highest_tone × depth). Gain: i1_over_i0(carrier/n) × "
        "leak_resistance/(leak_resistance + n/grid_current) / np.sqrt(1 + (tone/cutoff)**2).",
    ],
)

"""How `one_valve_set` is judged.

In the laws and slips: a, g and V the anode's and the grid's voltage and the carrier's crest, E and Rs the tuned
circuit's voltage and resistance, m the depth, F the tone.
"""

from dataclasses import replace

import numpy as np

from checker import (
    Exercise,
    Question,
    absolute,
    at_most,
    equal,
    hertz,
    invariant,
    number,
    ohms,
    physical,
    relative,
    slip,
    volts,
)
from solutions.unit04_crystal_set.crystal_set import LOAD, SATURATION_CURRENT, SLOPE_VOLTAGE
from solutions.unit04_crystal_set.detector_load import detector_powers

from .grid_leak import audio_cutoff, bias_with_carrier, grid_gain
from .load_line import operating_point
from .one_valve_set import (
    CONDENSER,
    GRID_SLOPE,
    HT,
    LAW,
    LEAK,
    LEAK_RETURN,
    STEADY_RESISTANCE,
    TONE_RESISTANCE,
    ZERO_CURRENT,
    anode_slopes,
    detector_gain,
    louder_than_crystal,
    one_valve_set,
)
from .triode_current import mutual_conductance

SAMPLED = relative(1e-5, because="averages round a cycle may be left a little coarse")
SOURCE = {
    "source_voltage": volts("10 mV", "3 V"),
    "source_resistance": ohms("20 kΩ", "500 kΩ"),
    "depth": number(0.1, 0.95),
    "tone": hertz("100 Hz", "5 kHz"),
}


def conducting_all_round(anode_voltage, grid_voltage, carrier, amplification_factor, perveance, offset):
    return grid_voltage - carrier + anode_voltage / amplification_factor + offset > 0.3


def nearly(left, right, tolerance):
    return equal(left, right, relative(1e-3, because="a limit, nearly reached"))


def parts(V):
    """The grid's gain without its condenser, its cut-off and the anode's two slopes, for the club's set."""
    grid = bias_with_carrier(V, LEAK, LEAK_RETURN, ZERO_CURRENT, GRID_SLOPE)
    circuit = (CONDENSER, LEAK, (LEAK_RETURN - grid) / LEAK, GRID_SLOPE)
    anode, _ = operating_point(HT, STEADY_RESISTANCE, grid, *LAW)
    return grid_gain(V, 0.0, *circuit), audio_cutoff(*circuit), anode_slopes(anode, grid, V, *LAW)


def both_ends(anode_voltage, grid_voltage, carrier, *law):
    """The slopes from a thousand moments of which the last is the first again."""
    swing = np.cos(np.linspace(0, 2 * np.pi, 1000))
    slope = mutual_conductance(anode_voltage, grid_voltage + carrier * swing, *law)
    return np.mean(slope), np.mean(slope * swing)


def output_conductance(by_bias):
    return 1 / TONE_RESISTANCE + by_bias / LAW[0]


def without_the_bend(V, F):
    steady, cutoff, (by_bias, _) = parts(V)
    return steady / np.sqrt(1 + (F / cutoff) ** 2) * by_bias / output_conductance(by_bias)


def without_the_lag(V, F):
    steady, cutoff, (by_bias, by_carrier) = parts(V)
    return (steady / np.sqrt(1 + (F / cutoff) ** 2) * by_bias - by_carrier) / output_conductance(by_bias)


def bend_helping(V, F):
    steady, cutoff, (by_bias, by_carrier) = parts(V)
    return np.abs(steady / (1 + 1j * F / cutoff) * by_bias + by_carrier) / output_conductance(by_bias)


def without_anode_resistance(V, F):
    _, _, (by_bias, _) = parts(V)
    return detector_gain(V, F) * output_conductance(by_bias) * TONE_RESISTANCE


def unloaded(E, Rs, m, F):
    return (detector_gain(E, F) * m * E) ** 2 / (2 * TONE_RESISTANCE)


def crystal_powers(E, Rs, m):
    return detector_powers(E, Rs, m, LOAD, SATURATION_CURRENT, SLOPE_VOLTAGE)


EXERCISE = Exercise(
    title="One valve, one pair of telephones",
    seconds=20.0,
    cases=5,
    questions=[
        Question(
            asks=anode_slopes,
            given={
                "anode_voltage": volts("20 V", "90 V"),
                "grid_voltage": volts("-3 V", "0 V"),
                "carrier": volts("10 mV", "3 V"),
                "amplification_factor": number(5, 20),
                "perveance": physical("A/V^1.5", "50 µA/V^1.5", "1 mA/V^1.5"),
                "offset": volts("-1 V", "1 V"),
            },
            where=conducting_all_round,
            gives=("S", "S"),
            agrees_within=replace(SAMPLED, absolute=1e-12),
            arrays=False,
            holds=[
                invariant(
                    "a weak carrier finds the mutual conductance, and half its slope times the carrier",
                    lambda f, a, g, V, *law: (
                        np.array(f(a, g, 0.001, *law)),
                        mutual_conductance(a, g, *law) * np.array([1, 0.001 / (4 * (g + a / law[0] + law[2]))]),
                    ),
                    nearly,
                ),
                invariant(
                    "a carrier never does more than a bias of the same size",
                    lambda f, *inputs: (f(*inputs)[1], f(*inputs)[0]),
                    at_most,
                ),
            ],
            no_published="Averages of a slope that has its figures; tests integrate the set cycle by cycle.",
            slips=[
                slip(
                    "taken the slopes at the grid's mean voltage: average them round the carrier's cycle",
                    lambda a, g, V, *law: (mutual_conductance(a, g, *law), anode_slopes(a, g, V, *law)[1]),
                ),
                slip(
                    "doubled the second: the plain average of slope times cos is wanted",
                    lambda *inputs: np.array(anode_slopes(*inputs)) * [1, 2],
                ),
                slip("returned them the other way round", lambda *inputs: anode_slopes(*inputs)[::-1]),
                slip(
                    "taken the carrier's crest for its r.m.s. value",
                    lambda a, g, V, *law: anode_slopes(a, g, np.sqrt(2) * V, *law),
                ),
                slip(
                    "counted θ = 0 twice: 2π is the same moment, and np.linspace leaves it out with endpoint=False", both_ends
                ),
            ],
        ),
        Question(
            asks=detector_gain,
            given={"carrier": volts("10 mV", "2 V"), "tone": hertz("100 Hz", "10 kHz")},
            agrees_within=SAMPLED,
            arrays=False,
            holds=[
                invariant("treble never comes louder than bass", lambda f, V, F: (f(V, 2 * F), f(V, F)), at_most),
                invariant("a weak carrier's gain grows with the carrier", lambda f, V, F: (f(2e-3, F), 2 * f(1e-3, F)), nearly),
            ],
            no_published="The club's own set; tests integrate it cycle by cycle.",
            slips=[
                slip("left out the anode's bend, which works against the grid", without_the_bend),
                slip("let the anode's bend help the grid", bend_helping),
                slip("left out that the anode resistance lies beside the telephones", without_anode_resistance),
                slip("left the grid's condenser out", lambda V, F: detector_gain(V, 0.0)),
                slip("left out the condenser's lag, which turns the two parts apart", without_the_lag),
            ],
        ),
        Question(
            asks=one_valve_set,
            given=SOURCE,
            gives="W",
            agrees_within=replace(SAMPLED, absolute=1e-20),
            arrays=False,
            holds=[
                invariant(
                    "the telephones get less than the HT battery gives",
                    lambda f, *inputs: (f(*inputs), HT * operating_point(HT, STEADY_RESISTANCE, 0.0, *LAW)[1]),
                    at_most,
                ),
                invariant("a deeper tone is louder", lambda f, E, Rs, m, F: (f(E, Rs, m / 2, F), f(E, Rs, m, F)), at_most),
            ],
            no_published="The club's own set; tests integrate it cycle by cycle.",
            slips=[
                slip("left the tuned circuit unloaded: a grid takes current too", unloaded),
                slip(
                    "left the leak out: it lies across the tuned circuit and takes its share",
                    lambda E, Rs, m, F: one_valve_set(E * (1 + Rs / (LEAK - Rs)), Rs * LEAK / (LEAK - Rs), m, F),
                ),
                slip(
                    "taken the whole difference of crest and trough: the swing is half of it",
                    lambda *inputs: 4 * one_valve_set(*inputs),
                ),
                slip(
                    "forgotten to halve: a tone's crest squared over R is twice its power",
                    lambda *inputs: 2 * one_valve_set(*inputs),
                ),
                slip(
                    "divided by the resistance to steady current: a tone finds another",
                    lambda *inputs: one_valve_set(*inputs) * TONE_RESISTANCE / STEADY_RESISTANCE,
                ),
            ],
        ),
        Question(
            asks=louder_than_crystal,
            given=SOURCE,
            gives="dB",
            agrees_within=absolute(1e-3, because="levels to a thousandth of a decibel"),
            arrays=False,
            holds=[
                invariant(
                    "up to 3 V on the tuned circuit the valve is always the louder",
                    lambda f, *inputs: (0.0, f(*inputs)),
                    at_most,
                ),
            ],
            no_published="The club's own sets.",
            slips=[
                slip("used 20 log: these are powers", lambda *inputs: 2 * louder_than_crystal(*inputs)),
                slip("turned the ratio over", lambda *inputs: -louder_than_crystal(*inputs)),
                slip(
                    "compared with the power that the crystal takes from the tuned circuit",
                    lambda *inputs: 10 * np.log10(one_valve_set(*inputs) / crystal_powers(*inputs[:3])[0]),
                ),
                slip(
                    "compared with all that the crystal gives to its load: only the tone is heard",
                    lambda *inputs: 10 * np.log10(one_valve_set(*inputs) / crystal_powers(*inputs[:3])[1]),
                ),
            ],
        ),
    ],
    hints=[
        "The grid does what the crystal did, and the valve amplifies it. Nothing new is needed but the average of the "
        "valve's slope while the carrier swings its grid.",
        "Average gm at Vg + V cos θ over the cycle, and gm times cos θ. The tone's current in the anode is the grid's tone "
        "times the first, less the second for each volt of swing (the second acts at once, the first lags: use complex "
        "numbers). It flows into 1/R + (first slope)/μ. For the power find the carrier at the grid with working_point, at "
        "the envelope's middle, crest and trough.",
        "Slopes: the mean of mutual_conductance at grid_voltage + carrier × cos θ and that of the same × cos θ, θ = 2π × "
        "k/1000, k = 0 … 999. Gain: bias = bias_with_carrier(carrier, …); current = (LEAK_RETURN − bias)/LEAK; reached = "
        "grid_gain(carrier, tone, …) times exp(−1j arctan(tone over audio_cutoff(…))); anode from operating_point(HT, "
        "STEADY_RESISTANCE, bias, *LAW); gain = |reached × first − second| / (1/TONE_RESISTANCE + first/LAW[0]). "
        "working_point takes the rest current ZERO_CURRENT × exp(rest/GRID_SLOPE) for the saturation current, and "
        "source_voltage and source_resistance both times LEAK/(LEAK + source_resistance). Power: (gain × (crest − "
        "trough)/2)² over twice TONE_RESISTANCE.",
    ],
)

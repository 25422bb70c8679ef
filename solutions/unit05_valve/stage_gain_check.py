"""How `stage_gain` is judged.

In the laws and slips: μ the amplification factor, r the anode resistance, R the load, G the next grid's leak, C and S
the coupling and the shunt capacitance, c and k the capacitances of the grid to filament and to anode, A the gain.
"""

import numpy as np

from checker import Exercise, Question, at_most, equal, farads, invariant, less, number, ohms, relative, slip, value

from .stage_gain import band_edges, input_capacitance, stage_gain

CLOSE = relative(1e-9, because="a few operations, double precision")
ROUNDED = relative(0.01, because="a manual's three coefficients are each rounded")
MANUAL_30 = "RCA figures for type 30: μ 9.3, 10.3 kΩ, 900 µS, quoted on a page of measured valves; triodes.csv"
MANUAL_12AX7 = "maker's sheet of the 12AX7 at 250 V: μ 100, 62.5 kΩ, 1600 µS, on a valve data page; triodes.csv"
RESISTANCE, LOAD = ohms("1 kΩ", "100 kΩ"), ohms("1 kΩ", "500 kΩ")


def beside(first, second):
    return first * second / (first + second)


def nearly(left, right, tolerance):
    return equal(left, right, relative(1e-6, because="a difference of nearly equal sums"))


EXERCISE = Exercise(
    title="How much does a stage amplify?",
    questions=[
        Question(
            asks=stage_gain,
            given={"amplification_factor": number(3, 100), "anode_resistance": RESISTANCE, "load": LOAD},
            agrees_within=CLOSE,
            holds=[
                invariant("never as much as μ", lambda f, μ, r, R: (f(μ, r, R), μ), less),
                invariant("a load of the anode resistance gives half of μ", lambda f, μ, r, R: (f(μ, r, r), μ / 2)),
                invariant("a higher load always gives more", lambda f, μ, r, R: (f(μ, r, R), f(μ, r, 2 * R)), less),
            ],
            published=[
                value(
                    "type 30 with 20 kΩ: its 900 µS times both resistances side by side",
                    given=(9.3, 10.3e3, 20e3),
                    wanted=900e-6 * beside(10.3e3, 20e3),
                    within=ROUNDED,
                    source=MANUAL_30,
                    known="found",
                ),
                value(
                    "half a 12AX7 with 100 kΩ: its 1600 µS times both resistances side by side",
                    given=(100.0, 62.5e3, 100e3),
                    wanted=1600e-6 * beside(62.5e3, 100e3),
                    within=ROUNDED,
                    source=MANUAL_12AX7,
                    known="found",
                ),
            ],
            slips=[
                slip("taken the whole of μ: the anode resistance keeps a share", lambda μ, r, R: μ + 0 * r * R),
                slip("taken the anode resistance's share", lambda μ, r, R: μ * r / (r + R)),
                slip("left the anode resistance out of the sum", lambda μ, r, R: μ * R / r),
                slip("put load and anode resistance in series the wrong way up", lambda μ, r, R: μ * (r + R) / R),
                slip("returned decibels", lambda μ, r, R: 20 * np.log10(stage_gain(μ, r, R))),
            ],
        ),
        Question(
            asks=input_capacitance,
            given={"grid_filament": farads("1 pF", "10 pF"), "grid_anode": farads("1 pF", "10 pF"), "gain": number(1, 80)},
            gives="F",
            agrees_within=CLOSE,
            holds=[
                invariant(
                    "a valve without gain has its two capacitances side by side", lambda f, c, k, A: (f(c, k, 0.0), c + k)
                ),
                invariant(
                    "each further volt of gain brings the grid-to-anode capacitance once more",
                    lambda f, c, k, A: ((f(c, k, A + 1) - f(c, k, A)) / k, 1.0),
                    nearly,
                ),
            ],
            no_published="A sum of capacitances; Miller's paper gives the formula.",
            slips=[
                slip("left out the 1: the grid's own volt counts too", lambda c, k, A: c + k * A),
                slip("forgotten that the stage turns the signal over", lambda c, k, A: c + k * (1 - A)),
                slip("left the gain out", lambda c, k, A: c + k + 0 * A),
                slip("multiplied both capacitances", lambda c, k, A: (c + k) * (1 + A)),
            ],
        ),
        Question(
            asks=band_edges,
            given={
                "anode_resistance": RESISTANCE,
                "load": LOAD,
                "leak": ohms("100 kΩ", "5 MΩ"),
                "coupling_capacitance": farads("1 nF", "1 µF"),
                "shunt_capacitance": farads("10 pF", "500 pF"),
            },
            gives=("Hz", "Hz"),
            agrees_within=CLOSE,
            holds=[
                invariant(
                    "ten times the condenser reaches ten times as low, and no higher",
                    lambda f, r, R, G, C, S: (np.array(f(r, R, G, 10 * C, S)) * [10, 1], np.array(f(r, R, G, C, S))),
                ),
                invariant(
                    "valve and load may change places",
                    lambda f, r, R, G, C, S: (np.array(f(R, r, G, C, S)), np.array(f(r, R, G, C, S))),
                ),
                invariant(
                    "a larger leak reaches lower, and no higher",
                    lambda f, r, R, G, C, S: (np.array(f(r, R, 2 * G, C, S)), np.array(f(r, R, G, C, S))),
                    at_most,
                ),
            ],
            no_published="Two resistances and a condenser; tests solve the circuit itself.",
            slips=[
                slip("left out 2π", lambda *inputs: 2 * np.pi * np.array(band_edges(*inputs))),
                slip("returned highest and lowest the other way round", lambda *inputs: band_edges(*inputs)[::-1]),
                slip(
                    "left valve and load out of the bass",
                    lambda r, R, G, C, S: (1 / (2 * np.pi * C * G), band_edges(r, R, G, C, S)[1]),
                ),
                slip(
                    "left the next grid's leak out of the treble",
                    lambda r, R, G, C, S: (band_edges(r, R, G, C, S)[0], 1 / (2 * np.pi * S * beside(r, R))),
                ),
                slip(
                    "put valve and load in series: for the tone they lie side by side",
                    lambda r, R, G, C, S: (1 / (2 * np.pi * C * (r + R + G)), 1 / (2 * np.pi * S * beside(r + R, G))),
                ),
            ],
        ),
    ],
    hints=[
        "For a tone the valve is a generator of μ volts for each volt on the grid, with its anode resistance in series. The "
        "battery is no obstacle to a tone.",
        "Gain: the load's share of μ volts across load and anode resistance. A capacitance whose far end moves A volts the "
        "other way takes 1 + A times its current. The edges lie where a condenser's reactance equals the resistance it "
        "works with: in series in the bass, side by side in the treble.",
        "stage_gain is amplification_factor * load / (load + anode_resistance); input_capacitance is grid_filament + "
        "grid_anode * (1 + gain). With out = anode_resistance * load / (anode_resistance + load) the edges are 1 / (2 * "
        "np.pi * coupling_capacitance * (out + leak)) and (1 / out + 1 / leak) / (2 * np.pi * shunt_capacitance).",
    ],
)

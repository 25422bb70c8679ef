"""How `hysteresis` is judged.

In the laws and slips: V the swing, G the loss, R the leak, E the voltage that it is taken to, a the anode's, k the reaction, o
whether it oscillated before.
"""

from dataclasses import replace

import numpy as np

from checker import (
    Exercise,
    Question,
    at_most,
    drawn,
    equal,
    invariant,
    less,
    number,
    ohms,
    relative,
    siemens,
    slip,
    value,
    volts,
)
from solutions.unit04_crystal_set.rectified_voltage import i1_over_i0
from solutions.unit05_valve.grid_leak import bias_with_carrier, rest_bias
from solutions.unit05_valve.one_valve_set import GRID_SLOPE, LAW, ZERO_CURRENT
from solutions.unit05_valve.triode_current import mutual_conductance

from .hysteresis import SWINGS, grid_load, least_swing, returned_for, start_and_stop, swing_at

SOLVED = relative(1e-4, because="averages round a cycle and a bias found step by step")
SEARCHED = relative(2e-3, because="the least of some hundreds of swings")
OMEGA = "NIST Digital Library of Mathematical Functions, 4.13: W(1) = 0.5671432904, by mpmath"
SWING, LOSS, ANODE = volts("10 mV", "20 V"), siemens("2 µS", "100 µS"), volts("45 V", "90 V")
LEAK, RETURN = ohms("500 kΩ", "5 MΩ"), volts("0 V", "4 V")
GRID = {"leak_resistance": LEAK, "return_voltage": RETURN}
CIRCUIT = {"loss": LOSS, **GRID, "anode_voltage": ANODE}
ONE = 20e-6, 2e6, 2.0, 60.0  # a circuit with backlash: it stops at 0.86 of where it starts
SMALL = 1e-3  # volt
# The simplest case is silent where it could swing, that at the low ends swings where it would not start.
BEFORE = replace(drawn([False, True], "True or False"), ends=(True, False))


def nearly(left, right, tolerance):
    return equal(left, right, relative(2e-3, because="a small swing is not quite none"))


def at_rest(R, E):
    return rest_bias(R, E, ZERO_CURRENT, GRID_SLOPE)


def bias(V, R, E):
    return bias_with_carrier(V, R, E, ZERO_CURRENT, GRID_SLOPE)


def fixed_load(V, G, R, E, a):
    """What is returned if the grid went on loading as at rest."""
    load = grid_load(V, R, E)
    return returned_for(V, G, R, E, a) * (G + grid_load(0 * V + SMALL, R, E)) / (G + load)


def smallest_kept_up(k, o, *circuit):
    """The swing at which it would be on the edge between dying away and growing, if there is one."""
    start, stop = start_and_stop(*circuit)
    if k * start < (stop if o else start):
        return 0.0
    swings = np.geomspace(SMALL, 50.0, 300)
    return float(swings[np.argmax(returned_for(swings, *circuit) <= k * start)])


EXERCISE = Exercise(
    title="Does it slide into oscillation, or plop?",
    seconds=15.0,
    cases=6,
    questions=[
        Question(
            asks=grid_load,
            given={"swing": SWING, **GRID},
            gives="S",
            agrees_within=SOLVED,
            holds=[
                invariant(
                    "a small swing finds the grid's slope at rest, and the leak",
                    lambda f, V, R, E: (f(SMALL, R, E), ZERO_CURRENT * np.exp(at_rest(R, E) / GRID_SLOPE) / GRID_SLOPE + 1 / R),
                    nearly,
                ),
                invariant(
                    "with the leak taken to 4 V a larger swing is loaded less",
                    lambda f, V, R, E: (f(V + 1, R, 4.0), f(V, R, 4.0)),
                    less,
                ),
                invariant("never less than the leak alone", lambda f, V, R, E: (1 / R, f(V, R, E)), at_most),
            ],
            published=[
                value(
                    "leak × zero current = slope voltage, taken to 0 V, no swing to speak of: (1 + W(1))/R",
                    given=(SMALL, GRID_SLOPE / ZERO_CURRENT, 0.0),
                    wanted=1.5671432904 * ZERO_CURRENT / GRID_SLOPE,
                    within=relative(1e-4, because="a small swing is not quite none"),
                    source=OMEGA,
                    known="recomputed",
                ),
            ],
            slips=[
                slip("forgotten the leak itself", lambda V, R, E: grid_load(V, R, E) - 1 / R),
                slip(
                    "taken the mean current: at the carrier it is 2 I1/I0 times that",
                    lambda V, R, E: (E - bias(V, R, E)) / (R * V) + 1 / R,
                ),
                slip(
                    "left out I1/I0: a small swing steers the current only in part",
                    lambda V, R, E: 2 * (E - bias(V, R, E)) / (R * V) + 1 / R,
                ),
                slip("kept the load that the grid has at rest", lambda V, R, E: grid_load(0 * V + 1e-4, R, E)),
                slip(
                    "forgotten the voltage that the leak is taken to",
                    lambda V, R, E: -2 * bias(V, R, E) / R * i1_over_i0(V / GRID_SLOPE) / V + 1 / R,
                ),
            ],
        ),
        Question(
            asks=returned_for,
            given={"swing": SWING, **CIRCUIT},
            agrees_within=SOLVED,
            holds=[
                invariant(
                    "a small swing needs loss and load over the mutual conductance at rest",
                    lambda f, V, G, R, E, a: (
                        f(SMALL, G, R, E, a),
                        (G + f.grid_load(SMALL, R, E)) / mutual_conductance(a, at_rest(R, E), *LAW),
                    ),
                    nearly,
                ),
                invariant(
                    "more loss needs more reaction, in proportion to all that is lost",
                    lambda f, V, G, R, E, a: (
                        f(V, 2 * G, R, E, a) / f(V, G, R, E, a),
                        (2 * G + f.grid_load(V, R, E)) / (G + f.grid_load(V, R, E)),
                    ),
                ),
                invariant(
                    "more anode voltage needs less reaction",
                    lambda f, V, G, R, E, a: (f(V, G, R, E, a + 10), f(V, G, R, E, a)),
                    less,
                ),
            ],
            no_published="The club's own valve and grid leak; tests hold it against the whole set, followed step by step.",
            slips=[
                slip(
                    "left out the grid's load", lambda V, G, R, E, a: returned_for(V, G, R, E, a) * G / (G + grid_load(V, R, E))
                ),
                slip("let the grid go on loading as at rest", fixed_load),
                slip(
                    "taken the slope at rest: the swing changes what the valve is worth",
                    lambda V, G, R, E, a: (G + grid_load(V, R, E)) / mutual_conductance(a, at_rest(R, E), *LAW),
                ),
                slip(
                    "taken the slope at the bias that the swing makes, where the describing function is meant",
                    lambda V, G, R, E, a: (G + grid_load(V, R, E)) / (mutual_conductance(a, bias(V, R, E), *LAW) + 1e-12),
                ),
                slip("turned the fraction over", lambda *inputs: 1 / returned_for(*inputs)),
            ],
        ),
        Question(
            asks=start_and_stop,
            given=CIRCUIT,
            gives=("", ""),
            agrees_within=SEARCHED,
            arrays=False,
            holds=[
                invariant("it never stops later than it starts", lambda f, *circuit: f(*circuit)[::-1], at_most),
                invariant(
                    "no swing is kept up with less than the reaction at which it stops",
                    lambda f, *circuit: (f(*circuit)[1] * 0.999, f.returned_for(0.7 * least_swing(*circuit) + 0.3, *circuit)),
                    at_most,
                ),
                invariant(
                    "a great loss hides the grid's load: the onset is smooth",
                    lambda f, *circuit: f(1e-2, *ONE[1:]),
                    nearly,
                ),
                invariant(
                    "a leak taken to 4 V rather than to 0 V makes more backlash",
                    lambda f, *circuit: tuple(np.divide(*f(*ONE[:2], back, ONE[3])[::-1]) for back in (4.0, 0.0)),
                    less,
                ),
            ],
            no_published="The least of a curve that has its own checks; the club's valve.",
            slips=[
                slip("returned them the other way round", lambda *circuit: start_and_stop(*circuit)[::-1]),
                slip(
                    "taken both alike: look for the swing that needs least", lambda *circuit: (start_and_stop(*circuit)[0],) * 2
                ),
                slip(
                    "taken the most that any swing needs for the start: it is the smallest swing's",
                    lambda *circuit: (float(np.max(returned_for(SWINGS, *circuit))), start_and_stop(*circuit)[1]),
                ),
                slip("left the leak's return out", lambda G, R, E, a: start_and_stop(G, R, 0 * E, a)),
            ],
        ),
        Question(
            asks=swing_at,
            given={"turned": number(0.85, 1.25), "oscillating": BEFORE, **CIRCUIT, "return_voltage": volts("500 mV", "4 V")},
            edges=[lambda *inputs: (1.0, False, *ONE), lambda *inputs: (0.95, True, *ONE), lambda *inputs: (0.95, False, *ONE)],
            where=lambda k, o, *circuit: abs(k - 1) > 0.01 and abs(k - np.divide(*start_and_stop(*circuit)[::-1])) > 0.01,
            gives="V",
            agrees_within=relative(1e-2, because="read off a curve of some hundred points", floor=1e-9),
            arrays=False,
            holds=[
                invariant(
                    "the swing that you give is kept up by just that reaction",
                    lambda f, k, o, *circuit: (
                        f.returned_for(f(1.5, o, *circuit), *circuit),
                        1.5 * f.start_and_stop(*circuit)[0],
                    ),
                    nearly,
                ),
                invariant(
                    "just below the start it swings only if it did before",
                    lambda f, *inputs: (f(0.99, False, *ONE), 0.0),
                ),
                invariant(
                    "turned down in oscillation it swings on, just above where it stops",
                    lambda f, *inputs: (
                        0.5 * least_swing(*ONE),
                        f(1.002 * np.divide(*start_and_stop(*ONE)[::-1]), True, *ONE),
                    ),
                    less,
                ),
                invariant("more reaction swings further", lambda f, *inputs: (f(1.3, False, *ONE), f(1.4, False, *ONE)), less),
            ],
            no_published="The club's own valve and grid leak; tests hold it against the whole set, followed step by step.",
            slips=[
                slip(
                    "let it oscillate whenever it can, whether it did before or not",
                    lambda k, o, *circuit: swing_at(k, True, *circuit),
                ),
                slip("let it stop where it starts", lambda k, o, *circuit: swing_at(k, False, *circuit)),
                slip("taken the smallest swing that is kept up: from there it grows on", smallest_kept_up),
                slip(
                    "returned the bias instead of the swing",
                    lambda k, o, G, R, E, a: bias(swing_at(k, o, G, R, E, a), R, E) if swing_at(k, o, G, R, E, a) else 0.0,
                ),
                slip("returned it from crest to trough", lambda *inputs: 2 * swing_at(*inputs)),
            ],
        ),
    ],
    hints=[
        "Two things change as the swing grows: the valve is worth less, and the grid, driven negative, loads the circuit less. "
        "If the load falls faster than the valve's worth, a large swing is easier to keep up than a small one.",
        "Grid load: 2 × (E − bias)/R × I1/I0, for each volt of swing, and 1/R. Reaction for a swing: (loss + load) over the "
        "effective transconductance at the bias which that swing makes. Draw that against the swing: its left end is where "
        "the set starts, its lowest point where it stops.",
        "grid_load: 2 × (return_voltage − bias)/leak_resistance × i1_over_i0(swing/GRID_SLOPE)/swing + 1/leak_resistance,"
        " the bias by bias_with_carrier. returned_for: (loss + grid_load)/effective_transconductance at that bias. "
        "start_and_stop: needed = returned_for(SWINGS, …); needed[0], np.min(needed). swing_at: returned = turned × "
        "start; 0.0 if that is below start (below stop if it was oscillating); read the swing off the rising part: i = "
        "np.argmin(needed), np.interp(returned, needed[i:], SWINGS[i:]).",
    ],
)

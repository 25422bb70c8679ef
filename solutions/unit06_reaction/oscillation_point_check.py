"""How `oscillation_point` is judged.

In the laws and slips of the two meshes: L, R, C the tuned circuit, L3 the tickler, ra the valve, M the mutual inductance.
Of the whole set: F the frequency, M the coupling, C the tuning, T the throttle, then aerial, tuned, tickler and valve.
"""

from functools import cache

import numpy as np
import sympy

from checker import (
    Exercise,
    Question,
    absolute,
    at_most,
    drawn,
    equal,
    farads,
    henries,
    hertz,
    invariant,
    ohms,
    picture,
    refusal,
    relative,
    slip,
    value,
)

from .characteristic_polynomial import full_polynomial, leading_pole
from .given_sets import (
    ANY_VALVE,
    FIXED,
    HELPING_TICKLER,
    KNOBS,
    SET,
    THE_AERIAL,
    THE_COIL,
    THE_TICKLER,
    THE_VALVE,
)
from .oscillation_point import (
    BEST_VALVE,
    crossing,
    gain,
    routh_point,
    steady_gain,
    threshold_transconductance,
)

SOLVED = relative(1e-6, because="solved step by step, from roots in double precision")
CLOSE = relative(1e-6, because="near resonance a small rest of large reactances is left")
SHARE = absolute(1e-7, because="solved step by step, from roots in double precision")
TUNED_GRID = "tuned-grid oscillator of a type 30, exact threshold by Routh's condition; reaction.toml, example"
CRITICAL = "two circuits of Q 100 at critical coupling; coupled_two_circuit_response.csv"
# reaction.toml, example, as a whole set: no aerial, no grid load, a throttle that stops nothing, a valve without capacitance.
EXAMPLE = (0.0, 1.40723866e-10, 1e-6, THE_AERIAL, (9.0, 180e-6, 0.0), (0.0, 30e-6, 1.40889934e-6, 0.0), (10300.0, 0.0, 0.0))
# Two circuits of 200 µH, R 12.566 Ω, tuned to 1 MHz; the valve cold and its tickler far away.
ALIKE = 1 / ((2 * np.pi * 1e6) ** 2 * 200e-6)
TWO_ALIKE = (
    1e6,
    2e-6,
    ALIKE,
    10e-12,
    (12.5663706144, ALIKE, 200e-6),
    (12.5663706144, 200e-6, 0.0),
    (1.0, 48e-6, 0.0, 0.0),
    (0.0, 10e3, 0.0, 0.0),
)
KNOBS_AT = (20e-6, 105e-12, 200e-12, THE_AERIAL, THE_COIL, THE_TICKLER)
A_SET = *KNOBS_AT, THE_VALVE[1:]
THRESHOLD = threshold_transconductance(*A_SET)
SILENT, OSCILLATING = (
    [full_polynomial(*KNOBS_AT[:1], tuning, *KNOBS_AT[2:], (gm, *THE_VALVE[1:])) for tuning in (105e-12, 60e-12, 300e-12)]
    for gm in (0.0, 20e-3)
)
SIMPLE = np.array([1.0, 3.0, 10.0]), np.array([1.0, -1.0, 10.0])


def settles(frequency, *parts):
    """Whether the set, whatever the frequency it is asked at, does not oscillate by itself."""
    return leading_pole(full_polynomial(*parts)).real < 0


def can_oscillate(*parts):
    """Whether the best of valves makes it oscillate."""
    return not settles(None, *parts[:-1], (BEST_VALVE, *parts[-1]))


def with_gm(parts, transconductance):
    return (*parts[:-1], (transconductance, *parts[-1][1:]))


def without_capacitance(parts, *places):
    """A set whose valve has none of its capacitances that stand in some places."""
    *others, valve = parts
    return (*others, tuple(0.0 if place in places else value for place, value in enumerate(valve)))


def coil_away(parts, part):
    """A set with its aerial's coil drawn away, so that a part of both its mutual inductances is left."""
    M, C, T, aerial, tuned, tickler, *valve = parts
    return (part * M, C, T, aerial, tuned, (*tickler[:3], 0.0), *valve)


def a_little_less(left, right, tolerance):
    return at_most(left, right, relative(1e-6, because="solved step by step"))


def on_axis(coefficients):
    """How far the leading pole stands from the axis, as a part of its distance from 0."""
    pole = leading_pole(coefficients)
    return abs(pole.real) / abs(pole)


@cache
def threshold_of(*parts):
    """Transconductance of a set's threshold, and the frequency there, the valve's other figures being the club's."""
    threshold = threshold_transconductance(*parts, THE_VALVE[1:])
    return threshold, leading_pole(full_polynomial(*parts, (threshold, *THE_VALVE[1:]))).imag / (2 * np.pi)


def at_threshold_frequency(C, share):
    """The club's set asked at the frequency of its threshold, with a share of the transconductance that it has there."""
    parts = (20e-6, C, 300e-12, THE_AERIAL, THE_COIL, THE_TICKLER)
    threshold, frequency = threshold_of(*parts)
    return (frequency, *parts, (share * threshold, *THE_VALVE[1:]))


def alike(left, right, tolerance):
    return equal(left, right, relative(1e-5, because="the threshold is solved step by step"))


def formulas(change):
    return lambda *symbols: change(*routh_point(*symbols), *symbols)


def crossing_after(share):
    """Two sets on one line with those drawn, the crossing at this share of the way."""

    def edge(silent, oscillating):
        there = crossing(silent, oscillating)
        start = max(0.0, (there - share) / (1 - share))
        end = start + (there - start) / share
        return tuple((1 - at) * silent + at * oscillating for at in (start, end))

    return edge


EXERCISE = Exercise(
    title="Where does it begin to oscillate?",
    seconds=10.0,
    cases=4,
    questions=[
        Question(
            asks=routh_point,
            given={
                "tuned_inductance": henries("100 µH", "400 µH"),
                "tuned_resistance": ohms("2 Ω", "30 Ω"),
                "tuning_capacitance": farads("40 pF", "500 pF"),
                "tickler_inductance": henries("5 µH", "60 µH"),
                "anode_resistance": ohms("4 kΩ", "30 kΩ"),
                "mutual_inductance": henries("1 µH", "20 µH"),
            },
            gives=("S", "rad/s"),
            symbolic=True,
            agrees_within=relative(1e-9, because="a formula has no rounding"),
            no_published="A formula; the threshold that it gives is held to its figure in `threshold_transconductance`.",
            slips=[
                slip(
                    "returned the amplification factor: divide it by the anode resistance",
                    formulas(lambda gm, w, L, R, C, L3, ra, M: (gm * ra, w)),
                ),
                slip(
                    "put the linear term to zero: that is the threshold only where the tickler is small",
                    formulas(lambda gm, w, L, R, C, L3, ra, M: ((R * C * ra + L3) / (M * ra), w)),
                ),
                slip(
                    "returned 1/sqrt(L C): the tickler lowers the frequency a little",
                    formulas(lambda gm, w, L, R, C, L3, ra, M: (gm, 1 / sympy.sqrt(L * C))),
                ),
                slip("returned w², not w: the root is still to be taken", formulas(lambda gm, w, *symbols: (gm, w**2))),
                slip(
                    "divided by 2π: this is in radians per second", formulas(lambda gm, w, *symbols: (gm, w / (2 * sympy.pi)))
                ),
                slip(
                    "taken the handbooks' shorter condition, C R/M + M/(L ra): it is not exact",
                    formulas(lambda gm, w, L, R, C, L3, ra, M: (C * R / M + M / (L * ra), w)),
                ),
            ],
        ),
        Question(
            asks=crossing,
            given={
                "silent": drawn([SIMPLE[0], *SILENT], "coefficients of a set that does not oscillate"),
                "oscillating": drawn([SIMPLE[1], *OSCILLATING], "coefficients of one that does"),
            },
            where=lambda silent, oscillating: len(silent) == len(oscillating),
            edges=[crossing_after(0.002), crossing_after(0.998)],
            agrees_within=SHARE,
            arrays=False,
            holds=[
                invariant(
                    "there the leading pole stands on the axis, neither left nor right of it",
                    lambda f, a, b: (on_axis((1 - f(a, b)) * a + f(a, b) * b), 0.0),
                    at_most,
                ),
            ],
            published=[
                value(
                    "s² + 3s + 10 to s² − s + 10: at three quarters the linear term is gone",
                    given=SIMPLE,
                    wanted=0.75,
                    within=absolute(1e-9, because="solved step by step"),
                    source="E. J. Routh, Dynamics of a System of Rigid Bodies: a quadratic's roots lie to the left while "
                    "all coefficients have one sign",
                    known="memory",
                ),
            ],
            refuses=[
                refusal("two sets that both oscillate", (SIMPLE[1], SIMPLE[1])),
                refusal("two sets that are both silent", (SIMPLE[0], SIMPLE[0])),
            ],
            slips=[
                slip("counted from the other end", lambda a, b: 1 - crossing(a, b)),
                slip("stopped at the first half", lambda a, b: 0.5),
                slip("kept the wrong half of the interval", lambda a, b: 1.0),
            ],
        ),
        Question(
            asks=threshold_transconductance,
            given={**KNOBS, **FIXED, "tickler": HELPING_TICKLER, "valve": ANY_VALVE},
            where=can_oscillate,
            # 19.7 mS: nearly the best valve that is looked for.
            edges=[lambda *parts: (*KNOBS_AT[:5], (2.0, 48e-6, 3.72464e-6, 0.0), THE_VALVE[1:])],
            gives="S",
            agrees_within=SOLVED,
            arrays=False,
            holds=[
                invariant(
                    "loosening the aerial brings oscillation nearer",
                    lambda f, *parts: (f(*coil_away(A_SET, 0.5)), f(*coil_away(A_SET, 1.0))),
                    a_little_less,
                ),
                invariant(
                    "more resistance in the tuned coil puts it farther off",
                    lambda f, *parts: (f(*A_SET), f(*A_SET[:4], (A_SET[4][0] + 1, *A_SET[4][1:]), *A_SET[5:])),
                    a_little_less,
                ),
            ],
            published=[
                value(
                    "a type 30 with M = 1.40889934 µH, without aerial",
                    given=EXAMPLE,
                    wanted=0.9e-3,
                    within=relative(1e-5, because="a throttle of 1 µF stops almost nothing"),
                    source=TUNED_GRID,
                    known="recomputed",
                ),
            ],
            refuses=[
                refusal(
                    "a tickler wound the wrong way, and a valve without capacitance",
                    (*KNOBS_AT[:5], (2.0, 48e-6, -14e-6, 0.4e-6), (10e3, 0.0, 0.0)),
                ),
                refusal(
                    "a tickler far away",
                    (*KNOBS_AT[:5], (2.0, 48e-6, 0.1e-6, 0.0), THE_VALVE[1:]),
                    (*KNOBS_AT[:5], (2.0, 48e-6, 3.65e-6, 0.0), THE_VALVE[1:]),
                ),
                refusal(
                    "a throttle so far shut that the anode damps more than the tickler helps",
                    (*KNOBS_AT[:2], 50e-12, *KNOBS_AT[3:], THE_VALVE[1:]),
                ),
            ],
            slips=[
                slip("returned the amplification factor", lambda *parts: parts[-1][0] * threshold_transconductance(*parts)),
                slip(
                    "returned the share of 20 mS: multiply by that",
                    lambda *parts: threshold_transconductance(*parts) / BEST_VALVE,
                ),
                slip("left the aerial out of account", lambda *parts: threshold_transconductance(*coil_away(parts, 0.0))),
                slip(
                    "left the throttle condenser out of account",
                    lambda M, C, T, *rest: threshold_transconductance(M, C, 1e-6, *rest),
                ),
                slip(
                    "left out what the anode does to the grid through the condenser between them",
                    lambda *parts: threshold_transconductance(*without_capacitance(parts, 1)),
                ),
            ],
        ),
        Question(
            asks=steady_gain,
            picture=picture(points=33),
            given={"frequency": hertz("500 kHz", "1600 kHz"), **SET},
            agrees_within=CLOSE,
            arrays=False,
            holds=[
                invariant(
                    "the aerial's coil turned round gives as much",
                    lambda f, F, M, C, T, aerial, tuned, tickler, valve: (
                        f(F, -M, C, T, aerial, tuned, (*tickler[:3], -tickler[3]), valve),
                        f(F, M, C, T, aerial, tuned, tickler, valve),
                    ),
                ),
                invariant(
                    "with neither coupling nor tickler nothing reaches the grid",
                    lambda f, F, M, C, T, aerial, tuned, tickler, valve: (
                        f(F, 0.0, C, T, aerial, tuned, (*tickler[:2], 0.0, 0.0), valve),
                        0.0,
                    ),
                ),
                invariant(
                    "as far beyond the threshold as below it the formula gives the same: it cannot tell",
                    lambda f, F, M, C, *rest: (f(*at_threshold_frequency(C, 0.8)), f(*at_threshold_frequency(C, 1.2))),
                    alike,
                ),
                invariant(
                    "at the threshold's own frequency, four fifths of the way there, it is five times what it was",
                    lambda f, F, M, C, *rest: (f(*at_threshold_frequency(C, 0.8)), 5 * f(*at_threshold_frequency(C, 0.0))),
                    alike,
                ),
            ],
            published=[
                value(
                    "two circuits of Q 100 at critical coupling",
                    given=TWO_ALIKE,
                    wanted=39.788735773e-3 * 1256.63706144,
                    within=relative(1e-9, because="printed to 11 figures"),
                    source=CRITICAL,
                    known="recomputed",
                ),
            ],
            refuses=[
                refusal("a coupling of 130 µH with an aerial's winding of 40 µH", (1e6, 130e-6, *KNOBS_AT[1:], THE_VALVE)),
            ],
            slips=[
                slip(
                    "turned the tickler round",
                    lambda F, M, C, T, aerial, tuned, tickler, valve: steady_gain(
                        F, M, C, T, aerial, tuned, (*tickler[:2], -tickler[2], tickler[3]), valve
                    ),
                ),
                slip(
                    "returned the current into condenser and grid, not the voltage across them",
                    lambda F, M, C, T, aerial, tuned, tickler, valve: (
                        steady_gain(F, M, C, T, aerial, tuned, tickler, valve) * abs(2j * np.pi * F * C + tuned[2])
                    ),
                ),
                slip("left 2π out of s = j 2π f", lambda F, *parts: steady_gain(F / (2 * np.pi), *parts)),
                slip("left out the valve", lambda F, *parts: steady_gain(F, *with_gm(parts, 0.0))),
                slip("left out the valve's capacitances", lambda F, *parts: steady_gain(F, *without_capacitance(parts, 2, 3))),
                slip(
                    "left out the condenser between grid and anode",
                    lambda F, *parts: steady_gain(F, *without_capacitance(parts, 2)),
                ),
                slip(
                    "left out the aerial's own capacitance",
                    lambda F, M, C, T, aerial, *rest: steady_gain(F, M, C, T, (aerial[0], 1.0, aerial[2]), *rest),
                ),
            ],
        ),
        Question(
            asks=gain,
            picture=picture(points=33),
            given={"frequency": hertz("500 kHz", "1600 kHz"), **SET},
            where=settles,
            agrees_within=CLOSE,
            arrays=False,
            holds=[
                invariant(
                    "where the set settles it is what the steady-state formula gives",
                    lambda f, F, *parts: (f(F, *parts), f.steady_gain(F, *parts)),
                ),
            ],
            published=[
                value(
                    "two circuits of Q 100 at critical coupling",
                    given=TWO_ALIKE,
                    wanted=39.788735773e-3 * 1256.63706144,
                    within=relative(1e-9, because="printed to 11 figures"),
                    source=CRITICAL,
                    known="recomputed",
                ),
            ],
            refuses=[
                refusal("a set just at the threshold", (1e6, *KNOBS_AT, (THRESHOLD * (1 + 1e-7), *THE_VALVE[1:]))),
                refusal(
                    "a set that oscillates: the throttle at 400 pF", (1e6, *KNOBS_AT[:2], 400e-12, *KNOBS_AT[3:], THE_VALVE)
                ),
                refusal(
                    "a set only just beyond the threshold, where the formula gives a great gain",
                    (1e6, *KNOBS_AT, (1.02 * THRESHOLD, *THE_VALVE[1:])),
                ),
                refusal(
                    "a set that oscillates at one frequency, asked at another",
                    (700e3, *KNOBS_AT, (2 * THRESHOLD, *THE_VALVE[1:])),
                ),
            ],
            slips=[
                slip("returned decibels", lambda *inputs: 20 * np.log10(gain(*inputs))),
                slip("left out the valve", lambda F, *parts: steady_gain(F, *with_gm(parts, 0.0))),
                slip(
                    "turned the tickler round",
                    lambda F, M, C, T, aerial, tuned, tickler, valve: steady_gain(
                        F, M, C, T, aerial, tuned, (*tickler[:2], -tickler[2], tickler[3]), valve
                    ),
                ),
                slip("squared the voltage: that would be power", lambda *inputs: gain(*inputs) ** 2),
            ],
        ),
    ],
    hints=[
        "Below the threshold every disturbance dies away, beyond it one grows: a pole has crossed from left to right. So the "
        "threshold is where the leading pole's real part is 0. And a steady state is what is left when all else has died "
        "away: beyond the threshold it does not, whatever number the formula gives.",
        "Formula: with a cubic a s³ + b s² + c s + d the pair is on the axis where b c = a d, at w² = d/b; solve that for gm. "
        "Numbers: take the mixture (1 − share) × silent + share × oscillating, look at its leading pole, and halve the "
        "interval. Gain: the four equations with complex s = 2jπf and 1 V in the first.",
        "routh_point: with a, b, c, d = tuned_grid_polynomial(…) and gm = the symbol of its transconductance: "
        "sympy.solve(b*c - a*d, gm), sympy.sqrt(d/b). crossing: low, high = 0, 1; thirty-two times the middle; where "
        "the pole's real part is above 0 put high = middle, else low = middle. threshold_transconductance: 20 mS × "
        "crossing(polynomial at 0, polynomial at 20 mS). steady_gain: refuse_impossible_windings, then "
        "abs(np.linalg.solve(rows, [1, 0, 0, 0])[1]) with the rows of full_polynomial at s = 2j × np.pi × frequency, the "
        "first divided by s times the capacitance in `aerial`, so that the volt stays 1. gain: ValueError if "
        "leading_pole(…).real >= 0.",
    ],
)

"""How `grid_anode_admittance` is judged.

In the laws and slips: F the frequency, gm, ra and μ the valve, Cga and Ca its condensers from anode to grid and to earth, YL
the anode's load, R3, L3 and C3 the tickler and the throttle, L and R the tuned coil, Y what is across it.
"""

import numpy as np

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
    less,
    number,
    ohms,
    refusal,
    relative,
    siemens,
    slip,
    value,
)

from .grid_anode_admittance import anode_load, balancing_inductance, grid_admittance, quality_left

CLOSE = relative(1e-9, because="a few operations, double precision", floor=1e-18)
FREQUENCY, GRID_ANODE, AT_ANODE = hertz("500 kHz", "1600 kHz"), farads("0.5 pF", "10 pF"), farads("5 pF", "500 pF")
LOAD = drawn(
    [
        complex(conductance * 1e-6, susceptance * 1e-6)
        for susceptance in (1000, -1000, 0, 300, -300, 2000, -100, 50)
        for conductance in (20, 1, 100)
    ],
    "conductance 1 µS to 100 µS, susceptance −1 mS to 2 mS",
    unit="S",
)
ACROSS = drawn(
    [
        complex(conductance * 1e-6, susceptance * 1e-6)
        for conductance in (5, 1, 10, 20, 0, -1, -2)
        for susceptance in (50, 100, 200)
    ],
    "conductance −2 µS to 20 µS, susceptance 50 µS to 200 µS",
    unit="S",
)
MILLER = "J. M. Miller, Scientific Papers of the Bureau of Standards 351, 1919: with a resistance in the anode, Cga (1 + A)"


def angular(F):
    return 2 * np.pi * F


def condenser(F, C):
    return 1j * angular(F) * C


def beside(F, C, L):
    """Admittance of a condenser and a coil side by side."""
    return condenser(F, C) + 1 / (1j * angular(F) * L)


def nearly_nothing(left, right, tolerance):
    return equal(left, right, absolute(1e-9, because="a rest of large terms"))


EXERCISE = Exercise(
    title="What does the anode do to the grid?",
    cases=16,
    questions=[
        Question(
            asks=anode_load,
            given={
                "frequency": FREQUENCY,
                "anode_capacitance": AT_ANODE,
                "tickler_resistance": ohms("0.5 Ω", "10 Ω"),
                "tickler_inductance": henries("10 µH", "100 µH"),
                "throttle": farads("10 pF", "500 pF"),
            },
            gives="S",
            agrees_within=relative(1e-8, because="near resonance a small rest of large reactances is left", floor=1e-18),
            holds=[
                invariant(
                    "20 pF more from anode to earth are 20 pF more, whatever stands beside them",
                    lambda f, F, Ca, *rest: (f(F, Ca + 20e-12, *rest) - f(F, Ca, *rest), condenser(F, 20e-12)),
                ),
                invariant(
                    "a tickler of no turns leaves the throttle beside the other condensers",
                    lambda f, F, Ca, R3, L3, C3: (np.imag(f(F, Ca, 1e-9, 0.0, C3)), angular(F) * (Ca + C3)),
                ),
                invariant(
                    "a short circuit for a throttle lets the coil alone be seen, and no condenser",
                    lambda f, F, Ca, R3, L3, C3: (np.imag(f(F, 0.0, R3, L3, 1.0)), 0.0),
                    less,
                ),
            ],
            no_published="Admittances added up; the tests hold it to a network of waves.",
            slips=[
                slip("returned the impedance", lambda *inputs: 1 / anode_load(*inputs)),
                slip(
                    "set tickler and throttle side by side: they stand one behind the other",
                    lambda F, Ca, R3, L3, C3: condenser(F, Ca + C3) + 1 / (R3 + 1j * angular(F) * L3),
                ),
                slip("left out the condensers beside them", lambda F, Ca, *rest: anode_load(F, 0.0 * Ca, *rest)),
                slip(
                    "turned the sign of the condensers' reactances: an admittance of jωC is an impedance of −j/(ωC)",
                    lambda F, Ca, R3, L3, C3: -condenser(F, Ca) + 1 / (R3 + 1j * (angular(F) * L3 + 1 / (angular(F) * C3))),
                ),
                slip("left out the tickler's resistance", lambda F, Ca, R3, *rest: anode_load(F, Ca, 1e-30 * R3, *rest)),
                slip("left out 2π", lambda F, *rest: anode_load(F / (2 * np.pi), *rest)),
            ],
        ),
        Question(
            asks=grid_admittance,
            given={
                "frequency": FREQUENCY,
                "transconductance": siemens("0.1 mS", "3 mS"),
                "anode_resistance": ohms("5 kΩ", "50 kΩ"),
                "grid_anode_capacitance": GRID_ANODE,
                "load": LOAD,
            },
            gives="S",
            agrees_within=CLOSE,
            holds=[
                invariant(
                    "an anode that sees a condenser returns a loss",
                    lambda f, F, gm, ra, Cga, YL: (0.0, np.real(f(F, gm, ra, Cga, 1j * abs(YL)))),
                    less,
                ),
                invariant(
                    "an anode that sees a coil of 1 mS returns a gain",
                    lambda f, F, gm, ra, Cga, YL: (np.real(f(F, 1e-3, ra, Cga / 2, -1e-3j)), 0.0),
                    less,
                ),
                invariant(
                    "a cold valve never gives anything",
                    lambda f, F, gm, ra, Cga, YL: (0.0, np.real(f(F, 0.0, ra, Cga, YL))),
                    at_most,
                ),
                invariant(
                    "an anode tied to earth leaves the condenser alone",
                    lambda f, F, gm, ra, Cga, YL: (f(F, gm, ra, Cga, 1e9 + 0j), condenser(F, Cga)),
                ),
                invariant(
                    "ten times the by-pass leaves less of the loss",
                    lambda f, F, gm, ra, Cga, YL: (
                        np.real(f(F, gm, ra, Cga, condenser(F, 5e-9))),
                        np.real(f(F, gm, ra, Cga, condenser(F, 5e-10))),
                    ),
                    less,
                ),
            ],
            published=[
                value(
                    "5 pF, a valve of 1 mS and 10 kΩ with 30 kΩ in its anode, at 1 kHz: 42.5 pF",
                    given=(1e3, 1e-3, 10e3, 5e-12, complex(1 / 30e3)),
                    wanted=2j * np.pi * 1e3 * 42.5e-12,
                    within=relative(1e-3, because="at 1 kHz the 5 pF hardly load the anode"),
                    source=MILLER,
                    known="memory",
                ),
            ],
            slips=[
                slip(
                    "left out the valve: the anode does not stand still at its other end",
                    lambda F, gm, ra, Cga, YL: condenser(F, Cga) + 0 * (gm + ra + YL),
                ),
                slip(
                    "turned the anode's swing: it goes the other way than the grid, so its part adds",
                    lambda F, gm, ra, Cga, YL: (
                        grid_admittance(F, 0.0, ra, Cga, YL) - condenser(F, Cga) * gm / (1 / ra + YL + condenser(F, Cga))
                    ),
                ),
                slip("turned the sign of the imaginary parts", lambda *inputs: np.conj(grid_admittance(*inputs))),
                slip(
                    "left out the anode's resistance, through which the valve's current goes too",
                    lambda F, gm, ra, Cga, YL: grid_admittance(F, gm, 1e30 + 0 * ra, Cga, YL),
                ),
                slip(
                    "forgotten that the condenser itself loads the anode",
                    lambda F, gm, ra, Cga, YL: condenser(F, Cga) * (1 + gm / (1 / ra + YL)),
                ),
                slip(
                    "kept only the size of the gain: it is complex",
                    lambda F, gm, ra, Cga, YL: condenser(F, Cga) * (1 + np.abs(gm / (1 / ra + YL))),
                ),
                slip("left out 2π", lambda F, *rest: grid_admittance(F / (2 * np.pi), *rest)),
            ],
        ),
        Question(
            asks=balancing_inductance,
            given={
                "frequency": FREQUENCY,
                "amplification_factor": number(3, 30),
                "grid_anode_capacitance": GRID_ANODE,
                "anode_capacitance": AT_ANODE,
            },
            gives="H",
            agrees_within=CLOSE,
            holds=[
                invariant(
                    "with that coil at the anode the grid loses nothing and gains nothing",
                    lambda f, F, μ, Cga, Ca: (
                        1e6 * np.real(f.grid_admittance(F, μ / 1e4, 1e4, Cga, beside(F, Ca, f(F, μ, Cga, Ca)))),
                        0.0,
                    ),
                    nearly_nothing,
                ),
                invariant(
                    "with nine tenths of it the grid gains",
                    lambda f, F, μ, Cga, Ca: (
                        np.real(f.grid_admittance(F, μ / 1e4, 1e4, Cga, beside(F, Ca, 0.9 * f(F, μ, Cga, Ca)))),
                        0.0,
                    ),
                    less,
                ),
                invariant(
                    "at twice the frequency a quarter of the coil does", lambda f, F, *rest: (f(2 * F, *rest), f(F, *rest) / 4)
                ),
            ],
            no_published="A condition on `grid_admittance`, which is held to its figure.",
            slips=[
                slip(
                    "left out 1/μ: the condenser's own current has to be made up too",
                    lambda F, μ, Cga, Ca: 1 / (angular(F) ** 2 * (Ca + Cga)) + 0 * μ,
                ),
                slip(
                    "tuned the coil to the anode's own condensers: the one to the grid counts",
                    lambda F, μ, Cga, Ca: 1 / (angular(F) ** 2 * Ca) + 0 * (μ + Cga),
                ),
                slip(
                    "multiplied by 1 + μ, as at the grid: the anode sees the condenser from its other end",
                    lambda F, μ, Cga, Ca: 1 / (angular(F) ** 2 * (Ca + Cga * (1 + μ))),
                ),
                slip("left out 2π", lambda F, *rest: balancing_inductance(F / (2 * np.pi), *rest)),
                slip("forgotten to square ω", lambda F, *rest: balancing_inductance(F, *rest) * angular(F)),
            ],
        ),
        Question(
            asks=quality_left,
            given={
                "frequency": FREQUENCY,
                "inductance": henries("100 µH", "300 µH"),
                "resistance": ohms("5 Ω", "30 Ω"),
                "admittance": ACROSS,
            },
            where=lambda F, L, R, Y: R + np.real(Y) * (angular(F) * L) ** 2 > 0.5,
            agrees_within=relative(1e-8, because="a small rest of two resistances, in double precision"),
            holds=[
                invariant(
                    "a condenser without loss across it leaves Q as it was",
                    lambda f, F, L, R, Y: (f(F, L, R, 1j * abs(Y)), angular(F) * L / R),
                ),
                invariant(
                    "a resistor of 50 MΩ beside a coil without loss: Q is that over its reactance",
                    lambda f, F, L, R, Y: (f(F, L, 0.0, 20e-9 + 0j), 50e6 / (angular(F) * L)),
                ),
                invariant("what takes more leaves less", lambda f, F, L, R, Y: (f(F, L, R, Y + 1e-6), f(F, L, R, Y)), less),
            ],
            no_published="What Q means, twice; unit 03 holds both forms to their figures.",
            refuses=[
                refusal(
                    "an anode that gives more than a coil of 6 Ω loses",
                    (1e6, 200e-6, 6.0, -10e-6 + 50e-6j),
                    (1e6, 200e-6, 6.0, -3.81e-6 + 50e-6j),
                ),
                refusal("a circuit with no loss left at all", (1e6, 200e-6, 0.0, 50e-6j)),
            ],
            slips=[
                slip(
                    "taken the size of the admittance: only its real part is loss",
                    lambda F, L, R, Y: quality_left(F, L, R, np.abs(Y) + 0j),
                ),
                slip(
                    "turned the sign: a positive real part takes",
                    lambda F, L, R, Y: angular(F) * L / (R - np.real(Y) * (angular(F) * L) ** 2),
                ),
                slip(
                    "multiplied by the reactance once: G X² is the resistance in series",
                    lambda F, L, R, Y: angular(F) * L / (R + np.real(Y) * angular(F) * L),
                ),
                slip(
                    "left out the coil's own resistance",
                    lambda F, L, R, Y: angular(F) * L / (1e-6 + np.abs(np.real(Y)) * (angular(F) * L) ** 2) + 0 * R,
                ),
                slip("left out the anode", lambda F, L, R, Y: angular(F) * L / R + 0 * np.real(Y)),
            ],
        ),
    ],
    hints=[
        "Put 1 V on the grid. The valve draws gm from the anode, and what the anode is joined to decides how far it swings, "
        "and in which phase. The condenser between the two carries the difference of both voltages.",
        "At the anode, with v on the grid and va there: gm v + va (1/ra + YL) + jωCga (va − v) = 0. Solve that for va. The "
        "grid's side gives jωCga (v − va). Divide by v. The real part is 0 where gm (B + ωCga) + ωCga/ra is, with YL = jB.",
        "With s = 2j × np.pi × frequency: s × anode_capacitance + 1/(tickler_resistance + s × tickler_inductance + 1/(s ×"
        " throttle));   with k = s × grid_anode_capacitance and y = 1/anode_resistance + load: k × (transconductance + "
        "y)/(y + k);   with w = 2π × frequency: 1/(w² × (anode_capacitance + grid_anode_capacitance × (1 + "
        "1/amplification_factor)));   x = w × inductance, left = resistance + admittance.real × x², refused where that is"
        " 0 or less (np.any, for arrays), else x/left.",
    ],
)

"""How `isolating_stage` is judged.

In the laws and slips: f0 the frequency, μ and R the valve's amplification factor and anode resistance, L and M self and mutual
inductance of the anode winding, r and C the tuned circuit's resistance and condenser, V its swing, A the anode's, k the
capacitance from anode to grid, s the stray one, Z an impedance to earth, D the aerial's coupling without a stage, G the grid's
resistance to earth, W the anode winding's two inductances, v the valve's two figures, S its transconductance.
"""

import numpy as np

from checker import (
    Exercise,
    Question,
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
    volts,
)
from solutions.unit06_reaction.given_sets import parts

from .isolating_stage import anode_swing, carried_gain, grid_swing, isolation, stable_gain

CLOSE = relative(1e-9, because="a few operations, double precision", floor=1e-15)
FREQUENCY, TUNING = hertz("500 kHz", "1.6 MHz"), farads("60 pF", "500 pF")
WINDING, MUTUAL = henries("20 µH", "150 µH"), henries("5 µH", "60 µH")
ANODE_RESISTANCE = ohms("5 kΩ", "1 MΩ")
# Manual figures of a triode and two screen-grid valves; all from memory.
WITHIN = relative(0.01, because="the manual's three coefficients are each rounded, and the winding is little beside the valve")
SCREEN_GRID = "RCA Receiving Tube Manual, type 32 at 180 V: μ 780, 1.2 MΩ, 650 µS (typical characteristics)"
TRIODE = "RCA figures for type 30: μ 9.3, 10.3 kΩ, 900 µS, quoted on a page of measured valves; triodes.csv"
AERIAL = drawn(
    [
        complex(resistance, reactance)
        for reactance in (-950.0, -1500.0, -400.0, -150.0, 0.0, 300.0)
        for resistance in (30, 15, 80)
    ],
    "15 to 80 Ω of resistance, −1.5 kΩ to +300 Ω of reactance",
    unit="Ω",
    stacks=True,
)
ANODE_SWING = drawn(
    [complex(real, imaginary) for real in (-0.3, 0.3, -2.0, 0.05) for imaginary in (0.0, 0.02, -0.2)],
    "−2 V to 0.3 V in step with the tuned circuit, −0.2 V to 0.02 V a quarter of a cycle ahead",
    unit="V",
    stacks=True,
)
WINDINGS = parts(
    ("H", "H"),
    "inductance 30 µH to 120 µH, 10 µH to 60 µH with the tuned coil",
    (60e-6, 40e-6),
    (30e-6, 10e-6),
    (100e-6, 60e-6),
    (120e-6, 30e-6),
)
AERIAL_WINDINGS = parts(
    ("H", "H"),
    "inductance 10 µH to 60 µH, 5 µH to 30 µH with the tuned coil",
    (25e-6, 20e-6),
    (40e-6, 10e-6),
    (10e-6, 5e-6),
    (60e-6, 30e-6),
)
VALVES = parts(
    ("Ω", "F"),
    "10 kΩ and 6 pF (a triode) to 1.2 MΩ and 0.015 pF (a screen-grid valve)",
    (10e3, 6e-12),
    (1.2e6, 15e-15),
    (11e3, 3e-12),
    (400e3, 7e-15),
)


def nearly(left, right, tolerance):
    return equal(left, right, relative(1e-3, because="a limit, nearly reached"))


def without_aerial(G, f0, capacitance):
    """The other admittances at the grid, siemens."""
    return 1 / G + 2j * np.pi * f0 * capacitance


def longer(Z, f0, L):
    """By how much a winding lessens the aerial's current, decibel."""
    return 20 * np.log10(np.abs(1 + 2j * np.pi * f0 * L / Z))


def tuned(f0, M, r):
    """The mutual inductance turned into what it reflects, ohm."""
    return (2 * np.pi * f0 * M) ** 2 / r


def closest(winding, frequency, capacitance):
    """Mutual inductance at which all of a winding's field is the tuned coil's too, henry."""
    return np.sqrt(winding / capacitance) / (2 * np.pi * frequency)


def loose(winding, M, f0, C):
    return closest(winding, f0, C) * 0.9 > M


EXERCISE = Exercise(
    title="How much still gets out?",
    questions=[
        Question(
            asks=carried_gain,
            given={
                "frequency": FREQUENCY,
                "amplification_factor": number(5, 800),
                "anode_resistance": ANODE_RESISTANCE,
                "winding_inductance": WINDING,
                "mutual_inductance": MUTUAL,
                "tuned_resistance": ohms("1 Ω", "30 Ω"),
                "tuning_capacitance": TUNING,
            },
            edges=[lambda f0, μ, R, L, M, r, C: (f0, μ, R, L, 0.995 * np.sqrt(L / C) / (2 * np.pi * f0), r, C)],
            where=lambda f0, μ, R, L, M, r, C: loose(L, M, f0, C),
            agrees_within=CLOSE,
            holds=[
                invariant(
                    "it is greatest where the winding reflects just the impedance before it, or as near to that as the coils go",
                    lambda f, f0, μ, R, L, M, r, C: (
                        f(f0, μ, R, L, M, r, C),
                        f(
                            f0,
                            μ,
                            R,
                            L,
                            np.minimum(
                                np.sqrt(np.abs(R + 2j * np.pi * f0 * L) * r) / (2 * np.pi * f0), 0.9 * closest(L, f0, C)
                            ),
                            r,
                            C,
                        ),
                    ),
                    at_most,
                ),
                invariant(
                    "less left of the loss, more gain",
                    lambda f, f0, μ, R, L, M, r, C: (f(f0, μ, R, L, M, r, C), f(f0, μ, R, L, M, r / 2, C)),
                    less,
                ),
                invariant(
                    "a winding turned over carries as much",
                    lambda f, f0, μ, R, L, M, r, C: (f(f0, μ, R, L, -M, r, C), f(f0, μ, R, L, M, r, C)),
                ),
                invariant(
                    "twice μ with twice the anode resistance gives more, as long as that is in the way",
                    lambda f, f0, μ, R, L, M, r, C: (f(f0, μ, R, L, M, r, C), f(f0, 2 * μ, 2 * R, L, M, r, C)),
                    less,
                ),
            ],
            published=[
                value(
                    "a screen-grid valve of type 32: its 650 µS for each volt, and no more than that",
                    given=(1e6, 780.0, 1.2e6, 40e-6, 20e-6, 6.0, 126.65e-12),
                    wanted=650e-6 * 20e-6 / (126.65e-12 * 6.0),
                    within=WITHIN,
                    source=SCREEN_GRID,
                    known="memory",
                ),
                value(
                    "a triode of type 30, its winding loose: 900 µS for each volt",
                    given=(1e6, 9.3, 10.3e3, 5e-6, 1e-6, 6.0, 126.65e-12),
                    wanted=900e-6 * 1e-6 / (126.65e-12 * 6.0),
                    within=WITHIN,
                    source=TRIODE,
                    known="found",
                ),
            ],
            refuses=[
                refusal(
                    "a tuned circuit of which reaction has left no loss",
                    (1e6, 9.3, 10e3, 60e-6, 40e-6, 0.0, 126e-12),
                ),
                refusal(
                    "a coupling closer than any coils can have",
                    (1.6e6, 9.3, 10e3, 20e-6, 21e-6, 6.0, 500e-12),
                    (1.6e6, 9.3, 10e3, 20e-6, 19.95e-6, 6.0, 500e-12),
                ),
                refusal(
                    "the same with the winding turned over",
                    (1.6e6, 9.3, 10e3, 20e-6, -21e-6, 6.0, 500e-12),
                    (1.6e6, 9.3, 10e3, 20e-6, -19.95e-6, 6.0, 500e-12),
                ),
            ],
            slips=[
                slip(
                    "left out what the tuned circuit reflects into the winding",
                    lambda f0, μ, R, L, M, r, C: np.abs(μ * M / (C * r * (R + 2j * np.pi * f0 * L))),
                ),
                slip(
                    "forgotten to square ω M in what is reflected",
                    lambda f0, μ, R, L, M, r, C: np.abs(μ * M / (C * r * (R + 2j * np.pi * f0 * L + 2 * np.pi * f0 * M / r))),
                ),
                slip(
                    "added the winding's reactance as a resistance",
                    lambda f0, μ, R, L, M, r, C: μ * M / (C * r * (R + 2 * np.pi * f0 * L + tuned(f0, M, r))),
                ),
                slip(
                    "returned the voltage induced, before resonance multiplies it",
                    lambda f0, μ, R, L, M, r, C: carried_gain(f0, μ, R, L, M, r, C) * 2 * np.pi * f0 * C * r,
                ),
                slip("left out 2π", lambda f0, μ, R, L, M, r, C: carried_gain(f0 / (2 * np.pi), μ, R, L, M, r, C)),
            ],
        ),
        Question(
            asks=anode_swing,
            given={
                "swing": volts("100 mV", "20 V"),
                "frequency": FREQUENCY,
                "tuning_capacitance": TUNING,
                "mutual_inductance": MUTUAL,
                "winding_inductance": WINDING,
                "anode_resistance": ANODE_RESISTANCE,
            },
            edges=[lambda V, f0, C, M, L, R: (V, f0, C, 0.995 * np.sqrt(L / C) / (2 * np.pi * f0), L, R)],
            where=lambda V, f0, C, M, L, R: loose(L, M, f0, C),
            gives="V",
            agrees_within=CLOSE,
            holds=[
                invariant(
                    "a winding turned over turns the anode's swing over",
                    lambda f, V, f0, C, M, L, R: (f(V, f0, C, -M, L, R), -f(V, f0, C, M, L, R)),
                ),
                invariant(
                    "with a valve that passes nothing, all that is induced stands on the anode: M over the tuned coil, "
                    "turned over",
                    lambda f, V, f0, C, M, L, R: (f(V, f0, C, M, L, 1e9) / V, -M * (2 * np.pi * f0) ** 2 * C + 0j),
                    nearly,
                ),
                invariant(
                    "a valve can only take of it",
                    lambda f, V, f0, C, M, L, R: (np.abs(f(V, f0, C, M, L, R)), (2 * np.pi * f0) ** 2 * M * C * V),
                    at_most,
                ),
                invariant(
                    "twice the frequency, four times the swing, as long as the winding is little beside the valve",
                    lambda f, V, f0, C, M, L, R: (f(V, 2 * f0, C, M / 100, 1e-7, R), 4 * f(V, f0, C, M / 100, 1e-7, R)),
                    nearly,
                ),
            ],
            no_published="Ohm's law; tests solve the coupled circuits.",
            refuses=[
                refusal(
                    "a coupling closer than any coils can have",
                    (1.0, 1.6e6, 500e-12, 21e-6, 20e-6, 10e3),
                    (1.0, 1.6e6, 500e-12, 19.95e-6, 20e-6, 10e3),
                    (1.0, 1.6e6, 500e-12, -19.95e-6, 20e-6, 10e3),
                )
            ],
            slips=[
                slip("lost the sign: j times j is −1", lambda *inputs: -anode_swing(*inputs)),
                slip(
                    "left the winding's reactance out",
                    lambda V, f0, C, M, L, R: -((2 * np.pi * f0) ** 2) * M * C * V + 0j * L * R,
                ),
                slip(
                    "taken the winding's share of the induced voltage: the anode resistance's is wanted",
                    lambda V, f0, C, M, L, R: anode_swing(V, f0, C, M, L, R) * 2j * np.pi * f0 * L / R,
                ),
                slip("returned its size alone: the phase counts too", lambda *inputs: np.abs(anode_swing(*inputs)) + 0j),
                slip(
                    "left out the tuned coil's current: ω M volts for each ampere of it",
                    lambda V, f0, C, M, L, R: 1j * 2 * np.pi * f0 * M * V * R / (R + 2j * np.pi * f0 * L) + 0 * C,
                ),
            ],
        ),
        Question(
            asks=grid_swing,
            given={
                "frequency": FREQUENCY,
                "anode_swing": ANODE_SWING,
                "anode_grid": farads("5 fF", "10 pF"),
                "tuned_swing": volts("500 mV", "2 V"),
                "stray": farads("1 fF", "1 pF"),
                "grid_impedance": AERIAL,
            },
            gives="V",
            agrees_within=CLOSE,
            holds=[
                invariant("nothing across, nothing comes", lambda f, f0, A, k, V, s, Z: (f(f0, A, 0.0, V, 0.0, Z), 0j)),
                invariant(
                    "swings that the two capacitances bring in opposite ways cancel (that is neutralising)",
                    lambda f, f0, A, k, V, s, Z: (f(f0, -A, k, A, k, Z), 0j),
                ),
                invariant(
                    "with the grid left free it swings as the capacitances share it",
                    lambda f, f0, A, k, V, s, Z: (f(f0, A, k, V, s, 1e15), (A * k + V * s) / (k + s)),
                    nearly,
                ),
                invariant(
                    "twice both swings, twice the grid's",
                    lambda f, f0, A, k, V, s, Z: (f(f0, 2 * A, k, 2 * V, s, Z), 2 * f(f0, A, k, V, s, Z)),
                ),
            ],
            no_published="Kirchhoff's law; tests solve the network by itself.",
            slips=[
                slip("left out 2π", lambda f0, A, k, V, s, Z: grid_swing(f0 / (2 * np.pi), A, k, V, s, Z)),
                slip("let the grid have all of the anode's swing", lambda f0, A, k, V, s, Z: A + 0 * f0 * k * V * s * Z),
                slip("left out the stray capacitance", lambda f0, A, k, V, s, Z: grid_swing(f0, A, k, V, 0.0, Z)),
                slip(
                    "taken the reactances the wrong way up",
                    lambda f0, A, k, V, s, Z: (
                        (A / k + V / s) / (2j * np.pi * f0) / (1 / Z + (1 / k + 1 / s) / (2j * np.pi * f0))
                    ),
                ),
                slip(
                    "subtracted the two currents: both run into the grid",
                    lambda f0, A, k, V, s, Z: grid_swing(f0, A, k, -V, s, Z),
                ),
            ],
        ),
        Question(
            asks=isolation,
            given={
                "frequency": FREQUENCY,
                "tuning_capacitance": TUNING,
                "aerial_winding": AERIAL_WINDINGS,
                "aerial_impedance": AERIAL,
                "grid_resistance": ohms("1 kΩ", "100 kΩ"),
                "anode_winding": WINDINGS,
                "valve": VALVES,
                "stray": farads("1 fF", "1 pF"),
            },
            where=lambda f0, C, D, Z, G, W, v, s: loose(*D, f0, C) and loose(*W, f0, C),
            gives="dB",
            agrees_within=relative(1e-9, because="a few operations, double precision", floor=1e-8),
            holds=[
                invariant(
                    "a tenth of the aerial's coupling, 20 dB less to be lost",
                    lambda f, f0, C, D, *rest: (f(f0, C, (D[0], D[1] / 10), *rest), f(f0, C, D, *rest) - 20),
                ),
                invariant(
                    "a valve without capacitance and a tenth of the strays lose 20 dB more",
                    lambda f, f0, C, D, Z, G, W, v, s: (
                        f(f0, C, D, Z, G, W, (v[0], 0.0), 1e-16),
                        f(f0, C, D, Z, G, W, (v[0], 0.0), 1e-15) + 20,
                    ),
                    nearly,
                ),
                invariant(
                    "with strays alone the valve does not matter",
                    lambda f, f0, C, D, Z, G, W, v, s: (
                        f(f0, C, D, Z, G, W, (v[0], 0.0), s),
                        f(f0, C, D, Z, G, W, (9e3, 0.0), s),
                    ),
                ),
            ],
            no_published="Two currents compared; tests solve both networks.",
            refuses=[
                refusal(
                    "an anode winding coupled closer than coils can be",
                    (1.6e6, 500e-12, (25e-6, 10e-6), 30 - 950j, 1e4, (20e-6, 21e-6), (1e4, 6e-12), 1e-13),
                ),
                refusal(
                    "an aerial's winding coupled closer than coils can be",
                    (1.6e6, 500e-12, (20e-6, 21e-6), 30 - 950j, 1e4, (60e-6, 10e-6), (1e4, 6e-12), 1e-13),
                ),
            ],
            slips=[
                slip(
                    "left the winding out of the aerial that is joined to the set",
                    lambda f0, C, D, Z, *rest: isolation(f0, C, D, Z, *rest) + longer(Z, f0, D[0]),
                ),
                slip(
                    "put the winding into the aerial with the stage too",
                    lambda f0, C, D, Z, *rest: (
                        isolation(f0, C, D, Z + 2j * np.pi * f0 * D[0], *rest) + longer(Z + 2j * np.pi * f0 * D[0], f0, D[0])
                    ),
                ),
                slip("used 10 log: these are currents", lambda *inputs: isolation(*inputs) / 2),
                slip("turned the ratio over", lambda *inputs: -isolation(*inputs)),
                slip("compared a crest with an r.m.s. value", lambda *inputs: isolation(*inputs) - 20 * np.log10(np.sqrt(2))),
                slip(
                    "left the aerial out of what is between grid and earth",
                    lambda f0, C, D, Z, G, W, v, s: (
                        20
                        * np.log10(
                            10 ** (isolation(f0, C, D, Z, G, W, v, s) / 20)
                            * np.abs(without_aerial(G, f0, v[1] + s) / (1 / Z + without_aerial(G, f0, v[1] + s)))
                        )
                    ),
                ),
                slip("left out the stray capacitance", lambda f0, C, D, Z, G, W, v, s: isolation(f0, C, D, Z, G, W, v, 0.0)),
            ],
        ),
        Question(
            asks=stable_gain,
            given={
                "transconductance": siemens("300 µS", "3 mS"),
                "anode_grid": farads("5 fF", "10 pF"),
                "frequency": FREQUENCY,
            },
            agrees_within=CLOSE,
            holds=[
                invariant(
                    "a hundredth of the capacitance, ten times the gain",
                    lambda f, S, k, f0: (f(S, k / 100, f0), 10 * f(S, k, f0)),
                ),
                invariant("four times the frequency, half the gain", lambda f, S, k, f0: (f(S, k, 4 * f0), f(S, k, f0) / 2)),
                invariant(
                    "gm ω C times the square of the resistance that gives this gain is 2",
                    lambda f, S, k, f0: (S * 2 * np.pi * f0 * k * (f(S, k, f0) / S) ** 2, 2.0),
                ),
            ],
            no_published="Beatty's condition, from memory; tests find the poles of the two circuits.",
            slips=[
                slip("left out 2π", lambda S, k, f0: np.sqrt(2 * S / (f0 * k))),
                slip("left out the square root", lambda S, k, f0: stable_gain(S, k, f0) ** 2),
                slip(
                    "left out the 2: the circuits are detuned where it is worst",
                    lambda S, k, f0: stable_gain(S, k, f0) / np.sqrt(2),
                ),
                slip("divided the wrong way round", lambda S, k, f0: 1 / stable_gain(S, k, f0)),
            ],
        ),
    ],
    hints=[
        "Forwards: μ volts drive a current through the anode resistance and the winding, and that current induces a voltage in "
        "the tuned coil. Backwards: the tuned coil induces a voltage in the winding, the anode swings, and a capacitance "
        "carries a little of it to the grid.",
        "The current is μ/(R + jωL + (ωM)²/r), and ωM times it is multiplied by 1/(ωCr). Backwards, jωM × jωC × swing is "
        "induced, and the anode resistance has R/(R + jωL) of it. At the grid: (currents in through the two capacitances) "
        "over (sum of all admittances). The aerial current is the grid's swing over the aerial's impedance; over √2 for r.m.s. Where there is no "
        "stage the aerial has a winding in it, jωL more.",
        "With w = 2π × frequency. ValueError where tuned_resistance is 0 and, for each winding on the tuned coil, where "
        "the square of its mutual inductance is above its inductance/(w² × tuning_capacitance) (np.any), which no coils "
        "can have.   np.abs(amplification_factor × mutual_inductance/(tuning_capacitance × tuned_resistance × "
        "(anode_resistance + load))) with load = 1j × w × winding_inductance + reflected_impedance(…);   −w² × "
        "mutual_inductance × tuning_capacitance × swing × anode_resistance/(anode_resistance + 1j × w × "
        "winding_inductance);   1j × w × (anode_grid × anode_swing + stray × tuned_swing)/(1/grid_impedance + 1j × w × "
        "(anode_grid + stray));   20 np.log10(direct/np.abs(grid/aerial_impedance/√2)), direct with aerial_impedance + 1j"
        " × w × its winding, the grid's impedance 1/(1/aerial_impedance + 1/grid_resistance);   np.sqrt(2 × "
        "transconductance/(w × anode_grid)).",
    ],
)

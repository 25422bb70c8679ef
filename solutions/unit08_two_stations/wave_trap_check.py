"""How `wave_trap` is judged.

In the laws and slips: f0 and w a frequency and 2π times it, ft the trapped one, L, C and R the trap's parts, T, Za and Zs the
impedances of trap, aerial and set.
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
    ohms,
    physical,
    picture,
    relative,
    slip,
    value,
)

from .wave_trap import (
    left_across_the_set,
    left_in_the_lead,
    parallel_trap,
    series_trap,
    trap_without_reactance,
    trapped_levels,
)

CLOSE = relative(1e-9, because="a few operations, double precision", floor=1e-12)
LEVEL = absolute(1e-7, because="a few operations, in decibels, near resonance")
TEXTBOOK = "parallel tuned circuit of a textbook, 10 Ω, 150 µH, 100 pF; textbook_examples_tuned.toml, example 11.3"
AT_RESONANCE = 1299494.66872 * np.sqrt(1 - 1 / 122.474487139**2)  # Hz, where the lossy circuit has no reactance
FREQUENCY, INDUCTANCE = hertz("600 kHz", "1500 kHz"), henries("20 µH", "300 µH")
RESISTANCE, CAPACITANCE = ohms("500 mΩ", "30 Ω"), farads("50 pF", "1 nF")
PARTS = {"frequency": FREQUENCY, "inductance": INDUCTANCE, "capacitance": CAPACITANCE, "resistance": RESISTANCE}


def impedances(resistances, reactances, text):
    return drawn([complex(r, x) for x in reactances for r in resistances], text, unit="Ω", stacks=True)


AERIAL = impedances((30, 10, 20, 50, 80), range(-1000, 1, 100), "10 to 80 Ω of resistance, −1 kΩ to 0 of reactance")
SET = impedances((1000, 100, 300, 500, 3000), range(0, 801, 100), "100 Ω to 3 kΩ of resistance, 0 to 800 Ω of reactance")
TRAP = impedances(
    (10, 30, 100, 1000, 20000),
    (0, -2000, -500, -100, 100, 500, 2000),
    "10 Ω to 20 kΩ of resistance, −2 kΩ to 2 kΩ of reactance",
)


def nearly(left, right, tolerance):
    return equal(left, right, relative(1e-3, because="a limit, nearly reached"))


def tuned(ft, L):
    return 1 / ((2 * np.pi * ft) ** 2 * L)


EXERCISE = Exercise(
    title="Can the near station be caught on the way in?",
    questions=[
        Question(
            asks=parallel_trap,
            picture=picture(at={"capacitance": 250e-12}, points=101),
            given=PARTS,
            gives="Ω",
            agrees_within=CLOSE,
            holds=[
                invariant("very slowly, it is the coil's resistance", lambda f, f0, L, C, R: (f(1e-6, L, C, R), R), nearly),
                invariant(
                    "very fast, it is the condenser alone",
                    lambda f, f0, L, C, R: (f(1e12, L, C, R), 1 / (2j * np.pi * 1e12 * C)),
                    nearly,
                ),
                invariant("it never gives power", lambda f, f0, L, C, R: (0.0, np.real(f(f0, L, C, R))), less),
            ],
            published=[
                value(
                    "at its resonance it is L/(CR)",
                    given=(AT_RESONANCE, 150e-6, 100e-12, 10.0),
                    wanted=complex(150e3, 0),
                    within=relative(1e-6, because="the frequency is printed to twelve figures"),
                    source=TEXTBOOK,
                    known="recomputed",
                ),
            ],
            slips=[
                slip("put the two one after the other: that is the series trap", series_trap),
                slip(
                    "put the resistance across the condenser: it is in series with the coil",
                    lambda f0, L, C, R: 1 / (2j * np.pi * f0 * C + 1 / R + 1 / (2j * np.pi * f0 * L)),
                ),
                slip("left out 2π", lambda f0, L, C, R: parallel_trap(f0 / (2 * np.pi), L, C, R)),
                slip("returned the admittance: turn it over", lambda *inputs: 1 / parallel_trap(*inputs)),
                slip(
                    "turned the sign of the condenser's current",
                    lambda f0, L, C, R: 1 / (1 / (R + 2j * np.pi * f0 * L) - 2j * np.pi * f0 * C),
                ),
                slip("returned its size: keep it complex", lambda *inputs: np.abs(parallel_trap(*inputs)) + 0j),
            ],
        ),
        Question(
            asks=series_trap,
            picture=picture(at={"capacitance": 250e-12}, points=101),
            given=PARTS,
            gives="Ω",
            agrees_within=CLOSE,
            holds=[
                invariant(
                    "at resonance only the resistance is left",
                    lambda f, f0, L, C, R: (f(f0, L, tuned(f0, L), R), R),
                    lambda left, right, tolerance: equal(left, right, absolute(1e-6, because="large parts cancel")),
                ),
                invariant(
                    "as far up in proportion as down, the reactance is of one size and the other sign",
                    lambda f, f0, L, C, R: (f(1.5 * f0, L, tuned(f0, L), R), np.conj(f(f0 / 1.5, L, tuned(f0, L), R))),
                ),
            ],
            published=[
                value(
                    "at resonance the same circuit in series",
                    given=(1299494.66872, 150e-6, 100e-12, 10.0),
                    wanted=complex(10, 0),
                    within=absolute(1e-6, because="the frequency is printed to twelve figures"),
                    source=TEXTBOOK,
                    known="recomputed",
                ),
            ],
            slips=[
                slip("put the two side by side: that is the parallel trap", parallel_trap),
                slip(
                    "added the condenser's reactance: it counts against the coil's",
                    lambda f0, L, C, R: R + 2j * np.pi * f0 * L + 1j / (2 * np.pi * f0 * C),
                ),
                slip("left out 2π", lambda f0, L, C, R: series_trap(f0 / (2 * np.pi), L, C, R)),
                slip("returned its size: keep it complex", lambda *inputs: np.abs(series_trap(*inputs)) + 0j),
                slip("left out the resistance", lambda f0, L, C, R: 1j * series_trap(f0, L, C, R).imag),
            ],
        ),
        Question(
            asks=left_in_the_lead,
            given={"trap_impedance": TRAP, "aerial_impedance": AERIAL, "set_impedance": SET},
            agrees_within=CLOSE,
            holds=[
                invariant("no trap, no loss", lambda f, T, Za, Zs: (f(0j, Za, Zs), 1.0)),
                invariant(
                    "a trap of infinite impedance lets nothing through", lambda f, T, Za, Zs: (f(1e18 + 0j, Za, Zs), 0.0)
                ),
                invariant("only aerial and set together count", lambda f, T, Za, Zs: (f(T, Za + 10, Zs), f(T, Za, Zs + 10))),
            ],
            no_published="Ohm's law round one mesh.",
            slips=[
                slip("forgotten the aerial's impedance", lambda T, Za, Zs: np.abs(Zs / (Zs + T)) + 0 * np.abs(Za)),
                slip(
                    "counted the set alone above the line: before there was a trap, the aerial was in the way too",
                    lambda T, Za, Zs: np.abs(Zs / (Za + Zs + T)),
                ),
                slip("put the trap across the set", left_across_the_set),
                slip("turned the ratio over", lambda T, Za, Zs: 1 / left_in_the_lead(T, Za, Zs)),
                slip(
                    "added sizes: impedances add as complex numbers",
                    lambda T, Za, Zs: np.abs(Za + Zs) / (np.abs(Za + Zs) + np.abs(T)),
                ),
            ],
        ),
        Question(
            asks=left_across_the_set,
            given={"trap_impedance": TRAP, "aerial_impedance": AERIAL, "set_impedance": SET},
            agrees_within=CLOSE,
            holds=[
                invariant("a trap of infinite impedance is no trap", lambda f, T, Za, Zs: (f(1e18 + 0j, Za, Zs), 1.0)),
                invariant("a dead short leaves nothing", lambda f, T, Za, Zs: (f(0j, Za, Zs), 0.0)),
                invariant("aerial and set may change places", lambda f, T, Za, Zs: (f(T, Za, Zs), f(T, Zs, Za))),
                invariant(
                    "a trap of more resistance leaves more",
                    lambda f, T, Za, Zs: (f(10 + 0j, 30 + 0j, Zs), f(20 + 0j, 30 + 0j, Zs)),
                    less,
                ),
            ],
            no_published="Ohm's law, twice.",
            slips=[
                slip("put the trap in the aerial's lead", left_in_the_lead),
                slip(
                    "forgotten the set: the trap works against aerial and set side by side",
                    lambda T, Za, Zs: np.abs(T / (T + Za)) + 0 * np.abs(Zs),
                ),
                slip(
                    "put aerial and set one after the other: the aerial feeds the trap past the set",
                    lambda T, Za, Zs: np.abs(T / (T + Za + Zs)),
                ),
                slip(
                    "returned the part of the whole e.m.f.: compare with what the set had before",
                    lambda T, Za, Zs: left_across_the_set(T, Za, Zs) * np.abs(Zs / (Za + Zs)),
                ),
                slip("turned the ratio over", lambda T, Za, Zs: 1 / left_across_the_set(T, Za, Zs)),
            ],
        ),
        Question(
            asks=trapped_levels,
            given={
                "frequency": FREQUENCY,
                "trapped_frequency": FREQUENCY,
                "inductance": INDUCTANCE,
                "resistance": RESISTANCE,
                "aerial_impedance": AERIAL,
                "set_impedance": SET,
            },
            gives=("dB", "dB"),
            agrees_within=LEVEL,
            holds=[
                invariant(
                    "a coil of half the resistance catches more of the trapped station in the lead",
                    lambda f, f0, ft, L, R, Za, Zs: (
                        f(ft, ft, L, R / 2, 30 + 0j, 1000 + 0j)[0],
                        f(ft, ft, L, R, 30 + 0j, 1000 + 0j)[0],
                    ),
                    less,
                ),
                invariant(
                    "and across the set",
                    lambda f, f0, ft, L, R, Za, Zs: (
                        f(ft, ft, L, R / 2, 30 + 0j, 1000 + 0j)[1],
                        f(ft, ft, L, R, 30 + 0j, 1000 + 0j)[1],
                    ),
                    less,
                ),
                invariant(
                    "among mere resistances a trap never adds anything",
                    lambda f, f0, ft, L, R, Za, Zs: (np.array(f(f0, ft, L, R, 30 + 0j, 1000 + 0j)), np.zeros(2)),
                    at_most,
                ),
                invariant(
                    "what is left across the set of the trapped station is decided by resistance alone",
                    lambda f, f0, ft, L, R, Za, Zs: (f(ft, ft, L, R, Za, Zs)[1], f(2 * ft, 2 * ft, 3 * L, R, Za, Zs)[1]),
                    lambda left, right, tolerance: equal(left, right, absolute(1e-6, because="large parts cancel")),
                ),
            ],
            no_published="It joins the functions above; tests solve the whole mesh of aerial, trap and set.",
            slips=[
                slip(
                    "tuned the trap to the station listened for",
                    lambda f0, ft, L, R, Za, Zs: trapped_levels(ft, f0, L, R, Za, Zs),
                ),
                slip("changed the two traps over", lambda *inputs: trapped_levels(*inputs)[::-1]),
                slip("taken 10 log: these are voltages", lambda *inputs: tuple(level / 2 for level in trapped_levels(*inputs))),
                slip(
                    "left out 2π in the condenser",
                    lambda f0, ft, L, R, Za, Zs: trapped_levels(f0, ft / (2 * np.pi), L, R, Za, Zs),
                ),
                slip(
                    "returned the losses, counted upwards: below 0 dB is a loss",
                    lambda *inputs: tuple(-level for level in trapped_levels(*inputs)),
                ),
            ],
        ),
        Question(
            asks=trap_without_reactance,
            given={
                "angular_frequency": physical("rad/s", "3 Mrad/s", "10 Mrad/s"),
                "inductance": INDUCTANCE,
                "resistance": RESISTANCE,
            },
            gives=("F", "Ω"),
            symbolic=True,
            agrees_within=relative(1e-12, because="a formula has no rounding"),
            no_published="Formulas; the textbook's circuit above stands at this very frequency.",
            slips=[
                slip(
                    "taken the condenser of equal reactances: with losses the two currents differ a little in phase",
                    lambda w, L, R: (1 / (w**2 * L), R + (w * L) ** 2 / R),
                ),
                slip(
                    "left the coil's own resistance out of the trap's",
                    lambda w, L, R: (L / (R**2 + (w * L) ** 2), (w * L) ** 2 / R),
                ),
                slip(
                    "returned the conductance: turn it over",
                    lambda w, L, R: (L / (R**2 + (w * L) ** 2), R / (R**2 + (w * L) ** 2)),
                ),
                slip("turned the condenser's sign", lambda w, L, R: (-L / (R**2 + (w * L) ** 2), R + (w * L) ** 2 / R)),
                slip(
                    "returned the susceptance of the condenser: divide by w",
                    lambda w, L, R: (w * L / (R**2 + (w * L) ** 2), R + (w * L) ** 2 / R),
                ),
            ],
        ),
    ],
    hints=[
        "Side by side, currents add: work with one over the impedance. One after the other, voltages add. For each trap "
        "write down what the set gets with it and without it, and divide.",
        "A trap in the lead makes the way round longer by its impedance T: Za + Zs against Za + Zs + T. A trap across the "
        "set works against aerial and set side by side, Za Zs/(Za + Zs). For the formula multiply 1/(R + jωL) above and "
        "below by R − jωL.",
        "With w = 2π × frequency and coil = resistance + 1j × w × inductance: 1/(1j × w × capacitance + 1/coil);   coil +"
        " 1/(1j × w × capacitance);   np.abs((aerial_impedance + set_impedance)/(aerial_impedance + set_impedance + "
        "trap_impedance));   np.abs(trap_impedance/(trap_impedance + both)) with both = aerial_impedance × "
        "set_impedance/(aerial_impedance + set_impedance);   for the levels capacitance = 1/((2π × trapped_frequency)² × "
        "inductance), then 20 np.log10 of each;   with square = resistance² + angular_frequency² × inductance²: "
        "inductance/square and square/resistance.",
    ],
)

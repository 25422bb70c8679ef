"""How `crystal_set` is judged.

In the laws and slips of the circuits: E an e.m.f., f a frequency, M the mutual inductance, Za the aerial's impedance,
L and R the tuned coil, h, b and a the aerial's height, top and wire.
Of the whole set: P the station's power, F its field, f its frequency, M the coupling, m the depth.
"""

import numpy as np

from checker import (
    Exercise,
    Question,
    absolute,
    at_most,
    drawn,
    henries,
    hertz,
    invariant,
    less,
    metres,
    number,
    ohms,
    physical,
    refusal,
    relative,
    siemens_per_metre,
    slip,
    value,
    volts,
    watts,
)
from solutions.unit01_signal.aerial_voltage import aerial_capacitance, effective_height
from solutions.unit01_signal.radiation_resistance import available_power, radiation_resistance
from solutions.unit03_tuned_circuit.reflected_impedance import reflected_impedance

from .crystal_set import (
    HEIGHT,
    SENSITIVITY,
    TOP,
    aerial_impedance,
    crystal_set,
    losses,
    power_budget,
    tuned_source,
)
from .phone_loudness import hearing_threshold

CLOSE = relative(1e-9, because="a few operations, double precision")
SAMPLED = relative(1e-5, because="averaged over moments of the tone's cycle, each solved step by step", floor=1e-18)
TERMAN = "F. E. Terman, Radio Engineers' Handbook, 1943, section 3 (formula from memory)"
FREQUENCY = hertz("500 kHz", "1600 kHz")
IMPEDANCE = drawn(
    [complex(resistance, -50.0 * n) for n in range(25) for resistance in (20, 10, 30, 50, 100)],
    "resistance 10 Ω to 100 Ω, reactance −1.2 kΩ to 0 Ω",
    unit="Ω",
)
POWERS = drawn(
    [
        np.array((8 * [1e-6, 1.0, 1e-3, 1e-9, 2e-6, 5e-4, 30.0, 7e-8])[first : first + step * count : step])
        for count in range(3, 8)
        for step in (1, 3, 5)
        for first in range(8)
    ],
    "three to seven powers, 1 nW to 30 W",
    unit="W",
)
CRITICAL = (1.0, 1e6, 2e-6, 12.5663706144, 200e-6, 12.5663706144)  # two circuits of 200 µH, Q 100, at critical coupling
TUNED_AERIAL = (600e3, 10.0, 20.0, 1e-3, 0.0, 1 / ((2 * np.pi * 600e3) ** 2 * aerial_capacitance(10.0, 20.0, 1e-3)))
DEPTH, COUPLING = number(0.1, 0.95), henries("3 µH", "30 µH")


def no_louder_than_the_square_law(left, right, tolerance):
    return at_most(left, right, absolute(1e-3, because="levels to a thousandth of a decibel"))


def with_budget(change):
    """A wrong budget: `change` alters the seven right powers, given the inputs too."""
    return lambda *inputs: tuple(change(np.array(power_budget(*inputs)), *inputs))


def power_of(crest, resistance):
    return crest**2 / (8 * resistance)


def retuned(f, M, Za, L):
    """The coil's reactance with what the aerial reflects, over its own."""
    return 1 + reflected_impedance(f, M, Za).imag / (2 * np.pi * f * L)


def only(place, factor):
    factors = np.ones(7)
    factors[place] = factor
    return factors


def in_the_wave(field, frequency):
    """The carrier's power that an aerial without losses could take from the wave, watt."""
    return power_budget(1e12, field, frequency, 10e-6, 0.0)[1]


EXERCISE = Exercise(
    title="From the transmitter to the ear",
    seconds=20.0,
    cases=5,
    questions=[
        Question(
            asks=aerial_impedance,
            given={
                "frequency": FREQUENCY,
                "height": metres("4 m", "15 m"),
                "top_length": metres("15 m", "40 m"),
                "wire_radius": metres("0.3 mm", "3 mm"),
                "loss_resistance": ohms("5 Ω", "100 Ω"),
                "coil_inductance": henries("10 µH", "100 µH"),
            },
            gives="Ω",
            agrees_within=CLOSE,
            holds=[
                invariant(
                    "the aerial loses more than wire and earth do: it radiates",
                    lambda Z, f, h, b, a, R, L: (R, Z(f, h, b, a, R, L).real),
                    less,
                ),
                invariant(
                    "a coil in the aerial adds its reactance",
                    lambda Z, f, h, b, a, R, L: (Z(f, h, b, a, R, L).imag - Z(f, h, b, a, R, 0.0).imag, 2 * np.pi * f * L),
                ),
            ],
            published=[
                value(
                    "10 m high with 20 m of top at 600 kHz, no losses, tuned out by its coil",
                    given=TUNED_AERIAL,
                    wanted=0.445136 + 0j,
                    within=relative(0.02, because="the current is taken to fall evenly, at a low frequency"),
                    source="radiation resistance by the exact integral; aerial_effective_height.csv",
                    known="recomputed",
                ),
                value(
                    "the same without its coil: 174 pF",
                    given=(*TUNED_AERIAL[:5], 0.0),
                    wanted=0.445136 - 1j / (2 * np.pi * 600e3 * 173.82e-12),
                    within=relative(0.04, because="charge crowds to the ends of a wire, and this leaves them out"),
                    source="moment method; aerial_capacitance.csv, inverted L, 20 m and 10 m",
                    known="recomputed",
                ),
            ],
            slips=[
                slip(
                    "forgotten that an aerial radiates: add the radiation resistance",
                    lambda f, h, b, a, R, L: (
                        aerial_impedance(f, h, b, a, R, L) - radiation_resistance(effective_height(h, b), f)
                    ),
                ),
                slip("turned the sign of the reactance", lambda *inputs: np.conj(aerial_impedance(*inputs))),
                slip("left out the aerial coil", lambda f, h, b, a, R, L: aerial_impedance(f, h, b, a, R, 0.0)),
                slip(
                    "put the height itself for the effective height",
                    lambda f, h, b, a, R, L: (
                        aerial_impedance(f, h, b, a, R, L)
                        + radiation_resistance(h, f)
                        - radiation_resistance(effective_height(h, b), f)
                    ),
                ),
                slip(
                    "given the condenser's reactance without 2π",
                    lambda f, h, b, a, R, L: (
                        aerial_impedance(f, h, b, a, R, L) + 1j * (1 / (2 * np.pi) - 1) / (f * aerial_capacitance(h, b, a))
                    ),
                ),
            ],
        ),
        Question(
            asks=tuned_source,
            given={
                "emf": volts("1 mV", "1 V"),
                "frequency": FREQUENCY,
                "mutual_inductance": henries("1 µH", "30 µH"),
                "aerial_impedance": IMPEDANCE,
                "inductance": henries("150 µH", "300 µH"),
                "resistance": ohms("3 Ω", "30 Ω"),
            },
            gives=("V", "Ω"),
            agrees_within=CLOSE,
            holds=[
                invariant(
                    "it gives no more power than the aerial can: E²/(4 Ra)",
                    lambda S, E, f, M, Za, L, R: (power_of(*S(E, f, M, Za, L, R)), available_power(E, Za.real)),
                    at_most,
                ),
                invariant(
                    "with the aerial uncoupled it is the coil's own (ωL)²/R",
                    lambda S, E, f, M, Za, L, R: (S(E, f, 0.0, Za, L, R)[1], (2 * np.pi * f * L) ** 2 / R),
                ),
                invariant(
                    "twice the e.m.f., twice the voltage, behind the same resistance",
                    lambda S, E, f, M, Za, L, R: (np.array(S(2 * E, f, M, Za, L, R)), np.array(S(E, f, M, Za, L, R)) * [2, 1]),
                ),
            ],
            published=[
                value(
                    "two circuits of Q 100 at critical coupling: Q 50 is left of 1257 Ω",
                    given=CRITICAL,
                    wanted=(np.sqrt(2) * 39.788735773e-3 * 1256.63706144, 50 * 1256.63706144),
                    within=relative(1e-9, because="printed to 11 figures"),
                    source=f"{TERMAN}; coupled_two_circuit_response.csv",
                    known="recomputed",
                ),
            ],
            refuses=[
                refusal("an aerial that takes away all of the coil's reactance", (1.0, 1e6, 150e-6, 5.0 + 500.0j, 200e-6, 6.0)),
            ],
            slips=[
                slip(
                    "left the voltage r.m.s.: the diode's law wants the crest",
                    lambda *inputs: (tuned_source(*inputs)[0] / np.sqrt(2), tuned_source(*inputs)[1]),
                ),
                slip(
                    "taken the coil's own resistance across the circuit: the aerial loads it too",
                    lambda E, f, M, Za, L, R: (tuned_source(E, f, M, Za, L, R)[0], (2 * np.pi * f * L) ** 2 / R),
                ),
                slip(
                    "left out the reflected reactance in the second value",
                    lambda E, f, M, Za, L, R: (
                        tuned_source(E, f, M, Za, L, R)[0],
                        tuned_source(E, f, M, Za, L, R)[1] / retuned(f, M, Za, L),
                    ),
                ),
                slip(
                    "returned the series resistance: what the diode finds is across the circuit",
                    lambda E, f, M, Za, L, R: (
                        tuned_source(E, f, M, Za, L, R)[0],
                        R + (2 * np.pi * f * M) ** 2 * Za.real / np.abs(Za) ** 2,
                    ),
                ),
            ],
        ),
        Question(
            asks=power_budget,
            given={
                "radiated_power": watts("100 W", "100 kW"),
                "field": physical("V/m", "100 µV/m", "100 mV/m"),
                "frequency": FREQUENCY,
                "mutual_inductance": COUPLING,
                "depth": DEPTH,
            },
            edges=[
                lambda radiated_power, field, frequency, mutual_inductance, depth: (
                    1.01 * in_the_wave(field, frequency),
                    field,
                    frequency,
                    99.9e-6,
                    depth,
                ),
            ],
            gives=("W",) * 7,
            agrees_within=SAMPLED,
            arrays=False,
            holds=[
                invariant(
                    "from the transmitter to the tone nothing gives more than it gets",
                    lambda f, *inputs: (np.array(f(*inputs)[1:]), np.array(f(*inputs)[:-1])),
                    at_most,
                ),
                invariant(
                    "twice the field, four times the power as far as the tuned circuit",
                    lambda f, P, F, freq, M, m: (
                        np.array(f(P, 2 * F, freq, M, m)[1:4]),
                        4 * np.array(f(P, F, freq, M, m)[1:4]),
                    ),
                ),
            ],
            no_published="A chain of parts, each held to its own figures.",
            refuses=[
                refusal(
                    "a field of 100 V/m from a transmitter of 1 W",
                    (1.0, 100.0, 1e6, 10e-6, 0.5),
                    (0.99 * in_the_wave(0.1, 1e6), 0.1, 1e6, 10e-6, 0.5),
                ),
                refusal(
                    "a coupling closer than any coils can have", (1e3, 1e-3, 1e6, 110e-6, 0.5), (1e3, 1e-3, 1e6, 100.1e-6, 0.5)
                ),
            ],
            slips=[
                slip(
                    "forgotten that the tone adds depth²/2 to the power of a carrier",
                    with_budget(lambda p, P, F, f, M, m: p / (1 + np.array([1, 1, 1, 1, 0, 0, 0]) * m**2 / 2)),
                ),
                slip(
                    "used the crest where r.m.s. is wanted in the tuned circuit's power",
                    with_budget(lambda p, *inputs: p * only(3, 2.0)),
                ),
                slip(
                    "put the height of the aerial for its effective height",
                    with_budget(lambda p, *inputs: p * only(2, (HEIGHT / effective_height(HEIGHT, TOP)) ** 2)),
                ),
                slip("returned them from the telephones backwards", with_budget(lambda p, *inputs: p[::-1])),
                slip(
                    "divided by the resistance instead of four times it in the aerial's power",
                    with_budget(lambda p, *inputs: p * only(2, 4.0)),
                ),
            ],
        ),
        Question(
            asks=losses,
            given={"powers": POWERS},
            gives="dB",
            agrees_within=absolute(1e-9, because="logarithms in double precision"),
            arrays=False,
            holds=[
                invariant("the steps add up to the whole way", lambda f, p: (np.sum(f(p)), 10 * np.log10(p[0] / p[-1]))),
                invariant(
                    "halving at each step loses 3 dB at each",
                    lambda f, p: (f(np.array([8.0, 4.0, 2.0, 1.0])), np.full(3, 10 * np.log10(2))),
                ),
            ],
            no_published="The definition of the decibel.",
            slips=[
                slip("used 20 log: that is for voltages", lambda p: 20 * np.log10(p[:-1] / p[1:])),
                slip("turned the ratio over: a loss is counted positive", lambda p: 10 * np.log10(p[1:] / p[:-1])),
                slip("compared each with the first", lambda p: 10 * np.log10(p[0] / p[1:])),
                slip("taken the natural logarithm", lambda p: 10 * np.log(p[:-1] / p[1:])),
            ],
        ),
        Question(
            asks=crystal_set,
            given={
                "radiated_power": watts("100 W", "100 kW"),
                "distance": metres("1 km", "100 km"),
                "frequency": FREQUENCY,
                "conductivity": siemens_per_metre("1 mS/m", "5 S/m"),
                "relative_permittivity": number(5, 80),
                "mutual_inductance": COUPLING,
                "depth": DEPTH,
                "tone": hertz("200 Hz", "3 kHz"),
            },
            gives="dB",
            agrees_within=absolute(1e-3, because="levels to a thousandth of a decibel"),
            arrays=False,
            holds=[
                invariant(
                    "a tenth of the power is at least 10 dB fainter",
                    lambda f, P, *rest: (f(P / 10, *rest) + 10, f(P, *rest)),
                    at_most,
                ),
                invariant(
                    "but never more than the square law's 20 dB",
                    lambda f, P, *rest: (f(P, *rest), f(P / 10, *rest) + 20),
                    no_louder_than_the_square_law,
                ),
            ],
            no_published="A chain of parts, each held to its own figures.",
            refuses=[
                refusal("a set ten metres from the transmitter", (1e3, 10.0, 1e6, 0.03, 40.0, 10e-6, 0.5, 1e3)),
                refusal(
                    "a coupling closer than any coils can have",
                    (1e3, 1e4, 1e6, 0.03, 40.0, 110e-6, 0.5, 1e3),
                    (1e3, 1e4, 1e6, 0.03, 40.0, 100.1e-6, 0.5, 1e3),
                ),
            ],
            slips=[
                slip("left out the threshold of hearing", lambda *inputs: crystal_set(*inputs) + hearing_threshold(inputs[-1])),
                slip(
                    "added the threshold of hearing: what is above it is the difference",
                    lambda *inputs: crystal_set(*inputs) + 2 * hearing_threshold(inputs[-1]),
                ),
                slip("left out the telephones' sensitivity", lambda *inputs: crystal_set(*inputs) - SENSITIVITY),
                slip(
                    "counted the power from a watt: the sensitivity is for a milliwatt",
                    lambda *inputs: crystal_set(*inputs) - 30,
                ),
            ],
        ),
    ],
    hints=[
        "Every function you need is written: this exercise joins them. Draw the chain first, wave, aerial, tuned circuit, "
        "diode, load, ear, and write under each link which of your functions it is.",
        "The tuned circuit, seen from the diode, is tuned_voltage (times √2, for the crest) behind Q ω(L + L'), with the Q "
        "that is left with the aerial coupled. The power that it can give is that of its r.m.s. voltage. Refuse, with "
        "ValueError, what cannot be: a whole reactance of nothing or less, or a wave that gives more than was sent.",
        "ValueError if mutual_inductance² > AERIAL_COIL × COIL: no coils are coupled so closely. Budget: radiated_power, "
        "available_power with the radiation resistance alone, then with the aerial's whole resistance, then of the tuned "
        "source (r.m.s.), each of these three times (1 + depth²/2); then the three of the detector. Loudness: "
        "sound_pressure_level(the power of the tone, SENSITIVITY) − hearing_threshold(tone).",
    ],
)

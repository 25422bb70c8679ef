"""How `aerial_coupling` is judged."""

import numpy as np

from checker import (
    Exercise,
    Question,
    at_most,
    drawn,
    henries,
    hertz,
    invariant,
    less,
    number,
    ohms,
    refusal,
    relative,
    slip,
    value,
    volts,
)

from .aerial_coupling import best_mutual_inductance, critical_coupling, loaded_quality_factor, tuned_voltage
from .reflected_impedance import reflected_impedance

TERMAN = "F. E. Terman, Radio Engineers' Handbook, 1943, section 3 (formula from memory)"
CLOSE = relative(1e-9, because="a few operations, double precision")
PRINTED = relative(1e-9, because="printed to 12 figures")
FREQUENCY = hertz("500 kHz", "1600 kHz")
AERIAL = drawn(
    [complex(resistance, -50.0 * n) for n in range(25) for resistance in (20, 10, 30, 50, 100)],
    "resistance 10 Ω to 100 Ω, reactance −1.2 kΩ to 0 Ω",
    unit="Ω",
)
SET = {
    "frequency": FREQUENCY,
    "mutual_inductance": henries("1 µH", "30 µH"),
    "aerial_impedance": AERIAL,
    "inductance": henries("150 µH", "300 µH"),
    "resistance": ohms("3 Ω", "30 Ω"),
}
TWO_ALIKE = (1e6, 2e-6, 12.5663706144, 200e-6, 12.5663706144)  # 200 µH, Q 100, at critical coupling


def own_reactance(f, L):
    return 2 * np.pi * f * L


def induced(E, f, M, Za):
    return E * 2 * np.pi * f * M / np.abs(Za)


EXERCISE = Exercise(
    title="How closely should the aerial be coupled?",
    questions=[
        Question(
            asks=loaded_quality_factor,
            given=SET,
            agrees_within=CLOSE,
            holds=[
                invariant(
                    "closer coupling to a tuned aerial always costs Q",
                    lambda Q, f, M, Za, L, R: (Q(f, 2 * M, Za.real, L, R), Q(f, M, Za.real, L, R)),
                    less,
                ),
                invariant(
                    "with the aerial uncoupled it is the coil's own Q",
                    lambda Q, f, M, Za, L, R: (Q(f, 0.0, Za, L, R), 2 * np.pi * f * L / R),
                ),
            ],
            published=[
                value(
                    "two circuits of Q 100 at critical coupling: half is left",
                    given=TWO_ALIKE,
                    wanted=50.0,
                    within=PRINTED,
                    source=f"{TERMAN}; tuned_circuits.toml, Q 100, k = kc",
                    known="recomputed",
                ),
            ],
            refuses=[refusal("a coil without loss", (1e6, 5e-6, 30 - 200j, 200e-6, 0.0), (1e6, 5e-6, 30 - 200j, 200e-6, -0.1))],
            slips=[
                slip("forgotten the aerial: that is the coil's own Q", lambda f, M, Za, L, R: own_reactance(f, L) / R),
                slip(
                    "left the reflected reactance out: retuning takes it up, and it counts",
                    lambda f, M, Za, L, R: own_reactance(f, L) / (R + reflected_impedance(f, M, Za).real),
                ),
                slip(
                    "added the size of the reflected impedance to the resistance: only its real part loses",
                    lambda f, M, Za, L, R: own_reactance(f, L) / (R + np.abs(reflected_impedance(f, M, Za))),
                ),
                slip("turned the fraction over", lambda f, M, Za, L, R: 1 / loaded_quality_factor(f, M, Za, L, R)),
            ],
        ),
        Question(
            asks=tuned_voltage,
            given={"emf": volts("1 mV", "1 V"), **SET},
            gives="V",
            agrees_within=CLOSE,
            holds=[
                invariant(
                    "twice the e.m.f., twice the voltage",
                    lambda V, E, f, M, Za, L, R: (V(2 * E, f, M, Za, L, R), 2 * V(E, f, M, Za, L, R)),
                ),
                invariant(
                    "with the aerial uncoupled nothing arrives", lambda V, E, f, M, Za, L, R: (V(E, f, 0.0, Za, L, R), 0)
                ),
                invariant(
                    "turning the aerial coil over changes nothing",
                    lambda V, E, f, M, Za, L, R: (V(E, f, -M, Za, L, R), V(E, f, M, Za, L, R)),
                ),
                invariant(
                    "with a tuned aerial no coupling beats the critical one",
                    lambda V, E, f, M, Za, L, R: (
                        V(E, f, M, Za.real, L, R),
                        V(E, f, V.best_mutual_inductance(f, Za.real, R), Za.real, L, R),
                    ),
                    at_most,
                ),
            ],
            published=[
                value(
                    "1 V into two circuits of Q 100 at critical coupling: 39.8 mA in the coil's 1257 Ω",
                    given=(1.0, *TWO_ALIKE),
                    wanted=39.788735773e-3 * 1256.63706144,
                    within=PRINTED,
                    source=f"{TERMAN}; coupled_two_circuit_response.csv, kQ = 1 at resonance",
                    known="recomputed",
                ),
            ],
            slips=[
                slip(
                    "used the coil's own Q: the aerial loads it",
                    lambda E, f, M, Za, L, R: induced(E, f, M, Za) * own_reactance(f, L) / R,
                ),
                slip(
                    "returned the e.m.f. induced in the coil: resonance magnifies it Q times",
                    lambda E, f, M, Za, L, R: induced(E, f, M, Za),
                ),
                slip(
                    "divided by the aerial's resistance instead of the size of its impedance",
                    lambda E, f, M, Za, L, R: tuned_voltage(E, f, M, Za, L, R) * np.abs(Za) / Za.real,
                ),
                slip("forgotten the e.m.f.", lambda E, f, M, Za, L, R: tuned_voltage(1.0, f, M, Za, L, R)),
                slip(
                    "left out 2π in the induced e.m.f.",
                    lambda E, f, M, Za, L, R: tuned_voltage(E, f, M, Za, L, R) / (2 * np.pi),
                ),
            ],
        ),
        Question(
            asks=best_mutual_inductance,
            given={"frequency": FREQUENCY, "aerial_impedance": AERIAL, "resistance": ohms("3 Ω", "30 Ω")},
            gives="H",
            agrees_within=CLOSE,
            holds=[
                invariant(
                    "the aerial then reflects as much resistance as the circuit has",
                    lambda M, f, Za, R: (reflected_impedance(f, M(f, Za, R), Za).real, R),
                ),
                invariant(
                    "a circuit of a quarter the loss wants half the coupling",
                    lambda M, f, Za, R: (M(f, Za, R / 4), M(f, Za, R) / 2),
                ),
            ],
            published=[
                value(
                    "two circuits of 200 µH and Q 100 at 1 MHz",
                    given=(1e6, 12.5663706144, 12.5663706144),
                    wanted=2e-6,
                    within=PRINTED,
                    source=f"{TERMAN}: ωM = sqrt(Rp Rs); tuned_circuits.toml",
                    known="recomputed",
                ),
            ],
            slips=[
                slip(
                    "taken the aerial as tuned: its reactance keeps the current down and wants more coupling",
                    lambda f, Za, R: np.sqrt(Za.real * R) / (2 * np.pi * f),
                ),
                slip("left out ω: that is the reactance ωM", lambda f, Za, R: np.abs(Za) * np.sqrt(R / Za.real)),
                slip("left out 2π", lambda f, Za, R: np.abs(Za) * np.sqrt(R / Za.real) / f),
                slip("turned the resistances over", lambda f, Za, R: np.abs(Za) * np.sqrt(Za.real / R) / (2 * np.pi * f)),
            ],
        ),
        Question(
            asks=critical_coupling,
            given={"primary_quality_factor": number(5, 300), "secondary_quality_factor": number(5, 300)},
            agrees_within=relative(1e-9, because="one formula, double precision"),
            holds=[
                invariant("the two circuits may change places", lambda k, Q1, Q2: (k(Q1, Q2), k(Q2, Q1))),
                invariant(
                    "two circuits whose Qs make 1 between them want complete coupling", lambda k, Q1, Q2: (k(2.0, 0.5), 1.0)
                ),
                invariant("four times one Q halves it", lambda k, Q1, Q2: (k(4 * Q1, Q2), k(Q1, Q2) / 2)),
            ],
            published=[
                value(
                    "equal circuits: k = 1/Q",
                    given=(100.0, 100.0),
                    wanted=0.01,
                    within=relative(1e-9, because="the rule has no rounding"),
                    source="F. E. Terman, Radio Engineers' Handbook, 1943, section 3, as public texts quote it",
                    known="found",
                ),
            ],
            refuses=[refusal("circuits so poor that no coupling will do", (0.5, 1.0), (0.999, 1.0))],
            slips=[
                slip("left out the square root", lambda Q1, Q2: 1 / (Q1 * Q2)),
                slip("turned the fraction over: high Q needs little coupling", lambda Q1, Q2: np.sqrt(Q1 * Q2)),
                slip("taken the plain mean of the two Qs", lambda Q1, Q2: 2 / (Q1 + Q2)),
            ],
        ),
    ],
    hints=[
        "The aerial reflects an impedance into the tuned circuit. Its resistance adds to the loss; its reactance is "
        "tuned out by turning the condenser.",
        "Loaded Q: (ωL + reflected reactance) over (R + reflected resistance). The aerial current is E over the size "
        "of the aerial impedance, and induces ωM times itself in the coil. Most current flows where reflected and own "
        "resistance are equal.",
        "With r = reflected_impedance(frequency, mutual_inductance, aerial_impedance) and w = 2π × frequency: loaded = (w"
        " × inductance + r.imag) / (resistance + r.real), ValueError where the lower part is 0 or less (np.any); the "
        "voltage is loaded × emf × w × |mutual_inductance| / |aerial_impedance|. Equal resistances: (w × mutual)² × loss "
        "/ |aerial_impedance|² = resistance with loss = np.real(aerial_impedance), so mutual = |aerial_impedance| × "
        "sqrt(resistance / loss) / w. For two tuned circuits this comes to 1 / sqrt(primary_quality_factor × "
        "secondary_quality_factor), ValueError where np.any of that product is below 1.",
    ],
)

"""How `reflected_impedance` is judged."""

import numpy as np

from checker import (
    Exercise,
    Question,
    at_most,
    drawn,
    farads,
    henries,
    hertz,
    invariant,
    number,
    ohms,
    picture,
    refusal,
    relative,
    slip,
    value,
    volts,
)

from .reflected_impedance import mutual_from_coupling, reflected_impedance, secondary_current, series_impedance

TERMAN = "F. E. Terman, Radio Engineers' Handbook, 1943, section 3 (formula from memory)"
PRINTED = relative(1e-9, because="printed to 12 figures")
FREQUENCY = hertz("500 kHz", "1600 kHz")
MUTUAL = henries("1 µH", "100 µH")
IMPEDANCE = drawn(
    [
        complex(resistance, reactance)
        for reactance in (0, *range(50, 1001, 50), *range(-50, -1001, -50))
        for resistance in (10, 2, 5, 20, 50, 100)
    ],
    "resistance 2 Ω to 100 Ω, reactance −1 kΩ to 1 kΩ",
    unit="Ω",
)


def transfer(f, M):
    return 2j * np.pi * f * M


EXERCISE = Exercise(
    title="What does one circuit do to the other?",
    questions=[
        Question(
            asks=mutual_from_coupling,
            given={
                "coupling_coefficient": number(-1, 1),
                "primary_inductance": henries("10 µH", "1 mH"),
                "secondary_inductance": henries("10 µH", "1 mH"),
            },
            gives="H",
            agrees_within=relative(1e-9, because="one formula, double precision"),
            holds=[
                invariant("the two coils may change places", lambda M, k, L1, L2: (M(k, L1, L2), M(k, L2, L1))),
                invariant("turning one coil over turns the sign", lambda M, k, L1, L2: (M(-k, L1, L2), -M(k, L1, L2))),
                invariant("four times one inductance doubles it", lambda M, k, L1, L2: (M(k, 4 * L1, L2), 2 * M(k, L1, L2))),
            ],
            published=[
                value(
                    "two coils of 200 µH, 1 % coupled",
                    given=(0.01, 200e-6, 200e-6),
                    wanted=2e-6,
                    within=PRINTED,
                    source=f"{TERMAN}; tuned_circuits.toml, k = kc",
                    known="recomputed",
                ),
            ],
            refuses=[
                refusal("a coupling coefficient of 1.2", (1.2, 1e-4, 1e-4), (1.001, 1e-4, 1e-4)),
                refusal("a coupling coefficient of −1.5", (-1.5, 1e-4, 1e-4), (-1.001, 1e-4, 1e-4)),
            ],
            slips=[
                slip("left out the square root", lambda k, L1, L2: k * L1 * L2),
                slip("taken the plain mean of the two inductances", lambda k, L1, L2: k * (L1 + L2) / 2),
                slip("taken k into the root", lambda k, L1, L2: np.sqrt(np.abs(k) * L1 * L2)),
                slip("lost the sign: one coil may be turned over", lambda k, L1, L2: np.abs(k) * np.sqrt(L1 * L2)),
            ],
        ),
        Question(
            asks=series_impedance,
            picture=picture(at={"inductance": 200e-6, "capacitance": 130e-12}),
            given={
                "frequency": FREQUENCY,
                "inductance": henries("50 µH", "500 µH"),
                "capacitance": farads("30 pF", "600 pF"),
                "resistance": ohms("1 Ω", "100 Ω"),
            },
            gives="Ω",
            agrees_within=relative(1e-9, because="one formula, double precision", floor=1e-8),
            holds=[
                invariant(
                    "resistance adds, and nothing else changes", lambda Z, f, L, C, R: (Z(f, L, C, R + 5), Z(f, L, C, R) + 5)
                ),
                invariant(
                    "at half the frequency twice the coil and twice the condenser are the same",
                    lambda Z, f, L, C, R: (Z(f / 2, 2 * L, 2 * C, R), Z(f, L, C, R)),
                ),
            ],
            published=[
                value(
                    "200 µH, 126.65 pF, Q 100 at its upper edge: as much reactance as resistance",
                    given=(1005012.49992, 200e-6, 126.651479553e-12, 12.5663706144),
                    wanted=12.5663706144 * (1 + 1j),
                    within=relative(1e-7, because="printed to 12 figures, of which Q spends two"),
                    source=f"{TERMAN}; tuned_circuits.toml",
                    known="recomputed",
                ),
            ],
            slips=[
                slip(
                    "added the two reactances: the condenser's counts against the coil's",
                    lambda f, L, C, R: R + 1j * (2 * np.pi * f * L + 1 / (2 * np.pi * f * C)),
                ),
                slip(
                    "taken the coil's reactance from the condenser's: the coil's is the positive one",
                    lambda f, L, C, R: np.conj(series_impedance(f, L, C, R)),
                ),
                slip("left out 2π", lambda f, L, C, R: R + 1j * (f * L - 1 / (f * C))),
                slip("returned the size only: keep it complex", lambda f, L, C, R: np.abs(series_impedance(f, L, C, R))),
                slip("left out the j", lambda f, L, C, R: R + 2 * np.pi * f * L - 1 / (2 * np.pi * f * C)),
            ],
        ),
        Question(
            asks=reflected_impedance,
            given={"frequency": FREQUENCY, "mutual_inductance": MUTUAL, "secondary_impedance": IMPEDANCE},
            gives="Ω",
            agrees_within=relative(1e-9, because="one formula, double precision"),
            holds=[
                invariant(
                    "a circuit that only loses never gives back: no negative resistance",
                    lambda Zr, f, M, Z: (0, np.real(Zr(f, M, Z))),
                    at_most,
                ),
                invariant(
                    "a coil looks like a condenser, and a condenser like a coil",
                    lambda Zr, f, M, Z: (0, -np.imag(Zr(f, M, Z)) * np.imag(Z)),
                    at_most,
                ),
                invariant(
                    "twice the mutual inductance reflects four times as much",
                    lambda Zr, f, M, Z: (Zr(f, 2 * M, Z), 4 * Zr(f, M, Z)),
                ),
                invariant("which way round the coil is wound does not count", lambda Zr, f, M, Z: (Zr(f, -M, Z), Zr(f, M, Z))),
            ],
            published=[
                value(
                    "at critical coupling the circuit sees its own resistance once more",
                    given=(1e6, 2e-6, 12.5663706144),
                    wanted=12.5663706144,
                    within=PRINTED,
                    source=f"{TERMAN}: ωM = sqrt(Rp Rs); tuned_circuits.toml, Q 100, k = kc",
                    known="recomputed",
                ),
            ],
            slips=[
                slip("forgotten the square: over and back again makes (ωM)²", lambda f, M, Z: 2 * np.pi * f * M / Z),
                slip("left out 2π", lambda f, M, Z: (f * M) ** 2 / Z),
                slip(
                    "turned the fraction over: a large secondary impedance reflects little",
                    lambda f, M, Z: Z / (2 * np.pi * f * M) ** 2,
                ),
                slip(
                    "kept the minus sign of (jωM)², which the second mesh takes away again",
                    lambda f, M, Z: -((2 * np.pi * f * M) ** 2) / Z,
                ),
                slip(
                    "divided by the size of the impedance: keep it complex",
                    lambda f, M, Z: (2 * np.pi * f * M) ** 2 / np.abs(Z) + 0j,
                ),
            ],
        ),
        Question(
            asks=secondary_current,
            given={
                "emf": volts("1 mV", "1 V"),
                "frequency": FREQUENCY,
                "mutual_inductance": MUTUAL,
                "primary_impedance": IMPEDANCE,
                "secondary_impedance": IMPEDANCE,
            },
            gives="A",
            agrees_within=relative(1e-9, because="a few operations, double precision"),
            holds=[
                invariant(
                    "e.m.f. and ammeter may change places",
                    lambda i2, E, f, M, Z1, Z2: (i2(E, f, M, Z2, Z1), i2(E, f, M, Z1, Z2)),
                ),
                invariant(
                    "twice the e.m.f. drives twice the current",
                    lambda i2, E, f, M, Z1, Z2: (i2(2 * E, f, M, Z1, Z2), 2 * i2(E, f, M, Z1, Z2)),
                ),
                invariant(
                    "turning one coil over turns the current",
                    lambda i2, E, f, M, Z1, Z2: (i2(E, f, -M, Z1, Z2), -i2(E, f, M, Z1, Z2)),
                ),
                invariant(
                    "no more power arrives than the e.m.f. can give, E²/(4 R1)",
                    lambda i2, E, f, M, Z1, Z2: (abs(i2(E, f, M, Z1, Z2)) ** 2 * Z2.real, E**2 / (4 * Z1.real)),
                    at_most,
                ),
            ],
            published=[
                value(
                    "two circuits of 200 µH, Q 100, at half the critical coupling: 31.8 mA a volt",
                    given=(1.0, 1e6, 1e-6, 12.5663706144, 12.5663706144),
                    wanted=0 - 31.8309886184e-3j,
                    within=PRINTED,
                    source=f"{TERMAN}; coupled_two_circuit_response.csv, kQ = 0.5 at resonance",
                    known="recomputed",
                ),
                value(
                    "the same at twice the critical coupling",
                    given=(1.0, 1e6, 4e-6, 12.5663706144, 12.5663706144),
                    wanted=0 - 31.8309886184e-3j,
                    within=PRINTED,
                    source=f"{TERMAN}; coupled_two_circuit_response.csv, kQ = 2 at resonance",
                    known="recomputed",
                ),
            ],
            slips=[
                slip(
                    "forgotten what the secondary reflects into the primary",
                    lambda E, f, M, Z1, Z2: -transfer(f, M) * E / (Z1 * Z2),
                ),
                slip("left out the minus sign of the second mesh", lambda E, f, M, Z1, Z2: -secondary_current(E, f, M, Z1, Z2)),
                slip("left out the j of jωM", lambda E, f, M, Z1, Z2: secondary_current(E, f, M, Z1, Z2) / 1j),
                slip(
                    "returned the primary current: it still has to induce the secondary's",
                    lambda E, f, M, Z1, Z2: E / (Z1 + reflected_impedance(f, M, Z2)),
                ),
                slip("forgotten the e.m.f.", lambda E, f, M, Z1, Z2: secondary_current(1.0, f, M, Z1, Z2)),
                slip(
                    "returned the voltage induced in the secondary: divide by its impedance",
                    lambda E, f, M, Z1, Z2: secondary_current(E, f, M, Z1, Z2) * Z2,
                ),
            ],
        ),
    ],
    hints=[
        "Walk round each circuit and add up the voltages. The current in one coil induces jωM times itself in the other.",
        "Z1 I1 + jωM I2 = E, and jωM I1 + Z2 I2 = 0. The second gives I2 = -jωM I1 / Z2. Put that into the first: the "
        "primary behaves as if it had one more impedance in series.",
        "Mutual inductance: coupling_coefficient × sqrt(primary_inductance × secondary_inductance), after `raise "
        "ValueError(...)` where the size of the coefficient is above 1 (np.any, np.abs). With w = 2π × frequency: the "
        "series impedance is resistance + 1j × (w × inductance - 1 / (w × capacitance)); the reflected one is (w × "
        "mutual_inductance)² / secondary_impedance. Then primary = emf / (primary_impedance + reflected), and the "
        "secondary current is -1j × w × mutual_inductance × primary / secondary_impedance.",
    ],
)

"""How `feedback_resistance` is judged.

In the laws and slips: f or w the frequency or 2π times it, M the mutual inductance, C and C3 the tuning and the throttle
condenser, μ the amplification factor, Z the anode circuit's impedance, r the anode resistance, L and L3 the tuned coil
and the tickler, R the circuit's resistance. The valve is the simple one, without capacitances.
"""

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
    physical,
    picture,
    relative,
    slip,
    value,
)

from .feedback_resistance import circuit_with_feedback, feedback_impedance, feedback_resistance

CLOSE = relative(1e-9, because="a few operations, double precision", floor=1e-12)
TUNED_GRID = "tuned-grid oscillator of a type 30, exact threshold by Routh's condition; reaction.toml, example"
# reaction.toml, example: at the threshold the frequency of oscillation, M, and the parts of the circuit.
EDGE, AT_EDGE, COIL, CONDENSER, TICKLER = 999927.192, 1.40889934e-6, 180e-6, 1.40723866e-10, 30e-6
LEFT_OVER = 2 * np.pi * EDGE * COIL - 1 / (2 * np.pi * EDGE * CONDENSER)  # ohm, of reactance, which the feedback makes up
ANODE = drawn(
    [complex(1000.0 * n, 1000.0 * m) for m in (0, -1, -5, -10, -20, 0.2, 0.5) for n in (10, 5, 8, 15, 20, 30)],
    "resistance 5 kΩ to 30 kΩ, reactance −20 kΩ to 500 Ω",
    unit="Ω",
)
FEEDBACK = drawn(
    [complex(resistance, reactance) for reactance in (0, -5, 5, -2, -1, 1, 2, -10) for resistance in (-5, -10, -2, -1, 2, 5)],
    "resistance −10 Ω to 5 Ω, reactance −10 Ω to 5 Ω",
    unit="Ω",
)


def driven(M, C, μ):
    return μ * M / C


def passive(f, M):
    return (2 * np.pi * f * M) ** 2


def mesh(w, r, L3, C3):
    return r**2 + (w * L3 - 1 / (w * C3)) ** 2


EXERCISE = Exercise(
    title="What does a little of the output, fed back, do to the loss?",
    questions=[
        Question(
            asks=feedback_impedance,
            given={
                "frequency": hertz("500 kHz", "1600 kHz"),
                "mutual_inductance": henries("-30 µH", "30 µH"),
                "tuning_capacitance": farads("50 pF", "500 pF"),
                "amplification_factor": number(3, 30),
                "anode_impedance": ANODE,
            },
            gives="Ω",
            agrees_within=CLOSE,
            holds=[
                invariant(
                    "a valve that does not amplify leaves an ordinary coupled circuit: loss, never gain",
                    lambda Zf, f, M, C, μ, Z: (Zf(f, M, C, 0.0, Z), passive(f, M) / Z),
                ),
                invariant(
                    "a tickler wound the other way round never takes loss away",
                    lambda Zf, f, M, C, μ, Z: (0, np.real(Zf(f, -abs(M), C, μ, Z))),
                    at_most,
                ),
                invariant(
                    "turning the tickler over turns the valve's part alone: both ways together are twice the rest",
                    lambda Zf, f, M, C, μ, Z: (Zf(f, M, C, μ, Z) + Zf(f, -M, C, μ, Z), 2 * passive(f, M) / Z),
                ),
                invariant(
                    "half the condenser and half of μ do the same",
                    lambda Zf, f, M, C, μ, Z: (Zf(f, M, C / 2, μ / 2, Z), Zf(f, M, C, μ, Z)),
                ),
            ],
            published=[
                value(
                    "at the threshold it takes away the whole 9 Ω, and makes up the reactance left over",
                    given=(EDGE, AT_EDGE, CONDENSER, 9.27, complex(10300, 2 * np.pi * EDGE * TICKLER)),
                    wanted=complex(-9.0, -LEFT_OVER),
                    within=relative(1e-6, because="frequency and mutual inductance are printed to 9 figures"),
                    source=TUNED_GRID,
                    known="recomputed",
                ),
            ],
            slips=[
                slip(
                    "taken the wrong winding sense: a positive M helps, and takes loss away",
                    lambda f, M, C, μ, Z: feedback_impedance(f, -M, C, μ, Z),
                ),
                slip(
                    "forgotten what the anode circuit reflects even without the valve's help",
                    lambda f, M, C, μ, Z: -driven(M, C, μ) / Z,
                ),
                slip(
                    "multiplied by the condenser: the voltage on it is I2/(jωC)",
                    lambda f, M, C, μ, Z: (passive(f, M) - μ * M * C) / Z,
                ),
                slip(
                    "left the frequency in the valve's part: jωM times 1/(jωC) is M/C",
                    lambda f, M, C, μ, Z: (passive(f, M) - 2j * np.pi * f * driven(M, C, μ)) / Z,
                ),
                slip(
                    "divided by the size of the anode circuit's impedance: keep it complex",
                    lambda f, M, C, μ, Z: feedback_impedance(f, M, C, μ, np.abs(Z)) + 0j,
                ),
                slip("left out 2π", lambda f, M, C, μ, Z: ((f * M) ** 2 - driven(M, C, μ)) / Z),
            ],
        ),
        Question(
            asks=circuit_with_feedback,
            picture=picture(at={"feedback": -5 + 2j}),
            given={"inductance": henries("100 µH", "300 µH"), "resistance": ohms("5 Ω", "30 Ω"), "feedback": FEEDBACK},
            gives=("Ω", "Hz"),
            agrees_within=CLOSE,
            holds=[
                invariant("no feedback, no change", lambda f, L, R, Zf: (np.array(f(L, R, 0j)), np.array([R, 0.0]))),
                invariant(
                    "a reactance that acts like more coil tunes lower",
                    lambda f, L, R, Zf: (f(L, R, Zf)[1] * np.imag(Zf), 0.0),
                    at_most,
                ),
                invariant("twice the coil is moved half as far", lambda f, L, R, Zf: (f(2 * L, R, Zf)[1], f(L, R, Zf)[1] / 2)),
            ],
            published=[
                value(
                    "at the threshold of the example 9 Ω are cancelled, and it oscillates 73 Hz low of 1 MHz",
                    given=(COIL, 9.0, complex(-9.0, -LEFT_OVER)),
                    wanted=(0.0, EDGE - 1e6),
                    within=relative(1e-3, because="a shift so small is proportional to the reactance", floor=1e-6),
                    source=TUNED_GRID,
                    known="recomputed",
                ),
            ],
            slips=[
                slip(
                    "taken the real part away: the feedback carries its own sign",
                    lambda L, R, Zf: (R - np.real(Zf), circuit_with_feedback(L, R, Zf)[1]),
                ),
                slip(
                    "turned the sign of the shift: more reactance of the coil's kind tunes lower",
                    lambda L, R, Zf: (R + np.real(Zf), np.imag(Zf) / (4 * np.pi * L)),
                ),
                slip(
                    "let the coil alone make up the reactance: coil and condenser share it",
                    lambda L, R, Zf: (R + np.real(Zf), -np.imag(Zf) / (2 * np.pi * L)),
                ),
                slip("returned the shift in radians a second", lambda L, R, Zf: (R + np.real(Zf), -np.imag(Zf) / (2 * L))),
                slip(
                    "added the size of the feedback: only its real part is loss",
                    lambda L, R, Zf: (R + np.abs(Zf), -np.imag(Zf) / (4 * np.pi * L)),
                ),
            ],
        ),
        Question(
            asks=feedback_resistance,
            given={
                "angular_frequency": physical("rad/s", "3 Mrad/s", "10 Mrad/s"),
                "mutual_inductance": henries("1 µH", "30 µH"),
                "tuning_capacitance": farads("50 pF", "500 pF"),
                "amplification_factor": number(3, 30),
                "anode_resistance": ohms("5 kΩ", "30 kΩ"),
                "tickler_inductance": henries("10 µH", "100 µH"),
                "throttle_capacitance": farads("5 pF", "500 pF"),
            },
            gives="Ω",
            symbolic=True,
            agrees_within=relative(1e-12, because="a formula has no rounding"),
            no_published="A formula; the example's figures are met by the impedance it is the real part of.",
            slips=[
                slip(
                    "left the throttle condenser out",
                    lambda w, M, C, μ, r, L3, C3: ((w * M) ** 2 - driven(M, C, μ)) * r / (r**2 + (w * L3) ** 2),
                ),
                slip(
                    "added the two reactances: the condenser's counts against the tickler's",
                    lambda w, M, C, μ, r, L3, C3: ((w * M) ** 2 - driven(M, C, μ)) * r / mesh(w, r, L3, -C3),
                ),
                slip(
                    "divided by the anode resistance alone, as if nothing were in series with it",
                    lambda w, M, C, μ, r, L3, C3: ((w * M) ** 2 - driven(M, C, μ)) / r,
                ),
                slip(
                    "returned the imaginary part, without its sign",
                    lambda w, M, C, μ, r, L3, C3: feedback_resistance(w, M, C, μ, r, L3, C3) * (w * L3 - 1 / (w * C3)) / r,
                ),
                slip(
                    "lost the sign: a tickler wound to help takes loss away",
                    lambda w, M, C, μ, r, L3, C3: -feedback_resistance(w, M, C, μ, r, L3, C3),
                ),
                slip("kept only the valve's part", lambda w, M, C, μ, r, L3, C3: -driven(M, C, μ) * r / mesh(w, r, L3, C3)),
            ],
        ),
    ],
    hints=[
        "Let a current I2 run round the tuned circuit. What does it leave on the condenser, and so on the grid? What "
        "current does μ times that drive round the anode circuit? What does that current induce back into the coil?",
        "On the grid: v = I2/(jωC). Round the anode circuit: Z I3 = μ v + jωM I2. Into the tuned coil comes jωM I3, in the "
        "direction of I2, so that the tuned circuit's drop is smaller by it. Put the second into the third and divide by "
        "I2. Real parts add up to the loss; the imaginary part X is made up where 2L times the change of ω is −X.",
        "((w × mutual_inductance)² − amplification_factor × mutual_inductance/tuning_capacitance) / anode_impedance with "
        "w = 2π × frequency;   resistance + np.real(feedback) and −np.imag(feedback)/(4π × inductance);   for the formula"
        " x = angular_frequency × tickler_inductance − 1/(angular_frequency × throttle_capacitance), and "
        "1/(anode_resistance + j x) has the real part anode_resistance/(anode_resistance² + x²).",
    ],
)

"""How `quality_factor` is judged."""

import numpy as np

from checker import Exercise, Question, farads, henries, hertz, invariant, number, ohms, relative, slip, value

from .quality_factor import bandwidth, dynamic_resistance, half_power_frequencies, quality_factor

CLOSE = relative(1e-9, because="one formula, double precision")
PRINTED = relative(1e-9, because="printed to 12 figures")
TEXTBOOK = "a textbook's example 11.3: its data found, its answer worked again"
BIRD = "J. Bird, Electrical Circuit Theory and Technology, problem 29.07 (book title from memory)"
TERMAN = "F. E. Terman, Radio Engineers' Handbook, 1943, section 3 (formula from memory)"
CIRCUIT = {"resonant_frequency": hertz("100 kHz", "10 MHz"), "quality_factor": number(5, 500)}

EXERCISE = Exercise(
    title="How sharply does it tune?",
    questions=[
        Question(
            asks=quality_factor,
            given={
                "inductance": henries("10 µH", "10 mH"),
                "resistance": ohms("0.5 Ω", "200 Ω"),
                "frequency": hertz("100 kHz", "10 MHz"),
            },
            agrees_within=CLOSE,
            holds=[
                invariant("half the resistance doubles Q", lambda Q, L, R, f: (Q(L, R / 2, f), 2 * Q(L, R, f))),
                invariant("two such coils in series have the Q of one", lambda Q, L, R, f: (Q(2 * L, 2 * R, f), Q(L, R, f))),
            ],
            published=[
                value(
                    "a textbook exercise: 150 µH and 10 Ω at resonance with 100 pF",
                    given=(150e-6, 10.0, 1299494.66872),
                    wanted=122.474487139,
                    within=PRINTED,
                    source=TEXTBOOK,
                    known="recomputed",
                ),
            ],
            slips=[
                slip("left out 2π: the reactance is 2πfL", lambda L, R, f: f * L / R),
                slip("turned the fraction over: Q is reactance over resistance", lambda L, R, f: R / (2 * np.pi * f * L)),
                slip("multiplied by the resistance instead of dividing", lambda L, R, f: 2 * np.pi * f * L * R),
            ],
        ),
        Question(
            asks=bandwidth,
            given=CIRCUIT,
            gives="Hz",
            agrees_within=CLOSE,
            holds=[
                invariant("twice the Q halves the width", lambda width, f0, Q: (width(f0, 2 * Q), width(f0, Q) / 2)),
            ],
            published=[
                value(
                    "a textbook exercise: 150 kHz at Q 300",
                    given=(150e3, 300.0),
                    wanted=500.0,
                    within=relative(1e-9, because="500 Hz is the exercise's own figure"),
                    source=BIRD,
                    known="found",
                ),
            ],
            slips=[
                slip("returned half the width: f0/Q reaches from edge to edge", lambda f0, Q: f0 / (2 * Q)),
                slip("multiplied by Q: a sharper circuit is narrower", lambda f0, Q: f0 * Q),
                slip("turned the fraction over", lambda f0, Q: Q / f0),
                slip("returned the width in radians a second", lambda f0, Q: 2 * np.pi * f0 / Q),
            ],
        ),
        Question(
            asks=half_power_frequencies,
            given=CIRCUIT,
            gives=("Hz", "Hz"),
            agrees_within=CLOSE,
            holds=[
                invariant("the edges are a bandwidth apart", lambda edges, f0, Q: (edges(f0, Q)[1] - edges(f0, Q)[0], f0 / Q)),
                invariant(
                    "the resonance is the geometric mean of the edges",
                    lambda edges, f0, Q: (edges(f0, Q)[0] * edges(f0, Q)[1], f0**2),
                ),
            ],
            published=[
                value(
                    "1 MHz at Q 50",
                    given=(1e6, 50.0),
                    wanted=(990049.99875, 1010049.99875),
                    within=PRINTED,
                    source=f"{TERMAN}; tuned_circuits.toml",
                    known="recomputed",
                ),
            ],
            slips=[
                slip(
                    "put half a bandwidth on each side: close for high Q, but the edges lie unevenly",
                    lambda f0, Q: (f0 - f0 / (2 * Q), f0 + f0 / (2 * Q)),
                ),
                slip("put a whole bandwidth on each side", lambda f0, Q: (f0 - f0 / Q, f0 + f0 / Q)),
                slip("returned the upper edge first", lambda f0, Q: half_power_frequencies(f0, Q)[::-1]),
                slip(
                    "gone down to half the current (−6 dB); half the power is 1/sqrt(2) of the current",
                    lambda f0, Q: half_power_frequencies(f0, Q / np.sqrt(3)),
                ),
            ],
        ),
        Question(
            asks=dynamic_resistance,
            given={
                "inductance": henries("10 µH", "10 mH"),
                "capacitance": farads("5 pF", "2 nF"),
                "resistance": ohms("0.5 Ω", "200 Ω"),
            },
            gives="Ω",
            agrees_within=CLOSE,
            holds=[
                invariant("half the loss doubles it", lambda Rd, L, C, R: (Rd(L, C, R / 2), 2 * Rd(L, C, R))),
                invariant(
                    "more coil and as much more condenser leave it as it was",
                    lambda Rd, L, C, R: (Rd(3 * L, 3 * C, R), Rd(L, C, R)),
                ),
            ],
            published=[
                value(
                    "a textbook exercise: 150 µH, 100 pF, 10 Ω",
                    given=(150e-6, 100e-12, 10.0),
                    wanted=150e3,
                    within=PRINTED,
                    source=TEXTBOOK,
                    known="recomputed",
                ),
            ],
            slips=[
                slip("returned sqrt(L/C), the reactance of coil or condenser", lambda L, C, R: np.sqrt(L / C)),
                slip("forgotten to divide by the resistance", lambda L, C, R: L / C),
                slip("returned Q instead of Q times the reactance", lambda L, C, R: np.sqrt(L / C) / R),
                slip("turned the fraction over", lambda L, C, R: C * R / L),
            ],
        ),
    ],
    hints=[
        "Q compares what the coil stores with what it loses: its reactance over its resistance. The rest follows from Q.",
        "Reactance is 2πfL. The bandwidth is the resonant frequency shared out by Q. At its edges f/f0 - f0/f is -1/Q "
        "and +1/Q: multiply by f and solve the quadratic. Across its ends the circuit looks like Q times the "
        "reactance.",
        "quality_factor is 2 * np.pi * frequency * inductance / resistance; bandwidth is resonant_frequency / "
        "quality_factor. With h = 1 / (2 * quality_factor) the edges are resonant_frequency * (np.sqrt(1 + h**2) - h) and"
        " resonant_frequency * (np.sqrt(1 + h**2) + h), the lower one first, as a tuple. dynamic_resistance comes to "
        "inductance / (capacitance * resistance).",
    ],
)

"""How `build_up` is judged.

In the laws and slips: f0 and Q the tuned circuit's, k the feedback, C its capacitance, T the temperature, a the
starting and A the limiting or final amplitude, s the growth rate, t a time, p a fraction of the limit.
"""

import numpy as np

from checker import (
    Exercise,
    Question,
    at_most,
    equal,
    farads,
    hertz,
    invariant,
    less,
    number,
    physical,
    picture,
    refusal,
    relative,
    seconds,
    slip,
    value,
    volts,
)

from .build_up import BOLTZMANN, amplitude, free_growth_time, growth_rate, starting_voltage, time_to_limit

CLOSE = relative(1e-9, because="a few operations, double precision", floor=1e-15)
EXAMPLE = "growth of the tuned-grid example, 1 MHz and Q 125.6637: reaction.toml, growth"
HEAT = "noise voltage of a condenser at 300 K, sqrt(kT/C), as electronics textbooks tabulate it: 64.4 µV for 1 pF"
LOGARITHMS = "Abramowitz and Stegun, Handbook of Mathematical Functions, 1964, Table 1.1 (its number from memory): ln 10"
START, LIMIT, GROWTH = volts("1 µV", "100 mV"), volts("500 mV", "20 V"), physical("Np/s", "100 Np/s", "100 kNp/s")


def nearly(left, right, tolerance):
    return equal(left, right, relative(1e-3, because="a limit, nearly reached"))


def still_growing(t, a, A, s):
    return s * t < 1.5 * np.log(A / a)


EXERCISE = Exercise(
    title="How fast does it start?",
    questions=[
        Question(
            asks=growth_rate,
            picture=picture(along="feedback"),
            given={
                "resonant_frequency": hertz("150 kHz", "3 MHz"),
                "quality_factor": number(20, 300),
                "feedback": number(0, 2),
            },
            gives="Np/s",
            agrees_within=CLOSE,
            holds=[
                invariant("at the edge nothing grows or dies", lambda f, f0, Q, k: (f(f0, Q, 1.0), 0.0)),
                invariant(
                    "without reaction it rings down: by exp(−π) in Q cycles",
                    lambda f, f0, Q, k: (f(f0, Q, 0.0) * Q / f0, -np.pi),
                ),
                invariant("more feedback, more growth", lambda f, f0, Q, k: (f(f0, Q, k), f(f0, Q, k + 0.1)), less),
            ],
            published=[
                value(
                    "a tenth above the edge: 2.718 times in 400 µs",
                    given=(1e6, 125.6637, 1.1),
                    wanted=1 / 400e-6,
                    within=relative(1e-6, because="printed to seven figures"),
                    source=EXAMPLE,
                    known="recomputed",
                ),
                value(
                    "a tenth below the edge: down to 1/2.718 in 400 µs",
                    given=(1e6, 125.6637, 0.9),
                    wanted=-1 / 400e-6,
                    within=relative(1e-6, because="printed to seven figures"),
                    source=EXAMPLE,
                    known="recomputed",
                ),
            ],
            slips=[
                slip("turned the sign: beyond the edge it grows", lambda f0, Q, k: -growth_rate(f0, Q, k)),
                slip("returned the energy's rate, which is twice the amplitude's", lambda f0, Q, k: 2 * growth_rate(f0, Q, k)),
                slip("left out π", lambda f0, Q, k: f0 * (k - 1) / Q),
                slip("forgotten the circuit's own loss", lambda f0, Q, k: np.pi * f0 * k / Q),
                slip("multiplied by Q: a high Q is slow to start", lambda f0, Q, k: growth_rate(f0, Q, k) * Q**2),
            ],
        ),
        Question(
            asks=starting_voltage,
            given={"capacitance": farads("50 pF", "1 nF"), "temperature": physical("K", "250 K", "350 K")},
            gives="V",
            agrees_within=relative(1e-9, because="one formula, double precision"),
            holds=[
                invariant("four times the condenser, half the voltage", lambda f, C, T: (f(4 * C, T), f(C, T) / 2)),
                invariant("half of C V² is half of k T", lambda f, C, T: (C * f(C, T) ** 2, BOLTZMANN * T)),
            ],
            published=[
                value(
                    "1 pF at 300 K",
                    given=(1e-12, 300.0),
                    wanted=64.4e-6,
                    within=relative(2e-3, because="three figures"),
                    source=HEAT,
                    known="memory",
                ),
                value(
                    "100 pF at 300 K",
                    given=(100e-12, 300.0),
                    wanted=6.44e-6,
                    within=relative(2e-3, because="three figures"),
                    source=HEAT,
                    known="memory",
                ),
            ],
            slips=[
                slip("left out the square root", lambda C, T: BOLTZMANN * T / C),
                slip(
                    "taken the noise of a resistance: there is none in this formula",
                    lambda C, T: np.sqrt(4 * BOLTZMANN * T / C),
                ),
                slip("taken the temperature in degrees Celsius", lambda C, T: np.sqrt(BOLTZMANN * (T + 273.15) / C)),
                slip("given each condenser kT instead of half of it", lambda C, T: np.sqrt(2 * BOLTZMANN * T / C)),
            ],
        ),
        Question(
            asks=free_growth_time,
            given={"start": START, "end": LIMIT, "growth": GROWTH},
            gives="s",
            edges=[lambda start, end, growth: (start, 1.01 * start, growth)],
            agrees_within=CLOSE,
            holds=[
                invariant("twice the growth, half the time", lambda f, a, A, s: (f(a, A, 2 * s), f(a, A, s) / 2)),
                invariant("a stop on the way costs no time", lambda f, a, A, s: (f(a, 3 * a, s) + f(3 * a, A, s), f(a, A, s))),
                invariant(
                    "each factor of ten takes as long as the next", lambda f, a, A, s: (f(a, 1000 * a, s), 3 * f(A, 10 * A, s))
                ),
            ],
            published=[
                value(
                    "tenfold at 1 neper a second",
                    given=(1.0, 10.0, 1.0),
                    wanted=2.302585093,
                    within=relative(1e-9, because="tabulated to 10 figures"),
                    source=LOGARITHMS,
                    known="memory",
                ),
            ],
            refuses=[
                refusal("a set at the edge, where nothing grows", (1e-3, 1.0, 0.0)),
                refusal("a set below the edge", (1e-3, 1.0, -500.0), (1e-3, 1.0, -0.01)),
            ],
            slips=[
                slip("used np.log10: growth by nepers is undone by np.log", lambda a, A, s: np.log10(A / a) / s),
                slip("turned the ratio over", lambda a, A, s: np.log(a / A) / s),
                slip("multiplied by the growth", lambda a, A, s: np.log(A / a) * s),
                slip("let the energy grow at that rate", lambda a, A, s: np.log(A / a) / (2 * s)),
                slip("let it grow by equal steps instead of equal factors", lambda a, A, s: (A - a) / (a * s)),
            ],
        ),
        Question(
            asks=amplitude,
            given={"time": seconds("1 µs", "100 ms"), "start": START, "limit": LIMIT, "growth": GROWTH},
            where=still_growing,
            gives="V",
            agrees_within=CLOSE,
            holds=[
                invariant("it begins where it is", lambda f, t, a, A, s: (f(0.0, a, A, s), a)),
                invariant(
                    "it may be stopped and started again on the way",
                    lambda f, t, a, A, s: (f(t, f(t, a, A, s), A, s), f(2 * t, a, A, s)),
                ),
                invariant("it never passes the limit", lambda f, t, a, A, s: (f(t, a, A, s), A), at_most),
                invariant("at the limit it stays", lambda f, t, a, A, s: (f(t, A, A, s), A)),
                invariant(
                    "from above the limit it sinks towards it, and not below",
                    lambda f, t, a, A, s: (np.array([A, f(t, 3 * A, A, s)]), np.array([f(t, 3 * A, A, s), 3 * A])),
                    at_most,
                ),
                invariant(
                    "while it is tiny nothing holds it: ten nepers are a factor of 22 026",
                    lambda f, t, a, A, s: (f(10 / s, 1e-9 * A, A, s), np.exp(10) * 1e-9 * A),
                    nearly,
                ),
            ],
            no_published="A closed form; tests integrate van der Pol's own equation, cycle by cycle.",
            refuses=[refusal("a swing that starts from nothing", (1e-3, 0.0, 1.0, 500.0), (1e-3, -0.001, 1.0, 500.0))],
            slips=[
                slip("let it grow without limit", lambda t, a, A, s: a * np.exp(s * t)),
                slip(
                    "cut the growth off at the limit: it slackens well before",
                    lambda t, a, A, s: np.minimum(a * np.exp(s * t), A),
                ),
                slip("forgotten that 1/a² changes at twice the growth rate", lambda t, a, A, s: amplitude(t / 2, a, A, s)),
                slip(
                    "let it slacken in proportion to the amplitude instead of its square",
                    lambda t, a, A, s: A / (1 + (A / a - 1) * np.exp(-s * t)),
                ),
                slip(
                    "let it creep up to the limit from the first moment at its fastest",
                    lambda t, a, A, s: A - (A - a) * np.exp(-s * t),
                ),
            ],
        ),
        Question(
            asks=time_to_limit,
            further=True,
            given={"start": START, "limit": LIMIT, "growth": GROWTH, "fraction": number(0.3, 0.99)},
            edges=[lambda start, limit, growth, fraction: (0.99 * fraction * limit, limit, growth, fraction)],
            where=lambda a, A, s, p: a < p * A / 1.2,
            gives="s",
            agrees_within=CLOSE,
            holds=[
                invariant(
                    "by then your amplitude is that part of the limit",
                    lambda f, a, A, s, p: (f.amplitude(f(a, A, s, p), a, A, s), p * A),
                ),
                invariant("twice the growth, half the time", lambda f, a, A, s, p: (f(a, A, 2 * s, p), f(a, A, s, p) / 2)),
                invariant(
                    "the limit makes it later than free growth would be",
                    lambda f, a, A, s, p: (f.free_growth_time(a, p * A, s), f(a, A, s, p)),
                    at_most,
                ),
            ],
            no_published="A closed form; tests integrate van der Pol's own equation, cycle by cycle.",
            refuses=[
                refusal("a set below the edge", (1e-3, 1.0, -500.0, 0.9), (1e-3, 1.0, 0.0, 0.9)),
                refusal("the limit itself, which is never quite reached", (1e-3, 1.0, 500.0, 1.0), (1e-3, 1.0, 500.0, 1.001)),
            ],
            slips=[
                slip("let it grow freely up to there", lambda a, A, s, p: np.log(p * A / a) / s),
                slip("forgotten that 1/a² changes at twice the growth rate", lambda a, A, s, p: 2 * time_to_limit(a, A, s, p)),
                slip("forgotten to square the fraction", lambda a, A, s, p: np.log(((A / a) ** 2 - 1) / (1 / p - 1)) / (2 * s)),
                slip(
                    "left out the time it takes to become large: it starts from next to nothing",
                    lambda a, A, s, p: -np.log(1 / p**2 - 1) / (2 * s) + 0 * a * A,
                ),
            ],
        ),
    ],
    hints=[
        "An oscillation starts as a ring-down turned round: each cycle adds the same part of what is there. It starts from "
        "noise, and stops growing when the valve cannot give more.",
        "Without reaction the rate is −π f0/Q; feedback k takes off k times as much. Noise: C V²/2 = k T/2. Free growth: "
        "end = start × exp(growth × time), so take np.log. With the limit, follow u = limit²/a² − 1 instead of a: it "
        "simply dies away, as exp(−2 × growth × time).",
        "growth_rate is np.pi * resonant_frequency * (feedback - 1) / quality_factor; starting_voltage is "
        "np.sqrt(BOLTZMANN * temperature / capacitance); free_growth_time is np.log(end / start) / growth; amplitude is "
        "limit / np.sqrt(1 + ((limit / start) ** 2 - 1) * np.exp(-2 * growth * time)), ValueError where np.any(start <= "
        "0); time_to_limit is np.log(((limit / start) ** 2 - 1) / (1 / fraction**2 - 1)) / (2 * growth). Before the "
        "times: `raise ValueError(…)` where np.any(growth <= 0), and where np.any(fraction >= 1).",
    ],
)

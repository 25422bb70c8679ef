"""How `pull_in` is judged.

In the laws and slips: f0 the frequency, Q the quality factor, e and E the injected and the own swing, d the offset, h the
hold, t a time.
"""

import numpy as np

from checker import (
    Exercise,
    Question,
    absolute,
    at_most,
    equal,
    hertz,
    invariant,
    number,
    physical,
    refusal,
    relative,
    seconds,
    slip,
    value,
    volts,
)

from .pull_in import holding_signal, locked_phase, locking_range, pulled_beat, slipping_phase

CLOSE = relative(1e-9, because="a few operations, double precision")
PRINTED = relative(1e-5, because="printed to four decimals")
ADLER = "R. Adler, Proc. IRE 34, 351 (1946), formula from memory; adler_locking.csv, checked by quadrature of the slip"
FREQUENCY, QUALITY = hertz("150 kHz", "3 MHz"), number(20, 200)
INJECTED, OWN = volts("10 µV", "50 mV"), volts("100 mV", "10 V")
OFFSET, HOLD = hertz("10 Hz", "10 kHz"), hertz("5 Hz", "3 kHz")


def by_a_step(f, t, d, h):
    """Rate at which the angle grows, by a small step, and what Adler's equation says of it."""
    step = 1e-5 / d
    return (f(t + step, d, h) - f(t, d, h)) / step, 2 * np.pi * (d - h * np.sin(f(t + step / 2, d, h)))


def nearly(left, right, tolerance):
    return equal(left, right, relative(1e-3, because="a step is not quite a slope"))


def without_turns(t, d, h):
    u = np.pi * pulled_beat(d, h) * t
    return 2 * np.arctan(d * np.sin(u) / (pulled_beat(d, h) * np.cos(u) + h * np.sin(u)))


EXERCISE = Exercise(
    title="When does the station take hold of it?",
    questions=[
        Question(
            asks=locking_range,
            given={"frequency": FREQUENCY, "quality_factor": QUALITY, "injected": INJECTED, "oscillation": OWN},
            gives="Hz",
            agrees_within=CLOSE,
            holds=[
                invariant("twice the signal, twice the range", lambda f, f0, Q, e, E: (f(f0, Q, 2 * e, E), 2 * f(f0, Q, e, E))),
                invariant(
                    "only the ratio of the swings counts", lambda f, f0, Q, e, E: (f(f0, Q, 2 * e, 2 * E), f(f0, Q, e, E))
                ),
                invariant(
                    "a circuit of twice the Q is harder to pull",
                    lambda f, f0, Q, e, E: (f(f0, 2 * Q, e, E), f(f0, Q, e, E) / 2),
                ),
            ],
            published=[
                value(
                    "1 MHz, Q 100, a hundredth of the own swing: 50 Hz",
                    given=(1e6, 100.0, 0.01, 1.0),
                    wanted=50.0,
                    within=PRINTED,
                    source=ADLER,
                    known="recomputed",
                ),
                value(
                    "600 kHz, Q 80, a twentieth: 187.5 Hz",
                    given=(600e3, 80.0, 0.05, 1.0),
                    wanted=187.5,
                    within=PRINTED,
                    source=ADLER,
                    known="recomputed",
                ),
            ],
            refuses=[
                refusal("a set that does not oscillate", (1e6, 100.0, 0.01, 0.0)),
                refusal("a station stronger than the swing", (1e6, 100.0, 2.0, 1.0), (1e6, 100.0, 1.001, 1.0)),
            ],
            slips=[
                slip("returned the whole width, both ways", lambda *inputs: 2 * locking_range(*inputs)),
                slip("turned the ratio of the swings over", lambda f0, Q, e, E: f0 / (2 * Q) * E / e),
                slip("returned radians a second", lambda *inputs: 2 * np.pi * locking_range(*inputs)),
                slip("multiplied by Q", lambda f0, Q, e, E: f0 * Q / 2 * e / E),
                slip(
                    "squared the ratio: it is the swings that count, not powers",
                    lambda f0, Q, e, E: f0 / (2 * Q) * (e / E) ** 2,
                ),
            ],
        ),
        Question(
            asks=locked_phase,
            given={"offset": physical("Hz", "-1000 Hz", "1000 Hz"), "hold": hertz("100 Hz", "3 kHz")},
            where=lambda d, h: abs(d) < 0.999 * h,
            gives="°",
            agrees_within=relative(1e-9, because="one arc sine", floor=1e-9),
            holds=[
                invariant("in the middle they keep step", lambda f, d, h: (f(0.0, h), 0.0)),
                invariant("at the edge they are a quarter of a turn apart", lambda f, d, h: (np.sin(np.radians(f(h, h))), 1.0)),
                invariant("the other side, the other sign", lambda f, d, h: (f(-d, h), -f(d, h))),
            ],
            published=[
                value(
                    "half of the hold: 30°", given=(25.0, 50.0), wanted=30.0, within=PRINTED, source=ADLER, known="recomputed"
                ),
                value(
                    "nine tenths of it: 64.1581°",
                    given=(168.75, 187.5),
                    wanted=64.1581,
                    within=PRINTED,
                    source=ADLER,
                    known="recomputed",
                ),
            ],
            refuses=[
                refusal("an offset beyond the hold", (200.0, 100.0), (100.1, 100.0)),
                refusal("the same on the other side", (-200.0, 100.0), (-100.1, 100.0)),
            ],
            slips=[
                slip("returned radians", lambda d, h: np.arcsin(d / h)),
                slip("taken the arc cosine", lambda d, h: np.degrees(np.arccos(d / h))),
                slip("taken the arc tangent", lambda d, h: np.degrees(np.arctan(d / h))),
                slip("dropped the sign", lambda d, h: np.degrees(np.arcsin(np.abs(d) / h))),
            ],
        ),
        Question(
            asks=pulled_beat,
            given={"offset": OFFSET, "hold": HOLD},
            gives="Hz",
            agrees_within=CLOSE,
            holds=[
                invariant("it is never higher than the offset", lambda f, d, h: (f(d, h), d), at_most),
                invariant("where the station holds there is no whistle", lambda f, d, h: (f(0.9 * h, h), 0.0)),
                invariant("a station that brings nothing pulls nothing", lambda f, d, h: (f(d, 0.0), d)),
                invariant("either side alike", lambda f, d, h: (f(-d, h), f(d, h))),
            ],
            published=[
                value(
                    "10 % outside 50 Hz: 22.9129 Hz",
                    given=(55.0, 50.0),
                    wanted=22.9129,
                    within=PRINTED,
                    source=ADLER,
                    known="recomputed",
                ),
                value(
                    "half as far again as 500 Hz: 559.017 Hz",
                    given=(750.0, 500.0),
                    wanted=559.0170,
                    within=PRINTED,
                    source=ADLER,
                    known="recomputed",
                ),
                value(
                    "inside: none",
                    given=(25.0, 50.0),
                    wanted=0.0,
                    within=absolute(1e-9, because="no beat at all"),
                    source=ADLER,
                    known="recomputed",
                ),
            ],
            slips=[
                slip("taken the offset itself: the station pulls", lambda d, h: np.where(np.abs(d) > h, np.abs(d), 0.0)[()]),
                slip("taken off the whole hold", lambda d, h: np.maximum(np.abs(d) - h, 0.0)),
                slip("added the squares", lambda d, h: np.hypot(d, h)),
                slip("left out the root", lambda d, h: np.maximum(d**2 - h**2, 0.0)),
            ],
        ),
        Question(
            asks=holding_signal,
            given={"offset": OFFSET, "frequency": FREQUENCY, "quality_factor": QUALITY, "oscillation": OWN},
            where=lambda d, f0, Q, E: 2 * Q * d < f0,
            gives="V",
            agrees_within=CLOSE,
            holds=[
                invariant(
                    "with that signal your locking range is the offset",
                    lambda f, d, f0, Q, E: (f.locking_range(f0, Q, f(d, f0, Q, E), E), d),
                ),
                invariant("either side alike", lambda f, d, f0, Q, E: (f(-d, f0, Q, E), f(d, f0, Q, E))),
            ],
            published=[
                value(
                    "50 Hz at 1 MHz, Q 100: a hundredth",
                    given=(50.0, 1e6, 100.0, 1.0),
                    wanted=0.01,
                    within=PRINTED,
                    source=ADLER,
                    known="recomputed",
                ),
            ],
            slips=[
                slip("kept the sign: a crest has none", lambda d, f0, Q, E: 2 * Q * d / f0 * E * np.where(d > 0, -1.0, 1.0)),
                slip("forgotten the 2: the range counts one side only", lambda *inputs: holding_signal(*inputs) / 2),
                slip("divided by the swing instead of multiplying", lambda d, f0, Q, E: 2 * Q * d / f0 / E),
                slip("put Q below the line", lambda d, f0, Q, E: 2 * d / (Q * f0) * E),
            ],
        ),
        Question(
            asks=slipping_phase,
            given={"time": seconds("10 µs", "100 ms"), "offset": OFFSET, "hold": HOLD},
            edges=[lambda time, offset, hold: (0.1 / hold, 1.01 * hold, hold)],
            where=lambda t, d, h: 1.02 * h < d and 0.02 < t * pulled_beat(d, h) < 20,
            gives="rad",
            agrees_within=relative(1e-7, because="an arc tangent, and whole turns added"),
            holds=[
                invariant("it starts from nothing", lambda f, t, d, h: (f(0.0, d, h), 0.0)),
                invariant(
                    "after two beats, and a quarter of one, it has gone two turns more than after the quarter",
                    lambda f, t, d, h: (f(2.25 / f.pulled_beat(d, h), d, h), 4 * np.pi + f(0.25 / f.pulled_beat(d, h), d, h)),
                    nearly,
                ),
                invariant("it moves as Adler's equation says", by_a_step, nearly),
                invariant(
                    "a station that brings nothing lets it run evenly", lambda f, t, d, h: (f(t, d, 0.0), 2 * np.pi * d * t)
                ),
            ],
            no_published="A closed form; tests integrate Adler's equation.",
            refuses=[
                refusal("an offset that the station holds", (0.01, 50.0, 100.0), (0.01, 100.0, 100.0), (0.01, 99.9, 100.0))
            ],
            slips=[
                slip("let it run evenly at the offset", lambda t, d, h: 2 * np.pi * d * t + 0 * h),
                slip("let it run evenly at the beat", lambda t, d, h: 2 * np.pi * pulled_beat(d, h) * t),
                slip("forgotten the whole turns", without_turns),
                slip("returned degrees", lambda t, d, h: np.degrees(slipping_phase(t, d, h))),
                slip(
                    "let it hurry where it should linger",
                    lambda t, d, h: (
                        2 * np.pi * np.divmod(pulled_beat(d, h) * t, 1)[0]
                        + 2
                        * np.arctan2(
                            d * np.sin(np.pi * (pulled_beat(d, h) * t % 1)),
                            pulled_beat(d, h) * np.cos(np.pi * (pulled_beat(d, h) * t % 1))
                            - h * np.sin(np.pi * (pulled_beat(d, h) * t % 1)),
                        )
                    ),
                ),
            ],
        ),
    ],
    hints=[
        "The station adds a little to the swing each cycle. If it comes a quarter of a cycle early or late it turns the "
        "swing's phase without making it larger, and that can make up for a difference of frequency, up to a limit.",
        "One equation holds all of it: dφ/dt = 2π (offset − hold × sin φ). Where it rests, sin φ = offset/hold. Where it "
        "cannot rest, a turn takes 1/sqrt(offset² − hold²). The hold is f/(2Q) × injected/oscillation.",
        "frequency/(2 × quality_factor) × injected/oscillation, ValueError where np.any(oscillation <= 0) or "
        "np.any(injected > oscillation);  np.degrees(np.arcsin(offset/hold)), ValueError where np.any(np.abs(offset) > "
        "hold);  np.sqrt(np.clip(offset² − hold², 0, None));  2 × quality_factor × |offset|/frequency × oscillation.  "
        "slipping_phase: with beat = pulled_beat(offset, hold): turns, u = np.divmod(π × beat × time, π), then 2π × turns"
        " + 2 × np.arctan2(offset sin u, beat cos u + hold sin u), ValueError where offset <= hold anywhere.",
    ],
)

"""How `ring_down` is judged."""

import numpy as np

from checker import (
    Exercise,
    Question,
    absolute,
    at_most,
    hertz,
    invariant,
    less,
    number,
    picture,
    refusal,
    relative,
    seconds,
    slip,
    value,
)

from .ring_down import cycles_to_fall, ring_amplitude, ring_energy, ring_voltage

MATHEMATICAL = "Abramowitz and Stegun, Handbook of Mathematical Functions, 1964, Table 1.1 (its number from memory)"
TIME_CONSTANT = 100 / np.pi * 1e-6  # second: Q/π cycles of 1 MHz at Q 100
STRUCK = {
    "time": seconds("100 ns", "100 µs"),
    "resonant_frequency": hertz("100 kHz", "2 MHz"),
    "quality_factor": number(10, 500),
}
CLOSE = relative(1e-9, because="one formula, double precision")
PRINTED = relative(1e-9, because="tabulated to 10 figures")


def still_rings(t, f0, Q):
    return f0 * t < 3 * Q


def decay(t, f0, Q):
    return np.pi * f0 * t / Q


def slowing(Q):
    return np.sqrt(1 - 1 / (4 * Q**2))


EXERCISE = Exercise(
    title="How long does it ring?",
    questions=[
        Question(
            asks=ring_amplitude,
            picture=picture(between=(0.0, 100e-6)),
            given=STRUCK,
            edges=[lambda time, resonant_frequency, quality_factor: (0.5 / resonant_frequency, resonant_frequency, 0.501)],
            where=still_rings,
            agrees_within=CLOSE,
            holds=[
                invariant("whole at the start", lambda a, t, f0, Q: (a(0.0, f0, Q), 1)),
                invariant("it only falls", lambda a, t, f0, Q: (a(2 * t, f0, Q), a(t, f0, Q)), less),
                invariant(
                    "the same fraction is lost in the same time", lambda a, t, f0, Q: (a(2 * t, f0, Q), a(t, f0, Q) ** 2)
                ),
            ],
            published=[
                value(
                    "after one time constant: 1/e",
                    given=(TIME_CONSTANT, 1e6, 100.0),
                    wanted=0.3678794412,
                    within=PRINTED,
                    source=MATHEMATICAL,
                    known="memory",
                ),
            ],
            slips=[
                slip("returned the energy, which falls twice as fast", lambda t, f0, Q: np.exp(-2 * decay(t, f0, Q))),
                slip("left out π", lambda t, f0, Q: np.exp(-f0 * t / Q)),
                slip("left out the minus sign: it grows", lambda t, f0, Q: np.exp(decay(t, f0, Q))),
                slip("multiplied by Q: a high Q rings longer, not shorter", lambda t, f0, Q: np.exp(-decay(t, f0, Q) * Q**2)),
                slip("returned the fraction lost: what is left is asked for", lambda t, f0, Q: 1 - ring_amplitude(t, f0, Q)),
            ],
        ),
        Question(
            asks=ring_energy,
            picture=picture(between=(0.0, 100e-6)),
            given=STRUCK,
            edges=[lambda time, resonant_frequency, quality_factor: (0.5 / resonant_frequency, resonant_frequency, 0.501)],
            where=still_rings,
            agrees_within=CLOSE,
            holds=[
                invariant("energy only falls", lambda e, t, f0, Q: (e(1.01 * t, f0, Q), e(t, f0, Q)), less),
                invariant(
                    "it is the square of the amplitude", lambda e, t, f0, Q: (e(t, f0, Q), e.ring_amplitude(t, f0, Q) ** 2)
                ),
            ],
            published=[
                value(
                    "after half a time constant: 1/e of the energy",
                    given=(TIME_CONSTANT / 2, 1e6, 100.0),
                    wanted=0.3678794412,
                    within=PRINTED,
                    source=MATHEMATICAL,
                    known="memory",
                ),
            ],
            slips=[
                slip("returned the amplitude: energy goes as its square", ring_amplitude),
                slip(
                    "taken the root of the amplitude instead of its square", lambda t, f0, Q: np.sqrt(ring_amplitude(t, f0, Q))
                ),
                slip("halved the square: at the start all of it is left", lambda t, f0, Q: ring_energy(t, f0, Q) / 2),
                slip("left out the minus sign: it grows", lambda t, f0, Q: np.exp(2 * decay(t, f0, Q))),
            ],
        ),
        Question(
            asks=cycles_to_fall,
            given={"quality_factor": number(10, 500), "fraction": number(0.001, 0.99)},
            edges=[
                lambda quality_factor, fraction: (quality_factor, 1.0),
                lambda quality_factor, fraction: (0.501, fraction),
            ],
            agrees_within=CLOSE,
            holds=[
                invariant("twice the Q rings twice as long", lambda n, Q, left: (n(2 * Q, left), 2 * n(Q, left))),
                invariant(
                    "to fall twice in the same ratio takes twice as long", lambda n, Q, left: (n(Q, left**2), 2 * n(Q, left))
                ),
            ],
            published=[
                value(
                    "to 1/e at Q 100: 100/π cycles",
                    given=(100.0, 0.36787944117144233),
                    wanted=31.83098862,
                    within=PRINTED,
                    source=MATHEMATICAL,
                    known="memory",
                ),
            ],
            refuses=[
                refusal("a fraction of nothing, which is never reached", (100.0, 0.0), (100.0, -0.001)),
                refusal("a fraction above 1: ringing does not grow", (100.0, 1.5), (100.0, 1.001)),
            ],
            slips=[
                slip(
                    "left out the minus sign: the logarithm of a fraction is negative", lambda Q, left: np.log(left) * Q / np.pi
                ),
                slip("used np.log10; the exponential is undone by np.log", lambda Q, left: -np.log10(left) * Q / np.pi),
                slip(
                    "let the energy fall to that fraction instead of the amplitude",
                    lambda Q, left: -np.log(left) * Q / (2 * np.pi),
                ),
                slip("left out π", lambda Q, left: -np.log(left) * Q),
                slip("divided by Q: a high Q rings longer", lambda Q, left: -np.log(left) * np.pi / Q),
                slip("taken the fraction as the part lost: it is the part left", lambda Q, left: -np.log(1 - left) * Q / np.pi),
            ],
        ),
        Question(
            asks=ring_voltage,
            further=True,
            picture=picture(between=(0.0, 20e-6), points=401),
            given=STRUCK,
            edges=[lambda time, resonant_frequency, quality_factor: (0.5 / resonant_frequency, resonant_frequency, 0.501)],
            where=still_rings,
            gives="V",
            agrees_within=absolute(1e-9, because="a voltage of 1 V or less that passes through zero"),
            holds=[
                invariant(
                    "1 volt at the start, even where it hardly swings, at Q 0.6", lambda v, t, f0, Q: (v(0.0, f0, 0.6), 1)
                ),
                invariant(
                    "no crest is higher than the charge it started from", lambda v, t, f0, Q: (abs(v(t, f0, Q)), 1), at_most
                ),
            ],
            no_published="No table is known. The formula was checked by solving the circuit's equations numerically.",
            refuses=[refusal("a Q of 0.5 or less, at which nothing rings", (1e-6, 1e6, 0.4), (1e-6, 1e6, 0.5))],
            slips=[
                slip("returned the envelope only: the voltage swings below it", ring_amplitude),
                slip(
                    "left out the sine term: the current starts from nothing, so the voltage starts level",
                    lambda t, f0, Q: ring_amplitude(t, f0, Q) * np.cos(2 * np.pi * f0 * slowing(Q) * t),
                ),
                slip(
                    "forgotten that the loss slows the swing a little",
                    lambda t, f0, Q: (
                        ring_amplitude(t, f0, Q) * (np.cos(2 * np.pi * f0 * t) + np.sin(2 * np.pi * f0 * t) / (2 * Q))
                    ),
                ),
                slip("let it swing without loss", lambda t, f0, Q: np.cos(2 * np.pi * f0 * t)),
                slip(
                    "started it from nothing: the condenser is charged, so it starts with the cosine",
                    lambda t, f0, Q: ring_amplitude(t, f0, Q) * np.sin(2 * np.pi * f0 * slowing(Q) * t),
                ),
                slip(
                    "left out the minus sign: it grows", lambda t, f0, Q: ring_voltage(t, f0, Q) * np.exp(2 * decay(t, f0, Q))
                ),
            ],
        ),
    ],
    hints=[
        "In each cycle the circuit loses the same part of what it has. That is an exponential, and Q sets its pace.",
        "The amplitude is exp(-π f0 t / Q), the energy its square. Set the amplitude equal to the fraction and take "
        "np.log of both sides; the cycles are f0 t. The voltage is the amplitude times a swing of cosine and sine, a "
        "little slower than f0: by s = sqrt(1 - 1/(4 Q²)).",
        "ring_amplitude is np.exp(-np.pi * resonant_frequency * time / quality_factor); ring_energy is its square. "
        "cycles_to_fall is -np.log(fraction) * quality_factor / np.pi, after `raise ValueError(...)` where "
        "np.any(fraction <= 0) or np.any(fraction > 1). ring_voltage, where quality_factor is above 0.5 (else "
        "ValueError): with s = np.sqrt(1 - 1 / (4 * quality_factor**2)) and w = 2 * np.pi * resonant_frequency * s it is "
        "the amplitude times np.cos(w * time) + np.sin(w * time) / (2 * quality_factor * s).",
    ],
)

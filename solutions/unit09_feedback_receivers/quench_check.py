"""How `quench` is judged.

In the laws and slips: t a time, a a start, g and d growth and decay, f0 the frequency, E the e.m.f. in the coil, T and U how
long a burst grows and dies, δ an offset, A the limit, m the depth, q the quench frequency.
"""

import numpy as np

from checker import (
    Exercise,
    Question,
    at_most,
    drawn,
    equal,
    hertz,
    invariant,
    less,
    number,
    physical,
    refusal,
    relative,
    seconds,
    slip,
    value,
    volts,
)

from .quench import linear_gain, logarithmic_audio, mean_swing, relative_response, signal_start, swing_after

CLOSE = relative(1e-9, because="a few operations, double precision", floor=1e-15)
FREQUENCY, EMF = hertz("500 kHz", "50 MHz"), volts("1 µV", "10 mV")
GROWTH, DECAY = physical("Np/s", "20 kNp/s", "2 MNp/s"), physical("Np/s", "20 kNp/s", "2 MNp/s")
GROWING, DYING = seconds("2 µs", "200 µs"), seconds("2 µs", "200 µs")
RAYLEIGH = "radar handbooks, on clutter behind a logarithmic receiver: 5.57 dB for a Rayleigh amplitude"
HALF_LIFE = "Abramowitz and Stegun, Handbook of Mathematical Functions, 1964, Table 4.2 (its number from memory): ln 2"


def nearly(left, right, tolerance):
    return equal(left, right, relative(1e-3, because="a limit, nearly reached"))


def closely(left, right, tolerance):
    return equal(left, right, relative(1e-6, because="a difference of nearly equal values"))


def quiet(g, d, T, U):
    return 0.2 < g * T < 14 and g * T < 0.9 * d * U


EXERCISE = Exercise(
    title="Oscillating, but never for long?",
    questions=[
        Question(
            asks=swing_after,
            given={
                "time": seconds("100 ns", "200 µs"),
                "start": volts("1 µV", "100 mV"),
                "growth": drawn(
                    [1e5, -1e5, 3e4, -3e4, 1e6, -1e6, -2.5e5, 2.5e5],
                    "−1 MNp/s to 1 MNp/s, not 0",
                    unit="Np/s",
                    stacks=True,
                ),
                "frequency": FREQUENCY,
                "emf": EMF,
            },
            where=lambda t, a, g, f0, E: abs(g * t) < 15,
            gives="V",
            agrees_within=CLOSE,
            holds=[
                invariant("it begins where it is", lambda f, t, a, g, f0, E: (f(0.0, a, g, f0, E), a)),
                invariant(
                    "without a signal it takes equal factors in equal times",
                    lambda f, t, a, g, f0, E: (f(2 * t, a, g, f0, 0.0) * a, f(t, a, g, f0, 0.0) ** 2),
                ),
                invariant(
                    "it may be stopped and started again on the way",
                    lambda f, t, a, g, f0, E: (f(t, f(t, a, g, f0, E), g, f0, E), f(2 * t, a, g, f0, E)),
                ),
                invariant(
                    "a circuit of Q 100 left alone comes to 100 times the e.m.f.",
                    lambda f, t, a, g, f0, E: (f(4000 / f0, E, -np.pi * f0 / 100, f0, E), 100 * E),
                    nearly,
                ),
            ],
            published=[
                value(
                    "no signal, growth 1 neper a second, for ln 2 seconds: twice",
                    given=(0.6931471806, 1e-3, 1.0, 1e6, 0.0),
                    wanted=2e-3,
                    within=relative(1e-9, because="tabulated to 10 figures"),
                    source=HALF_LIFE,
                    known="memory",
                ),
            ],
            slips=[
                slip("left the signal out", lambda t, a, g, f0, E: a * np.exp(g * t) + 0 * f0 * E),
                slip("left π out of what the signal adds", lambda t, a, g, f0, E: swing_after(t, a, g, f0, E / np.pi)),
                slip(
                    "taken 2π where π belongs: an envelope moves half as fast",
                    lambda t, a, g, f0, E: swing_after(t, a, g, f0, 2 * E),
                ),
                slip(
                    "let what the signal adds pile up evenly, without growing",
                    lambda t, a, g, f0, E: a * np.exp(g * t) + np.pi * f0 * E * t,
                ),
                slip(
                    "left out the −1: at time 0 the signal has added nothing",
                    lambda t, a, g, f0, E: (a + np.pi * f0 * E / g) * np.exp(g * t),
                ),
            ],
        ),
        Question(
            asks=signal_start,
            given={"frequency": FREQUENCY, "emf": EMF, "growth": GROWTH, "decay": DECAY},
            gives="V",
            agrees_within=CLOSE,
            holds=[
                invariant("growth and decay may change places", lambda f, f0, E, g, d: (f(f0, E, d, g), f(f0, E, g, d))),
                invariant("twice the signal, twice the start", lambda f, f0, E, g, d: (f(f0, 2 * E, g, d), 2 * f(f0, E, g, d))),
                invariant(
                    "grown for a while, less what the last moment's signal would add, it is your swing",
                    lambda f, f0, E, g, d: (
                        f(f0, E, g, d) * np.exp(3.0),
                        f.swing_after(3.0 / g, np.pi * f0 * E / d, g, f0, E) + np.pi * f0 * E / g,
                    ),
                ),
            ],
            no_published="A closed form; tests integrate the envelope's equation.",
            slips=[
                slip("left out what growth adds", lambda f0, E, g, d: np.pi * f0 * E / d + 0 * g),
                slip("left out what the quench leaves", lambda f0, E, g, d: np.pi * f0 * E / g + 0 * d),
                slip("divided by growth and decay together", lambda f0, E, g, d: np.pi * f0 * E / (g + d)),
                slip("taken 2π where π belongs", lambda f0, E, g, d: 2 * signal_start(f0, E, g, d)),
                slip("subtracted one from the other", lambda f0, E, g, d: np.pi * f0 * E * (1 / d - 1 / g + 1e-9)),
            ],
        ),
        Question(
            asks=linear_gain,
            given={"frequency": FREQUENCY, "growth": GROWTH, "decay": DECAY, "growing": GROWING, "dying": DYING},
            where=lambda f0, g, d, T, U: quiet(g, d, T, U),
            edges=[lambda f0, g, d, T, U: (f0, g, d, T, 1.01 * g * T / d)],  # it dies away by hardly more than it grows
            agrees_within=CLOSE,
            holds=[
                invariant(
                    "the burst comes back to itself after a cycle",
                    lambda f, f0, g, d, T, U: (
                        f.swing_after(T, f.swing_after(U, f(f0, g, d, T, U), -d, f0, 1.0), g, f0, 1.0),
                        f(f0, g, d, T, U),
                    ),
                    closely,
                ),
                invariant(
                    "quenched well, each further neper of growth is a factor of 2.718",
                    lambda f, f0, g, d, T, U: (f(f0, g, d, 8 / g, 30 / d), f(f0, g, d, 7 / g, 30 / d) * np.e),
                    nearly,
                ),
                invariant(
                    "a shorter quench leaves more of the last burst for the next",
                    lambda f, f0, g, d, T, U: (f(f0, g, d, T, 2 * U), f(f0, g, d, T, U)),
                    at_most,
                ),
            ],
            no_published="A closed form; tests integrate the envelope's equation with a quench.",
            refuses=[
                refusal("growth and decay that are equal", (1e6, 1e5, 1e5, 50e-6, 50e-6)),
                refusal("a quench too short", (30e6, 2e5, 1e5, 50e-6, 50e-6)),
            ],
            slips=[
                slip(
                    "left out what hangs over from burst to burst",
                    lambda f0, g, d, T, U: linear_gain(f0, g, d, T, U) * -np.expm1(g * T - d * U),
                ),
                slip("begun each burst from nothing", lambda f0, g, d, T, U: np.pi * f0 * np.expm1(g * T) / g + 0 * d * U),
                slip(
                    "taken for granted that the quench is long and the growth large",
                    lambda f0, g, d, T, U: np.pi * f0 * (1 / g + 1 / d) * np.exp(g * T) + 0 * U,
                ),
                slip(
                    "given the swing at the end of the quench: the top of the burst is wanted",
                    lambda f0, g, d, T, U: swing_after(U, linear_gain(f0, g, d, T, U), -d, f0, 1.0),
                ),
                slip(
                    "counted the growth in factors of ten",
                    lambda f0, g, d, T, U: np.pi * f0 * (1 / g + 1 / d) * 10 ** (g * T) + 0 * U,
                ),
            ],
        ),
        Question(
            asks=relative_response,
            given={"offset": hertz("1 kHz", "1 MHz"), "growth": GROWTH, "decay": DECAY},
            agrees_within=CLOSE,
            holds=[
                invariant("above the station as below it", lambda f, δ, g, d: (f(-δ, g, d), f(δ, g, d))),
                invariant("in tune it is 1", lambda f, δ, g, d: (f(0.0, g, d), 1.0)),
                invariant(
                    "with growth and decay alike it is a half where 2π times the offset equals them",
                    lambda f, δ, g, d: (f(g / (2 * np.pi), g, g), 0.5),
                ),
                invariant("far off, twice as far is a quarter", lambda f, δ, g, d: (f(1e9, g, d), f(5e8, g, d) / 4), nearly),
                invariant(
                    "slower growth listens for longer, and more sharply", lambda f, δ, g, d: (f(δ, g / 2, d), f(δ, g, d)), less
                ),
            ],
            no_published="A Fourier transform; tests integrate the envelope's equation with a signal off tune.",
            slips=[
                slip("left out 2π", lambda δ, g, d: relative_response(δ / (2 * np.pi), g, d)),
                slip("left out the square root", lambda δ, g, d: relative_response(δ, g, d) ** 2),
                slip("left out the growth: it listens in both", lambda δ, g, d: relative_response(δ, 1e15, d) + 0 * g),
                slip("left out the decay: it listens in both", lambda δ, g, d: relative_response(δ, g, 1e15) + 0 * d),
                slip(
                    "added the two squares under one root",
                    lambda δ, g, d: 1 / np.sqrt(1 + (2 * np.pi * δ) ** 2 * (1 / g**2 + 1 / d**2)),
                ),
            ],
        ),
        Question(
            asks=mean_swing,
            given={
                "start": volts("1 µV", "100 mV"),
                "limit": volts("500 mV", "20 V"),
                "growth": GROWTH,
                "decay": DECAY,
                "growing": GROWING,
                "dying": DYING,
            },
            where=lambda a, A, g, d, T, U: 0.5 < g * T < 40 and a * np.exp(g * T) > 0.3 * A,
            edges=[lambda a, A, g, d, T, U: (0.99 * A, A, g, d, T, U)],
            gives="V",
            agrees_within=relative(1e-8, because="two nearly equal logarithms in the worst case"),
            holds=[
                invariant(
                    "a burst far below the limit is in proportion to its start",
                    lambda f, a, A, g, d, T, U: (f(2e-6, 1e9, g, d, 3 / g, U), 2 * f(1e-6, 1e9, g, d, 3 / g, U)),
                    nearly,
                ),
                invariant(
                    "at the limit each neper of start adds the same: limit over growth, for each cycle",
                    lambda f, a, A, g, d, T, U: (
                        (f(1e-6 * A * np.e, A, g, d, 30 / g, U) - f(1e-6 * A, A, g, d, 30 / g, U)) * (30 / g + U) * g / A,
                        1.0,
                    ),
                    nearly,
                ),
                invariant("it never reaches the limit", lambda f, a, A, g, d, T, U: (f(a, A, g, d, T, 40 / d + U), A), less),
                invariant(
                    "without growth enough to matter a large start stays where it is, and then dies away",
                    lambda f, a, A, g, d, T, U: (
                        f(0.5 * A, A, 1.0, d, 1e-7, 40 / d) * (1e-7 + 40 / d),
                        0.5 * A * (1e-7 + 1 / d),
                    ),
                    nearly,
                ),
            ],
            no_published="A closed form; tests integrate the envelope's equation.",
            refuses=[
                refusal(
                    "a burst that starts from nothing", (0.0, 1.0, 1e5, 1e5, 1e-5, 5e-5), (-0.001, 1.0, 1e5, 1e5, 1e-5, 5e-5)
                ),
                refusal(
                    "a burst that starts from above its limit",
                    (2.0, 1.0, 1e5, 1e5, 1e-5, 5e-5),
                    (1.01, 1.0, 1e5, 1e5, 1e-5, 5e-5),
                    (1.0, 1.0, 1e5, 1e5, 1e-5, 5e-5),
                ),
            ],
            slips=[
                slip("forgotten the tail after the burst", lambda a, A, g, d, T, U: mean_swing(a, A, g, 1e15, T, U) + 0 * d),
                slip(
                    "let the burst grow without limit",
                    lambda a, A, g, d, T, U: a * (np.expm1(g * T) / g - np.exp(g * T) * np.expm1(-d * U) / d) / (T + U),
                ),
                slip(
                    "forgotten to divide by the length of the cycle",
                    lambda a, A, g, d, T, U: mean_swing(a, A, g, d, T, U) * (T + U),
                ),
                slip(
                    "averaged over the growing half alone", lambda a, A, g, d, T, U: mean_swing(a, A, g, d, T, U) * (T + U) / T
                ),
                slip(
                    "cut the growth off at the limit: it slackens well before",
                    lambda a, A, g, d, T, U: cut_off(a, A, g, d, T, U),
                ),
            ],
        ),
        Question(
            asks=logarithmic_audio,
            given={
                "depth": number(0.05, 0.95),
                "limit": volts("500 mV", "20 V"),
                "growth": GROWTH,
                "quench_frequency": hertz("10 kHz", "200 kHz"),
            },
            edges=[lambda m, A, g, q: (0.99, A, g, q)],
            gives=("V", "V"),
            agrees_within=CLOSE,
            holds=[
                invariant(
                    "twice the growth, half of both",
                    lambda f, m, A, g, q: (np.array(f(m, A, 2 * g, q)), np.array(f(m, A, g, q)) / 2),
                ),
                invariant(
                    "no modulation, no programme; but the rush is as before",
                    lambda f, m, A, g, q: (np.array(f(0.0, A, g, q)), np.array(f(m, A, g, q)) * [0, 1]),
                ),
                invariant(
                    "twice the programme is the logarithm of crest over trough",
                    lambda f, m, A, g, q: (np.exp(2 * f(m, A, g, q)[0] * g / (A * q)), (1 + m) / (1 - m)),
                ),
                invariant(
                    "half of twice the limit's bursts sound as loud",
                    lambda f, m, A, g, q: (np.array(f(m, 2 * A, g, q / 2)), np.array(f(m, A, g, q))),
                ),
            ],
            published=[
                value(
                    "rush at 1 V and one neper: 5.57 dB of it, 0.641; programme of half depth, 0.549",
                    given=(0.5, 1.0, 20e3, 20e3),
                    wanted=(0.549306, 5.57 / 8.685890),
                    within=relative(1e-3, because="printed to three figures"),
                    source=RAYLEIGH,
                    known="memory",
                ),
            ],
            slips=[
                slip("used np.log10", lambda m, A, g, q: tuple(np.array(logarithmic_audio(m, A, g, q)) / np.log(10))),
                slip(
                    "given the whole way from trough to crest: half of it is wanted",
                    lambda m, A, g, q: (2 * logarithmic_audio(m, A, g, q)[0], logarithmic_audio(m, A, g, q)[1]),
                ),
                slip(
                    "taken the depth itself: this detector follows the logarithm",
                    lambda m, A, g, q: (m * A * q / g, logarithmic_audio(m, A, g, q)[1]),
                ),
                slip(
                    "multiplied by the growth where it divides",
                    lambda m, A, g, q: tuple(np.array(logarithmic_audio(m, A, g, q)) * g**2 / q**2),
                ),
                slip(
                    "taken π/√6: that is for the power's logarithm",
                    lambda m, A, g, q: (logarithmic_audio(m, A, g, q)[0], 2 * logarithmic_audio(m, A, g, q)[1]),
                ),
            ],
        ),
    ],
    hints=[
        "The envelope obeys dv/dt = growth × v + π f × emf, with one growth while the valve pays and another, below zero, "
        "while it is shut. Solve it for a constant growth, and put the pieces together.",
        "One piece: start e^{gt} + π f E (e^{gt} − 1)/g; np.expm1 gives e^x − 1. A cycle is two pieces, and in the long run "
        "its end is its beginning. Off tune, the weight e^{−d|t|} before the turn and e^{−gt} after it has the transform "
        "1/(d + jω) + 1/(g − jω). The area of a burst up to its limit is limit/growth × a difference of np.arcsinh.",
        "π × frequency × emf × (1/decay + 1/growth);   with up = growth × growing and down = decay × dying: π × frequency"
        " × (np.expm1(up)/growth − np.exp(up) × np.expm1(−down)/decay)/(1 − np.exp(up − down)), after `raise "
        "ValueError(…)` where np.any(up >= down);   with w = 2π × offset: 1/np.sqrt((1 + (w/growth)²)(1 + (w/decay)²));"
        "   with x = start/np.sqrt(limit² − start²): (limit/growth × (arcsinh(x × np.exp(up)) − arcsinh(x)) + "
        "amplitude(…)/decay × (1 − np.exp(−down)))/(growing + dying), ValueError where np.any(start <= 0) or np.any(start"
        " >= limit);   limit × quench_frequency/growth times np.arctanh(depth), and times π/√24.",
    ],
)


def cut_off(a, A, g, d, T, U):
    reached = np.minimum(np.log(A / a) / g, T)
    top = np.minimum(A, a * np.exp(g * T))
    return (a * np.expm1(g * reached) / g + top * (T - reached) - top * np.expm1(-d * U) / d) / (T + U)

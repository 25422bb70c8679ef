"""How `treble_loss` is judged.

In the laws and slips: F the tone, B the bandwidth, d the detuning, dB the loss, Fs and As a programme's tones and their
amplitudes.
"""

import numpy as np

from checker import (
    Exercise,
    Question,
    absolute,
    at_most,
    decibels,
    drawn,
    equal,
    hertz,
    invariant,
    less,
    relative,
    slip,
    value,
)

from .treble_loss import highest_tone, programme_left, tone_level, tone_response

CUT = "single tuned circuit at 1 MHz; reaction.toml, sideband_cutting"
CLOSE = relative(1e-9, because="a few operations, double precision")
TONE, BANDWIDTH = hertz("50 Hz", "10 kHz"), hertz("200 Hz", "20 kHz")
TONES = [
    np.array(tones)
    for tones in (
        [200.0, 1000.0, 4000.0],
        [100.0, 3000.0, 5000.0],
        [300.0, 500.0, 6000.0],
        [50.0, 2000.0, 9000.0],
        [1000.0, 2000.0, 3000.0],
    )
]
AMPLITUDES = [
    np.array(sizes) for sizes in ([1.0, 1.0, 1.0], [3.0, 2.0, 1.0], [1.0, 2.0, 0.0], [0.5, 0.2, 0.1], [1.0, 5.0, 2.0])
]


def side(F, B, d):
    return 1 / (1 + 2j * (d + F) / B)


def nearly(left, right, tolerance):
    return equal(left, right, relative(1e-3, because="a limit, nearly reached"))


EXERCISE = Exercise(
    title="What does a narrow band do to speech and music?",
    questions=[
        Question(
            asks=tone_response,
            further=True,
            given={"tone": TONE, "bandwidth": BANDWIDTH, "detuning": hertz("-5 kHz", "5 kHz")},
            agrees_within=CLOSE,
            holds=[
                invariant(
                    "the slowest tones keep their depth, wherever the carrier lies", lambda r, F, B, d: (r(0.0, B, d), 1)
                ),
                invariant("above the peak and below it sound alike", lambda r, F, B, d: (r(F, B, -d), r(F, B, d))),
                invariant(
                    "on the peak a higher tone always loses more", lambda r, F, B, d: (r(2 * F, B, 0.0), r(F, B, 0.0)), less
                ),
                invariant(
                    "only ratios count: all three doubled are the same", lambda r, F, B, d: (r(2 * F, 2 * B, 2 * d), r(F, B, d))
                ),
                invariant(
                    "far down the slope the tone as far off as the peak gains half its detuning in half bandwidths",
                    lambda r, F, B, d: (r(5000 * B, B, 5000 * B), 5000.0),
                    nearly,
                ),
            ],
            published=[
                value(
                    "1 kHz behind 2 kHz of bandwidth: 3.0103 dB down",
                    given=(1000.0, 2000.0, 0.0),
                    wanted=10 ** (-3.0103 / 20),
                    within=relative(1e-5, because="printed to 0.0001 dB"),
                    source=f"{CUT}, Q 500",
                    known="recomputed",
                ),
            ],
            slips=[
                slip(
                    "looked at one side frequency only: the envelope hears both",
                    lambda F, B, d: np.abs(side(F, B, d) / side(0, B, d)),
                ),
                slip(
                    "forgotten to divide by what becomes of the carrier",
                    lambda F, B, d: np.abs(side(F, B, d) + np.conj(side(-F, B, d))) / 2,
                ),
                slip(
                    "added the two sizes: the sides turn against each other in phase",
                    lambda F, B, d: (np.abs(side(F, B, d)) + np.abs(side(-F, B, d))) / 2 / np.abs(side(0, B, d)),
                ),
                slip(
                    "left out the conjugate: the lower side frequency turns the other way round the carrier",
                    lambda F, B, d: np.abs(side(F, B, d) / side(0, B, d) + side(-F, B, d) / side(0, B, d)) / 2,
                ),
                slip("taken the bandwidth to one side only, for half of it", lambda F, B, d: tone_response(F, 2 * B, d)),
                slip(
                    "forgotten to halve: each side frequency carries half of the tone",
                    lambda F, B, d: 2 * tone_response(F, B, d),
                ),
            ],
        ),
        Question(
            asks=tone_level,
            given={"tone": TONE, "bandwidth": BANDWIDTH},
            gives="dB",
            agrees_within=absolute(1e-9, because="a tone that loses nothing is at 0 dB"),
            holds=[
                invariant("never louder than a slow tone", lambda f, F, B: (f(F, B), 0.0), at_most),
                invariant(
                    "a tone of half the bandwidth keeps half its power", lambda f, F, B: (f(B / 2, B), 10 * np.log10(0.5))
                ),
                invariant(
                    "far out an octave costs 6 dB", lambda f, F, B: (f(2000 * B, B) - f(1000 * B, B), -20 * np.log10(2)), nearly
                ),
            ],
            published=[
                value(
                    "4.5 kHz at Q 100: 10 kHz of bandwidth",
                    given=(4500.0, 10e3),
                    wanted=-2.5768,
                    within=absolute(6e-5, because="printed to 0.0001 dB"),
                    source=CUT,
                    known="recomputed",
                ),
                value(
                    "3 kHz at Q 2000: 500 Hz of bandwidth",
                    given=(3000.0, 500.0),
                    wanted=-21.6137,
                    within=absolute(6e-5, because="printed to 0.0001 dB"),
                    source=CUT,
                    known="recomputed",
                ),
            ],
            slips=[
                slip("written 10 log: that is for powers; a depth is a voltage", lambda F, B: tone_level(F, B) / 2),
                slip("turned the sign: a loss is a negative level", lambda F, B: -tone_level(F, B)),
                slip("taken the bandwidth to one side only, for half of it", lambda F, B: tone_level(F, 2 * B)),
                slip("returned the fraction, not decibels", lambda F, B: 10 ** (tone_level(F, B) / 20)),
            ],
        ),
        Question(
            asks=highest_tone,
            given={"bandwidth": BANDWIDTH, "loss": decibels("1 dB", "40 dB")},
            gives="Hz",
            agrees_within=CLOSE,
            holds=[
                invariant("half the power is lost at half the bandwidth", lambda f, B, dB: (f(B, 10 * np.log10(2)), B / 2)),
                invariant("twice the bandwidth reaches twice as high", lambda f, B, dB: (f(2 * B, dB), 2 * f(B, dB))),
                invariant("who puts up with more loss hears higher", lambda f, B, dB: (f(B, dB), f(B, dB + 1)), less),
            ],
            published=[
                value(
                    "10 dB lost behind 2 kHz: 3 kHz",
                    given=(2000.0, 10.0),
                    wanted=3000.0,
                    within=relative(1e-5, because="printed to 0.0001 dB"),
                    source=f"{CUT}, Q 500",
                    known="recomputed",
                ),
            ],
            slips=[
                slip("taken the whole bandwidth: the carrier sits in the middle of it", lambda B, dB: 2 * highest_tone(B, dB)),
                slip(
                    "divided the loss by 20: it is the square that 1 is taken from",
                    lambda B, dB: B / 2 * np.sqrt(10 ** (dB / 20) - 1),
                ),
                slip("left out the 1", lambda B, dB: B / 2 * 10 ** (dB / 20)),
                slip("left out the root", lambda B, dB: B / 2 * (10 ** (dB / 10) - 1)),
                slip("given half the bandwidth for every loss: that is the 3 dB tone", lambda B, dB: B / 2 + 0 * dB),
            ],
        ),
        Question(
            asks=programme_left,
            further=True,
            given={
                "tones": drawn(TONES, "three tones, 50 Hz to 9 kHz"),
                "amplitudes": drawn(AMPLITUDES, "one for each tone, 0 to 5"),
                "bandwidth": BANDWIDTH,
            },
            edges=[
                lambda tones, amplitudes, bandwidth: (np.array([0.0, 1000.0, 3000.0]), np.array([1.0, 1.0, 0.5]), bandwidth)
            ],
            agrees_within=CLOSE,
            arrays=False,
            holds=[
                invariant("never more than there was", lambda f, Fs, As, B: (f(Fs, As, B), 1), at_most),
                invariant("how loud the programme is does not count", lambda f, Fs, As, B: (f(Fs, 3 * As, B), f(Fs, As, B))),
                invariant(
                    "one tone of half the bandwidth keeps half",
                    lambda f, Fs, As, B: (f(np.array([B / 2]), np.array([1.0]), B), 0.5),
                ),
                invariant("a narrower band leaves less", lambda f, Fs, As, B: (f(Fs, As, B / 2), f(Fs, As, B)), less),
            ],
            no_published="A sum over whatever is played; its single tones have their figures.",
            slips=[
                slip(
                    "added voltages: it is the powers of different tones that add",
                    lambda Fs, As, B: np.sum(As * tone_response(Fs, B, 0.0)) / np.sum(As),
                ),
                slip(
                    "left the response unsquared", lambda Fs, As, B: np.sum(As**2 * tone_response(Fs, B, 0.0)) / np.sum(As**2)
                ),
                slip(
                    "averaged over the tones as if they were equally loud",
                    lambda Fs, As, B: np.mean(tone_response(Fs, B, 0.0) ** 2) + 0 * As[0],
                ),
                slip("returned what is lost", lambda Fs, As, B: 1 - programme_left(Fs, As, B)),
                slip("forgotten to divide by what there was", lambda Fs, As, B: np.sum(As**2 * tone_response(Fs, B, 0.0) ** 2)),
            ],
        ),
    ],
    hints=[
        "The tone reaches the set as two side frequencies, at carrier + F and carrier − F. How does the tuned circuit treat "
        "each of them, and how does it treat the carrier?",
        "At x hertz from the peak the circuit passes 1/(1 + 2jx/B). Let the carrier be at d, the sides at d + F and d − F. "
        "Divide each side by the carrier's. Seen from the carrier the sides turn opposite ways, so one is conjugated "
        "before they are added and halved. On the peak all this comes to 1/sqrt(1 + (2F/B)²).",
        "tone_level is -10 * np.log10(1 + (2 * tone / bandwidth) ** 2); highest_tone is bandwidth / 2 * np.sqrt(10 ** "
        "(loss / 10) - 1). tone_response: with H = lambda x: 1 / (1 + 2j * x / bandwidth) it is abs(H(detuning + tone) / "
        "H(detuning) + np.conj(H(detuning - tone) / H(detuning))) / 2. programme_left: the sum of amplitudes² × "
        "tone_response(tones, bandwidth, 0)² over the sum of amplitudes².",
    ],
)

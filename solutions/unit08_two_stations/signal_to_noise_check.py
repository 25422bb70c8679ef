"""How `signal_to_noise` is judged.

In the laws and slips: f the function asked for, R the resistance, B the bandwidth, T the temperature, s the signal, n the noise.
"""

import numpy as np

from checker import Exercise, Question, hertz, invariant, ohms, physical, relative, slip, value, volts

from .signal_to_noise import BOLTZMANN, ratio, thermal_noise

CLOSE = relative(1e-9, because="a few operations, double precision")
NYQUIST = "H. Nyquist, Thermal Agitation of Electric Charge in Conductors, Physical Review 32, 110 (1928), with the exact constant of the SI"
V574 = "Recommendation ITU-R V.574, Use of the decibel and the neper in telecommunications (from memory)"

EXERCISE = Exercise(
    title="How far above the hiss?",
    questions=[
        Question(
            asks=thermal_noise,
            given={
                "resistance": ohms("1 Ω", "1 MΩ"),
                "bandwidth": hertz("100 Hz", "20 kHz"),
                "temperature": physical("K", "250 K", "3000 K"),
            },
            gives="V",
            agrees_within=CLOSE,
            holds=[
                invariant("four times the band, twice the noise", lambda f, R, B, T: (f(R, 4 * B, T), 2 * f(R, B, T))),
                invariant("four times the resistance, twice the noise", lambda f, R, B, T: (f(4 * R, B, T), 2 * f(R, B, T))),
                invariant("four times as hot, twice the noise", lambda f, R, B, T: (f(R, B, 4 * T), 2 * f(R, B, T))),
            ],
            published=[
                value(
                    "1 kΩ, 1 Hz, 290 K: 4.00 nV",
                    given=(1e3, 1.0, 290.0),
                    wanted=4.00e-9,
                    within=relative(1e-3, because="told to three figures"),
                    source=NYQUIST,
                    known="recomputed",
                ),
            ],
            slips=[
                slip("left out the square root", lambda R, B, T: 4 * BOLTZMANN * T * R * B),
                slip("left out the 4", lambda R, B, T: np.sqrt(BOLTZMANN * T * R * B)),
                slip("left the 4 outside the root", lambda R, B, T: 4 * np.sqrt(BOLTZMANN * T * R * B)),
                slip("left the bandwidth outside the root", lambda R, B, T: np.sqrt(4 * BOLTZMANN * T * R) * B),
                slip(
                    "divided by the resistance: that is the current of a short circuit",
                    lambda R, B, T: np.sqrt(4 * BOLTZMANN * T / R * B),
                ),
                slip("left out the bandwidth", lambda R, B, T: np.sqrt(4 * BOLTZMANN * T * R) + 0 * B),
                slip(
                    "added 273 to a temperature that is in kelvin already",
                    lambda R, B, T: np.sqrt(4 * BOLTZMANN * (T + 273.15) * R * B),
                ),
                slip(
                    "taken 273 from a temperature that is wanted in kelvin",
                    lambda R, B, T: np.sqrt(abs(4 * BOLTZMANN * (T - 273.15) * R * B)),
                ),
                slip("returned the crest: r.m.s. is wanted", lambda R, B, T: np.sqrt(8 * BOLTZMANN * T * R * B)),
            ],
        ),
        Question(
            asks=ratio,
            given={"signal": volts("100 nV", "10 mV"), "noise": volts("100 nV", "1 mV")},
            gives="dB",
            agrees_within=relative(1e-9, because="one logarithm, double precision", floor=1e-9),
            holds=[
                invariant("equal ones are 0 dB apart", lambda f, s, n: (f(s, s), 0.0)),
                invariant("the one above the other is as far as the other below it", lambda f, s, n: (f(s, n), -f(n, s))),
                invariant("ten times the signal is 20 dB more", lambda f, s, n: (f(10 * s, n), f(s, n) + 20)),
            ],
            published=[
                value(
                    "a thousand times the voltage: 60 dB",
                    given=(1e-3, 1e-6),
                    wanted=60.0,
                    within=CLOSE,
                    source=V574,
                    known="memory",
                ),
            ],
            slips=[
                slip("used 10 for 20: 10 is for powers", lambda s, n: 10 * np.log10(s / n)),
                slip("turned the ratio over", lambda s, n: 20 * np.log10(n / s)),
                slip("used np.log, which is the natural logarithm: np.log10 is meant", lambda s, n: 20 * np.log(s / n)),
                slip("left out the logarithm: that is a ratio, and no decibels", lambda s, n: s / n),
                slip("divided the logarithms: their difference is meant", lambda s, n: 20 * np.log10(s) / np.log10(n)),
                slip("taken the logarithm of the difference", lambda s, n: 20 * np.log10(abs(s - n))),
                slip("left out the 20", lambda s, n: np.log10(s / n)),
                slip("counted the noise in with the signal", lambda s, n: 20 * np.log10((s + n) / n)),
            ],
        ),
    ],
    hints=[
        "The square of the noise grows with the heat, the resistance and the band. Decibels of voltages are 20 times a logarithm.",
        "The square of the noise is 4kTRB: take the root of all of it. The ratio is 20 times the logarithm to base 10 of signal over noise.",
        "thermal_noise is np.sqrt(4 * BOLTZMANN * temperature * resistance * bandwidth), and ratio is 20 * np.log10(signal / noise).",
    ],
)

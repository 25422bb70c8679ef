"""How `least_heard` is judged.

In the laws and slips: R a resistance, B a bandwidth, T a temperature, i a current, Fa a noise figure, f0 a frequency, h an
effective height, X a reactance, e a noise voltage, g a mutual conductance, k what is induced, m a depth, r a ratio.
"""

import numpy as np

from checker import (
    Exercise,
    Question,
    amperes,
    at_most,
    decibels,
    equal,
    hertz,
    invariant,
    less,
    metres,
    number,
    ohms,
    physical,
    refusal,
    relative,
    siemens,
    slip,
    value,
    volts,
)
from solutions.unit01_signal.aerial_voltage import aerial_emf
from solutions.unit01_signal.radiation_resistance import radiation_resistance
from solutions.unit07_oscillation.radiated_field import noise_field

from .least_heard import (
    BOLTZMANN,
    ELECTRON_CHARGE,
    ROOM,
    circuit_noise,
    country_noise,
    least_field,
    noise_together,
    set_noise,
    shot_noise,
    thermal_noise,
)

CLOSE = relative(1e-9, because="a few operations, double precision")
TWO_FIGURES = relative(0.03, because="given to two figures, for a warm room")
LABORATORY = "P. Horowitz and W. Hill, The Art of Electronics, 2nd edition, 1989, section 7.11"
NOISE = "Recommendation ITU-R P.372 (constants as in the Study Group 3 software); noise_p372.csv"
VALVES = "F. Langford-Smith, Radiotron Designer's Handbook, 4th edition, 1953: table of valve noise, from RCA"
BAND, FREQUENCY = hertz("100 Hz", "20 kHz"), hertz("500 kHz", "1.6 MHz")
CIRCUIT = {
    "resistance": ohms("1 Ω", "30 Ω"),
    "reactance": ohms("500 Ω", "2.5 kΩ"),
    "leak_resistance": ohms("200 kΩ", "10 MΩ"),
    "grid_current": amperes("50 nA", "5 µA"),
    "bandwidth": BAND,
}
SET = {
    "circuit_noise": volts("20 nV", "500 nV"),
    "quality_factor": number(20, 200),
    "mutual_conductance": siemens("300 µS", "3 mS"),
    "induced": number(0.02, 1),
    "aerial_resistance": ohms("5 Ω", "100 Ω"),
    "bandwidth": BAND,
}


def nearly(left, right, tolerance):
    return equal(left, right, relative(3e-3, because="P.372's constant is rounded to 0.1 dB"))


def hot(Fa, f0, B, h, figure):
    """The country's noise with another number in place of the noise figure's ratio."""
    return thermal_noise(radiation_resistance(h, f0), B, ROOM) * np.sqrt(figure(Fa))


def in_the_coil(R, X, leak, i, B):
    """The squares of the three noises in series with the tuned coil."""
    return 4 * BOLTZMANN * ROOM * R * B, X**2 * 4 * BOLTZMANN * ROOM * B / leak, X**2 * 2 * ELECTRON_CHARGE * i * B


def at_the_aerial(e, Q, g, k, Ra, B):
    """The squares of the three noises of a set, in series with its aerial."""
    valve = 4 * BOLTZMANN * ROOM * 2.5 / g * B
    return e**2 / k**2, valve / (Q * k) ** 2, 4 * BOLTZMANN * ROOM * Ra * B


EXERCISE = Exercise(
    title="What is the least that can be heard?",
    questions=[
        Question(
            asks=thermal_noise,
            given={"resistance": ohms("1 Ω", "1 MΩ"), "bandwidth": BAND, "temperature": physical("K", "77 K", "3000 K")},
            gives="V",
            agrees_within=CLOSE,
            holds=[
                invariant("four times the band, twice the noise", lambda f, R, B, T: (f(R, 4 * B, T), 2 * f(R, B, T))),
                invariant(
                    "two resistances in series are as noisy as one as large as both",
                    lambda f, R, B, T: (f(R, B, T) ** 2 + f(2 * R, B, T) ** 2, f(3 * R, B, T) ** 2),
                ),
                invariant(
                    "a resistance twice as large and half as warm is as noisy",
                    lambda f, R, B, T: (f(2 * R, B, T / 2), f(R, B, T)),
                ),
            ],
            published=[
                value(
                    "10 kΩ in a warm room, 10 kHz wide: 1.3 µV",
                    given=(10e3, 10e3, 300.0),
                    wanted=1.3e-6,
                    within=TWO_FIGURES,
                    source=LABORATORY,
                    known="memory",
                ),
            ],
            slips=[
                slip(
                    "left out the 4: what a load can draw is kTB, the voltage behind the resistance is larger",
                    lambda R, B, T: np.sqrt(BOLTZMANN * T * R * B),
                ),
                slip("left out the square root", lambda R, B, T: 4 * BOLTZMANN * T * R * B),
                slip("counted the temperature in degrees Celsius", lambda R, B, T: thermal_noise(R, B, np.abs(T - 273.15))),
                slip("left the bandwidth out", lambda R, B, T: thermal_noise(R, 1.0, T) + 0 * B),
                slip("returned the current of the resistance short-circuited", lambda R, B, T: thermal_noise(R, B, T) / R),
            ],
        ),
        Question(
            asks=shot_noise,
            given={"current": amperes("1 nA", "10 mA"), "bandwidth": BAND},
            gives="A",
            agrees_within=CLOSE,
            holds=[
                invariant("four times the current, twice the fluctuation", lambda f, i, B: (f(4 * i, B), 2 * f(i, B))),
                invariant(
                    "a diode without bias is as noisy as its slope resistance: a current each way, 25 mV a factor of e",
                    lambda f, i, B: (
                        2 * f(i, B) ** 2,
                        f.thermal_noise(BOLTZMANN * ROOM / ELECTRON_CHARGE / i, B, ROOM) ** 2
                        / (BOLTZMANN * ROOM / ELECTRON_CHARGE / i) ** 2,
                    ),
                ),
            ],
            published=[
                value(
                    "1 A, 10 kHz wide: 57 nA",
                    given=(1.0, 10e3),
                    wanted=57e-9,
                    within=relative(0.01, because="given to two figures"),
                    source=LABORATORY,
                    known="memory",
                ),
                value(
                    "1 µA, 10 kHz wide: 57 pA",
                    given=(1e-6, 10e3),
                    wanted=57e-12,
                    within=relative(0.01, because="given to two figures"),
                    source=LABORATORY,
                    known="memory",
                ),
            ],
            slips=[
                slip("left out the 2: slow and fast fluctuations both count", lambda i, B: shot_noise(i / 2, B)),
                slip("left out the square root", lambda i, B: 2 * ELECTRON_CHARGE * i * B),
                slip("left the current out: more electrons, more noise", lambda i, B: shot_noise(1.0, B) + 0 * i),
                slip(
                    "taken the heat's k × 290 K where the electron's charge belongs",
                    lambda i, B: np.sqrt(2 * BOLTZMANN * ROOM * i * B),
                ),
            ],
        ),
        Question(
            asks=country_noise,
            given={
                "noise_figure": decibels("20 dB", "90 dB"),
                "frequency": FREQUENCY,
                "bandwidth": BAND,
                "effective_height": metres("0.3 m", "15 m"),
            },
            gives="V",
            agrees_within=CLOSE,
            holds=[
                invariant(
                    "at 0 dB the country is as warm as a room",
                    lambda f, Fa, f0, B, h: (f(0.0, f0, B, h), f.thermal_noise(radiation_resistance(h, f0), B, ROOM)),
                ),
                invariant(
                    "20 dB more, ten times the voltage", lambda f, Fa, f0, B, h: (f(Fa + 20, f0, B, h), 10 * f(Fa, f0, B, h))
                ),
                invariant(
                    "an aerial twice as high takes up twice as much",
                    lambda f, Fa, f0, B, h: (f(Fa, f0, B, 2 * h), 2 * f(Fa, f0, B, h)),
                ),
                invariant(
                    "it is the noise field of unit 07 times the height",
                    lambda f, Fa, f0, B, h: (f(Fa, f0, B, h), aerial_emf(noise_field(f0, B, Fa, 0.0), h)),
                    nearly,
                ),
            ],
            published=[
                value(
                    "country, 1 MHz, 9 kHz wide: 11.24 dB above 1 µV/m, on an aerial 1 m high",
                    given=(67.2, 1e6, 9e3, 1.0),
                    wanted=1e-6 * 10 ** (11.24 / 20),
                    within=relative(3e-3, because="a constant rounded to 0.1 dB"),
                    source=NOISE,
                    known="recomputed",
                ),
            ],
            slips=[
                slip(
                    "used 20 log to undo the decibels: the noise figure is one of powers",
                    lambda Fa, f0, B, h: hot(Fa, f0, B, h, lambda Fa: 10 ** (Fa / 20)),
                ),
                slip("left out the noise figure", lambda Fa, f0, B, h: hot(Fa, f0, B, h, lambda Fa: 1.0 + 0 * Fa)),
                slip("returned the field, in volts a metre", lambda Fa, f0, B, h: country_noise(Fa, f0, B, h) / h),
                slip(
                    "forgotten 290 K: the noise figure counts from the heat of a room",
                    lambda Fa, f0, B, h: country_noise(Fa, f0, B, h) / np.sqrt(ROOM),
                ),
                slip("turned the sign of the noise figure round", lambda Fa, f0, B, h: country_noise(-Fa, f0, B, h)),
            ],
        ),
        Question(
            asks=circuit_noise,
            given=CIRCUIT,
            gives="V",
            agrees_within=CLOSE,
            holds=[
                invariant(
                    "no grid current and a leak beyond measure: the heat of the coil is left",
                    lambda f, R, X, leak, i, B: (f(R, X, 1e30, 0.0, B), f.thermal_noise(R, B, ROOM)),
                ),
                invariant(
                    "a coil without loss: the two currents through the reactance",
                    lambda f, R, X, leak, i, B: (f(0.0, 2 * X, leak, i, B), 2 * f(0.0, X, leak, i, B)),
                ),
                invariant(
                    "a leak of a tenth is noisier across the circuit, though its own voltage is less",
                    lambda f, R, X, leak, i, B: (f(R, X, leak, i, B), f(R, X, leak / 10, i, B)),
                    less,
                ),
                invariant(
                    "four times the band, twice the noise",
                    lambda f, R, X, leak, i, B: (f(R, X, leak, i, 4 * B), 2 * f(R, X, leak, i, B)),
                ),
            ],
            no_published="No handbook works this very circuit; tests hold it to the noise of its parts solved as a network.",
            slips=[
                slip(
                    "added the voltages: add their squares",
                    lambda *inputs: np.sqrt(in_the_coil(*inputs)[0]) + np.sqrt(sum(in_the_coil(*inputs)[1:])),
                ),
                slip(
                    "put the leak in series with the coil: it lies across the condenser",
                    lambda R, X, leak, i, B: np.sqrt(
                        in_the_coil(R, X, leak, i, B)[0] + in_the_coil(R, X, leak, i, B)[2] + 4 * BOLTZMANN * ROOM * leak * B
                    ),
                ),
                slip("left out the leak's heat", lambda *inputs: np.sqrt(in_the_coil(*inputs)[0] + in_the_coil(*inputs)[2])),
                slip("left out the grid's fluctuation", lambda *inputs: np.sqrt(sum(in_the_coil(*inputs)[:2]))),
                slip("left out the coil's heat", lambda *inputs: np.sqrt(sum(in_the_coil(*inputs)[1:]))),
                slip(
                    "multiplied the currents' squares by the reactance: by its square",
                    lambda R, X, leak, i, B: np.sqrt(
                        in_the_coil(R, X, leak, i, B)[0] + sum(in_the_coil(R, X, leak, i, B)[1:]) / X
                    ),
                ),
            ],
        ),
        Question(
            asks=set_noise,
            given=SET,
            gives="V",
            agrees_within=CLOSE,
            holds=[
                invariant(
                    "half as much induced: circuit and valve count twice as much",
                    lambda f, e, Q, g, k, Ra, B: (f(e, Q, g, k / 2, 0.0, B), 2 * f(e, Q, g, k, 0.0, B)),
                ),
                invariant(
                    "all three left out but the earth, that is left",
                    lambda f, e, Q, g, k, Ra, B: (f(0.0, 1e15, g, k, Ra, B), f.thermal_noise(Ra, B, ROOM)),
                ),
                invariant(
                    "a valve a hundred times as steep does as well as a circuit ten times as good",
                    lambda f, e, Q, g, k, Ra, B: (f(e, Q, 100 * g, k, Ra, B), f(e, 10 * Q, g, k, Ra, B)),
                ),
                invariant(
                    "no set is quieter than its circuit", lambda f, e, Q, g, k, Ra, B: (e / k, f(e, Q, g, k, Ra, B)), at_most
                ),
            ],
            published=[
                value(
                    "6AC7 as a triode, 11.25 mS: as noisy as 220 Ω before the grid",
                    given=(0.0, 1.0, 11.25e-3, 1.0, 0.0, 1e3),
                    wanted=np.sqrt(4 * BOLTZMANN * ROOM * 220 * 1e3),
                    within=relative(0.02, because="a resistance given to two figures"),
                    source=VALVES,
                    known="memory",
                ),
            ],
            slips=[
                slip(
                    "left the valve's noise as large as it is at the grid: before the circuit it counts 1/Q",
                    lambda e, Q, g, k, Ra, B: set_noise(e, 1.0, g, k, Ra, B),
                ),
                slip(
                    "multiplied by what is induced: a noise behind the coupling counts the more, the looser that is",
                    lambda e, Q, g, k, Ra, B: np.sqrt(
                        (at_the_aerial(e, Q, g, k, Ra, B)[0] + at_the_aerial(e, Q, g, k, Ra, B)[1]) * k**4
                        + at_the_aerial(e, Q, g, k, Ra, B)[2]
                    ),
                ),
                slip("added the voltages: add their squares", lambda *inputs: sum(np.sqrt(at_the_aerial(*inputs)))),
                slip("left out the valve", lambda *inputs: np.sqrt(at_the_aerial(*inputs)[0] + at_the_aerial(*inputs)[2])),
                slip("left out the earth", lambda *inputs: np.sqrt(sum(at_the_aerial(*inputs)[:2]))),
                slip(
                    "taken 1/(mutual conductance) for the valve: 2.5 times that",
                    lambda e, Q, g, k, Ra, B: set_noise(e, Q, 2.5 * g, k, Ra, B),
                ),
            ],
        ),
        Question(
            asks=noise_together,
            given={"outside": volts("1 µV", "100 µV"), "own": volts("100 nV", "30 µV")},
            gives=("V", ""),
            agrees_within=CLOSE,
            holds=[
                invariant(
                    "a set as noisy as the place has half of it, and there is 1.41 times as much",
                    lambda f, o, s: (f(o, o), (np.sqrt(2) * o, 0.5)),
                ),
                invariant("a set without noise has none of it", lambda f, o, s: (f(o, 0.0), (o, 0.0))),
                invariant(
                    "the shares of both, seen from either side, are the whole", lambda f, o, s: (f(o, s)[1] + f(s, o)[1], 1.0)
                ),
            ],
            published=[
                value(
                    "two sources of one strength: 3.01 dB more than one",
                    given=(1e-6, 1e-6),
                    wanted=(1e-6 * 10 ** (3.0103 / 20), 0.5),
                    within=relative(1e-5, because="printed to five figures"),
                    source="10 log 2 = 3.0103, any table of logarithms",
                    known="recomputed",
                ),
            ],
            slips=[
                slip("added the voltages: add their squares", lambda o, s: (o + s, s / (o + s))),
                slip("returned the share of the voltage, not of the power", lambda o, s: (np.hypot(o, s), s / np.hypot(o, s))),
                slip("returned the place's share", lambda o, s: (np.hypot(o, s), 1 - noise_together(o, s)[1])),
                slip("compared the set with the place, not with both together", lambda o, s: (np.hypot(o, s), (s / o) ** 2)),
                slip("left out the square root", lambda o, s: (o**2 + s**2, noise_together(o, s)[1])),
            ],
        ),
        Question(
            asks=least_field,
            given={
                "noise": volts("1 µV", "100 µV"),
                "effective_height": metres("0.3 m", "15 m"),
                "depth": number(0.2, 1),
                "ratio": decibels("6 dB", "40 dB"),
            },
            gives="V/m",
            agrees_within=CLOSE,
            holds=[
                invariant("20 dB more, ten times the field", lambda f, e, h, m, r: (f(e, h, m, r + 20), 10 * f(e, h, m, r))),
                invariant("half the depth, twice the field", lambda f, e, h, m, r: (f(e, h, m / 2, r), 2 * f(e, h, m, r))),
                invariant(
                    "a higher aerial brings the place's noise too: what is then least is the same",
                    lambda f, e, h, m, r: (
                        f(f.country_noise(60.0, 1e6, 9e3, 2 * h), 2 * h, m, r),
                        f(f.country_noise(60.0, 1e6, 9e3, h), h, m, r),
                    ),
                ),
                invariant(
                    "modulated fully and as strong as the noise, the carrier has as much field as it",
                    lambda f, e, h, m, r: (f(e, h, 1.0, 0.0), e / h),
                ),
            ],
            published=[
                value(
                    "26 dB at 30 %, where the noise field is 50.1187 µV/m less 10.4576 dB: 60 dB above 1 µV/m",
                    given=(50.1187e-6 * 0.3, 1.0, 0.3, 26.0),
                    wanted=1e-3,
                    within=relative(1e-4, because="decibels written with six figures"),
                    source="Recommendation ITU-R BS.703 (1990): 60 dB(µV/m), 26 dB, 30 %; planning.toml",
                    known="memory",
                ),
            ],
            refuses=[
                refusal("a carrier without modulation", (10e-6, 7.0, 0.0, 10.0), (10e-6, 7.0, -0.001, 10.0)),
                refusal("a carrier modulated more than fully", (10e-6, 7.0, 1.2, 10.0), (10e-6, 7.0, 1.001, 10.0)),
            ],
            slips=[
                slip("used 10 log: fields are voltages", lambda e, h, m, r: e * 10 ** (r / 10) / (m * h)),
                slip("forgotten the depth: only the modulation is heard", lambda e, h, m, r: least_field(e, h, 1.0, r) + 0 * m),
                slip("taken the depth the wrong way round", lambda e, h, m, r: least_field(e, h, 1.0, r) * m),
                slip("returned the e.m.f., in volts", lambda e, h, m, r: least_field(e, h, m, r) * h),
                slip(
                    "counted the power in the sidebands alone, depth²/2: in step they add as voltages",
                    lambda e, h, m, r: least_field(e, h, m, r) * np.sqrt(2),
                ),
                slip("put the station below the noise", lambda e, h, m, r: least_field(e, h, m, -r)),
            ],
        ),
    ],
    hints=[
        "Every noise here is a square root of something times the bandwidth. Work with squares as long as you can: they add. "
        "Then ask of each noise where it sits: in series with the aerial, in series with the coil, across the condenser, or "
        "before the grid? Bring them all to the first place.",
        "The square of a resistance's noise is 4kTRB volts, of a current's 2eIB amperes. The country heats the radiation "
        "resistance to 290 × 10^(Fa/10) kelvin. A current across the condenser does as much as its reactance times that "
        "current in series with the coil. The valve is 2.5/gm ohms before the grid; divide by Q to bring that to the coil, and "
        "by `induced` to bring the coil's to the aerial.",
        "np.sqrt(4 × BOLTZMANN × temperature × resistance × bandwidth);  np.sqrt(2 × ELECTRON_CHARGE × current × "
        "bandwidth);  thermal_noise(radiation_resistance(effective_height, frequency), bandwidth, ROOM × "
        "10**(noise_figure/10));  with t = 4 × BOLTZMANN × ROOM × bandwidth: np.sqrt(t × resistance + reactance² × "
        "(t/leak_resistance + 2 × ELECTRON_CHARGE × grid_current × bandwidth));  np.sqrt((circuit_noise² + t × "
        "2.5/mutual_conductance/quality_factor²)/induced² + t × aerial_resistance);  together = np.sqrt(outside² + own²),"
        " share = (own/together)²;  noise × 10**(ratio/20)/(depth × effective_height), and ValueError where depth is not "
        "above 0 and at most 1.",
    ],
)

"""How `reflex` is judged.

In the laws and slips: μ the amplification factor, r the anode resistance, R and Z the radio and the audio load, C the
bypass, F the radio and f the tone, V the carrier, m the depth, A and B the radio and the audio gain, e the detector's
efficiency, n the ratio, a and g the anode's and the grid's voltage, o the offset.
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
    ohms,
    physical,
    picture,
    refusal,
    relative,
    slip,
    value,
    volts,
)
from solutions.unit05_valve.stage_gain import stage_gain
from solutions.unit05_valve.triode_current import anode_resistance, drive

from .reflex import bypass_limits, gain_slope, largest_carrier, largest_leak, path_gains, swings

CLOSE = relative(1e-9, because="a few operations, double precision")
SLOPE = relative(1e-6, because="the slope may be found by a small step")
ROUNDED = relative(0.01, because="a manual's three coefficients are each rounded")
MANUAL_30 = "RCA figures for type 30: μ 9.3, 10.3 kΩ, 900 µS, quoted on a page of measured valves; triodes.csv"
VALVE = {"amplification_factor": number(3, 100), "anode_resistance": ohms("5 kΩ", "100 kΩ")}
LOADS = {"radio_load": ohms("2 kΩ", "100 kΩ"), "audio_load": ohms("2 kΩ", "50 kΩ")}
RADIO, TONE = hertz("500 kHz", "1.6 MHz"), hertz("50 Hz", "5 kHz")
RETURNED = {"depth": number(0.1, 0.95), "radio_gain": number(1, 50), "efficiency": number(0.2, 0.95), "ratio": number(1, 6)}
TYPE_30 = (9.29, 267e-6, -0.67)


def has_room(a, g, m, A, e, n, μ, o):
    return drive(a, g, μ, o) > 0.1


def conducts(a, g, R, Z, μ, K, o):
    return drive(a, g, μ, o) > 0.1


def min_room(a, g, μ, o):
    return np.minimum(-g, drive(a, g, μ, o))


def left_of(C, Z, frequency):
    return Z / (1 + 2j * np.pi * frequency * C * Z)


def with_step(step, a, g, R, Z, *law):
    """Gain at a step on the grid, the anode following as the tone moves it."""
    factor = law[0]
    follows = stage_gain(factor, anode_resistance(a, g, *law), Z)
    return stage_gain(factor, anode_resistance(a - follows * step, g + step, *law), R)


def nearly(left, right, tolerance):
    return equal(left, right, relative(1e-4, because="a limit, nearly reached"))


EXERCISE = Exercise(
    title="Can one valve amplify twice?",
    questions=[
        Question(
            asks=bypass_limits,
            given={**LOADS, "lowest_radio": RADIO, "highest_tone": hertz("1 kHz", "10 kHz")},
            gives=("F", "F"),
            agrees_within=CLOSE,
            holds=[
                invariant(
                    "a carrier twice as high needs half the condenser, and a tone twice as high allows half",
                    lambda f, R, Z, F, f_: (np.array(f(R, Z, 2 * F, 2 * f_)), np.array(f(R, Z, F, f_)) / 2),
                ),
                invariant(
                    "each limit belongs to one load: the other does not move it",
                    lambda f, R, Z, F, f_: (np.array([f(R, 2 * Z, F, f_)[0], f(2 * R, Z, F, f_)[1]]), np.array(f(R, Z, F, f_))),
                ),
            ],
            no_published="A tenth of a load is a habit of the trade, with no source; the rest is a condenser's reactance.",
            slips=[
                slip("left out 2π", lambda *inputs: 2 * np.pi * np.array(bypass_limits(*inputs))),
                slip("returned largest and smallest the other way round", lambda *inputs: bypass_limits(*inputs)[::-1]),
                slip(
                    "exchanged the two loads: the carrier's is the tuned circuit",
                    lambda R, Z, F, f_: bypass_limits(Z, R, F, f_),
                ),
                slip(
                    "let the bypass be as large to the carrier as the load itself: a tenth of it is wanted",
                    lambda R, Z, F, f_: np.array(bypass_limits(R, Z, F, f_)) * [0.1, 1],
                ),
            ],
        ),
        Question(
            asks=path_gains,
            given={**VALVE, **LOADS, "bypass": farads("100 pF", "10 nF"), "radio": RADIO, "tone": TONE},
            edges=[lambda *inputs: (10.0, 10e3, 20e3, 10e3, 0.0, *inputs[-2:])],  # both gains are whole: 5
            agrees_within=CLOSE,
            holds=[
                invariant(
                    "no bypass lets the tone keep all of the stage's gain",
                    lambda f, μ, r, R, Z, C, F, f_: (f(μ, r, R, Z, 0.0, F, f_)[1], stage_gain(μ, r, Z)),
                ),
                invariant(
                    "a very large bypass lets the carrier keep all of it",
                    lambda f, μ, r, R, Z, C, F, f_: (f(μ, r, R, Z, 1e-3, F, f_)[0], stage_gain(μ, r, R)),
                    nearly,
                ),
                invariant(
                    "a larger bypass never helps the tone",
                    lambda f, μ, r, R, Z, C, F, f_: (f(μ, r, R, Z, 2 * C, F, f_)[1], f(μ, r, R, Z, C, F, f_)[1]),
                    at_most,
                ),
            ],
            published=[
                value(
                    "type 30 with 20 kΩ either way, perfectly bypassed: its 900 µS times both resistances side by side",
                    given=(9.3, 10.3e3, 20e3, 20e3, 2e-9, 1e9, 1.0),
                    wanted=(900e-6 * 10.3e3 * 20e3 / 30.3e3, 900e-6 * 10.3e3 * 20e3 / 30.3e3),
                    within=ROUNDED,
                    source=MANUAL_30,
                    known="found",
                ),
            ],
            slips=[
                slip(
                    "left the telephones in the carrier's way without their condenser",
                    lambda μ, r, R, Z, C, F, f_: (μ * R / (r + R + Z), path_gains(μ, r, R, Z, C, F, f_)[1]),
                ),
                slip(
                    "left out what the condenser takes from the tone",
                    lambda μ, r, R, Z, C, F, f_: (path_gains(μ, r, R, Z, C, F, f_)[0], stage_gain(μ, r, Z)),
                ),
                slip(
                    "added up reactance and resistance as plain numbers",
                    lambda μ, r, R, Z, C, F, f_: (
                        μ * R / (r + R + abs(left_of(C, Z, F))),
                        μ * abs(left_of(C, Z, f_)) / (r + abs(left_of(C, Z, f_))),
                    ),
                ),
                slip(
                    "put the tuned circuit in the tone's way: its coil is nothing to a tone",
                    lambda μ, r, R, Z, C, F, f_: (
                        path_gains(μ, r, R, Z, C, F, f_)[0],
                        μ * np.abs(left_of(C, Z, f_) / (r + R + left_of(C, Z, f_))),
                    ),
                ),
                slip("returned them the other way round", lambda *inputs: path_gains(*inputs)[::-1]),
                slip("left out 2π", lambda μ, r, R, Z, C, F, f_: path_gains(μ, r, R, Z, C, F / (2 * np.pi), f_ / (2 * np.pi))),
            ],
        ),
        Question(
            asks=swings,
            given={"carrier": volts("1 mV", "1 V"), **RETURNED, "audio_gain": number(1, 50)},
            gives=("V", "V", "V"),
            agrees_within=CLOSE,
            holds=[
                invariant(
                    "a carrier twice as strong doubles all three",
                    lambda f, V, *rest: (np.array(f(2 * V, *rest)), 2 * np.array(f(V, *rest))),
                ),
                invariant(
                    "without modulation the carrier is alone on the grid",
                    lambda f, V, m, *rest: (np.array(f(V, 0.0, *rest)), np.array([V, 0.0, 0.0])),
                ),
            ],
            no_published="A chain of products.",
            slips=[
                slip(
                    "left out that the modulated carrier rises above its rest",
                    lambda V, m, A, e, n, B: (V, *swings(V, m, A, e, n, B)[1:]),
                ),
                slip(
                    "divided by the transformer's ratio: it steps up",
                    lambda V, m, A, e, n, B: np.array(swings(V, m, A, e, n, B)) * [1, 1 / n**2, 1 / n**2],
                ),
                slip(
                    "left out the depth: only what changes is heard",
                    lambda V, m, A, e, n, B: np.array(swings(V, m, A, e, n, B)) * [1, 1 / m, 1 / m],
                ),
                slip(
                    "left out the carrier's gain on the tone's way",
                    lambda V, m, A, e, n, B: np.array(swings(V, m, A, e, n, B)) * [1, 1 / A, 1 / A],
                ),
                slip(
                    "counted the carrier's gain twice", lambda V, m, A, e, n, B: np.array(swings(V, m, A, e, n, B)) * [1, A, A]
                ),
                slip(
                    "left out the detector's efficiency",
                    lambda V, m, A, e, n, B: np.array(swings(V, m, A, e, n, B)) * [1, 1 / e, 1 / e],
                ),
            ],
        ),
        Question(
            asks=largest_carrier,
            picture=picture(along="depth"),
            given={
                "anode_voltage": volts("30 V", "200 V"),
                "bias": volts("-10 V", "-0.5 V"),
                **RETURNED,
                "amplification_factor": number(4, 20),
                "offset": volts("-1 V", "1 V"),
            },
            where=has_room,
            gives="V",
            agrees_within=CLOSE,
            holds=[
                invariant(
                    "at that carrier both swings together fill the room",
                    lambda f, a, g, m, A, e, n, μ, o: (
                        sum(f.swings(f(a, g, m, A, e, n, μ, o), m, A, e, n, 1.0)[:2]),
                        min(-g, drive(a, g, μ, o)),
                    ),
                ),
                invariant(
                    "a deeper tone allows less carrier",
                    lambda f, a, g, m, *rest: (f(a, g, m, *rest), f(a, g, m / 2, *rest)),
                    less,
                ),
            ],
            refuses=[
                refusal(
                    "a grid at 0 V",
                    (90.0, 0.0, 0.8, 5.0, 0.5, 3.0, 9.29, -0.67),
                    (90.0, 0.001, 0.8, 5.0, 0.5, 3.0, 9.29, -0.67),
                ),
                refusal(
                    "a valve cut off",
                    (45.0, -6.0, 0.8, 5.0, 0.5, 3.0, 9.29, -0.67),
                    (80.0, -9.5, 0.8, 5.0, 0.5, 3.0, 8.0, -0.5),
                ),
            ],
            no_published="Two swings set into the room that the valve's law leaves.",
            slips=[
                slip(
                    "forgotten the carrier's own swing", lambda a, g, m, A, e, n, μ, o: min_room(a, g, μ, o) / (n * e * m * A)
                ),
                slip(
                    "forgotten the tone's swing: it comes back to the same grid",
                    lambda a, g, m, A, e, n, μ, o: min_room(a, g, μ, o) / (1 + m) + 0 * (A + e + n),
                ),
                slip(
                    "taken the larger of the two rooms: the nearer end is met first",
                    lambda a, g, m, A, e, n, μ, o: np.maximum(-g, drive(a, g, μ, o)) / (1 + m + n * e * m * A),
                ),
                slip(
                    "looked upwards only: the valve may be cut off before the grid takes current",
                    lambda a, g, m, A, e, n, μ, o: -g / (1 + m + n * e * m * A) + 0 * (a + μ + o),
                ),
                slip(
                    "looked downwards only: the grid may take current before the valve is cut off",
                    lambda a, g, m, A, e, n, μ, o: drive(a, g, μ, o) / (1 + m + n * e * m * A),
                ),
                slip(
                    "left out that the modulated carrier rises above its rest",
                    lambda a, g, m, A, e, n, μ, o: min_room(a, g, μ, o) / (1 + n * e * m * A),
                ),
            ],
        ),
        Question(
            asks=gain_slope,
            given={
                "anode_voltage": volts("30 V", "200 V"),
                "grid_voltage": volts("-10 V", "-0.5 V"),
                **LOADS,
                "amplification_factor": number(4, 20),
                "perveance": physical("A/V^1.5", "50 µA/V^1.5", "1 mA/V^1.5"),
                "offset": volts("-1 V", "1 V"),
            },
            where=conducts,
            gives="1/V",
            agrees_within=SLOPE,
            holds=[
                invariant(
                    "a hundredth of a millivolt on the grid, the anode following, changes the gain by so much",
                    lambda f, *inputs: (f(*inputs), (with_step(1e-5, *inputs) - with_step(-1e-5, *inputs)) / 2e-5),
                    nearly,
                ),
                invariant(
                    "a larger audio load holds the drive stiller",
                    lambda f, a, g, R, Z, *law: (f(a, g, R, 2 * Z, *law), f(a, g, R, Z, *law)),
                    less,
                ),
            ],
            refuses=[
                refusal("a valve cut off", (45.0, -6.0, 20e3, 20e3, *TYPE_30), (80.0, -9.5, 20e3, 20e3, 8.0, 267e-6, -0.5))
            ],
            no_published="A slope of the gain, which has its figures; tests solve the stage anew at each step.",
            slips=[
                slip(
                    "held the anode still: the tone moves it against the grid",
                    lambda a, g, R, Z, *law: gain_slope(a, g, R, 1e-9 * Z, *law),
                ),
                slip(
                    "held the anode resistance still: then nothing changes but the drive",
                    lambda a, g, R, Z, *law: gain_slope(a, g, R, Z, *law) * (1 + R / anode_resistance(a, g, *law)),
                ),
                slip(
                    "taken the gain in proportion to the drive: it goes as the root of it",
                    lambda *inputs: 2 * gain_slope(*inputs),
                ),
                slip(
                    "returned the slope as a share of the gain",
                    lambda a, g, R, Z, *law: gain_slope(a, g, R, Z, *law) / stage_gain(law[0], anode_resistance(a, g, *law), R),
                ),
                slip("turned the sign: a rising grid raises the gain", lambda *inputs: -gain_slope(*inputs)),
            ],
        ),
        Question(
            asks=largest_leak,
            given={
                "audio_gain": number(2, 50),
                "ratio": number(1, 6),
                "detector_resistance": ohms("2 kΩ", "200 kΩ"),
                "highest_tone": hertz("1 kHz", "20 kHz"),
            },
            gives="F",
            agrees_within=CLOSE,
            holds=[
                invariant(
                    "twice the detector's resistance allows half",
                    lambda f, B, n, R, f_: (f(B, n, 2 * R, f_), f(B, n, R, f_) / 2),
                ),
                invariant("gain and ratio may be exchanged", lambda f, B, n, R, f_: (f(n, B, R, f_), f(B, n, R, f_))),
                invariant("more gain allows less", lambda f, B, n, R, f_: (f(2 * B, n, R, f_), f(B, n, R, f_)), less),
            ],
            refuses=[refusal("a gain of 1 with a ratio of 1", (1.0, 1.0, 20e3, 5e3), (0.999, 1.0, 20e3, 5e3))],
            no_published="A share of a condenser and a resistance; tests solve the loop itself.",
            slips=[
                slip(
                    "taken the detector's share as resistance over reactance: it is over both together",
                    lambda B, n, R, f_: 1 / (2 * np.pi * f_ * R * B * n),
                ),
                slip(
                    "added reactance and resistance as plain numbers",
                    lambda B, n, R, f_: 1 / (2 * np.pi * f_ * R * (B * n - 1)),
                ),
                slip("left out 2π", lambda *inputs: 2 * np.pi * largest_leak(*inputs)),
                slip("left the transformer out: it steps the leak up", lambda B, n, R, f_: largest_leak(B, 1.0, R, f_) + 0 * n),
            ],
        ),
    ],
    hints=[
        "Ask of each part twice: what is it to a carrier, and what to a tone? A condenser of 1 nF is 190 Ω to 846 kHz and "
        "160 kΩ to 1 kHz. The valve does not care: μ volts behind its anode resistance, at every frequency.",
        "The telephones with their condenser are Z/(1 + 2πj f C Z). Carrier: μ times R's share of r, R and that, in series; "
        "tone: μ times that one's share of r and itself. On the grid the swings add: (1 + m) V and ratio × efficiency × m × "
        "gain × V. Gain changes with the grid because r goes as 1/√drive, and the anode takes back r/(r + Z) of the drive.",
        "1/(2π × lowest_radio × SMALL × radio_load), 1/(2π × highest_tone × audio_load);  np.abs of the two shares;  room"
        " = np.minimum(−bias, drive(…)), ValueError if np.any(room <= 0), over 1 + depth + ratio × efficiency × depth × "
        "radio_gain;  with r = resistance_at(…): slope = amplification_factor × radio_load/(radio_load + r) × r/(r + "
        "radio_load)/(2 × drive) × r/(r + audio_load);  with b = audio_gain × ratio: leak = 1/(2π × highest_tone × "
        "detector_resistance × √(b² − 1)), ValueError if np.any(b <= 1).",
    ],
)

"""How `one_valve` is judged.

In the laws and slips: f the function asked for, R a resistance or the load, C the capacitance, g the mutual conductance, r the
anode resistance, A the gain.
"""

import numpy as np

from checker import Exercise, Question, farads, invariant, less, number, ohms, relative, siemens, slip, value

from .one_valve import gain, leak_time, level

CLOSE = relative(1e-9, because="a few operations, double precision")
TYPE_30 = "RCA Receiving Tube Manual, RC-11, 1933, type 30 at 90 V: 0.85 mA/V, 11 000 Ω, amplification factor 9.3; triodes.csv"
V574 = "Recommendation ITU-R V.574, Use of the decibel and the neper in telecommunications (from memory)"

EXERCISE = Exercise(
    title="One valve in three numbers",
    questions=[
        Question(
            asks=leak_time,
            given={"resistance": ohms("100 kΩ", "10 MΩ"), "capacitance": farads("10 pF", "1 nF")},
            gives="s",
            agrees_within=CLOSE,
            holds=[
                invariant("twice the leak takes twice the time", lambda f, R, C: (f(2 * R, C), 2 * f(R, C))),
                invariant("twice the leak with half the condenser is as quick", lambda f, R, C: (f(2 * R, C / 2), f(R, C))),
            ],
            published=[
                value(
                    "2 MΩ and 100 pF: 0.2 ms",
                    given=(2e6, 100e-12),
                    wanted=200e-6,
                    within=CLOSE,
                    source="common practice, no source",
                    known="memory",
                ),
            ],
            slips=[
                slip("divided by the capacitance: more of either takes longer", lambda R, C: R / C),
                slip("divided by the resistance: more of either takes longer", lambda R, C: C / R),
                slip("returned the corner frequency", lambda R, C: 1 / (2 * np.pi * R * C)),
                slip("multiplied by 2π", lambda R, C: 2 * np.pi * R * C),
                slip("turned the product over", lambda R, C: 1 / (R * C)),
                slip("returned milliseconds: seconds are wanted", lambda R, C: 1e3 * R * C),
                slip("taken the leak in megohms: it comes in ohms", lambda R, C: R * C / 1e6),
            ],
        ),
        Question(
            asks=gain,
            given={
                "conductance": siemens("200 µS", "5 mS"),
                "anode_resistance": ohms("2 kΩ", "100 kΩ"),
                "load": ohms("1 kΩ", "1 MΩ"),
            },
            gives="",
            agrees_within=CLOSE,
            holds=[
                invariant("no load makes more of it than g times r", lambda f, g, r, R: (f(g, r, R), g * r), less),
                invariant(
                    "a load equal to the valve's own resistance has half of that", lambda f, g, r, R: (f(g, r, r), g * r / 2)
                ),
                invariant("twice the conductance, twice the gain", lambda f, g, r, R: (f(2 * g, r, R), 2 * f(g, r, R))),
            ],
            published=[
                value(
                    "a type 30 at 90 V, with a load as large as one can think of: its amplification factor",
                    given=(0.85e-3, 11e3, 1e12),
                    wanted=9.3,
                    within=relative(0.01, because="the manual's three figures are rounded one by one"),
                    source=TYPE_30,
                    known="memory",
                ),
            ],
            slips=[
                slip("put the two resistances in line: side by side it is product over sum", lambda g, r, R: g * (r + R)),
                slip("left the valve's own resistance out", lambda g, r, R: g * R + 0 * r),
                slip("left the load out", lambda g, r, R: g * r + 0 * R),
                slip("forgotten the load above the line: g r / (r + R)", lambda g, r, R: g * r / (r + R)),
                slip("forgotten the anode resistance above the line", lambda g, r, R: g * R / (r + R)),
                slip("left out the conductance: that is a resistance", lambda g, r, R: r * R / (r + R) + 0 * g),
                slip("divided by the conductance", lambda g, r, R: r * R / (r + R) / g),
                slip("taken the conductance in milliamperes a volt: it comes in siemens", lambda g, r, R: 1e3 * gain(g, r, R)),
            ],
        ),
        Question(
            asks=level,
            given={"gain": number(0.01, 10e3)},
            gives="dB",
            agrees_within=relative(1e-9, because="one logarithm, double precision", floor=1e-9),
            holds=[
                invariant("ten times the voltage is 20 dB more", lambda f, A: (f(10 * A), f(A) + 20)),
                invariant("gains multiply, decibels add", lambda f, A: (f(A**2), 2 * f(A))),
            ],
            published=[
                value("ten times the voltage: 20 dB", given=(10.0,), wanted=20.0, within=CLOSE, source=V574, known="memory"),
            ],
            slips=[
                slip("used 10 for 20: 10 is for powers", lambda A: 10 * np.log10(A)),
                slip("used np.log, which is the natural logarithm: np.log10 is meant", lambda A: 20 * np.log(A)),
                slip("left out the 20", lambda A: np.log10(A)),
                slip("turned the sign: a gain above 1 is above 0 dB", lambda A: -20 * np.log10(A)),
                slip("counted doublings: decibels count tens", lambda A: 20 * np.log2(A)),
            ],
        ),
    ],
    hints=[
        "Leak and condenser: a time. Valve and load: the grid's volts make a current, and the current goes through two resistances side by "
        "side. Decibels: 20, as it is a ratio of voltages.",
        "The time constant is R times C. Side by side, r and R make r R/(r + R); the current for each volt is the mutual conductance.",
        "leak_time is resistance * capacitance; gain is conductance * anode_resistance * load / (anode_resistance + load); level is "
        "20 * np.log10(gain).",
    ],
)

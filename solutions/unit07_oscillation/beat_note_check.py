"""How `beat_note` is judged.

In the laws and slips: C and L the tuned circuit's capacitance and inductance, c a station's carrier, p a pitch, o the
set's oscillation, a and b two carriers, h the hand's capacitance; V and s the crests of oscillation and signal, m the depth.
"""

import numpy as np

from checker import (
    Exercise,
    Question,
    absolute,
    at_most,
    equal,
    farads,
    henries,
    hertz,
    invariant,
    less,
    number,
    picture,
    relative,
    slip,
    value,
    volts,
)

from .beat_note import autodyne_advantage, dial_pitch, hand_pitch, settings_for_pitch, two_stations

CLOSE = relative(1e-9, because="a few operations, double precision")
TO_A_MILLIHERTZ = relative(1e-9, because="a small difference of large frequencies", floor=1e-3)
RESONANCE = "resonance_lc.csv, row 200 µH, 500 pF"
RASTER = "channels of medium wave in Regions 1 and 3: ITU, Final Acts, Geneva 1975, 9 kHz apart; mw_channels.csv"
AMERICAN_RASTER = "channels of medium wave in Region 2: 47 CFR 73.14, 10 kHz apart; mw_channels.csv"
COIL, CONDENSER, CARRIER = henries("100 µH", "300 µH"), farads("50 pF", "500 pF"), hertz("500 kHz", "1.6 MHz")


def nearly(left, right, tolerance):
    return equal(left, right, relative(1e-3, because="a small change, taken as a slope"))


EXERCISE = Exercise(
    title="What pitch does it whistle?",
    questions=[
        Question(
            asks=dial_pitch,
            picture=picture(between=(240e-12, 267e-12)),
            given={"capacitance": CONDENSER, "inductance": COIL, "carrier": CARRIER},
            gives="Hz",
            agrees_within=TO_A_MILLIHERTZ,
            holds=[
                invariant(
                    "zero beat where the circuit resonates with the carrier",
                    lambda f, C, L, c: (f(1 / ((2 * np.pi * c) ** 2 * L), L, c), 0.0),
                ),
                invariant(
                    "a hertz more of the carrier moves the pitch by one hertz, up or down",
                    lambda f, C, L, c: (np.abs(f(C, L, c + 1) - f(C, L, c)), 1.0),
                ),
                invariant("no pitch is below nothing", lambda f, C, L, c: (0.0, f(C, L, c)), at_most),
            ],
            published=[
                value(
                    "200 µH with 500 pF, a station on 504 kHz",
                    given=(500e-12, 200e-6, 504e3),
                    wanted=504e3 - 503.292121045e3,
                    within=absolute(1e-5, because="printed to 12 figures"),
                    source=RESONANCE,
                    known="recomputed",
                ),
            ],
            slips=[
                slip("kept the sign: a pitch has none", lambda C, L, c: 1 / (2 * np.pi * np.sqrt(L * C)) - c),
                slip("taken the sum: it is far above hearing", lambda C, L, c: 1 / (2 * np.pi * np.sqrt(L * C)) + c),
                slip("left out 2π", lambda C, L, c: np.abs(1 / np.sqrt(L * C) - c)),
                slip("taken half the difference", lambda C, L, c: dial_pitch(C, L, c) / 2),
                slip("left out the carrier", lambda C, L, c: 1 / (2 * np.pi * np.sqrt(L * C)) + 0 * c),
            ],
        ),
        Question(
            asks=settings_for_pitch,
            given={"pitch": hertz("50 Hz", "15 kHz"), "inductance": COIL, "carrier": CARRIER},
            edges=[lambda pitch, inductance, carrier: (0.99 * carrier, inductance, carrier)],
            gives=("F", "F"),
            agrees_within=CLOSE,
            holds=[
                invariant(
                    "carrier plus your dial_pitch, at each setting, is carrier plus that pitch",
                    lambda f, p, L, c: (np.array([f.dial_pitch(C, L, c) for C in f(p, L, c)]) + c, np.array([p, p]) + c),
                ),
                invariant("the smaller first", lambda f, p, L, c: f(p, L, c), less),
                invariant(
                    "twice the coil, half of both", lambda f, p, L, c: (2 * np.array(f(p, 2 * L, c)), np.array(f(p, L, c)))
                ),
            ],
            published=[
                value(
                    "no pitch at all: both where the carrier is, 500 pF",
                    given=(0.0, 200e-6, 503.292121045e3),
                    wanted=(500e-12, 500e-12),
                    within=relative(1e-9, because="printed to 12 figures"),
                    source=RESONANCE,
                    known="recomputed",
                ),
            ],
            slips=[
                slip("returned them the other way round", lambda *inputs: settings_for_pitch(*inputs)[::-1]),
                slip("left out 2π", lambda *inputs: tuple((2 * np.pi) ** 2 * C for C in settings_for_pitch(*inputs))),
                slip(
                    "forgotten to square the frequency",
                    lambda p, L, c: (1 / (2 * np.pi * (c + p) * L), 1 / (2 * np.pi * (c - p) * L)),
                ),
                slip(
                    "gone half the pitch to each side: each side is a whole pitch away",
                    lambda p, L, c: settings_for_pitch(p / 2, L, c),
                ),
            ],
        ),
        Question(
            asks=two_stations,
            given={"oscillation": CARRIER, "first": CARRIER, "second": CARRIER},
            gives=("Hz", "Hz", "Hz"),
            agrees_within=TO_A_MILLIHERTZ,
            holds=[
                invariant(
                    "stations change places, and so do their whistles",
                    lambda f, o, a, b: (np.array(f(o, b, a))[[1, 0, 2]], np.array(f(o, a, b))),
                ),
                invariant(
                    "the dial does not move the whistle of the two", lambda f, o, a, b: (f(o + 1e3, a, b)[2], f(o, a, b)[2])
                ),
                invariant(
                    "half a hertz beside a station it whistles at half a hertz, if it could be heard",
                    lambda f, o, a, b: (f(a + 0.5, a, b)[0], 0.5),
                ),
                invariant(
                    "midway between them both whistle alike",
                    lambda f, o, a, b: (f((a + b) / 2, a, b)[0], f((a + b) / 2, a, b)[1]),
                ),
            ],
            published=[
                value(
                    "zero beat with one, and its neighbour 9 kHz away",
                    given=(846e3, 846e3, 855e3),
                    wanted=(0.0, 9e3, 9e3),
                    within=absolute(1e-6, because="whole kilohertz"),
                    source=RASTER,
                    known="found",
                ),
                value(
                    "midway between neighbours 10 kHz apart",
                    given=(845e3, 840e3, 850e3),
                    wanted=(5e3, 5e3, 10e3),
                    within=absolute(1e-6, because="whole kilohertz"),
                    source=AMERICAN_RASTER,
                    known="found",
                ),
            ],
            slips=[
                slip("kept the signs: a pitch has none", lambda o, a, b: (o - a, o - b, a - b)),
                slip(
                    "taken the difference of the two whistles for the third: the carriers make it",
                    lambda o, a, b: (*two_stations(o, a, b)[:2], np.abs(np.abs(o - a) - np.abs(o - b))),
                ),
                slip("added up for the third", lambda o, a, b: (*two_stations(o, a, b)[:2], a + b)),
                slip(
                    "returned the first two the other way round",
                    lambda o, a, b: tuple(two_stations(o, a, b)[n] for n in (1, 0, 2)),
                ),
            ],
        ),
        Question(
            asks=hand_pitch,
            given={"carrier": CARRIER, "capacitance": CONDENSER, "hand": farads("10 fF", "5 pF")},
            gives="Hz",
            agrees_within=relative(1e-6, because="a small difference of large frequencies"),
            holds=[
                invariant("no hand, zero beat", lambda f, c, C, h: (f(c, C, 0.0), 0.0)),
                invariant(
                    "a hand far smaller than the condenser acts in proportion",
                    lambda f, c, C, h: (f(c, 1e3 * C, 2 * h), 2 * f(c, 1e3 * C, h)),
                    nearly,
                ),
                invariant(
                    "three times the condenser in the hand, and half the frequency is left",
                    lambda f, c, C, h: (f(c, C, 3 * C), c / 2),
                ),
            ],
            no_published="Resonance and nothing else; the capacitance of a hand is anybody's.",
            slips=[
                slip(
                    "taken the frequency in proportion to the capacitance: it goes with its root",
                    lambda c, C, h: c * (1 - 1 / (1 + h / C)),
                ),
                slip("returned the frequency that is left", lambda c, C, h: c / np.sqrt(1 + h / C)),
                slip("turned the ratio over", lambda c, C, h: c * (1 - 1 / np.sqrt(1 + C / h))),
                slip(
                    "put the hand in series with the condenser: it lies across it", lambda c, C, h: c * (np.sqrt(1 + C / h) - 1)
                ),
                slip(
                    "taken the root the wrong way up, which lifts the frequency", lambda c, C, h: c * (np.sqrt(1 + h / C) - 1)
                ),
            ],
        ),
        Question(
            asks=autodyne_advantage,
            given={"oscillation": volts("100 mV", "10 V"), "signal": volts("10 µV", "50 mV"), "depth": number(0.1, 1)},
            gives="dB",
            agrees_within=absolute(1e-6, because="levels to a millionth of a decibel"),
            holds=[
                invariant(
                    "half the signal, 6 dB more advantage", lambda f, V, s, m: (f(V, s / 2, m) - f(V, s, m), 20 * np.log10(2))
                ),
                invariant(
                    "it is the oscillation over the sidebands' swing that counts",
                    lambda f, V, s, m: (f(V, s, m), f(V, m * s, 1.0)),
                ),
                invariant("swings alike and full depth: no advantage", lambda f, V, s, m: (f(s, s, 1.0), 0.0)),
            ],
            no_published="A ratio of two products; tests put both swings through a square law.",
            slips=[
                slip("used 10 log: these are voltages", lambda V, s, m: autodyne_advantage(V, s, m) / 2),
                slip("turned the ratio over", lambda V, s, m: -autodyne_advantage(V, s, m)),
                slip("left out the depth", lambda V, s, m: 20 * np.log10(V / s) + 0 * m),
                slip("taken the depth's square", lambda V, s, m: 20 * np.log10(V / (m**2 * s))),
                slip(
                    "compared the oscillation with the signal by their powers twice over",
                    lambda V, s, m: 20 * np.log10(V**2 / (m * s**2)),
                ),
            ],
        ),
    ],
    hints=[
        "Two swings together wax and wane as often as their frequencies differ. Everything here is differences, and "
        "resonance from unit 03.",
        "The set oscillates at 1/(2π sqrt(L C)). A pitch p is heard at carrier + p and at carrier − p. A hand adds to C, and "
        "the frequency goes as 1/sqrt(C). The detector squares: the beat holds oscillation × signal, the modulation by "
        "itself depth × signal².",
        "dial_pitch is np.abs(tuned - carrier) with tuned = 1 / (2 * np.pi * np.sqrt(inductance * capacitance)); "
        "settings_for_pitch are 1 / ((2 * np.pi * (carrier + pitch)) ** 2 * inductance) and the same with carrier - "
        "pitch; two_stations are the three np.abs of the differences of oscillation, first and second; hand_pitch is "
        "carrier * (1 - 1 / np.sqrt(1 + hand / capacitance)); autodyne_advantage is 20 * np.log10(oscillation / (depth * "
        "signal)).",
    ],
)

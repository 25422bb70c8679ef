"""How `tuning_range` is judged."""

import numpy as np

from checker import (
    Exercise,
    Question,
    absolute,
    farads,
    henries,
    hertz,
    invariant,
    less,
    one_of,
    radians,
    refusal,
    relative,
    slip,
    value,
)
from solutions.unit02_coil_and_condenser.vane_capacitance import power_of, vane_capacitance
from solutions.unit03_tuned_circuit.resonance import resonant_frequency

from .tuning_range import dial_angle, dial_frequency, range_covered, tuning_inductance

CLOSE = relative(1e-9, because="a few operations, double precision")
HALF_WAY = {"capacitance": 678638.9576, "wavelength": 764749.2843, "frequency": 1047420.776}  # hertz
DIAL_TABLE = "US National Bureau of Standards, Circular 74, 1924, plate laws (from memory); variable_capacitor_laws.csv"
INDUCTANCE = henries("100 µH", "300 µH")
ENDS = {"minimum": farads("8 pF", "30 pF"), "maximum": farads("200 pF", "600 pF"), "stray": farads("5 pF", "80 pF")}
DIAL = {"law": one_of("capacitance", "wavelength", "frequency"), **ENDS, "inductance": INDUCTANCE}


def on_the_dial(f, law, low, high, stray, L):
    lowest, highest = range_covered(L, low, high, stray)
    return lowest <= f <= highest


def angle_of(capacitance, law, low, high):
    power = power_of(law)
    return np.pi * (capacitance**power - low**power) / (high**power - low**power)


EXERCISE = Exercise(
    title="Which stations are on the dial, and where?",
    questions=[
        Question(
            asks=range_covered,
            given={"inductance": INDUCTANCE, **ENDS},
            gives=("Hz", "Hz"),
            agrees_within=CLOSE,
            holds=[
                invariant("the lower end comes first", lambda ends, L, low, high, stray: ends(L, low, high, stray), less),
                invariant(
                    "more stray capacitance lowers the upper end most",
                    lambda ends, L, low, high, stray: (
                        ends(L, low, high, 2 * stray)[1] / ends(L, low, high, stray)[1],
                        ends(L, low, high, 2 * stray)[0] / ends(L, low, high, stray)[0],
                    ),
                    less,
                ),
                invariant(
                    "a quarter of the coil doubles both ends",
                    lambda ends, L, low, high, stray: (
                        np.array(ends(L / 4, low, high, stray)),
                        2 * np.array(ends(L, low, high, stray)),
                    ),
                ),
            ],
            published=[
                value(
                    "200 µH with 50 to 500 pF in all",
                    given=(200e-6, 50e-12, 500e-12, 0.0),
                    wanted=(503292.121, 1591549.431),
                    within=relative(1e-8, because="printed to 10 figures"),
                    source=f"{DIAL_TABLE}, first and last row",
                    known="recomputed",
                ),
            ],
            slips=[
                slip("forgotten the strays", lambda L, low, high, stray: range_covered(L, low, high, 0.0)),
                slip("returned the upper end first", lambda L, low, high, stray: range_covered(L, low, high, stray)[::-1]),
                slip(
                    "taken the strays off instead of adding them",
                    lambda L, low, high, stray: range_covered(
                        L, low - np.minimum(stray, low / 2), high - np.minimum(stray, low / 2), 0.0
                    ),
                ),
                slip(
                    "returned angular frequencies, in radians a second",
                    lambda L, low, high, stray: tuple(2 * np.pi * f for f in range_covered(L, low, high, stray)),
                ),
            ],
        ),
        Question(
            asks=tuning_inductance,
            given={"lowest_frequency": hertz("400 kHz", "1 MHz"), "maximum": ENDS["maximum"], "stray": ENDS["stray"]},
            gives="H",
            agrees_within=CLOSE,
            holds=[
                invariant(
                    "half the frequency takes four times the coil",
                    lambda L, f, high, stray: (L(f / 2, high, stray), 4 * L(f, high, stray)),
                ),
                invariant(
                    "the coil reaches just that frequency",
                    lambda L, f, high, stray: (resonant_frequency(L(f, high, stray), high + stray), f),
                ),
            ],
            published=[
                value(
                    "600 kHz with 500 pF: LC of 0.0704 µH µF",
                    given=(599584.916, 450e-12, 50e-12),
                    wanted=0.07045938791e-6 / 500e-6,
                    within=relative(1e-8, because="printed to 10 figures"),
                    source="US National Bureau of Standards, Circular 74, 1924, LC table (from memory), row 500 m",
                    known="recomputed",
                ),
            ],
            slips=[
                slip("forgotten the strays", lambda f, high, stray: tuning_inductance(f, high, 0.0)),
                slip("left out 2π: ω² is (2πf)²", lambda f, high, stray: 1 / (f**2 * (high + stray))),
                slip("forgotten the square of ω", lambda f, high, stray: 1 / (2 * np.pi * f * (high + stray))),
                slip("squared f but not 2π", lambda f, high, stray: 1 / (2 * np.pi * f**2 * (high + stray))),
            ],
        ),
        Question(
            asks=dial_frequency,
            given={"angle": radians("0 rad", "3.14 rad"), **DIAL},
            gives="Hz",
            agrees_within=CLOSE,
            holds=[
                invariant(
                    "turning the plates in lowers the frequency",
                    lambda f, angle, *rest: (f(np.pi - angle / 4, *rest), f(angle / 4, *rest)),
                    less,
                ),
                invariant(
                    "plates in, all three laws give the same",
                    lambda f, angle, law, *rest: (f(np.pi, "frequency", *rest), f(np.pi, "capacitance", *rest)),
                ),
            ],
            published=[
                value(
                    f"half way round, {law} law, 200 µH with 50 to 500 pF",
                    given=(np.pi / 2, law, 50e-12, 500e-12, 0.0, 200e-6),
                    wanted=wanted,
                    within=relative(1e-9, because="printed to 10 figures"),
                    source=f"{DIAL_TABLE}, row 90°",
                    known="recomputed",
                )
                for law, wanted in HALF_WAY.items()
            ],
            refuses=[
                refusal(
                    "an angle beyond the stop",
                    (4.0, "capacitance", 10e-12, 400e-12, 20e-12, 200e-6),
                    (3.15, "capacitance", 10e-12, 400e-12, 20e-12, 200e-6),
                    (-0.001, "capacitance", 10e-12, 400e-12, 20e-12, 200e-6),
                ),
                refusal(
                    "a law that there is not",
                    (1.0, "brightness", 10e-12, 400e-12, 20e-12, 200e-6),
                    (1.0, "Wavelength", 10e-12, 400e-12, 20e-12, 200e-6),
                ),
            ],
            slips=[
                slip(
                    "forgotten the strays", lambda turn, law, low, high, stray, L: dial_frequency(turn, law, low, high, 0.0, L)
                ),
                slip(
                    "taken the radians for degrees",
                    lambda turn, law, low, high, stray, L: dial_frequency(np.radians(turn), law, low, high, stray, L),
                ),
                slip(
                    "turned the dial the wrong way: at angle 0 the plates are out",
                    lambda turn, law, low, high, stray, L: dial_frequency(np.pi - turn, law, low, high, stray, L),
                ),
                slip(
                    "used the straight-line capacitance law for all three",
                    lambda turn, law, low, high, stray, L: dial_frequency(turn, "capacitance", low, high, stray, L),
                ),
                slip(
                    "added the strays to both ends before the plates' law: the plates know nothing of them",
                    lambda turn, law, low, high, stray, L: resonant_frequency(
                        L, vane_capacitance(turn, law, low + stray, high + stray)
                    ),
                ),
            ],
        ),
        Question(
            asks=dial_angle,
            given={"frequency": hertz("500 kHz", "1600 kHz"), **DIAL},
            where=on_the_dial,
            gives="rad",
            agrees_within=relative(1e-8, because="taking off the strays spends a figure or two", floor=1e-8),
            holds=[
                invariant(
                    "the dial is set back to the same frequency",
                    lambda angle, f, *rest: (angle.dial_frequency(angle(f, *rest), *rest), f),
                ),
            ],
            published=[
                value(
                    "764.7 kHz on the wavelength law, 200 µH with 50 to 500 pF: half way",
                    given=(764749.2843, "wavelength", 50e-12, 500e-12, 0.0, 200e-6),
                    wanted=np.pi / 2,
                    within=relative(1e-8, because="printed to 10 figures"),
                    source=f"{DIAL_TABLE}, row 90°",
                    known="recomputed",
                ),
                *(
                    value(
                        f"{frequency} Hz on the same set, {where}: printed, so a trace outside the range",
                        given=(frequency, "wavelength", 50e-12, 500e-12, 0.0, 200e-6),
                        wanted=angle,
                        within=absolute(1e-6, because="printed to 10 figures"),
                        source=f"{DIAL_TABLE}, row {row}",
                        known="recomputed",
                    )
                    for frequency, angle, where, row in (
                        (1591549.431, 0.0, "plates out", "0°"),
                        (503292.121, np.pi, "plates in", "180°"),
                    )
                ),
            ],
            refuses=[
                refusal(
                    "a station just below the range",
                    (540e3, "capacitance", 10e-12, 400e-12, 20e-12, 200e-6),
                    (549.1e3, "capacitance", 10e-12, 400e-12, 20e-12, 200e-6),
                ),
                refusal(
                    "a station just above the range",
                    (2.1e6, "capacitance", 10e-12, 400e-12, 20e-12, 200e-6),
                    (2.055e6, "capacitance", 10e-12, 400e-12, 20e-12, 200e-6),
                ),
                refusal(
                    "a law that there is not",
                    (1e6, "brightness", 10e-12, 400e-12, 20e-12, 200e-6),
                    (1e6, "Wavelength", 10e-12, 400e-12, 20e-12, 200e-6),
                    (1e6, "wavelength ", 10e-12, 400e-12, 20e-12, 200e-6),
                ),
            ],
            slips=[
                slip("returned degrees: radians are asked for", lambda *given: np.degrees(dial_angle(*given))),
                slip(
                    "measured from the plates-in end: at angle 0 the plates are out", lambda *given: np.pi - dial_angle(*given)
                ),
                slip("returned the part of the turn, 0 to 1: the whole turn is π", lambda *given: dial_angle(*given) / np.pi),
                slip(
                    "forgotten to take the strays off",
                    lambda f, law, low, high, stray, L: angle_of(1 / ((2 * np.pi * f) ** 2 * L), law, low, high),
                ),
            ],
        ),
    ],
    hints=[
        "Everything across the coil adds: condenser and strays. More capacitance tunes lower, so plates in is the low end.",
        "The range is resonant_frequency at each end, strays added. For the coil, solve f = 1/(2π sqrt(L C)) for L. "
        "At an angle, let vane_capacitance give the condenser's share. The way back: from f to the capacitance, less "
        "the strays, then to the angle.",
        "The inductance is 1 / ((2π × lowest_frequency)² × (maximum + stray)). For the angle: with p = LAWS[law] and c = "
        "1 / ((2π × frequency)² × inductance) - stray it is π × (c**p - minimum**p) / (maximum**p - minimum**p). Before "
        "that, raise ValueError if the law is not in LAWS, or where np.any(frequency < lowest) or np.any(frequency > "
        "highest), allowing one part in a thousand million.",
    ],
)

"""How `dropper_resistor` is judged.

In the laws and slips: V the rail, v and i the filament's rated voltage and current, R the dropper.
"""

from checker import Exercise, Question, amperes, at_most, invariant, less, ohms, one_of, refusal, relative, slip, value
from checker import volts as volt_range

from .dropper_resistor import (
    PREFERRED,
    current_through_dropper,
    dropper_dissipation,
    dropper_resistance,
    next_preferred,
)

CLOSE = relative(1e-9, because="a few products and quotients, double precision")
TWO_FIGURES = relative(6e-3, because="93 mA is given to two figures: anything from 92.5 to 93.5")
COMMON_PRACTICE = "2 V filament from a 3.3 V rail through 14 Ω draws about 93 mA: common practice, no source"
IEC_60063 = "IEC 60063:2015, Preferred number series for resistors and capacitors, in public listings"

RAIL, FILAMENT, CURRENT = volt_range("1.2 V", "12 V"), volt_range("1 V", "6.3 V"), amperes("20 mA", "1 A")
STEPS = [(name, step) for name in PREFERRED for step in PREFERRED[name]]
SUPPLY = {"rail": RAIL, "filament_voltage": FILAMENT, "filament_current": CURRENT}


def above_filament(rail, filament_voltage, filament_current):
    return rail > filament_voltage


EDGES = [
    lambda rail, filament_voltage, filament_current: (filament_voltage, filament_voltage, filament_current),
    lambda rail, filament_voltage, filament_current: (rail, 0.0, filament_current),
]


def below_and_above(resistance, series):
    values = [float(f"{step}e{power}") for power in range(-3, 9) for step in PREFERRED[series]]
    return max(v for v in values if v <= resistance), min(v for v in values if v >= resistance)


EXERCISE = Exercise(
    title="Which resistor for the filament?",
    questions=[
        Question(
            asks=dropper_resistance,
            given=SUPPLY,
            where=above_filament,
            edges=EDGES,
            gives="Ω",
            agrees_within=CLOSE,
            holds=[
                invariant(
                    "the voltages across dropper and filament add up to the rail", lambda f, V, v, i: (f(V, v, i) * i + v, V)
                ),
                invariant("twice the current needs half the resistance", lambda f, V, v, i: (f(V, v, 2 * i), f(V, v, i) / 2)),
                invariant(
                    "a volt more on the rail and on the filament needs the same resistance",
                    lambda f, V, v, i: (f(V + 1, v + 1, i), f(V, v, i)),
                ),
            ],
            published=[
                value(
                    "2 V at 93 mA from 3.3 V",
                    given=(3.3, 2.0, 93e-3),
                    wanted=14.0,
                    within=TWO_FIGURES,
                    source=COMMON_PRACTICE,
                    known="memory",
                ),
            ],
            refuses=[
                refusal(
                    "a rail lower than the filament voltage, even by next to nothing", (1.5, 2.0, 60e-3), (1.999, 2.0, 60e-3)
                ),
            ],
            slips=[
                slip(
                    "divided the whole rail voltage; across the resistor is only the drop, rail less filament",
                    lambda V, v, i: V / i,
                ),
                slip("divided the filament's voltage: that gives the resistance of the hot filament", lambda V, v, i: v / i),
                slip("taken the current for milliamperes; it comes in amperes", lambda V, v, i: (V - v) / (i / 1000)),
                slip("multiplied by the current: that is the power, in watts", lambda V, v, i: (V - v) * i),
                slip("turned the fraction over", lambda V, v, i: i / (V - v)),
                slip("written a - b / c, which Python reads as a - (b / c)", lambda V, v, i: V - v / i),
            ],
        ),
        Question(
            asks=dropper_dissipation,
            given=SUPPLY,
            where=above_filament,
            edges=EDGES,
            gives="W",
            agrees_within=CLOSE,
            holds=[
                invariant(
                    "the rail gives as much power as filament and dropper take together",
                    lambda f, V, v, i: (f(V, v, i) + v * i, V * i),
                ),
                invariant(
                    "the same drop at twice the current makes twice the heat",
                    lambda f, V, v, i: (f(V, v, 2 * i), 2 * f(V, v, i)),
                ),
            ],
            no_published="a product of two readings; the balance of power holds it to account",
            slips=[
                slip("returned all the power from the rail; the filament's share is not the dropper's", lambda V, v, i: V * i),
                slip("returned the power of the filament", lambda V, v, i: v * i),
                slip("returned milliwatts", lambda V, v, i: 1000 * (V - v) * i),
                slip("returned the resistance", lambda V, v, i: (V - v) / i),
                slip(
                    "multiplied by the current twice; that needs the resistance, not the drop", lambda V, v, i: (V - v) * i**2
                ),
                slip("written a - b * c, which Python reads as a - (b × c)", lambda V, v, i: V - v * i),
            ],
        ),
        Question(
            asks=next_preferred,
            further=True,
            given={"resistance": ohms("1 Ω", "1 MΩ"), "series": one_of("E12", "E24", "E6")},
            gives="Ω",
            agrees_within=relative(1e-9, because="two figures and a power of ten, in double precision"),
            arrays=False,
            holds=[
                invariant("never below what was asked for", lambda f, R, series: (R, f(R, series)), at_most),
                invariant(
                    "every value of the three series is its own next",
                    lambda f, R, series: ([f(float(step), name) for name, step in STEPS], [step for _, step in STEPS]),
                ),
                invariant(
                    "ten times the resistance, ten times the value", lambda f, R, series: (f(10 * R, series), 10 * f(R, series))
                ),
                invariant(
                    "E24 has every value of E12, so it is never further up",
                    lambda f, R, series: (f(R, "E24"), f(R, "E12")),
                    at_most,
                ),
                invariant(
                    "less than a billionth part above 330 Ω is still 330 Ω",
                    lambda f, R, series: (f(330 * (1 + 1e-12), series), 330),
                ),
            ],
            published=[
                value(
                    "E12: after 33 comes 39", given=(34.0, "E12"), wanted=39.0, within=CLOSE, source=IEC_60063, known="found"
                ),
                value(
                    "E24: after 47 comes 51",
                    given=(4800.0, "E24"),
                    wanted=5100.0,
                    within=CLOSE,
                    source=IEC_60063,
                    known="found",
                ),
                value(
                    "E12: after 82 comes 100", given=(8.3, "E12"), wanted=10.0, within=CLOSE, source=IEC_60063, known="found"
                ),
            ],
            refuses=[
                refusal("a resistance of zero", (0.0, "E12")),
                refusal("a resistance below zero", (-10.0, "E12")),
                refusal("a series that is not in the table as it is written", (10.0, "E13"), (10.0, "e12"), (10.0, "E12 ")),
            ],
            slips=[
                slip(
                    "taken the nearest value; a smaller resistor overruns the filament, so take the next one up",
                    lambda R, series: min(below_and_above(R, series), key=lambda preferred: abs(preferred - R)),
                ),
                slip("taken the next value down", lambda R, series: below_and_above(R, series)[0]),
                slip(
                    "gone one value too far where the resistance is itself a preferred one",
                    lambda R, series: below_and_above(R * 1.000001, series)[1],
                ),
                slip("used E12 whatever the series asked for", lambda R, series: next_preferred(R, "E12")),
                slip(
                    "returned the two figures of the table without their power of ten",
                    lambda R, series: float(f"{next_preferred(R, series):e}".split("e")[0]) * 10,
                ),
            ],
        ),
        Question(
            asks=current_through_dropper,
            given={"rail": RAIL, "resistance": ohms("1 Ω", "200 Ω"), "filament_voltage": FILAMENT, "filament_current": CURRENT},
            edges=[
                lambda rail, resistance, filament_voltage, filament_current: (rail, 0.0, filament_voltage, filament_current)
            ],
            gives="A",
            agrees_within=CLOSE,
            holds=[
                invariant(
                    "the voltages round the loop add up to the rail", lambda f, V, R, v, i: (f(V, R, v, i) * (R + v / i), V)
                ),
                invariant("more resistance, less current", lambda f, V, R, v, i: (f(V, 1.1 * R, v, i), f(V, R, v, i)), less),
                invariant(
                    "with no dropper, a rail of the filament's own voltage gives the rated current",
                    lambda f, V, R, v, i: (f(v, 0.0, v, i), i),
                ),
            ],
            published=[
                value(
                    "14 Ω, 2 V filament, 3.3 V rail",
                    given=(3.3, 14.0, 2.0, 93e-3),
                    wanted=93e-3,
                    within=TWO_FIGURES,
                    source=COMMON_PRACTICE,
                    known="memory",
                ),
            ],
            slips=[
                slip(
                    "kept the filament at its rated voltage; with another resistor it no longer gets that",
                    lambda V, R, v, i: (V - v) / R,
                ),
                slip("left the filament's own resistance out", lambda V, R, v, i: V / R),
                slip("left the dropper out", lambda V, R, v, i: V * i / v),
                slip(
                    "multiplied voltage by current: the hot resistance is voltage over current",
                    lambda V, R, v, i: V / (R + v * i),
                ),
                slip(
                    "put dropper and filament side by side; they are in series, and add", lambda V, R, v, i: V * (1 / R + i / v)
                ),
            ],
        ),
    ],
    hints=[
        "Dropper and filament are in series: one current through both, and their voltages add up to the rail. The "
        "dropper has what the filament leaves.",
        "The drop is rail less filament voltage. Resistance is drop over current, heat is drop times current. For "
        "the next preferred value, bring the resistance to between 10 and 100 by a power of ten, look along the "
        "table, and put the power back. In the last function the filament is a resistor too: its rated voltage over"
        " its rated current.",
        "dropper_resistance is (rail - filament_voltage) / filament_current, after `if np.any(rail < filament_voltage): "
        "raise ValueError(…)`; dropper_dissipation is (rail - filament_voltage) * filament_current; "
        "current_through_dropper is rail / (resistance + filament_voltage / filament_current). next_preferred: power = "
        "math.floor(math.log10(resistance)) - 1; the first step of (*PREFERRED[series], 100) for which step * 10.0**power"
        " >= resistance * (1 - 1e-9) is the one.",
    ],
)

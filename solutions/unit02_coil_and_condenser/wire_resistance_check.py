"""How `wire_resistance` is judged."""

import numpy as np

from checker import (
    Exercise,
    Question,
    at_most,
    hertz,
    invariant,
    less,
    metres,
    number,
    refusal,
    relative,
    slip,
    value,
    whole,
)
from checker.checks.given import ohm_metres, physical

from .solenoid_inductance import INCH, MU_0
from .wire_resistance import (
    COPPER_RESISTIVITY,
    ROOM_TEMPERATURE,
    TEMPERATURE_COEFFICIENT,
    alternating_resistance,
    awg_diameter,
    copper_resistivity,
    direct_resistance,
    skin_depth,
    skin_effect_ratio,
    swg_diameter,
)

FORMULA = relative(1e-9, because="one formula, double precision")
FOUR_FIGURES = relative(5e-4, because="printed to four figures, from a diameter that is rounded too")
WIRE = {"length": metres("1 m", "50 m"), "diameter": metres("100 µm", "2 mm")}
TEMPERATURE = physical("K", "250 K", "370 K")
BS3737 = "an engineering table that cites BS 3737:1964"
BUREAU = "a university table after ASTM B258 and US National Bureau of Standards, Circular 31, 1914"
TERMAN = "F. E. Terman, Radio Engineers' Handbook, 1943"
NEHER = "J. H. Neher and M. H. McGrath, 1957, Table III, as quoted in a public forum"


def shallow_fraction(x):
    """The continued fraction cut off after ten levels."""
    w = -2j * x**2
    level = 20
    for n in range(9, 1, -1):
        level = 2 * n - w / level
    return (1 - w / 2 / level).real


def alternating(b, d, f, T, depth_temperature=None, thickness=0.5):
    """Resistance with the skin depth of copper at another temperature, or another thickness than the radius."""
    depth = skin_depth(f, copper_resistivity(T if depth_temperature is None else depth_temperature))
    return direct_resistance(b, d, T) * skin_effect_ratio(thickness * d / depth)


EXERCISE = Exercise(
    title="What does the wire cost?",
    questions=[
        Question(
            asks=swg_diameter,
            given={"gauge": whole(16, 40)},
            gives="m",
            arrays=False,
            agrees_within=relative(1e-12, because="an entry of the table, in another unit"),
            holds=[
                invariant(
                    "a higher number is a thinner wire, all the way from 16 to 40",
                    lambda f, n: ([f(gauge) for gauge in range(17, 41)], np.array([f(gauge) for gauge in range(16, 40)])),
                    less,
                ),
            ],
            published=[
                value(
                    "22 SWG is 0.711 mm",
                    given=(22,),
                    wanted=0.711e-3,
                    within=relative(1e-3, because="printed to three figures"),
                    source=BS3737,
                    known="found",
                ),
                value(
                    "40 SWG is 0.122 mm",
                    given=(40,),
                    wanted=0.122e-3,
                    within=relative(1e-3, because="printed to three figures"),
                    source=BS3737,
                    known="found",
                ),
            ],
            refuses=[
                refusal("gauge 15, which the table does not have, or half a gauge", (15,), (15.5,), (16.5,)),
                refusal("gauge 41", (41,), (40.5,)),
            ],
            slips=[
                slip("returned inches, as they stand in the table", lambda n: swg_diameter(n) / INCH),
                slip("returned millimetres", lambda n: 1e3 * swg_diameter(n)),
                slip("returned the radius", lambda n: swg_diameter(n) / 2),
            ],
        ),
        Question(
            asks=awg_diameter,
            given={"gauge": whole(10, 40)},
            gives="m",
            agrees_within=FORMULA,
            holds=[
                invariant("39 gauges lower is 92 times as thick", lambda f, n: (f(n - 39), 92 * f(n))),
                invariant("every step is the same ratio", lambda f, n: (f(n) * f(n + 2), f(n + 1) ** 2)),
            ],
            published=[
                value(
                    "gauge 20 is 0.03196 inch",
                    given=(20.0,),
                    wanted=0.03196 * INCH,
                    within=relative(1.6e-4, because="half of the last figure printed"),
                    source=BUREAU,
                    known="found",
                ),
                value(
                    "gauge 28 is 0.01264 inch",
                    given=(28.0,),
                    wanted=0.01264 * INCH,
                    within=relative(4e-4, because="half of the last figure printed"),
                    source=BUREAU,
                    known="found",
                ),
            ],
            slips=[
                slip("returned inches", lambda n: awg_diameter(n) / INCH),
                slip(
                    "turned the exponent's sign: a higher gauge is a thinner wire",
                    lambda n: 0.005 * INCH * 92 ** ((n - 36) / 39),
                ),
                slip("returned the radius", lambda n: awg_diameter(n) / 2),
                slip("counted 36 steps to the factor 92: there are 39", lambda n: 0.005 * INCH * 92 ** ((36 - n) / 36)),
            ],
        ),
        Question(
            asks=direct_resistance,
            given=WIRE | {"temperature": TEMPERATURE},
            gives="Ω",
            agrees_within=FORMULA,
            holds=[
                invariant("twice the length is twice the resistance", lambda f, b, d, T: (f(2 * b, d, T), 2 * f(b, d, T))),
                invariant("twice the diameter is a quarter of it", lambda f, b, d, T: (f(b, 2 * d, T), f(b, d, T) / 4)),
                invariant(
                    "ten degrees add 3.93 % of what it is at 20 °C",
                    lambda f, b, d, T: (f(b, d, T + 10), f(b, d, T) + 0.0393 * f(b, d, ROOM_TEMPERATURE)),
                ),
            ],
            published=[
                value(
                    "1000 feet of gauge 20 AWG at 20 °C: 10.15 Ω",
                    given=(304.8, 0.811821e-3),
                    wanted=10.15,
                    within=FOUR_FIGURES,
                    source=BUREAU,
                    known="found",
                ),
                value(
                    "1000 yards of 22 SWG at 60 °F: 39.0 Ω",
                    given=(914.4, 0.7112e-3, 288.7056),
                    wanted=39.0,
                    within=relative(1.3e-3, because="printed to three figures"),
                    source="British wire tables",
                    known="memory",
                ),
            ],
            slips=[
                slip("taken the diameter for the radius", lambda b, d, T: direct_resistance(b, d, T) / 4),
                slip(
                    "taken the temperature for degrees Celsius: it is in kelvin",
                    lambda b, d, T: direct_resistance(b, d) * (1 + TEMPERATURE_COEFFICIENT * (T - 20)),
                ),
                slip("left out the temperature", lambda b, d, T: direct_resistance(b, d)),
                slip("not squared the diameter", lambda b, d, T: direct_resistance(b, d, T) * d),
                slip(
                    "multiplied by the area: a thicker wire has less resistance",
                    lambda b, d, T: copper_resistivity(T) * b * np.pi * d**2 / 4,
                ),
            ],
        ),
        Question(
            asks=skin_depth,
            given={"frequency": hertz("10 kHz", "30 MHz"), "resistivity": ohm_metres("10 nΩ·m", "1 µΩ·m")},
            gives="m",
            agrees_within=FORMULA,
            holds=[
                invariant(
                    "four times the frequency halves it",
                    lambda f, frequency, rho: (f(4 * frequency, rho), f(frequency, rho) / 2),
                ),
                invariant(
                    "nine times the resistivity makes it three times as deep",
                    lambda f, frequency, rho: (f(frequency, 9 * rho), 3 * f(frequency, rho)),
                ),
            ],
            published=[
                value(
                    "copper at 1 Hz: 66 mm",
                    given=(1.0,),
                    wanted=66e-3,
                    within=relative(2e-3, because="a rounded constant"),
                    source="two public engineering notes",
                    known="found",
                ),
                value(
                    "copper at 1 MHz",
                    given=(1e6,),
                    wanted=66.0854931008e-6,
                    within=FORMULA,
                    source="the formula with 40 figures, copper of IEC 60028",
                    known="recomputed",
                ),
            ],
            slips=[
                slip("left out π", lambda f, rho: np.sqrt(rho / (f * MU_0))),
                slip(
                    "put the frequency where 2ρ / (ω μ₀) wants the angular frequency",
                    lambda f, rho: np.sqrt(2 * rho / (f * MU_0)),
                ),
                slip("left the 2 out of 2ρ / (ω μ₀)", lambda f, rho: np.sqrt(rho / (2 * np.pi * f * MU_0))),
                slip("left out the root", lambda f, rho: rho / (np.pi * f * MU_0)),
            ],
        ),
        Question(
            asks=skin_effect_ratio,
            given={"radius_over_skin_depth": number(0.1, 100)},
            agrees_within=relative(1e-9, because="100 levels of the fraction give all the figures there are"),
            holds=[
                invariant("a crowded current never meets less resistance", lambda f, x: (1.0, f(x)), at_most),
                invariant("thicker against the skin, more of the copper lies idle", lambda f, x: (f(x), f(1.1 * x)), at_most),
                invariant(
                    "never more than a rim one skin depth wide would have, and 1", lambda f, x: (f(x), 1 + x / 2), at_most
                ),
            ],
            published=[
                value(
                    "√2 × ratio = 8.73: 3.35",
                    given=(8.73 / np.sqrt(2),),
                    wanted=3.35,
                    within=relative(1.5e-3, because="printed to three figures"),
                    source=f"{TERMAN}, as quoted in a public forum",
                    known="found",
                ),
                value(
                    "√2 × ratio = 2.14: 10.05 % more",
                    given=(2.14 / np.sqrt(2),),
                    wanted=1.1005,
                    within=relative(5e-5, because="printed to five figures"),
                    source=NEHER,
                    known="found",
                ),
                value(
                    "√2 × ratio = 4: 1.678",
                    given=(4 / np.sqrt(2),),
                    wanted=1.678,
                    within=relative(3e-4, because="printed to four figures"),
                    source=TERMAN,
                    known="memory",
                ),
            ],
            slips=[
                slip("used half the ratio, the rule for a very thick wire", lambda x: x / 2),
                slip("taken the diameter for the radius", lambda x: skin_effect_ratio(2 * x)),
                slip("left out the 2 in w = −2j (radius / skin depth)²", lambda x: skin_effect_ratio(x / np.sqrt(2))),
                slip("stopped after ten levels of the fraction: take a hundred", shallow_fraction),
            ],
        ),
        Question(
            asks=alternating_resistance,
            given=WIRE | {"frequency": hertz("10 kHz", "30 MHz"), "temperature": TEMPERATURE},
            gives="Ω",
            agrees_within=relative(1e-9, because="a product of two results good to that"),
            holds=[
                invariant(
                    "never less than to a steady current",
                    lambda f, b, d, frequency, T: (f.direct_resistance(b, d, T), f(b, d, frequency, T)),
                    at_most,
                ),
                invariant(
                    "twice the length is twice the resistance",
                    lambda f, b, d, frequency, T: (f(2 * b, d, frequency, T), 2 * f(b, d, frequency, T)),
                ),
                invariant(
                    "a higher frequency never meets less",
                    lambda f, b, d, frequency, T: (f(b, d, frequency, T), f(b, d, 1.1 * frequency, T)),
                    at_most,
                ),
            ],
            no_published="The tables give its two factors, which are asked above.",
            slips=[
                slip("left out the skin effect", lambda b, d, f, T: direct_resistance(b, d, T)),
                slip("taken the skin depth of copper at 20 °C", lambda b, d, f, T: alternating(b, d, f, T, ROOM_TEMPERATURE)),
                slip(
                    "put the diameter over the skin depth: it is the radius",
                    lambda b, d, f, T: alternating(b, d, f, T, thickness=1),
                ),
                slip(
                    "used the resistance at 20 °C",
                    lambda b, d, f, T: alternating(b, d, f, T) * COPPER_RESISTIVITY / copper_resistivity(T),
                ),
                slip(
                    "put the angular frequency where the frequency belongs",
                    lambda b, d, f, T: alternating(b, d, 2 * np.pi * f, T),
                ),
            ],
        ),
    ],
    hints=[
        "Length over area times resistivity is the whole of the steady current. The alternating one keeps to the "
        "rim: first how deep (skin_depth), then how much worse (skin_effect_ratio), then multiply.",
        "Area is π d²/4; copper_resistivity(temperature) is given. Skin depth: sqrt(ρ / (π f μ₀)). A continued "
        "fraction is worked out from its innermost level outwards: start with a level of 200, and go n = 99, 98, … "
        "2, each time making the level 2 n − w / level.",
        "With x = radius_over_skin_depth: w = −2j x²; level = 200; for n in range(99, 1, −1): level = 2 × n − w / level; "
        "ratio = (1 − w / 2 / level).real. AWG: 0.005 * INCH * 92 ** ((36 − gauge) / 39). SWG: look the inches up, raise "
        "ValueError if the number is not in the table. Alternating: depth = skin_depth(frequency, "
        "copper_resistivity(temperature)); direct_resistance(length, diameter, temperature) * skin_effect_ratio(diameter "
        "/ 2 / depth).",
    ],
)

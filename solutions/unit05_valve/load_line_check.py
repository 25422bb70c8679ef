"""How `load_line` is judged.

In the laws and slips: B the supply, R the load, g the grid's voltage, μ, K and o the valve's law, a and i anode voltage
and current.
"""

import numpy as np

from checker import (
    Exercise,
    Question,
    amperes,
    at_most,
    equal,
    invariant,
    number,
    ohms,
    physical,
    refusal,
    relative,
    slip,
    value,
    volts,
)

from .load_line import grid_voltage_for, load_line_current, operating_point, power_shares
from .triode_current import triode_current

SOLVED = relative(1e-6, because="solved step by step", floor=1e-9)
CLOSE = relative(1e-9, because="a few operations, double precision", floor=1e-12)
MANUAL = "RCA figures for type 30 at 180 V, −13.5 V, quoted on a page of measured valves; triodes.csv"
FITTED = relative(0.03, because="one law for three lines of the manual misses each a little")
SUPPLY, LOAD = volts("45 V", "250 V"), ohms("2 kΩ", "200 kΩ")
LAW = {
    "amplification_factor": number(4, 30),
    "perveance": physical("A/V^1.5", "50 µA/V^1.5", "1 mA/V^1.5"),
    "offset": volts("-1.5 V", "1.5 V"),
}
STAGE = {"supply": SUPPLY, "load": LOAD, "grid_voltage": volts("-15 V", "0 V"), **LAW}
TYPE_30 = (9.29, 267.4e-6, -0.67)
FOR_180_VOLTS = 180 + 10e3 * 3.1e-3


def anode_above_filament(supply, load, grid_voltage, amplification_factor, perveance, offset):
    return triode_current(0.0, grid_voltage, amplification_factor, perveance, offset) * load < supply


def nearly_one(left, right, tolerance):
    return equal(left, right, relative(1e-6, because="a power and its inverse"))


EXERCISE = Exercise(
    title="Where does the valve settle?",
    seconds=5.0,
    questions=[
        Question(
            asks=load_line_current,
            given={"anode_voltage": volts("10 V", "250 V"), "supply": SUPPLY, "load": LOAD},
            where=lambda anode_voltage, supply, load: anode_voltage < supply,
            gives="A",
            agrees_within=CLOSE,
            holds=[
                invariant("an anode at the supply's voltage draws nothing", lambda f, a, B, R: (f(B, B, R), 0.0)),
                invariant(
                    "an anode at the filament's draws all that the load lets through", lambda f, a, B, R: (f(0.0, B, R), B / R)
                ),
            ],
            no_published="Ohm's law.",
            slips=[
                slip("taken the anode's voltage for the load's: the load has the rest", lambda a, B, R: a / R),
                slip("forgotten the anode's voltage", lambda a, B, R: B / R),
                slip("subtracted the wrong way round", lambda a, B, R: (a - B) / R),
                slip("returned milliamperes", lambda a, B, R: 1e3 * (B - a) / R),
            ],
        ),
        Question(
            asks=operating_point,
            given=STAGE,
            where=anode_above_filament,
            edges=[
                lambda supply, load, grid_voltage, *law: (
                    0.0,
                    load,
                    -10.0,
                    *law,
                ),  # cut off: nothing flows, and 0 V is the anode's
                lambda supply, load, grid_voltage, *law: (
                    90.0,
                    500e3,
                    1.43,
                    *TYPE_30,
                ),  # the anode stands just above the filament
            ],
            gives=("V", "A"),
            agrees_within=SOLVED,
            holds=[
                invariant(
                    "it lies on the load line",
                    lambda f, B, R, *law: (f(B, R, *law)[1], f.load_line_current(f(B, R, *law)[0], B, R)),
                ),
                invariant(
                    "and on the valve's curve", lambda f, B, R, *law: (f(B, R, *law)[1], triode_current(f(B, R, *law)[0], *law))
                ),
                invariant(
                    "a falling grid raises the anode",
                    lambda f, B, R, g, *law: (f(B, R, g, *law)[0], f(B, R, g - 1, *law)[0]),
                    at_most,
                ),
            ],
            published=[
                value(
                    "type 30, 10 kΩ, from 211 V: 180 V and 3.1 mA are left",
                    given=(FOR_180_VOLTS, 10e3, -13.5, *TYPE_30),
                    wanted=(180.0, 3.1e-3),
                    within=FITTED,
                    source=MANUAL,
                    known="found",
                ),
            ],
            refuses=[
                refusal(
                    "a grid so high that the anode would stand below the filament",
                    (90.0, 500e3, 2.0, *TYPE_30),
                    (90.0, 500e3, 1.45, *TYPE_30),
                )
            ],
            slips=[
                slip(
                    "let the valve see the whole supply: the load takes its share",
                    lambda B, R, *law: (B, triode_current(B, *law)),
                ),
                slip("returned current and voltage the other way round", lambda *inputs: operating_point(*inputs)[::-1]),
                slip("halved the supply instead of solving", lambda B, R, *law: (B / 2, triode_current(B / 2, *law))),
                slip("kept the wrong half of the interval", lambda B, R, *law: (B, 0.0 * B)),
            ],
        ),
        Question(
            asks=grid_voltage_for,
            given={"anode_current": amperes("100 µA", "10 mA"), "supply": SUPPLY, "load": LOAD, **LAW},
            where=lambda anode_current, supply, load, *law: anode_current * load <= supply,
            edges=[lambda anode_current, supply, load, *law: (1 / 128, 80.0, 10240.0, *law)],  # all that the load can pass
            gives="V",
            agrees_within=CLOSE,
            holds=[
                invariant(
                    "with that grid voltage the valve passes the current, the load taking its share",
                    lambda f, i, B, R, *law: (triode_current(B - i * R, f(i, B, R, *law), *law) / i, 1.0),
                    nearly_one,
                ),
                invariant(
                    "down to an anode a thousandth of the supply above the filament",
                    lambda f, i, B, R, *law: (
                        triode_current(B / 1000, f(0.999 * B / R, B, R, *law), *law) / (0.999 * B / R),
                        1.0,
                    ),
                    nearly_one,
                ),
                invariant(
                    "more current needs a higher grid",
                    lambda f, i, B, R, *law: (f(i / 2, B, R, *law), f(i, B, R, *law)),
                    at_most,
                ),
            ],
            published=[
                value(
                    "type 30 at 180 V, 3.1 mA: −13.5 V",
                    given=(3.1e-3, FOR_180_VOLTS, 10e3, *TYPE_30),
                    wanted=-13.5,
                    within=FITTED,
                    source=MANUAL,
                    known="found",
                ),
            ],
            refuses=[
                refusal(
                    "10 mA through 10 kΩ from 90 V, which has only 9 mA to give",
                    (10e-3, 90.0, 10e3, *TYPE_30),
                    (9.01e-3, 90.0, 10e3, *TYPE_30),
                )
            ],
            slips=[
                slip(
                    "let the valve see the whole supply: the load takes its share",
                    lambda i, B, R, *law: grid_voltage_for(i, B, 1e-9 * R, *law),
                ),
                slip(
                    "left out the power 2/3 that turns the law round",
                    lambda i, B, R, μ, K, o: grid_voltage_for(i, B, R, μ, K, o) + i / K - (i / K) ** (2 / 3),
                ),
                slip(
                    "added the offset: it helps the grid, which then needs less",
                    lambda i, B, R, μ, K, o: grid_voltage_for(i, B, R, μ, K, o) + 2 * o,
                ),
                slip("not divided the anode's voltage by μ", lambda i, B, R, μ, K, o: grid_voltage_for(i, B, R, 1.0, K, o)),
                slip("left the anode's pull out", lambda i, B, R, μ, K, o: (i / K) ** (2 / 3) - o + 0 * B * R * μ),
            ],
        ),
        Question(
            asks=power_shares,
            given=STAGE,
            where=anode_above_filament,
            edges=[
                lambda supply, load, grid_voltage, *law: (
                    0.0,
                    load,
                    -10.0,
                    *law,
                ),  # cut off: nothing flows, and 0 V is the anode's
                lambda supply, load, grid_voltage, *law: (
                    90.0,
                    500e3,
                    1.43,
                    *TYPE_30,
                ),  # the anode stands just above the filament
            ],
            gives=("W", "W", "W"),
            agrees_within=SOLVED,
            holds=[
                invariant(
                    "load and valve together turn into heat what the battery gives",
                    lambda f, *inputs: (f(*inputs)[1] + f(*inputs)[2], f(*inputs)[0]),
                ),
                invariant(
                    "never more heat in the valve than a quarter of supply squared over load",
                    lambda f, B, R, *law: (f(B, R, *law)[2], B**2 / (4 * R)),
                    at_most,
                ),
            ],
            no_published="Voltage times current at a point that has its figure.",
            refuses=[
                refusal(
                    "a grid so high that the anode would stand below the filament",
                    (90.0, 500e3, 2.0, *TYPE_30),
                    (90.0, 500e3, 1.45, *TYPE_30),
                )
            ],
            slips=[
                slip("exchanged load and valve", lambda *inputs: np.array(power_shares(*inputs))[[0, 2, 1]]),
                slip(
                    "put the whole supply across the load",
                    lambda B, R, *law: (*power_shares(B, R, *law)[:1], B**2 / R, power_shares(B, R, *law)[2]),
                ),
                slip(
                    "put the whole supply across the valve",
                    lambda B, R, *law: (*power_shares(B, R, *law)[:2], power_shares(B, R, *law)[0]),
                ),
                slip(
                    "taken the current the valve would pass with the whole supply on its anode",
                    lambda B, R, *law: (
                        B * triode_current(B, *law),
                        R * triode_current(B, *law) ** 2,
                        B * triode_current(B, *law),
                    ),
                ),
            ],
        ),
    ],
    hints=[
        "Draw two lines: the current the valve passes at each anode voltage, which rises, and the current the load lets "
        "through, which falls to nothing at the supply's voltage. They cross once.",
        "Load: (supply − anode)/load. To find the crossing, try half the supply: if the valve would pass more than the load "
        "brings, the anode stands lower than that; halve again. (If it would even at 0 V, they cross nowhere.) For a wanted "
        "current nothing need be solved: the load line gives the anode's voltage, and the law turned round the drive.",
        "ValueError if np.any(triode_current(0, …) > supply/load). Then low = 0, high = supply; sixty times: middle = "
        "(low + high)/2; where triode_current(middle, …) > (supply − middle)/load put high = middle, elsewhere low = "
        "middle. Grid: (anode_current/perveance)^(2/3) − (supply − anode_current × load)/amplification_factor − offset, "
        "ValueError if np.any(supply < anode_current × load). Powers: supply, load × current, anode voltage, each times "
        "the current.",
    ],
)

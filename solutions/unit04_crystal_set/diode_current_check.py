"""How `diode_current` is judged.

In the laws and slips: v the voltage across the diode, Is its saturation current, n its slope voltage; N its ideality
and T its temperature.
"""

import numpy as np

from checker import (
    Exercise,
    Question,
    amperes,
    at_most,
    equal,
    invariant,
    less,
    number,
    physical,
    relative,
    slip,
    value,
    volts,
)

from .diode_current import VOLTS_PER_KELVIN, diode_current, slope_resistance, slope_voltage

CLOSE = relative(1e-9, because="one formula, double precision")
CODATA = "k/e of CODATA, by scipy.constants"
MAKER = "HP/Agilent data sheet HSMS-285x: R = 8.33e-5 n T/(I + Is), Is 3 µA, n 1.06; its rounded constant is 3.3 % low"
ROUNDED_CONSTANT = relative(0.035, because="the sheet prints 8.33e-5 V/K for 8.617e-5 V/K")
WARM = 298.15  # kelvin: 25 °C
DIODE = {
    "voltage": volts("-300 mV", "200 mV"),
    "saturation_current": amperes("10 nA", "10 µA"),
    "slope_voltage": volts("25 mV", "60 mV"),
}


def step_of_current(f, v, Is, n):
    return f.diode_current(v + 0.001 * n, Is, n) - f.diode_current(v - 0.001 * n, Is, n)


def nearly(left, right, tolerance):
    return equal(left, right, relative(1e-5, because="a step is not quite a slope"))


EXERCISE = Exercise(
    title="What does a crystal let through?",
    questions=[
        Question(
            asks=slope_voltage,
            given={"ideality": number(1, 2.5), "temperature": physical("K", "250 K", "350 K")},
            gives="V",
            agrees_within=CLOSE,
            holds=[
                invariant("twice the temperature, twice the step", lambda f, N, T: (f(N, 2 * T), 2 * f(N, T))),
                invariant(
                    "an ideality of 2 doubles the step of a perfect junction", lambda f, N, T: (f(2.0, T), 2 * f(1.0, T))
                ),
            ],
            published=[
                value(
                    "a perfect junction at 20 °C",
                    given=(1.0, 293.15),
                    wanted=25.2617e-3,
                    within=relative(3e-6, because="printed to six figures"),
                    source=CODATA,
                    known="recomputed",
                ),
                value(
                    "a perfect junction at 27 °C",
                    given=(1.0, 300.0),
                    wanted=25.8520e-3,
                    within=relative(3e-6, because="printed to six figures"),
                    source=CODATA,
                    known="recomputed",
                ),
            ],
            slips=[
                slip("left out the ideality", lambda N, T: VOLTS_PER_KELVIN * T),
                slip("added 273 to a temperature that is in kelvin already", lambda N, T: slope_voltage(N, T + 273.15)),
                slip(
                    "taken the temperature for degrees Celsius and subtracted 273",
                    lambda N, T: N * VOLTS_PER_KELVIN * (T - 273.15),
                ),
                slip("used the 8.33e-5 of old data sheets, which is 3.3 % low", lambda N, T: N * 8.33e-5 * T),
                slip("divided by the ideality", lambda N, T: VOLTS_PER_KELVIN * T / N),
            ],
        ),
        Question(
            asks=diode_current,
            given=DIODE,
            gives="A",
            agrees_within=CLOSE,
            holds=[
                invariant("no voltage, no current", lambda f, v, Is, n: (f(0.0, Is, n), 0.0)),
                invariant(
                    "a diode never gives power: current and voltage have the same sign",
                    lambda f, v, Is, n: (0.0, v * f(v, Is, n)),
                    at_most,
                ),
                invariant(
                    "backwards it never passes more than the saturation current",
                    lambda f, v, Is, n: (-Is, f(-abs(v), Is, n)),
                    at_most,
                ),
                invariant(
                    "a slope voltage more multiplies the current, with Is added, by 2.718",
                    lambda f, v, Is, n: (f(v + n, Is, n) + Is, np.e * (f(v, Is, n) + Is)),
                ),
            ],
            no_published="The law itself; its slope is held to a maker's figures in slope_resistance.",
            slips=[
                slip("left out the −1: at no voltage no current must flow", lambda v, Is, n: Is * np.exp(v / n)),
                slip(
                    "taken the 1 from the current: it goes inside the bracket, before Is multiplies",
                    lambda v, Is, n: Is * np.exp(v / n) - 1,
                ),
                slip("taken the 1 from the exponent: it comes off the power", lambda v, Is, n: Is * np.exp(v / n - 1)),
                slip("turned the diode round", lambda v, Is, n: -Is * np.expm1(-v / n)),
                slip("given the exponent a minus sign", lambda v, Is, n: Is * np.expm1(-v / n)),
                slip("used powers of ten: the law wants powers of 2.718", lambda v, Is, n: Is * (10 ** (v / n) - 1)),
                slip("multiplied by the slope voltage where the exponent divides by it", lambda v, Is, n: Is * np.expm1(v * n)),
            ],
        ),
        Question(
            asks=slope_resistance,
            given=DIODE,
            gives="Ω",
            agrees_within=CLOSE,
            holds=[
                invariant(
                    "a small step along your curve is the current's step times this resistance",
                    lambda f, v, Is, n: (step_of_current(f, v, Is, n) * f(v, Is, n), 0.002 * n),
                    nearly,
                ),
                invariant("the further forward, the lower", lambda f, v, Is, n: (f(v + 0.01, Is, n), f(v, Is, n)), less),
            ],
            published=[
                value(
                    "a Schottky diode at rest",
                    given=(0.0, 3e-6, 1.06 * VOLTS_PER_KELVIN * WARM),
                    wanted=8.33e-5 * 1.06 * WARM / 3e-6,
                    within=ROUNDED_CONSTANT,
                    source=MAKER,
                    known="found",
                ),
                value(
                    "the same with 3 µA through it: half of that",
                    given=(1.06 * VOLTS_PER_KELVIN * WARM * np.log(2), 3e-6, 1.06 * VOLTS_PER_KELVIN * WARM),
                    wanted=8.33e-5 * 1.06 * WARM / 6e-6,
                    within=ROUNDED_CONSTANT,
                    source=MAKER,
                    known="found",
                ),
            ],
            slips=[
                slip(
                    "divided voltage by current: that is the slope of the line to the origin, not of the curve",
                    lambda v, Is, n: np.float64(v) / diode_current(v, Is, n),
                ),
                slip("left out the saturation current", lambda v, Is, n: n / np.float64(diode_current(v, Is, n))),
                slip("taken it at rest, whatever the voltage", lambda v, Is, n: n / Is),
                slip("returned the conductance", lambda v, Is, n: 1 / slope_resistance(v, Is, n)),
                slip("subtracted the saturation current", lambda v, Is, n: n / np.float64(diode_current(v, Is, n) - Is)),
            ],
        ),
    ],
    hints=[
        "One exponential does all of it. Its step in voltage is set by heat; backwards it dies away and leaves only a "
        "small, constant leak.",
        "Slope voltage: ideality times k/e times the temperature. The current is Is times a bracket that is 0 at no "
        "voltage. For the slope differentiate it: what is left is the exponential, and that is I + Is.",
        "slope_voltage is ideality * VOLTS_PER_KELVIN * temperature; diode_current is saturation_current * "
        "(np.exp(voltage / slope_voltage) - 1); slope_resistance is slope_voltage over that current plus "
        "saturation_current.",
    ],
)

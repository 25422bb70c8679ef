"""How `phone_loudness` is judged.

In the laws and slips: P power, S sensitivity, L level, F frequency.
"""

import numpy as np

from checker import (
    Exercise,
    Question,
    absolute,
    at_most,
    decibels,
    hertz,
    invariant,
    refusal,
    relative,
    slip,
    value,
    watts,
)

from .phone_loudness import (
    REFERENCE_PRESSURE,
    THRESHOLD_FREQUENCY,
    THRESHOLD_LEVEL,
    hearing_threshold,
    least_audible_power,
    sound_pressure,
    sound_pressure_level,
)

ISO = "ISO 226:2003, Table 1, threshold T_f, shared with ISO 389-7; hearing_threshold.csv"
WORKED = "worked from the 1 kHz threshold of 2.4 dB, ISO 226:2003; headphones.toml"
DECIBELS = absolute(1e-6, because="levels to a millionth of a decibel")
CLOSE = relative(1e-9, because="one power of ten, double precision")
SENSITIVITY, AUDIBLE = decibels("95 dB", "125 dB"), hertz("20 Hz", "12.5 kHz")
OUTSIDE = [
    refusal("19 Hz or whatever is below the table", (19.0,), (19.99,)),
    refusal("13 kHz or whatever is above the table", (13e3,), (12501.0,)),
]


def nearest_entry(F):
    nearest = np.argmin(np.abs(np.log(THRESHOLD_FREQUENCY) - np.log(np.asarray(F)[..., None])), axis=-1)
    return THRESHOLD_LEVEL[nearest]


def close_levels(left, right, tolerance):
    return DECIBELS.allows(left, right)


EXERCISE = Exercise(
    title="How loud is it in the telephones?",
    questions=[
        Question(
            asks=sound_pressure_level,
            given={"power": watts("1 pW", "10 mW"), "sensitivity": SENSITIVITY},
            gives="dB",
            agrees_within=DECIBELS,
            holds=[
                invariant("a milliwatt gives the sensitivity itself", lambda f, P, S: (f(1e-3, S), S)),
                invariant("ten times the power is 10 dB more", lambda f, P, S: (f(10 * P, S), f(P, S) + 10)),
            ],
            published=[
                value(
                    "31.62 pW at 105 dB a milliwatt: a quiet room's 30 dB",
                    given=(3.162e-11, 105.0),
                    wanted=30.0,
                    within=absolute(1e-3, because="the power is printed to four figures"),
                    source="headphones.toml",
                    known="recomputed",
                ),
            ],
            slips=[
                slip("used 20 log: that is for pressures and voltages", lambda P, S: S + 20 * np.log10(P / 1e-3)),
                slip("counted from a watt: the sensitivity is for a milliwatt", lambda P, S: S + 10 * np.log10(P)),
                slip("taken the natural logarithm", lambda P, S: S + 10 * np.log(P / 1e-3)),
                slip("subtracted the power's decibels", lambda P, S: S - 10 * np.log10(P / 1e-3)),
                slip("forgotten to add the sensitivity", lambda P, S: 10 * np.log10(P / 1e-3)),
            ],
        ),
        Question(
            asks=sound_pressure,
            given={"level": decibels("-10 dB", "120 dB")},
            gives="Pa",
            agrees_within=CLOSE,
            holds=[
                invariant("20 dB more is ten times the pressure", lambda f, L: (f(L + 20), 10 * f(L))),
                invariant("0 dB is 20 µPa", lambda f, L: (f(0.0), 20e-6)),
            ],
            published=[
                value(
                    "2.4 dB, just heard at 1 kHz",
                    given=(2.4,),
                    wanted=26.365e-6,
                    within=relative(2e-5, because="printed to five figures"),
                    source=ISO,
                    known="recomputed",
                ),
            ],
            slips=[
                slip("divided the level by 10: that is for powers", lambda L: REFERENCE_PRESSURE * 10 ** (L / 10)),
                slip("raised 2.718 instead of 10", lambda L: REFERENCE_PRESSURE * np.exp(L / 20)),
                slip("left out the 20 µPa", lambda L: 10 ** (L / 20)),
                slip("returned the crest, not the r.m.s. value", lambda L: np.sqrt(2) * sound_pressure(L)),
            ],
        ),
        Question(
            asks=hearing_threshold,
            given={"frequency": AUDIBLE},
            edges=[lambda F: (F * 1.01 if F < 12e3 else F / 1.01,)] * 8,  # hardly another pitch: a table goes in steps
            gives="dB",
            agrees_within=DECIBELS,
            holds=[
                invariant(
                    "half-way from 1 to 1.25 kHz in pitch is half-way from 2.4 to 3.5 dB",
                    lambda f, F: (f(np.sqrt(1000 * 1250.0)), 2.95),
                ),
                invariant("the ear is never better than −6 dB", lambda f, F: (-6.0, f(F)), at_most),
            ],
            published=[
                value(what, given=(frequency,), wanted=level, within=DECIBELS, source=ISO, known="found")
                for what, frequency, level in (
                    ("the table's first line, 20 Hz", 20.0, 78.5),
                    ("its line for 1 kHz", 1000.0, 2.4),
                    ("its last line, 12.5 kHz", 12.5e3, 12.3),
                )
            ],
            refuses=OUTSIDE,
            slips=[
                slip(
                    "drawn the straight lines against the frequency: pitch goes by its logarithm",
                    lambda F: np.interp(F, THRESHOLD_FREQUENCY, THRESHOLD_LEVEL),
                ),
                slip("taken the nearest entry: between entries the level lies on a line", nearest_entry),
                slip("turned the sign", lambda F: -hearing_threshold(F)),
                slip("returned a ratio of pressures instead of decibels", lambda F: 10 ** (hearing_threshold(F) / 20)),
            ],
        ),
        Question(
            asks=least_audible_power,
            given={"frequency": AUDIBLE, "sensitivity": SENSITIVITY},
            gives="W",
            agrees_within=CLOSE,
            holds=[
                invariant(
                    "that power makes a sound at the threshold",
                    lambda f, F, S: (f.sound_pressure_level(f(F, S), S), f.hearing_threshold(F)),
                    close_levels,
                ),
                invariant("10 dB more sensitive telephones need a tenth", lambda f, F, S: (f(F, S + 10), f(F, S) / 10)),
            ],
            published=[
                value(
                    "1 kHz at 100 dB a milliwatt: a sixth of a picowatt",
                    given=(1000.0, 100.0),
                    wanted=1.738e-13,
                    within=relative(3e-4, because="printed to four figures"),
                    source=WORKED,
                    known="recomputed",
                ),
                value(
                    "1 kHz at 115 dB a milliwatt",
                    given=(1000.0, 115.0),
                    wanted=5.495e-15,
                    within=relative(3e-4, because="printed to four figures"),
                    source=WORKED,
                    known="recomputed",
                ),
            ],
            refuses=[
                refusal("19 Hz or whatever is below the table", (19.0, 105.0), (19.99, 105.0)),
                refusal("13 kHz or whatever is above the table", (13e3, 105.0), (12501.0, 105.0)),
            ],
            slips=[
                slip(
                    "divided the decibels by 20: powers go by 10", lambda F, S: 1e-3 * 10 ** ((hearing_threshold(F) - S) / 20)
                ),
                slip("taken 0 dB as the threshold at every pitch", lambda F, S: 1e-3 * 10 ** (-S / 10) + 0 * F),
                slip("returned milliwatts", lambda F, S: 1e3 * least_audible_power(F, S)),
                slip(
                    "subtracted the threshold from the sensitivity: that is the other way up",
                    lambda F, S: 1e-3 * 10 ** ((S - hearing_threshold(F)) / 10),
                ),
            ],
        ),
    ],
    hints=[
        "The decibel counts powers of ten of a power, ten to each. Pressure goes as the root of power: there it is twenty.",
        "Level = sensitivity + 10 log10(power/1 mW). np.interp draws the straight lines; give it logarithms of the "
        "frequencies, asked and tabulated. For the least power, set the level equal to the threshold and solve.",
        "sound_pressure_level is sensitivity + 10 * np.log10(power / 1e-3); sound_pressure is 20e-6 * 10 ** (level / 20)."
        " Threshold: if np.any(frequency < 20) or np.any(frequency > 12500) raise ValueError; else "
        "np.interp(np.log(frequency), np.log(THRESHOLD_FREQUENCY), THRESHOLD_LEVEL). Least power: 1e-3 * 10 ** "
        "((threshold - sensitivity) / 10).",
    ],
)

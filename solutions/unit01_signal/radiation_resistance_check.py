"""How `radiation_resistance` is judged."""

import numpy as np

from checker import Exercise, Question, at_most, invariant, relative, slip, value
from checker.checks.given import hertz, metres, ohms, volts

from .radiation_resistance import SPEED_OF_LIGHT, available_power, radiation_resistance

PRINTED = relative(2e-6, because="six figures are given")
FORMULA = relative(1e-9, because="one formula, with 120π ohm for space as the docstring says")
TERMAN = "F. E. Terman, Radio Engineers' Handbook, 1943, sec. 11"
LOADS = np.array([0.1, 0.5, 1.0, 2.0, 10.0])

EXERCISE = Exercise(
    title="What can the aerial give?",
    questions=[
        Question(
            asks=radiation_resistance,
            given={"effective_height": metres("1 m", "30 m"), "frequency": hertz("150 kHz", "1.7 MHz")},
            gives="Ω",
            agrees_within=FORMULA,
            holds=[
                invariant("twice the height, four times the resistance", lambda f, h, hz: (f(2 * h, hz), 4 * f(h, hz))),
                invariant("only height against wavelength counts", lambda f, h, hz: (f(2 * h, hz), f(h, 2 * hz))),
            ],
            published=[
                value("5 m at 1 MHz", given=(5.0, 1e6), wanted=0.439257, within=PRINTED, source=TERMAN, known="recomputed"),
                value(
                    "10 m at 600 kHz", given=(10.0, 600e3), wanted=0.632530, within=PRINTED, source=TERMAN, known="recomputed"
                ),
            ],
            slips=[
                slip("left out the square", lambda h, hz: 160 * np.pi**2 * h * hz / SPEED_OF_LIGHT),
                slip(
                    "used 80π²: that is for a wire in free space, with no ground to mirror it",
                    lambda h, hz: radiation_resistance(h, hz) / 2,
                ),
                slip(
                    "used 40π²: that goes with the whole height of an upright wire, and this is its effective height",
                    lambda h, hz: radiation_resistance(h, hz) / 4,
                ),
                slip("turned height over wavelength over", lambda h, hz: 160 * np.pi**2 * (SPEED_OF_LIGHT / hz / h) ** 2),
                slip("used π for π²", lambda h, hz: radiation_resistance(h, hz) / np.pi),
                slip("taken the frequency for kHz: it comes in Hz", lambda h, hz: radiation_resistance(h, 1000 * hz)),
            ],
        ),
        Question(
            asks=available_power,
            given={"emf": volts("10 µV", "1 V"), "resistance": ohms("1 Ω", "200 Ω")},
            gives="W",
            agrees_within=relative(1e-9, because="one line of algebra, double precision"),
            holds=[
                invariant("no load draws more", lambda f, e, r: ((e / (r + r * LOADS)) ** 2 * r * LOADS, f(e, r)), at_most),
                invariant("a load equal to the resistance draws all of it", lambda f, e, r: ((e / (r + r)) ** 2 * r, f(e, r))),
                invariant("twice the voltage, four times the power", lambda f, e, r: (f(2 * e, r), 4 * f(e, r))),
            ],
            no_published="It follows from Ohm's law.",
            slips=[
                slip("put the whole voltage across the load: half of it stays in the aerial", lambda e, r: e**2 / r),
                slip("halved the voltage but not the current, or the other way round", lambda e, r: e**2 / (2 * r)),
                slip("taken the voltage for a peak: it is r.m.s. already", lambda e, r: e**2 / (8 * r)),
                slip("left out the square", lambda e, r: e / (4 * r)),
                slip("multiplied by the resistance: with more of it there is less power", lambda e, r: e**2 * r / 4),
            ],
        ),
    ],
    hints=[
        "Both go as a square: the one of height over wavelength, the other of voltage.",
        "Find the wavelength first: speed of light over frequency. For the power: with load and aerial resistance "
        "equal, half of the voltage is across each.",
        "radiation_resistance is 160 * np.pi**2 * (effective_height / wavelength) ** 2 with wavelength = "
        "SPEED_OF_LIGHT / frequency. available_power is (emf / 2) ** 2 / resistance.",
    ],
)

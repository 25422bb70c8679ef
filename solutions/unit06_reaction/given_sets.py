"""The reaction sets that the checks of this unit draw: each part a tuple of three or four numbers, shown with their units."""

from functools import partial

import numpy as np

from checker import drawn, farads, henries
from checker.checks.given import shown
from checker.checks.units import tidily

from .stability import from_parts, poles, ring


def in_units(units, part):
    """A part as a student reads it: "6 Ω, 200 µH, 8 µS"."""
    return ", ".join(shown(float(number), unit, tidily) for number, unit in zip(part, units, strict=True))


def parts(units, words, *values):
    return drawn(values, words, partial(in_units, units))


COUPLING, TUNING, THROTTLE = henries("1 µH", "20 µH"), farads("80 pF", "400 pF"), farads("10 pF", "500 pF")
AERIAL = parts(
    ("Ω", "F", "H"),
    "resistance 20 Ω to 80 Ω, capacitance 100 pF to 200 pF, inductance 30 µH to 45 µH",
    (30.0, 160e-12, 40e-6),
    (25.0, 120e-12, 30e-6),
    (50.0, 200e-12, 35e-6),
    (80.0, 180e-12, 30e-6),
    (20.0, 100e-12, 45e-6),
)
TUNED = parts(
    ("Ω", "H", "S"),
    "resistance 4 Ω to 15 Ω, inductance 180 µH to 250 µH, grid conductance 0 µS to 10 µS",
    (6.0, 200e-6, 8e-6),
    (10.0, 180e-6, 2e-6),
    (4.0, 250e-6, 10e-6),
    (15.0, 200e-6, 5e-6),
    (8.0, 220e-6, 0.0),
)
HELPING = (2.0, 48e-6, 14e-6, 0.4e-6), (1.0, 30e-6, 10e-6, 0.0), (3.0, 80e-6, 20e-6, 1e-6), (2.0, 60e-6, 8e-6, 0.5e-6)
HINDERING = (2.0, 48e-6, -14e-6, 0.4e-6), (1.0, 80e-6, -8e-6, -0.5e-6)
UNITS_OF_TICKLER = "Ω", "H", "H", "H"
TICKLER = parts(
    UNITS_OF_TICKLER,
    "resistance 1 Ω to 3 Ω, inductance 30 µH to 80 µH, with the tuned coil −14 µH to 20 µH, with the aerial's −0.5 µH to 1 µH",
    *HELPING,
    *HINDERING,
)
HELPING_TICKLER = parts(
    UNITS_OF_TICKLER,
    "resistance 1 Ω to 3 Ω, inductance 30 µH to 80 µH, with the tuned coil 8 µH to 20 µH, with the aerial's 0 µH to 1 µH",
    *HELPING,
)
SIMPLE_VALVE = parts(
    ("S", "Ω"),
    "transconductance 0 S to 2 mS, anode resistance 5 kΩ to 20 kΩ",
    (0.9e-3, 10e3),
    (0.5e-3, 20e3),
    (2e-3, 5e3),
    (0.0, 10e3),
    (1.2e-3, 8e3),
)
VALVES = (
    (0.9e-3, 10e3, 6e-12, 200e-12), (0.5e-3, 20e3, 2e-12, 100e-12), (2e-3, 5e3, 8e-12, 300e-12), (0.0, 10e3, 6e-12, 200e-12),
    (1.2e-3, 8e3, 4e-12, 30e-12), (1e-3, 12e3, 1e-12, 50e-12),
)  # fmt: skip
UNITS_OF_VALVE = "S", "Ω", "F", "F"
CAPACITANCES = "grid-anode capacitance 1 pF to 8 pF, anode capacitance 30 pF to 300 pF"
VALVE = parts(UNITS_OF_VALVE, f"transconductance 0 S to 2 mS, anode resistance 5 kΩ to 20 kΩ, {CAPACITANCES}", *VALVES)
ANY_VALVE = parts(
    UNITS_OF_VALVE[1:], f"anode resistance 5 kΩ to 20 kΩ, {CAPACITANCES}", *dict.fromkeys(valve[1:] for valve in VALVES)
)
FIXED = {"aerial": AERIAL, "tuned": TUNED, "tickler": TICKLER}
KNOBS = {"coupling": COUPLING, "tuning": TUNING, "throttle": THROTTLE}
SIMPLE_SET = {**KNOBS, **FIXED, "valve": SIMPLE_VALVE}
SET = {**KNOBS, **FIXED, "valve": VALVE}
THE_AERIAL, THE_COIL, THE_TICKLER, THE_VALVE = (values[0] for values in (AERIAL.values, TUNED.values, HELPING, VALVES))


def tuned_circuit_leads(*set_):
    """Whether the pole that outlasts all others is the tuned circuit's: where it is damped much, the aerial's may be."""
    frequency, growth = ring(from_parts(*set_))
    leading = poles(from_parts(*set_))[0]
    return abs(2j * np.pi * frequency + growth - leading) < 1e-6 * abs(leading)

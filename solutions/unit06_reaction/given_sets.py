"""The reaction sets that the checks of this unit draw: each part a tuple of three or four numbers, shown with their units."""
from functools import partial

from checker import drawn, farads, henries, ohms
from checker.checks.given import shown
from checker.checks.units import tidily


def in_units(units, part):
    """A part as a student reads it: "6 Ω, 200 µH, 8 µS"."""
    return ", ".join(shown(float(number), unit, tidily) for number, unit in zip(part, units, strict=True))


def parts(units, words, *values):
    return drawn(values, words, partial(in_units, units))


COUPLING, TUNING, THROTTLE = henries("1 µH", "20 µH"), farads("60 pF", "400 pF"), farads("5 pF", "75 pF")
AERIAL = parts(
    ("Ω", "F", "H"), "resistance 15 Ω to 80 Ω, capacitance 100 pF to 250 pF, inductance 30 µH to 60 µH",
    (30.0, 160e-12, 40e-6), (20.0, 120e-12, 30e-6), (50.0, 250e-12, 35e-6), (80.0, 200e-12, 60e-6), (15.0, 100e-12, 50e-6),
)
TUNED = parts(
    ("Ω", "H", "S"), "resistance 4 Ω to 15 Ω, inductance 160 µH to 250 µH, grid conductance 0 µS to 20 µS",
    (6.0, 200e-6, 8e-6), (10.0, 180e-6, 2e-6), (4.0, 250e-6, 10e-6), (15.0, 160e-6, 20e-6), (8.0, 220e-6, 0.0),
)
HELPING = (1.0, 12e-6, 6e-6, 0.2e-6), (2.0, 20e-6, 4e-6, 0.5e-6), (0.5, 8e-6, 5e-6, 0.0), (3.0, 30e-6, 8e-6, 1e-6)
HINDERING = (1.0, 12e-6, -6e-6, 0.2e-6), (2.0, 40e-6, -3e-6, -0.5e-6)
UNITS_OF_TICKLER = "Ω", "H", "H", "H"
TICKLER = parts(
    UNITS_OF_TICKLER, "resistance 0.5 Ω to 3 Ω, inductance 8 µH to 40 µH, with the tuned coil −6 µH to 8 µH, "
    "with the aerial's −0.5 µH to 1 µH", *HELPING, *HINDERING,
)
HELPING_TICKLER = parts(
    UNITS_OF_TICKLER, "resistance 0.5 Ω to 3 Ω, inductance 8 µH to 30 µH, with the tuned coil 4 µH to 8 µH, "
    "with the aerial's 0 µH to 1 µH", *HELPING,
)
VALVE = parts(
    ("S", "Ω"), "transconductance 0 S to 2 mS, anode resistance 5 kΩ to 20 kΩ",
    (0.9e-3, 10e3), (0.5e-3, 20e3), (2e-3, 5e3), (0.0, 10e3), (1.2e-3, 8e3),
)
ANODE_RESISTANCE = ohms("5 kΩ", "30 kΩ")
FIXED = {"aerial": AERIAL, "tuned": TUNED, "tickler": TICKLER}
KNOBS = {"coupling": COUPLING, "tuning": TUNING, "throttle": THROTTLE}
SET = {**KNOBS, **FIXED, "valve": VALVE}

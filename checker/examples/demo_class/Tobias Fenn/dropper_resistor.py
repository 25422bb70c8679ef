# tobias, 3rd attempt, think this is it
import math

PREFERRED = {
    "E6": (10, 15, 22, 33, 47, 68),
    "E12": (10, 12, 15, 18, 22, 27, 33, 39, 47, 56, 68, 82),
    "E24": (10, 11, 12, 13, 15, 16, 18, 20, 22, 24, 27, 30, 33, 36, 39, 43, 47, 51, 56, 62, 68, 75, 82, 91),
}


def dropper_resistance(rail, filament_voltage, filament_current):
    return rail / filament_current  # ohm's law


def dropper_dissipation(rail, filament_voltage, filament_current):
    return rail * filament_current  # P = V I


def next_preferred(resistance, series="E12"):
    if resistance <= 0:
        raise ValueError("must be positive")
    power = math.floor(math.log10(resistance)) - 1
    for value in PREFERRED["E12"] + (100,):  # the club drawer only has E12 anyway
        if value * 10.0**power >= resistance * (1 - 1e-9):
            return value * 10.0**power


def current_through_dropper(rail, resistance, filament_voltage, filament_current):
    return rail / resistance

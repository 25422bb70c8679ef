"""My valve: 2 V, 60 mA, from three dry cells.  Isla"""
import math

import numpy as np

PREFERRED = {
    "E6": (10, 15, 22, 33, 47, 68),
    "E12": (10, 12, 15, 18, 22, 27, 33, 39, 47, 56, 68, 82),
    "E24": (10, 11, 12, 13, 15, 16, 18, 20, 22, 24, 27, 30, 33, 36, 39, 43, 47, 51, 56, 62, 68, 75, 82, 91),
}


def dropper_resistance(rail, filament_voltage, filament_current):
    drop = rail - filament_voltage
    if np.any(drop < 0):
        raise ValueError("the rail is too low for this filament")
    return drop / filament_current


def dropper_dissipation(rail, filament_voltage, filament_current):
    return (rail - filament_voltage) * filament_current


def next_preferred(resistance, series="E12"):
    if series not in PREFERRED:
        raise ValueError("no such series")
    if resistance <= 0:
        raise ValueError("a resistance is more than nothing")
    power = math.floor(math.log10(resistance)) - 1
    for step in (*PREFERRED[series], 100):
        if step * 10.0**power >= resistance * (1 - 1e-9):
            return step * 10.0**power


def current_through_dropper(rail, resistance, filament_voltage, filament_current):
    hot = filament_voltage / filament_current
    return rail / (resistance + hot)

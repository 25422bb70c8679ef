"""dropper_resistance is (rail - filament_voltage) / filament_current, after `if np.any(rail < filament_voltage): raise
ValueError(…)`; dropper_dissipation is (rail - filament_voltage) * filament_current; current_through_dropper is rail /
(resistance + filament_voltage / filament_current). next_preferred: power = math.floor(math.log10(resistance)) - 1; the
first step of (*PREFERRED[series], 100) for which step * 10.0**power >= resistance * (1 - 1e-9) is the one.
"""

import math

import numpy as np

PREFERRED = {
    "E6": (10, 15, 22, 33, 47, 68),
    "E12": (10, 12, 15, 18, 22, 27, 33, 39, 47, 56, 68, 82),
    "E24": (10, 11, 12, 13, 15, 16, 18, 20, 22, 24, 27, 30, 33, 36, 39, 43, 47, 51, 56, 62, 68, 75, 82, 91),
}


def dropper_resistance(rail: float, filament_voltage: float, filament_current: float) -> float:
    if np.any(rail < filament_voltage):
        raise ValueError("the rail is lower than the filament voltage")
    return (rail - filament_voltage) / filament_current


def dropper_dissipation(rail: float, filament_voltage: float, filament_current: float) -> float:
    return (rail - filament_voltage) * filament_current


def next_preferred(resistance: float, series: str = "E12") -> float:
    if not resistance > 0:
        raise ValueError("the resistance must be above zero")
    if series not in PREFERRED:
        raise ValueError("the series must be E6, E12 or E24")
    power = math.floor(math.log10(resistance)) - 1
    for step in (*PREFERRED[series], 100):
        if step * 10.0**power >= resistance * (1 - 1e-9):
            return step * 10.0**power


def current_through_dropper(rail: float, resistance: float, filament_voltage: float, filament_current: float) -> float:
    return rail / (resistance + filament_voltage / filament_current)

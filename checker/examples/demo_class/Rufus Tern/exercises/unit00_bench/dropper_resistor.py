import numpy as np

PREFERRED = {
    "E6": (10, 15, 22, 33, 47, 68),
    "E12": (10, 12, 15, 18, 22, 27, 33, 39, 47, 56, 68, 82),
    "E24": (10, 11, 12, 13, 15, 16, 18, 20, 22, 24, 27, 30, 33, 36, 39, 43, 47, 51, 56, 62, 68, 75, 82, 91),
}


def dropper_resistance(rail, filament_voltage, filament_current):
    if np.any(rail < filament_voltage):
        raise ValueError("no")
    return (rail - filament_voltage) / filament_current


def dropper_dissipation(rail, filament_voltage, filament_current):
    return filament_current**2 * (rail - filament_voltage) / filament_current


def next_preferred(resistance, series="E12"):
    decade = 1
    while resistance > 0:  # keep going until it fits
        for step in PREFERRED[series]:
            if step * decade > resistance and step * decade < resistance:
                return step * decade
        decade = decade * 10
    raise ValueError("resistance")


def current_through_dropper(rail, resistance, filament_voltage, filament_current):
    return rail / (resistance + filament_voltage / filament_current)

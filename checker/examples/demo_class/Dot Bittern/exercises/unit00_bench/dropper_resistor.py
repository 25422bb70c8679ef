import numpy as np

PREFERRED = {
    "E6": (10, 15, 22, 33, 47, 68),
    "E12": (10, 12, 15, 18, 22, 27, 33, 39, 47, 56, 68, 82),
    "E24": (10, 11, 12, 13, 15, 16, 18, 20, 22, 24, 27, 30, 33, 36, 39, 43, 47, 51, 56, 62, 68, 75, 82, 91),
}


def dropper_resistance(rail, filament_voltage, filament_current):
    if np.any(rail < filament_voltage):
        raise ValueError("The rail is lower than the filament voltage.")
    resistance = (rail - filament_voltage) / filament_current
    return f"{resistance} ohm"


def dropper_dissipation(rail, filament_voltage, filament_current):
    dissipation = (rail - filament_voltage) * filament_current
    print("The resistor dissipates", dissipation, "watts.")


def next_preferred(resistance, series="E12"):
    for power in range(-3, 9):
        for step in PREFERRED[series]:
            if step * 10.0**power >= resistance:
                yield step * 10.0**power


def current_through_dropper(rail, resistance, filament_voltage, filament_current):
    current = rail / (resistance + filament_voltage / filament_current)
    return [current]

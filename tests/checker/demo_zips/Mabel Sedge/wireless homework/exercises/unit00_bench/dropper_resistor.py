import math

PREFERRED = {
    "E6": (10, 15, 22, 33, 47, 68),
    "E12": (10, 12, 15, 18, 22, 27, 33, 39, 47, 56, 68, 82),
    "E24": (10, 11, 12, 13, 15, 16, 18, 20, 22, 24, 27, 30, 33, 36, 39, 43, 47, 51, 56, 62, 68, 75, 82, 91),
}


def dropper_resistance(rail, filament_voltage, filament_current):
    drop = rail - filament_voltage
    if np.any(drop < 0):
        raise ValueError("flat battery")
    return drop / filament_current


def dropper_dissipation(rail, filament_voltage, filament_current):
    return filament_current * rail - filament_current * filament_voltage


def next_preferred(resistance, series="E12"):
    if resistance <= 0:
        raise ValueError("a resistor has ohms")
    if series not in PREFERRED:
        raise ValueError("E6, E12 or E24")
    decade = math.floor(math.log10(resistance)) - 1
    bigger = [s * 10.0**decade for s in PREFERRED[series] + (100,) if s * 10.0**decade >= resistance * (1 - 1e-9)]
    return min(bigger)


def current_through_dropper(rail, resistance, filament_voltage, filament_current):
    filament = filament_voltage / filament_current
    return rail / (filament + resistance)

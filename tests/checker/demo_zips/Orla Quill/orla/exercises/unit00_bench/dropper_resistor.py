# O. Quill.  By way of the powers and the conductances, for a change.
import numpy as np

PREFERRED = {
    "E6": (10, 15, 22, 33, 47, 68),
    "E12": (10, 12, 15, 18, 22, 27, 33, 39, 47, 56, 68, 82),
    "E24": (10, 11, 12, 13, 15, 16, 18, 20, 22, 24, 27, 30, 33, 36, 39, 43, 47, 51, 56, 62, 68, 75, 82, 91),
}


def dropper_dissipation(rail, filament_voltage, filament_current):
    taken_from_rail = np.multiply(rail, filament_current)
    given_to_filament = np.multiply(filament_voltage, filament_current)
    return taken_from_rail - given_to_filament


def dropper_resistance(rail, filament_voltage, filament_current):
    if (np.asarray(rail) < filament_voltage).any():
        raise ValueError("more volts wanted than there are")
    return dropper_dissipation(rail, filament_voltage, filament_current) / np.square(filament_current)   # P = I²R


def next_preferred(resistance, series="E12"):
    if not resistance > 0:
        raise ValueError("resistance?")
    if series not in PREFERRED:
        raise ValueError("series?")
    scale = 1.0
    while resistance / scale >= 100 * (1 + 1e-9):
        scale = scale * 10
    while resistance / scale < 10 * (1 - 1e-9):
        scale = scale / 10
    for step in PREFERRED[series] + (100,):
        if step * scale >= resistance * (1 - 1e-9):
            return step * scale


def current_through_dropper(rail, resistance, filament_voltage, filament_current):
    # voltage divider: share of the rail on the filament, times its conductance
    conductance = np.divide(filament_current, filament_voltage)
    share = 1 / (1 + resistance * conductance)
    return rail * share * conductance

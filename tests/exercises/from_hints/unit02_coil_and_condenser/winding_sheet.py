"""wide = former_diameter + covered_diameter; fewest, most = 1.0, 1000 × wide / covered_diameter; raise ValueError if
the first has too much or the second too little. Then, sixty times: middle = (fewest + most) / 2; if
close_wound_inductance(middle, …) < inductance, fewest = middle, else most = middle. Whole turns: with n =
int(turns_needed(…)), compare the inductances of n and n + 1 with the wanted one. Wire: turns * np.sqrt((π × wide)**2 +
covered_diameter**2).
"""

import numpy as np

from exercises.unit02_coil_and_condenser.solenoid_inductance import solenoid_inductance


def close_wound_inductance(turns: float, former_diameter: float, covered_diameter: float) -> float:
    return solenoid_inductance(turns, former_diameter + covered_diameter, turns * covered_diameter)


def turns_needed(inductance: float, former_diameter: float, covered_diameter: float) -> float:
    fewest, most = 1.0, 1000 * (former_diameter + covered_diameter) / covered_diameter
    if close_wound_inductance(fewest, former_diameter, covered_diameter) > inductance:
        raise ValueError("one turn is already too much")
    if close_wound_inductance(most, former_diameter, covered_diameter) < inductance:
        raise ValueError("a coil a thousand diameters long is too little")
    for _ in range(60):
        middle = (fewest + most) / 2
        if close_wound_inductance(middle, former_diameter, covered_diameter) < inductance:
            fewest = middle
        else:
            most = middle
    return (fewest + most) / 2


def whole_turns(inductance: float, former_diameter: float, covered_diameter: float) -> int:
    n = int(turns_needed(inductance, former_diameter, covered_diameter))
    below = close_wound_inductance(n, former_diameter, covered_diameter)
    above = close_wound_inductance(n + 1, former_diameter, covered_diameter)
    if abs(below - inductance) <= abs(above - inductance):
        return n
    return n + 1


def wire_length(turns: float, former_diameter: float, covered_diameter: float) -> float:
    return turns * np.sqrt((np.pi * (former_diameter + covered_diameter)) ** 2 + covered_diameter**2)

import numpy as np

from exercises.unit02_coil_and_condenser.solenoid_inductance import solenoid_inductance


def close_wound_inductance(turns, former_diameter, covered_diameter):
    return solenoid_inductance(turns, former_diameter + covered_diameter, turns * covered_diameter)


def turns_needed(inductance, former_diameter, covered_diameter):
    low, high = 1.0, 1000 * (former_diameter + covered_diameter) / covered_diameter
    if close_wound_inductance(low, former_diameter, covered_diameter) > inductance:
        raise ValueError("already too much with one turn")
    if close_wound_inductance(high, former_diameter, covered_diameter) < inductance:
        raise ValueError("that coil would be absurdly long")
    for _ in range(80):  # halve and halve again
        middle = (low + high) / 2
        if close_wound_inductance(middle, former_diameter, covered_diameter) < inductance:
            low = middle
        else:
            high = middle
    return high


def whole_turns(inductance, former_diameter, covered_diameter):
    n = int(turns_needed(inductance, former_diameter, covered_diameter))
    too_little = inductance - close_wound_inductance(n, former_diameter, covered_diameter)
    too_much = close_wound_inductance(n + 1, former_diameter, covered_diameter) - inductance
    return n if too_little <= too_much else n + 1


def wire_length(turns, former_diameter, covered_diameter):
    round_once = np.pi * (former_diameter + covered_diameter)
    return turns * np.sqrt(round_once**2 + covered_diameter**2)

import numpy as np

from exercises.unit02_coil_and_condenser.solenoid_inductance import MU_0, elliptic_integrals


def coaxial_filaments(radius_1, radius_2, distance):
    m = 4 * radius_1 * radius_2 / ((radius_1 + radius_2) ** 2 + distance**2)
    if np.any(m >= 1):
        raise ValueError("one turn lies upon the other")
    k = np.sqrt(m)
    K, E = elliptic_integrals(m)
    return MU_0 * np.sqrt(radius_1 * radius_2) * ((2 / k - k) * K - 2 / k * E)


def turn_positions(turns, length):
    return np.array([(n + 0.5) * length / turns - length / 2 for n in range(turns)])


def coaxial_coils(turns_1, diameter_1, length_1, turns_2, diameter_2, length_2, distance):
    here = turn_positions(turns_1, length_1)
    there = turn_positions(turns_2, length_2) + distance
    total = 0.0
    for place in here:
        total += np.sum(coaxial_filaments(diameter_1 / 2, diameter_2 / 2, np.abs(there - place)))
    return total


def coupling_coefficient(mutual_inductance, inductance_1, inductance_2):
    k = mutual_inductance / np.sqrt(inductance_1 * inductance_2)
    if np.any(np.abs(k) > 1):
        raise ValueError("coils cannot be coupled more closely than 1")
    return k


def mutual_from_series(inductance_aiding, inductance_opposing):
    return (inductance_aiding - inductance_opposing) / 4

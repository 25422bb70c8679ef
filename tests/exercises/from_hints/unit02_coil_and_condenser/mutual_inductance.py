"""With m = 4 × radius_1 × radius_2/((radius_1 + radius_2)² + distance²), k = sqrt(m) and K, E = elliptic_integrals(m):
MU_0 × sqrt(radius_1 × radius_2) × ((2/k − k) K − 2/k × E), ValueError where np.any(m >= 1). For two coils: z1 =
turn_positions(turns_1, length_1), z2 = distance + turn_positions(turns_2, length_2), then
coaxial_filaments(diameter_1/2, diameter_2/2, z1[:, np.newaxis] − z2).sum(). Coupling: mutual_inductance /
sqrt(inductance_1 × inductance_2), ValueError where the size of that is above 1 + 1e-9 (np.any, np.abs). In series the
readings are both inductances plus, and less, twice the mutual one: their difference is four times it.
"""

import numpy as np

from exercises.unit02_coil_and_condenser.solenoid_inductance import MU_0, elliptic_integrals


def coaxial_filaments(radius_1: float, radius_2: float, distance: float) -> float:
    m = 4 * radius_1 * radius_2 / ((radius_1 + radius_2) ** 2 + distance**2)
    if np.any(m >= 1):
        raise ValueError("One turn lies upon the other.")
    k = np.sqrt(m)
    first, second = elliptic_integrals(m)
    return MU_0 * np.sqrt(radius_1 * radius_2) * ((2 / k - k) * first - 2 / k * second)


def turn_positions(turns: int, length: float) -> np.ndarray:
    return (np.arange(turns) + 0.5) * length / turns - length / 2


def coaxial_coils(
    turns_1: int, diameter_1: float, length_1: float, turns_2: int, diameter_2: float, length_2: float, distance: float
) -> float:
    z1 = turn_positions(turns_1, length_1)
    z2 = distance + turn_positions(turns_2, length_2)
    return coaxial_filaments(diameter_1 / 2, diameter_2 / 2, z1[:, np.newaxis] - z2).sum()


def coupling_coefficient(mutual_inductance: float, inductance_1: float, inductance_2: float) -> float:
    k = mutual_inductance / np.sqrt(inductance_1 * inductance_2)
    if np.any(np.abs(k) > 1 + 1e-9):
        raise ValueError("No coils are coupled so closely.")
    return k


def mutual_from_series(inductance_aiding: float, inductance_opposing: float) -> float:
    return (inductance_aiding - inductance_opposing) / 4

"""With p = np.asarray(numerical_distance, dtype=complex). Near: total = 1 - 1j * np.sqrt(np.pi * p) * np.exp(-p); term
= 1; then for odd in range(1, 201, 2): term = term * -2 * p / odd and total = total + term. Far: term = total = -1 / (2
* p); then for odd in range(3, 21, 2): term = term * odd / (2 * p) and total = total + term (no *= or +=: they change an
array in place). For arrays np.piecewise(p, [np.abs(p) < 20], [attenuation_near, attenuation_far]) gives each number to
the series that suits it.
"""

import numpy as np

SPEED_OF_LIGHT = 299_792_458.0  # m/s, exact by definition
PERMITTIVITY = 8.8541878128e-12  # F/m, of empty space


def unattenuated_field(radiated_power: float, distance: float) -> float:
    return np.sqrt(90 * radiated_power) / distance


def numerical_distance(distance: float, frequency: float, conductivity: float, relative_permittivity: float) -> complex:
    wavelength = SPEED_OF_LIGHT / frequency
    e = relative_permittivity - 1j * conductivity / (2 * np.pi * frequency * PERMITTIVITY)
    return -1j * np.pi * distance / wavelength * (e - 1) / e**2


def attenuation_near(numerical_distance: complex) -> complex:
    p = np.asarray(numerical_distance, dtype=complex)
    total = 1 - 1j * np.sqrt(np.pi * p) * np.exp(-p)
    term = 1
    for odd in range(1, 201, 2):
        term = term * -2 * p / odd
        total = total + term
    return total


def attenuation_far(numerical_distance: complex) -> complex:
    p = np.asarray(numerical_distance, dtype=complex)
    term = total = -1 / (2 * p)
    for odd in range(3, 21, 2):
        term = term * odd / (2 * p)
        total = total + term
    return total


def ground_attenuation(numerical_distance: complex) -> float:
    p = np.asarray(numerical_distance, dtype=complex)
    return np.abs(np.piecewise(p, [np.abs(p) < 20], [attenuation_near, attenuation_far]))


def ground_wave_field(
    radiated_power: float, distance: float, frequency: float, conductivity: float, relative_permittivity: float
) -> float:
    p = numerical_distance(distance, frequency, conductivity, relative_permittivity)
    return unattenuated_field(radiated_power, distance) * ground_attenuation(p)

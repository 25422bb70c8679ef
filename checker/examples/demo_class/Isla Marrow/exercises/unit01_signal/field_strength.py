"""Ground wave. The two series took me a whole evening. Isla"""
import numpy as np

SPEED_OF_LIGHT = 299792458.0
PERMITTIVITY = 8.8541878128e-12


def unattenuated_field(radiated_power, distance):
    return np.sqrt(90 * radiated_power) / distance


def numerical_distance(distance, frequency, conductivity, relative_permittivity):
    e = relative_permittivity - 1j * conductivity / (2 * np.pi * frequency * PERMITTIVITY)
    wavelength = SPEED_OF_LIGHT / frequency
    return -1j * np.pi * (distance / wavelength) * (e - 1) / e**2


def attenuation_near(numerical_distance):
    p = numerical_distance
    total = 1 - 1j * np.sqrt(np.pi * p + 0j) * np.exp(-p)
    term = 1.0
    for odd in range(1, 181, 2):
        term = term * (-2 * p) / odd
        total = total + term
    return total


def attenuation_far(numerical_distance):
    p = numerical_distance
    term = -1 / (2 * p)
    total = term
    for odd in range(3, 21, 2):
        term = term * odd / (2 * p)
        total = total + term
    return total


def ground_attenuation(numerical_distance):
    p = np.asarray(numerical_distance, dtype=complex)
    near = np.abs(p) < 20
    # each series only gets what it can digest
    small, large = np.where(near, p, 1), np.where(near, 100, p)
    return np.abs(np.where(near, attenuation_near(small), attenuation_far(large)))


def ground_wave_field(radiated_power, distance, frequency, conductivity, relative_permittivity):
    p = numerical_distance(distance, frequency, conductivity, relative_permittivity)
    return unattenuated_field(radiated_power, distance) * ground_attenuation(p)

"""VOLTS_PER_KELVIN × temperature is what the work function is divided by. Girth: π × diameter. Raise ValueError if
emission_density(300, …) > density or emission_density(4000, …) < density; then sixty times: middle = (low + high)/2,
and where the emission at the middle is below density put low = middle, elsewhere high = middle (np.where does it for
arrays).
"""

import numpy as np

VOLTS_PER_KELVIN = 8.617333262e-5  # Boltzmann's constant over the charge of the electron, CODATA


def emission_density(temperature, constant, work_function):
    return constant * temperature**2 * np.exp(-work_function / (VOLTS_PER_KELVIN * temperature))


def emission_current(temperature, constant, work_function, length, diameter):
    return np.pi * diameter * length * emission_density(temperature, constant, work_function)


def temperature_for(density, constant, work_function):
    low, high = 300.0, 4000.0
    if np.any(emission_density(low, constant, work_function) > density):
        raise ValueError("even at 300 K it gives more")
    if np.any(emission_density(high, constant, work_function) < density):
        raise ValueError("even at 4000 K it gives less")
    for _ in range(60):
        middle = (low + high) / 2
        too_cold = emission_density(middle, constant, work_function) < density
        low, high = np.where(too_cold, middle, low), np.where(too_cold, high, middle)
    return (low + high) / 2

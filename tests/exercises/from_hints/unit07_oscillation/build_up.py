"""growth_rate is np.pi * resonant_frequency * (feedback - 1) / quality_factor; starting_voltage is np.sqrt(BOLTZMANN *
temperature / capacitance); free_growth_time is np.log(end / start) / growth; amplitude is limit / np.sqrt(1 + ((limit /
start) ** 2 - 1) * np.exp(-2 * growth * time)), ValueError where np.any(start <= 0); time_to_limit is np.log(((limit /
start) ** 2 - 1) / (1 / fraction**2 - 1)) / (2 * growth). Before the times: `raise ValueError(…)` where np.any(growth <=
0), and where np.any(fraction >= 1).
"""

import numpy as np

BOLTZMANN = 1.380649e-23  # J/K, exact by definition


def growth_rate(resonant_frequency, quality_factor, feedback):
    return np.pi * resonant_frequency * (feedback - 1) / quality_factor


def starting_voltage(capacitance, temperature):
    return np.sqrt(BOLTZMANN * temperature / capacitance)


def free_growth_time(start, end, growth):
    if np.any(np.asarray(growth) <= 0):
        raise ValueError("Below the edge nothing grows.")
    return np.log(end / start) / growth


def amplitude(time, start, limit, growth):
    if np.any(np.asarray(start) <= 0):
        raise ValueError("From nothing nothing grows.")
    return limit / np.sqrt(1 + ((limit / start) ** 2 - 1) * np.exp(-2 * growth * time))


def time_to_limit(start, limit, growth, fraction):
    if np.any(np.asarray(growth) <= 0):
        raise ValueError("Below the edge nothing grows.")
    if np.any(np.asarray(fraction) >= 1):
        raise ValueError("The limit itself is never quite reached.")
    return np.log(((limit / start) ** 2 - 1) / (1 / fraction**2 - 1)) / (2 * growth)

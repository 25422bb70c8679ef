"""np.sqrt(4 × BOLTZMANN × temperature × resistance × bandwidth);  np.sqrt(2 × ELECTRON_CHARGE × current × bandwidth);
thermal_noise(radiation_resistance(effective_height, frequency), bandwidth, ROOM × 10**(noise_figure/10));  with t = 4 ×
BOLTZMANN × ROOM × bandwidth: np.sqrt(t × resistance + reactance² × (t/leak_resistance + 2 × ELECTRON_CHARGE ×
grid_current × bandwidth));  np.sqrt((circuit_noise² + t × 2.5/mutual_conductance/quality_factor²)/induced² + t ×
aerial_resistance);  together = np.sqrt(outside² + own²), share = (own/together)²;  noise × 10**(ratio/20)/(depth ×
effective_height), and ValueError where depth is not above 0 and at most 1.
"""

import numpy as np

from exercises.unit01_signal.radiation_resistance import radiation_resistance

k, e = 1.380649e-23, 1.602176634e-19


def thermal_noise(resistance, bandwidth, temperature):
    return np.sqrt(4 * k * temperature * resistance * bandwidth)


def shot_noise(current, bandwidth):
    return np.sqrt(2 * e * current * bandwidth)


def country_noise(noise_figure, frequency, bandwidth, effective_height):
    return thermal_noise(radiation_resistance(effective_height, frequency), bandwidth, 290 * 10 ** (noise_figure / 10))


def circuit_noise(resistance, reactance, leak_resistance, grid_current, bandwidth):
    across = 4 * k * 290 * bandwidth / leak_resistance + 2 * e * grid_current * bandwidth
    return np.sqrt(4 * k * 290 * resistance * bandwidth + reactance**2 * across)


def set_noise(circuit_noise, quality_factor, mutual_conductance, induced, aerial_resistance, bandwidth):
    valve = 4 * k * 290 * (2.5 / mutual_conductance) * bandwidth / quality_factor**2
    return np.sqrt((circuit_noise**2 + valve) / induced**2 + 4 * k * 290 * aerial_resistance * bandwidth)


def noise_together(outside, own):
    together = np.sqrt(outside**2 + own**2)
    return together, (own / together) ** 2


def least_field(noise, effective_height, depth, ratio):
    if np.any(np.asarray(depth) <= 0) or np.any(np.asarray(depth) > 1):
        raise ValueError("the depth is a fraction above 0 and at most 1")
    return noise * 10 ** (ratio / 20) / (depth * effective_height)

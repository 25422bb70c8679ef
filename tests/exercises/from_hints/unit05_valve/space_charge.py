"""space_charge_density: 4/9 * PERMITTIVITY * np.sqrt(2 * CHARGE_TO_MASS) * voltage**1.5 / gap**2. Time: 3 * gap /
np.sqrt(2 * CHARGE_TO_MASS * voltage). anode_density: np.minimum(space_charge_density(np.maximum(voltage, 0), gap),
emission).
"""

import numpy as np

PERMITTIVITY = 8.8541878128e-12  # farad per metre, of empty space
CHARGE_TO_MASS = 1.75882001e11  # coulomb per kilogram, of the electron, CODATA


def space_charge_density(voltage, gap):
    return 4 / 9 * PERMITTIVITY * np.sqrt(2 * CHARGE_TO_MASS) * voltage**1.5 / gap**2


def gap_potential(position, voltage, gap):
    return voltage * (position / gap) ** (4 / 3)


def transit_time(voltage, gap):
    return 3 * gap / np.sqrt(2 * CHARGE_TO_MASS * voltage)


def anode_density(voltage, gap, emission):
    return np.minimum(space_charge_density(np.maximum(voltage, 0), gap), emission)

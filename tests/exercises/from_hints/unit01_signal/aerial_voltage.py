"""effective_height is height * (1 + top_length / (height + top_length)) / 2; the e.m.f. is field * effective_height;
the capacitance is 2 * np.pi * PERMITTIVITY * (height + top_length) / np.log(2 * height / wire_radius).
"""

import numpy as np

PERMITTIVITY = 8.8541878128e-12  # F/m, of empty space


def effective_height(height: float, top_length: float) -> float:
    return height * (1 + top_length / (height + top_length)) / 2


def aerial_emf(field: float, effective_height: float) -> float:
    return field * effective_height


def aerial_capacitance(height: float, top_length: float, wire_radius: float) -> float:
    return 2 * np.pi * PERMITTIVITY * (height + top_length) / np.log(2 * height / wire_radius)

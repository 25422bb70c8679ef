"""return 1 / ((2 * np.pi * frequency) ** 2 * inductance)"""

import numpy as np


def tuning_capacitance(frequency, inductance):
    return 1 / ((2 * np.pi * frequency) ** 2 * inductance)

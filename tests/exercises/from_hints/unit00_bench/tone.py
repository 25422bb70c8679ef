"""return amplitude * np.sin(2 * np.pi * frequency * time)"""

import numpy as np


def tone(time, frequency, amplitude):
    return amplitude * np.sin(2 * np.pi * frequency * time)

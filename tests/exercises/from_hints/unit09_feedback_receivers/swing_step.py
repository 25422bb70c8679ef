"""factor = np.exp(growth * step), and then return swing * factor + push * (factor - 1) / growth."""

import numpy as np


def swing_step(swing, push, growth, step):
    factor = np.exp(growth * step)
    return swing * factor + push * (factor - 1) / growth

"""widest is 2 * offset / np.sqrt(10 ** (rejection / 10) - 1); narrowest is the same with tone and loss, 2 * tone /
np.sqrt(10 ** (loss / 10) - 1); feedback is 1 - band * quality_factor / frequency."""

import numpy as np


def widest(offset, rejection):
    return 2 * offset / np.sqrt(10 ** (rejection / 10) - 1)


def narrowest(tone, loss):
    return 2 * tone / np.sqrt(10 ** (loss / 10) - 1)


def feedback(frequency, quality_factor, band):
    return 1 - band * quality_factor / frequency

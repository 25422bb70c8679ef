# O. Quill.
import numpy as np


def quality_factor(inductance, resistance, frequency):
    stored_per_loss = inductance / resistance           # seconds
    return 2 * np.pi * frequency * stored_per_loss


def bandwidth(resonant_frequency, quality_factor):
    lower, upper = half_power_frequencies(resonant_frequency, quality_factor)
    return upper - lower


def half_power_frequencies(resonant_frequency, quality_factor):
    # f² ± (f0/Q) f - f0² = 0
    width = resonant_frequency / quality_factor
    root = np.sqrt(width**2 + 4 * resonant_frequency**2)
    return (root - width) / 2, (root + width) / 2


def dynamic_resistance(inductance, capacitance, resistance):
    w = 1 / np.sqrt(inductance * capacitance)
    Q = w * inductance / resistance
    return Q * w * inductance

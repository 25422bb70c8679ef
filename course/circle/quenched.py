"""A quenched set, burst by burst: what the sounds and pictures of super-regeneration are played on.

One valve and one tuned circuit for 30 MHz on the Circle's screened bench. Each burst starts from what the signal and the
heat of the circuit leave at the end of the quench, and is worked out in one piece; the sound has a value for each burst.
"""

import numpy as np

from solutions.unit07_oscillation.build_up import growth_rate, starting_voltage
from solutions.unit09_feedback_receivers.quench import mean_swing, signal_start

FREQUENCY, QUALITY, CAPACITANCE = 30e6, 60.0, 20e-12  # hertz, of the circuit without reaction, farad
LIMIT, TEMPERATURE = 3.0, 290.0  # volt, kelvin
QUENCH = 32e3  # hertz: twice the rate of the sounds
HALF = 0.5 / QUENCH  # second: as long to grow as to die
LINEAR, LOGARITHMIC = 1.15, 1.6  # part of the loss that reaction makes good while it grows
DECAY = -float(growth_rate(FREQUENCY, QUALITY, 0.0))
SEED = 9


def growth(feedback: float) -> float:
    """Neper a second while the valve pays."""
    return float(growth_rate(FREQUENCY, QUALITY, feedback))


def noise_start(feedback: float) -> float:
    """Volts, r.m.s. of either part of the complex swing, from which a burst grows when there is nothing but heat.

    The heat that is in the circuit at the end of the quench is that of its condenser, and as it grows more comes in: the
    same two terms as for a signal, added by power.
    """
    return float(starting_voltage(CAPACITANCE, TEMPERATURE) * np.sqrt(1 + DECAY / growth(feedback)))


def starts(emf: np.ndarray, feedback: float, seed: int = SEED) -> np.ndarray:
    """Volts, crest, from which each burst grows: `emf` in volts, crest, in the coil, one value a burst, and noise."""
    generator = np.random.default_rng(seed)
    noise = generator.standard_normal(emf.shape) + 1j * generator.standard_normal(emf.shape)
    return np.abs(signal_start(FREQUENCY, emf, growth(feedback), DECAY) + noise_start(feedback) * noise)


def heard(start: np.ndarray, feedback: float) -> np.ndarray:
    """Volts: mean swing of each burst."""
    return mean_swing(np.minimum(start, 0.9 * LIMIT), LIMIT, growth(feedback), DECAY, HALF, HALF)


def played(emf: np.ndarray, feedback: float) -> np.ndarray:
    """Volts at each sample of a sound, of two bursts each; `emf` in volts, crest, one value a sample."""
    return heard(starts(np.repeat(emf, 2), feedback), feedback).reshape(-1, 2).mean(axis=1)

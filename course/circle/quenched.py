"""A quenched set, burst by burst: what the sounds and pictures of super-regeneration are played on.

One valve and one tuned circuit for 30 MHz on the Circle's screened bench. Each burst starts from what the signal and the
heat of the circuit leave at the end of the quench, and is worked out in one piece; the sound has a value for each burst.
"""

import numpy as np

from course.circle.levels import RATE
from solutions.unit07_oscillation.build_up import growth_rate, starting_voltage
from solutions.unit09_feedback_receivers.quench import mean_swing, signal_start

FREQUENCY, QUALITY, CAPACITANCE = 30e6, 60.0, 20e-12  # hertz, of the circuit without reaction, farad
LIMIT, TEMPERATURE = 3.0, 290.0  # volt, kelvin
QUENCH = 2.0 * RATE  # hertz
HALF = 0.5 / QUENCH  # second: as long to grow as to die
LINEAR, LOGARITHMIC = 1.15, 1.6  # part of the loss that reaction makes good while it grows
DECAY = -float(growth_rate(FREQUENCY, QUALITY, 0.0))
SEED = 9

# On the bench it is screened and has no aerial. Kit Harrow's test oscillators stand in biscuit tins; a cable takes all of them
# to one turn of wire beside the set's coil.
DIAL = 28e6, 32e6  # hertz
COUPLINGS = 1e-9, 20e-9, 4e-9  # henry between loop and coil: least, most, at first
FEEDBACKS = 1.2, 2.4, LOGARITHMIC
QUENCHES = 20e3, 80e3, QUENCH  # hertz
LOOP_INDUCTANCE, LOOP_RESISTANCE = 0.1e-6, 75.0  # of the one turn; of the cable that feeds it, matched
BYPASS = 4e-9  # farad across the telephones, and again behind a filter: they keep the quench out
# Two at once beat, and the bursts look at the beat only now and then. Quenched as at first, all they see is 16 kHz, or nothing.
TINS = (  # name, hertz, volt r.m.s. in series with the loop
    ("Shortbread", 29.20e6, 400e-6),
    ("Oatcake", 29.60e6, 100e-6),
    ("Gingernut", 30.912e6, 40e-6),
)


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

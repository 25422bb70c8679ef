"""How finely the sounds and the bench are worked out, and how loud they are: one scale for all that is to be compared.

All such sounds are in pascals in the ear and share `FULL_SCALE`:

    @sound(caption=…, transcript=…, full_scale=FULL_SCALE)
    def …():
        return pressure(voltage_across_the_phones, RESISTANCE, SENSITIVITY), RATE
"""

import numpy as np

from solutions.unit04_crystal_set.phone_loudness import sound_pressure

RATE = 16_000  # samples a second
FULL_SCALE = 4.0  # pascal, played as 1.0: a tone of 103 dB of sound pressure would reach it
LOUDEST = 1.5  # pascal: no telephone follows a click beyond it, nor would anyone wish it to
LOUD = 85.0  # decibel of sound pressure: where a day's listening begins to harm (common practice, no source)
LOWEST = 60.0  # hertz: what changes more slowly is not heard


def pressure(voltage: np.ndarray, resistance: float, sensitivity: float) -> np.ndarray:
    """Sound in the ear from the voltage across the telephones, its steady part left out.

    Parameters
    ----------
    voltage : ndarray, volt
    resistance : float, ohm, of the telephones to a tone
    sensitivity : float, decibel, sound pressure level from 1 milliwatt

    Returns
    -------
    ndarray, pascal
    """
    changing = voltage - np.mean(voltage)
    return changing * sound_pressure(sensitivity) / np.sqrt(1e-3 * resistance)

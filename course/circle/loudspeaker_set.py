"""The Circle's two audio stages and their loudspeaker: a type 30, a transformer, a type 31."""

import numpy as np

from solutions.unit05_valve.one_valve_set import HT, LAW
from solutions.unit05_valve.triode_current import anode_resistance, triode_current
from solutions.unit09_feedback_receivers.two_stage_audio import best_tap, transformer_gain

TYPE_31 = (3.8, 167e-6, 0.203)  # through 180 V, −30 V, 12.3 mA, 1050 µS of its manual
FIRST_BIAS, LAST_BIAS = -4.5, -15.0  # volt
RATIO, PRIMARY, LEAKAGE, SHUNT = 3.0, 20.0, 0.3, 100e-12  # a number, henry, henry, farad: the audio transformer
RESISTOR_BIAS, RESISTOR, LEAK, COUPLING, STRAY = -1.5, 100e3, 500e3, 10e-9, 60e-12  # volt, ohm, ohm, farad, farad
SPEAKER, TAPS, MOST_HARMONIC, SENSITIVITY = 8.0, np.array([20.0, 25.0, 30.0, 35.0, 40.0]), 0.05, 90.0
LOAD = SPEAKER * best_tap(TAPS, SPEAKER, MOST_HARMONIC, HT, LAST_BIAS, *TYPE_31) ** 2
REST = triode_current(HT, LAST_BIAS, *TYPE_31)


def first_stage(tone, primary=PRIMARY, shunt=SHUNT):
    """Gain of the first stage with its transformer."""
    return transformer_gain(LAW[0], anode_resistance(HT, FIRST_BIAS, *LAW), RATIO, primary, LEAKAGE, shunt, tone)

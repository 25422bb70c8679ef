"""The Circle's reflex set: one type 30 that amplifies twice, with the transformer of the loudspeaker set."""

from course.circle.stations import LOCAL
from solutions.unit01_signal.channel_plan import FIRST_AND_LAST
from solutions.unit05_valve.load_line import operating_point
from solutions.unit05_valve.one_valve_set import HT, LAW
from solutions.unit05_valve.triode_current import anode_resistance
from solutions.unit09_feedback_receivers.reflex import path_gains

COIL_RESISTANCE, BIAS = 4e3, -3.0  # ohm, of the telephones to steady current; volt, on the grid
RADIO_LOAD, PHONES, BYPASS = 10e3, 20e3, 1e-9  # ohm, ohm, farad
EFFICIENCY, DEPTH, DETECTOR = 0.5, 0.8, 10e3  # of the detector, of modulation; ohm, of the detector
LOWEST, RADIO, TONE, TREBLE = FIRST_AND_LAST[9_000][0], LOCAL.frequency, 1e3, 4.5e3  # hertz
ANODE, CURRENT = operating_point(HT, COIL_RESISTANCE, BIAS, *LAW)
RESISTANCE = anode_resistance(ANODE, BIAS, *LAW)
RADIO_GAIN, AUDIO_GAIN = path_gains(LAW[0], RESISTANCE, RADIO_LOAD, PHONES, BYPASS, RADIO, TONE)

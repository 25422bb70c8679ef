"""Feedback receivers: headphones and loudspeaker, what a coupling takes, a stage overdriven, a reflex that sings."""

import numpy as np

from course.circle.levels import FULL_SCALE, RATE, pressure
from course.circle.loudspeaker_set import (
    HT,
    LAST_BIAS,
    LEAKAGE,
    LOAD,
    PRIMARY,
    RATIO,
    REST,
    SENSITIVITY,
    SHUNT,
    TYPE_31,
    first_stage,
)
from course.circle.one_valve_set import DRAWN_OFF, across_the_phones, by_valve
from course.circle.programme import envelope, programme
from course.circle.reflex_set import (
    ANODE,
    BIAS,
    BYPASS,
    CURRENT,
    DETECTOR,
    EFFICIENCY,
    PHONES,
    RADIO_GAIN,
    RADIO_LOAD,
    RESISTANCE,
)
from course.circle.stations import ACROSS_THE_BAY
from course.sounds import sound
from course.sounds.kit.pieces import GAP, part
from solutions.unit05_valve.load_line import operating_point
from solutions.unit05_valve.one_valve_set import LAW
from solutions.unit07_oscillation.stepping import njit

FINENESS = 400  # grid voltages at which the output valve is worked out
FINER = 64  # steps of the reflex set to each sample of the sound
LOSS = 500e3  # ohm, across the secondary: the iron's own loss
LEAKS = 10e-12, 250e-12  # farad: careful wiring, and a coupling condenser taken straight from the anode
COUPLINGS = {}, {"primary": PRIMARY / 30}, {"shunt": 4e-9}  # henry, farad: as it should be, too little, too much
CARRIER = 0.1  # volt, crest, on the reflex set's grid
RADIO_GAIN, RESISTANCE, CURRENT = float(RADIO_GAIN), float(RESISTANCE), float(CURRENT)  # as numba takes constants
TONES = np.fft.rfftfreq(programme().size, 1 / RATE)


def filtered(samples: np.ndarray, gain: np.ndarray) -> np.ndarray:
    """The same sound, each of `TONES` multiplied by its gain; nothing below 20 Hz."""
    return np.fft.irfft(np.fft.rfft(samples) * np.where(TONES > 20, gain, 0), samples.size)


def through_first_stage(samples: np.ndarray, **parts: float) -> np.ndarray:
    """Volts on the output valve's grid, from volts on the first grid; `parts` as in `first_stage`."""
    return filtered(samples, first_stage(np.maximum(TONES, 1.0), **parts))


def from_output_valve(swing: np.ndarray) -> np.ndarray:
    """Volts of tone across the output valve's load, from volts of swing on its grid: grid current holds it at 0 V."""
    worked = np.linspace(3 * LAST_BIAS, 0.0, FINENESS)
    _, current = operating_point(HT + REST * LOAD, LOAD, worked, *TYPE_31)
    return LOAD * (np.interp(LAST_BIAS + swing, worked, current) - REST)


def by_loudspeaker() -> np.ndarray:
    """Pascals a metre from the loudspeaker, Curlew Bank turned up until its loudest crest just fills the last grid."""
    swing = through_first_stage(across_the_phones(ACROSS_THE_BAY, envelope(), DRAWN_OFF))
    swing *= -LAST_BIAS / np.abs(swing).max()
    return pressure(from_output_valve(swing), LOAD, SENSITIVITY - 30)  # a loudspeaker's sensitivity is for a watt


def to_one_loudness(samples: np.ndarray) -> np.ndarray:
    """The same sound with an r.m.s. of 1."""
    return samples / np.sqrt(np.mean(samples**2))


def in_turn(*sounds: np.ndarray) -> np.ndarray:
    """Two seconds of the voice and two of the tune of each, with silences between."""
    pieces = [piece for samples in sounds for piece in (part(samples), GAP)]
    return np.concatenate(pieces[:-1])


@sound(
    caption="Curlew Bank on the scale of unit 4: first in the headphones of the one-valve set, then from the loudspeaker, "
    "a metre away. The loudspeaker has 2400 times the power, and is 16 dB fainter.",
    transcript="A voice reading and two seconds of a tune. After half a second of silence the same again, a sixth as strong.",
    full_scale=FULL_SCALE,
)
def phones_then_speaker():
    return in_turn(by_valve(ACROSS_THE_BAY, DRAWN_OFF), by_loudspeaker()), RATE


@sound(
    caption="What a coupling takes. First the transformer of the example; then one with a thirtieth of its primary; then "
    "the first with 4 nF of shunt.",
    transcript="The voice and the tune, full. Then thin, as from a telephone: the bass is gone. Then dull, as through a "
    "wall: the hisses and the bright edge of the notes are gone.",
    moments=((0.0, "as it should be"), (4.5, "too little primary"), (9.0, "too much shunt")),
)
def couplings():
    sent = programme()
    return in_turn(*(to_one_loudness(through_first_stage(sent, **parts)) for parts in COUPLINGS)), RATE


@sound(
    caption="The output valve just filled, and then with four times the swing, brought to one loudness.",
    transcript="The voice and the tune, clear. Then with a rasp: every loud syllable and the beginning of each note is torn.",
    moments=((0.0, "just filled"), (4.5, "overdriven")),
)
def overdriven():
    swing = programme() * -LAST_BIAS
    kind, cruel = from_output_valve(swing), from_output_valve(4 * swing)
    return in_turn(to_one_loudness(kind), to_one_loudness(cruel)), RATE


def reflex_circuit(leak: float, sense: int) -> tuple[np.ndarray, np.ndarray]:
    """The reflex set at audio frequency: how its five states change, and what detector and the valve's bend add.

    States: volts on the anode, volts across the leak, amperes in the transformer's primary and through its leakage
    inductance, volts of its secondary over the ratio. Driven by the detector's e.m.f. in volts and by the part of the
    anode current, in amperes, that is not in proportion. `sense` is 1 or -1: which end of the secondary is at the grid.
    """
    slope = LAW[0] / RESISTANCE
    through_leak = np.array([1 / DETECTOR, -1 / DETECTOR, 1, 1, 0])
    change, driven = np.zeros((5, 5)), np.zeros((5, 2))
    change[0] = -through_leak / BYPASS
    change[0, [0, 4]] -= np.array([1 / PHONES + 1 / RESISTANCE, slope * sense * RATIO]) / BYPASS
    driven[0] = 1 / DETECTOR / BYPASS, -1 / BYPASS
    change[1] = through_leak / leak
    driven[1, 0] = -1 / DETECTOR / leak
    change[2, :2] = np.array([1, -1]) / PRIMARY
    change[3, [0, 1, 4]] = np.array([1, -1, -1]) / LEAKAGE
    change[4, 3] = 1 / (RATIO**2 * SHUNT)
    change[4, 4] = -1 / (LOSS * SHUNT)
    return change, driven


def stepped(change: np.ndarray, driven: np.ndarray, step: float) -> tuple[np.ndarray, np.ndarray]:
    """The same as two matrices that carry the states over one step, exactly while what drives them stands still."""
    rates, modes = np.linalg.eig(change)
    over = (modes * np.exp(rates * step) @ np.linalg.inv(modes)).real
    return over, np.linalg.solve(change, (over - np.eye(5)) @ driven)


def from_reflex(strength: np.ndarray, leak: float, sense: int = -1) -> np.ndarray:
    """Volts of tone across the telephones of the reflex set while the carrier's crest has these strengths, at rest 1."""
    over, by = stepped(*reflex_circuit(leak, sense), 1 / (FINER * RATE))
    fine = np.interp(np.arange(FINER * strength.size) / FINER, np.arange(strength.size), strength)
    return slowed(march(fine, over, by, float(sense), LAW[0], LAW[1], LAW[2] + BIAS + ANODE / LAW[0]))


@njit(cache=True)
def driving(anode, tone, crest, factor, perveance, rest):
    """The detector's e.m.f., and the part of the anode current that is not in proportion to what anode and grid do."""
    pull = max(rest + tone + anode / factor, 1e-3)
    resistance = factor / (1.5 * perveance * pull**0.5)
    gain = factor * RADIO_LOAD / (RADIO_LOAD + resistance)
    in_proportion = (anode + factor * tone) / RESISTANCE
    return EFFICIENCY * CARRIER * (gain * crest - RADIO_GAIN), perveance * pull**1.5 - CURRENT - in_proportion


@njit(cache=True)
def march(strength, over, by, sense, factor, perveance, rest):
    """Volts on the anode at each step; `rest` is the drive when nothing swings. Grid current holds the grid at 0 V."""
    state, before = np.zeros(5), np.zeros(5)
    heard = np.empty(strength.size)
    for moment in range(strength.size):
        emf, bend = driving(state[0], sense * RATIO * state[4], strength[moment], factor, perveance, rest)
        before[:] = state
        for row in range(5):
            state[row] = by[row, 0] * emf + by[row, 1] * bend
            for column in range(5):
                state[row] += over[row, column] * before[column]
        state[4] = sense * min(sense * state[4], -BIAS / RATIO)
        heard[moment] = state[0]
    return heard


def slowed(fine: np.ndarray) -> np.ndarray:
    """Every `FINER`th sample, after everything is taken out that so few could not hold."""
    spectrum = np.fft.rfft(fine)[: fine.size // (2 * FINER)]
    return np.fft.irfft(spectrum, fine.size // FINER) / FINER


@sound(
    caption="A reflex set as it should be, and the same with 250 pF from the anode to the detector: it sings at 6.3 kHz. "
    "Both are brought to one loudness; in truth the squeal is 30 dB above the programme.",
    transcript="Two seconds of a voice and two of a tune. Then nothing of either, but a high, hard, steady squeal.",
    level=-28,
)
def reflex_sings():
    return in_turn(*(to_one_loudness(by_reflex(leak)) for leak in LEAKS)), RATE


def by_reflex(leak: float) -> np.ndarray:
    """Volts of tone across the telephones of the reflex set while a station sends its programme."""
    return from_reflex(envelope(), leak)

"""Reaction: one station with the reaction advanced, what the anode takes, and the treble that goes.

The first two are played on the whole set, by unit 7's engine. The others are one circuit of a given bandwidth before unit
5's detector, on the scale of units 4 and 5.
"""

from typing import Annotated

import numpy as np

from course.circle.demonstration import BEGIN, END, demonstration
from course.circle.levels import FULL_SCALE, LOWEST, RATE, pressure
from course.circle.one_valve_set import behind_a_circuit
from course.circle.programme import LENGTH, envelope
from course.circle.set_in_hand import EVERY, moments, station_emf
from course.circle.stations import FAR_OVER_SEA
from course.settings import Between, Several
from course.sounds import sound
from course.sounds.kit.pieces import in_turn
from solutions.unit04_crystal_set.crystal_set import SENSITIVITY
from solutions.unit05_valve.one_valve_set import (
    STEADY_RESISTANCE,
    TONE_RESISTANCE,
)
from solutions.unit06_reaction.anode_alone import with_anode
from solutions.unit06_reaction.network import BY_PASS, GRID_ANODE
from solutions.unit07_oscillation.envelope import follow
from solutions.unit07_oscillation.stage import SALTMARSH_STAGE

FINER = 4  # moments to a sample, for the circuit
CLEAR = 0.15  # volt: crest of the carrier on the grid where sounds are compared for their treble


def behind(crest: np.ndarray, bandwidth: np.ndarray, detuning: float = 0.0) -> np.ndarray:
    """Complex envelope behind a circuit whose bandwidth in hertz may change as it goes, from that in front of it.

    One circuit: dV/dt = p (V − a), with p = −πB + 2πj × (the circuit's resonance above the carrier), and a where V would
    come to rest; solved exactly for an a that goes in straight lines between moments `FINER` times as close as the
    samples. At the start the circuit has settled.
    """
    finer = np.fft.irfft(np.fft.rfft(crest), FINER * crest.size) * FINER
    width = np.repeat(np.broadcast_to(bandwidth, crest.shape), FINER)
    pole = -np.pi * width + 2j * np.pi * detuning
    aim, step = -np.pi * width * finer / pole, pole / (FINER * RATE)
    keep = np.exp(step)
    rises = np.diff(aim, prepend=aim[0]) * (1 - keep) / step
    passed, lag = np.empty(aim.size, complex), 0j
    for place, (kept, rise) in enumerate(zip(keep.tolist(), rises.tolist(), strict=True)):
        lag = kept * lag + rise
        passed[place] = lag
    return (aim + passed)[::FINER]


def with_reaction_off(by_pass: float, grid_anode: float) -> np.ndarray:
    """Pascals in the ear from Merrow Sound on the club's set, throttle shut."""
    frequency, stage = FAR_OVER_SEA.frequency, SALTMARSH_STAGE._replace(grid_anode=grid_anode)
    _, finer = moments(LENGTH)
    emf = station_emf(finer, FAR_OVER_SEA)
    heard = follow(emf, EVERY * RATE, frequency, with_anode(frequency, by_pass, grid_anode=grid_anode), stage)
    current = heard.phones.reshape(-1, EVERY).mean(axis=1)
    tone = np.fft.rfftfreq(current.size, 1 / RATE)
    rising = np.fft.irfft(np.fft.rfft(current) / (1 - 1j * LOWEST / np.maximum(tone, 1e-3)) ** 2)
    return pressure(STEADY_RESISTANCE * rising, STEADY_RESISTANCE, SENSITIVITY)


def through(bandwidth: float, detuning: float = 0.0) -> np.ndarray:
    """Volts of tone at the telephones behind a bandwidth, the aerial drawn off so that the carrier is `CLEAR` each time."""
    passed = np.abs(behind(envelope(), bandwidth, detuning))
    bare = np.abs(1 / (1 - 2j * detuning / bandwidth))
    tone = behind_a_circuit(CLEAR * passed / bare, CLEAR)
    return tone - tone.mean()


def in_the_ear(voltage: np.ndarray) -> np.ndarray:
    return pressure(voltage, TONE_RESISTANCE, SENSITIVITY)


@sound(
    caption="**Reaction advanced.** Gannet Rock, late in the evening when the local station has closed down, on the set "
    "with its "
    "gentle feed (45 V). Two seconds with the throttle shut; then it is opened, slower and slower, until just short of the "
    "threshold. Twelve decibels louder than the scale of units 4 and 5. Turn down first!",
    transcript="At first silence: the set brings in a station that nobody can hear. Then a voice comes up as if out "
    "of the sea, clear and thin, then a tune. The voice again, now near; and as it grows its "
    "hisses and its brightness go, until the last bars of the tune boom as if from behind a closed door.",
    full_scale=FULL_SCALE / 4,
    moments=((0.0, "throttle shut"), (BEGIN, "opening"), (END, "held")),
)
def reaction_advanced():
    return demonstration()[0], RATE


@sound(
    caption="**What the anode takes.** Merrow Sound, the throttle shut: first without a by-pass at the anode, then with the "
    "club's 200 pF, last with a valve that had nothing between grid and anode.",
    transcript="The voice and the tune three times over. First far away, at the limit of hearing. Then soft but whole. "
    "Last loud, near "
    "and a little coarse.",
    full_scale=1.5 * FULL_SCALE,
    moments=((0.0, "no by-pass"), (4.5, "200 pF"), (9.0, "no capacitance")),
)
def anode_takes():
    ways = (with_reaction_off(0.0, GRID_ANODE), with_reaction_off(BY_PASS, GRID_ANODE), with_reaction_off(BY_PASS, 0.0))
    return in_turn(*ways), RATE


@sound(
    caption="**The treble goes.** One programme at one loudness of carrier, through a band of 16 kHz, 4 kHz, 1 kHz and 300 "
    "Hz. Each time the aerial is drawn off as the reaction is advanced, so that the carrier on the grid stays 0.15 V.",
    transcript="The voice and the tune four times over. First bright. Then a little less so. Then dull, as from the next room, "
    "and quieter. Last a murmur: the bass of the tune is there, the voice is a hum without words.",
    full_scale=FULL_SCALE,
    moments=((0.0, "16 kHz"), (4.5, "4 kHz"), (9.0, "1 kHz"), (13.5, "300 Hz")),
)
def treble_going(widths: Annotated[tuple, Several(Between("bandwidth", 100, 30e3, "Hz"), 6)] = (16e3, 4e3, 1e3, 300.0)):
    return in_turn(*(in_the_ear(through(width)) for width in widths)), RATE


@sound(
    caption="**Beside the peak.** Through a band of 1 kHz, first with the carrier on the peak, then 800 Hz beside it; the "
    "carrier on the grid is 0.15 V in both.",
    transcript="The voice and the tune, dull. Then both brighter and a little louder, and somewhat coarser: the edges of "
    "the words are back.",
    full_scale=FULL_SCALE,
    moments=((0.0, "on the peak"), (4.5, "800 Hz beside it")),
)
def beside_the_peak(
    width: Annotated[float, Between("bandwidth", 200, 10e3, "Hz")] = 1e3,
    beside: Annotated[float, Between("how far beside the peak", 0, 3000, "Hz")] = 800.0,
):
    return in_turn(in_the_ear(through(width)), in_the_ear(through(width, beside))), RATE

"""Where the stations are on the dial, and how far it reaches."""

import numpy as np

from . import physics
from .sample import WoundSample, effective_inductance

ROUNDS = 30  # of finding the frequency at a stop: the aerial's share depends on the frequency itself


def reach(sample: WoundSample, with_aerial: bool) -> tuple[np.ndarray, np.ndarray]:
    """Lowest and highest frequency that each drawn set tunes to."""
    all_in, all_out = (sample.stray + sample.windings.own_capacitance + end for end in (sample.maximum, sample.minimum))
    ends = []
    for capacitance in (all_in, all_out):
        frequency = physics.resonance.resonant_frequency(sample.windings.tuned_inductance, capacitance)
        for _ in range(ROUNDS):
            inductance = effective_inductance(sample, frequency, with_aerial)
            frequency = (frequency + physics.resonance.resonant_frequency(np.maximum(inductance, 1e-9), capacitance)) / 2
        ends.append(frequency)
    return tuple(ends)


def angles(sample: WoundSample, frequency: float, capacitance: np.ndarray) -> np.ndarray:
    """Degrees at which each drawn set finds a frequency, 0 with the plates out; nan where it does not reach it.

    `capacitance`, in farads, is all told what tunes the coil there: `sample.capacitance_for`, or at the edge of oscillation
    `reaction.settings`, whose valve brings some of its own.
    """
    inductance = 1 / ((2 * np.pi * frequency) ** 2 * capacitance)
    strays = sample.stray + sample.windings.own_capacitance
    law = sample.parts["condenser.law"]
    return np.array(
        [_angle(frequency, law, *one) for one in zip(sample.minimum, sample.maximum, strays, inductance, strict=True)]
    )


def _angle(frequency: float, law: str, minimum: float, maximum: float, stray: float, inductance: float) -> float:
    if not inductance > 0:
        return np.nan
    try:
        return np.degrees(physics.tuning.dial_angle(frequency, law, minimum, maximum, stray, inductance))
    except ValueError:  # beyond a stop
        return np.nan


def round_frequencies(lowest: float, highest: float) -> list[float]:
    """Some seven frequencies of round numbers across a band, its ends included."""
    step = next(step for step in (10e3, 20e3, 50e3, 100e3, 200e3, 500e3, 1e6) if (highest - lowest) / step <= 8)
    between = np.arange(np.ceil(lowest / step), np.floor(highest / step) + 1) * step
    inner = [float(one) for one in between if min(one - lowest, highest - one) > step / 3]
    return [lowest, *inner, highest]

"""frequency/(2 × quality_factor) × injected/oscillation, ValueError where np.any(oscillation <= 0) or np.any(injected >
oscillation);  np.degrees(np.arcsin(offset/hold)), ValueError where np.any(np.abs(offset) > hold);
np.sqrt(np.clip(offset² − hold², 0, None));  2 × quality_factor × |offset|/frequency × oscillation.  slipping_phase:
with beat = pulled_beat(offset, hold): turns, u = np.divmod(π × beat × time, π), then 2π × turns + 2 × np.arctan2(offset
sin u, beat cos u + hold sin u), ValueError where offset <= hold anywhere.
"""

import numpy as np


def locking_range(frequency, quality_factor, injected, oscillation):
    if np.any(np.asarray(oscillation) <= 0) or np.any(np.asarray(injected) > oscillation):
        raise ValueError("There is no oscillation that the station could hold.")
    return frequency / (2 * quality_factor) * injected / oscillation


def locked_phase(offset, hold):
    if np.any(np.abs(offset) > hold):
        raise ValueError("The offset is beyond the hold: there is no steady angle.")
    return np.degrees(np.arcsin(offset / hold))


def pulled_beat(offset, hold):
    return np.sqrt(np.clip(offset**2 - hold**2, 0, None))


def holding_signal(offset, frequency, quality_factor, oscillation):
    return 2 * quality_factor * np.abs(offset) / frequency * oscillation


def slipping_phase(time, offset, hold):
    if np.any(np.asarray(offset) <= hold):
        raise ValueError("The offset is not above the hold: the angle does not run on.")
    beat = pulled_beat(offset, hold)
    turns, u = np.divmod(np.pi * beat * time, np.pi)
    return 2 * np.pi * turns + 2 * np.arctan2(offset * np.sin(u), beat * np.cos(u) + hold * np.sin(u))

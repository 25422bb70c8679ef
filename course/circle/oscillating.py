"""The Circle's reaction set as it oscillates, in its two forms, and what of it reaches the neighbour."""

from functools import cache

import numpy as np

from course.circle.levels import RATE
from course.circle.set_in_hand import GENTLE, SetInHand, moments, noise_emf, turned
from course.circle.stations import NEXT_CHANNEL
from solutions.unit01_signal.aerial_voltage import effective_height
from solutions.unit03_tuned_circuit.reflected_impedance import series_impedance
from solutions.unit04_crystal_set.crystal_set import HEIGHT, TOP
from solutions.unit06_reaction.club_set import one_valve_set
from solutions.unit06_reaction.network import SALTMARSH_SET, THROTTLE_RANGE
from solutions.unit07_oscillation.radiated_field import aerial_current, nearby_field, radiated_power
from solutions.unit07_oscillation.stage import SALTMARSH_STAGE
from solutions.unit07_oscillation.ticking import far_open

STATION = NEXT_CHANNEL
SHUT = THROTTLE_RANGE[0]  # farad
NEXT_DOOR = 30.0  # metre from the set that oscillates
STRAY = 0.05e-12  # farad, from the tuned circuit to the aerial's lead, with an isolating stage in a screening box
GREAT_LEAK = 20e6  # ohm: with it, and its throttle far open, the gentle set ticks


@cache
def gentle() -> SetInHand:
    """The set with a soft onset."""
    return SetInHand(STATION.frequency, GENTLE)


@cache
def fierce() -> SetInHand:
    """The set as unit 5 left it: 90 V, dropping resistor, 2 megohm to the filament's positive end."""
    return SetInHand(STATION.frequency, SALTMARSH_STAGE)


@cache
def ordinary() -> SetInHand:
    """A one-valve set without reaction: no tickler, and 2 nF at its anode, so that this takes little from the grid."""
    return SetInHand(STATION.frequency, SALTMARSH_STAGE, one_valve_set(STATION.frequency))


def field_of(swing: float, in_hand: SetInHand, distance: float) -> float:
    """R.m.s. field in volts per metre that a swing on the set's grid makes at a distance."""
    parts, frequency = SALTMARSH_SET, in_hand.frequency
    aerial = series_impedance(frequency, parts.aerial_inductance, parts.aerial_capacitance, parts.aerial_resistance)
    tuning = in_hand.at(in_hand.edge).tuning_capacitance
    current = aerial_current(swing, frequency, tuning, parts.aerial_tuned, aerial)
    return nearby_field(radiated_power(current, effective_height(HEIGHT, TOP), frequency), distance, frequency)


@cache
def swing_beyond(in_hand: SetInHand, part: float) -> float:
    """Volts, crest, at which the set settles with its throttle at so many times its edge, and no station."""
    time, fine = moments(0.4)
    emf = noise_emf(fine, in_hand.frequency)
    grid, _ = in_hand.played(emf, turned(time, (0, 1.2 * in_hand.edge), (0.15, 1.2 * in_hand.edge), (0.2, part * in_hand.edge)))
    return float(np.median(np.abs(grid[-RATE // 20 :])))


def stuttering(condenser: float, seconds: float) -> tuple[np.ndarray, np.ndarray]:
    """Crest on the grid in volts, and pascals in the ear, of a set whose leak cannot keep up."""
    in_hand = SetInHand(STATION.frequency, GENTLE._replace(grid_capacitance=condenser, leak_resistance=GREAT_LEAK))
    time, fine = moments(seconds)
    grid, current = in_hand.played(noise_emf(fine, STATION.frequency), np.full(time.size, far_open()))
    return np.abs(grid), in_hand.in_the_ear(current)

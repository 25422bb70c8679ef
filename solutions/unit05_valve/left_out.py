"""What the figures of this unit leave out, and how large each is."""

from dataclasses import replace

import numpy as np

from solutions.ranges import check_ranges
from solutions.unit05_valve.load_line import operating_point
from solutions.unit05_valve.one_valve_set import HT, LAW, STEADY_RESISTANCE, TONE_RESISTANCE
from solutions.unit05_valve.stage_gain import stage_gain
from solutions.unit05_valve.triode_current import anode_resistance
from solutions.unit06_reaction import stability
from solutions.unit06_reaction.club_set import one_valve_set, without_reaction
from solutions.unit06_reaction.network import REST_BIAS

WORST_RESISTANCE, WORST_FACTOR = (
    13.64 / 10.3,
    9.22 / 9.3,
)  # the worst type 30 to its sheet: triode_spread.csv
OFFSET_SPREAD = 0.3  # volt of contact potential between one valve and another, from memory


@check_ranges
def own_capacitances(frequency: float) -> float:
    """Decibels that the tuned circuit of the one-valve set loses by the capacitance from grid to anode.

    Parameters
    ----------
    frequency : float, hertz, > 0

    Returns
    -------
    float, decibel, below 0 where it loses

    Source
    ------
    `without_reaction`, against the same network with nothing between grid and anode. Behind 2 nF the anode's voltage is small.
    """
    bare = replace(one_valve_set(frequency), grid_anode_capacitance=0.0)
    alone, _ = stability.gain_and_bandwidth(stability.retuned(bare, frequency))
    return float(20 * np.log10(without_reaction(frequency)[0] / alone))


@check_ranges
def gain_of(offset: float = LAW[2], factor: float = 1.0, resistance: float = 1.0) -> float:
    """Gain of the detector's valve for a tone at its grid, at rest, on the telephones.

    Parameters
    ----------
    offset : float, volt, of the valve's law
    factor, resistance : float, > 0, times the club's amplification factor and anode resistance

    Returns
    -------
    float, a pure number
    """
    law = LAW[0], LAW[1], offset
    anode, _ = operating_point(HT, STEADY_RESISTANCE, REST_BIAS, *law)
    return float(stage_gain(factor * law[0], resistance * anode_resistance(anode, REST_BIAS, *law), TONE_RESISTANCE))


def worst_specimen() -> float:
    """Decibels of tone for the worst type 30 of a measured handful."""
    return 20 * np.log10(gain_of(factor=WORST_FACTOR, resistance=WORST_RESISTANCE) / gain_of())


def contact_potential(change: float = OFFSET_SPREAD) -> float:
    """Decibels of tone for a valve whose contact potential differs by so many volts."""
    return 20 * np.log10(gain_of(offset=LAW[2] + change) / gain_of())


def most_current() -> float:
    """Amperes that the set draws of its filament at the most, the grid at 0 V: as long as it gives more, the law holds."""
    return float(operating_point(HT, STEADY_RESISTANCE, 0.0, *LAW)[1])

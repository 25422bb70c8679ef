"""The Circle's tuned coil: what it loses at each frequency of the dial."""

from solutions.ranges import check_ranges
from solutions.unit02_coil_and_condenser.winding_sheet import wire_length
from solutions.unit02_coil_and_condenser.wire_resistance import alternating_resistance, swg_diameter

TURNS, FORMER, COVERED, GAUGE = 44, 75e-3, 0.5e-3, 26  # turns, metre, metre, SWG
STATED_AT, STATED = 1e6, 6.0  # hertz, ohm: measured; turns lying close lose more than their wire stretched out


@check_ranges
def coil_resistance(frequency: float) -> float:
    """Resistance of the Circle's coil, in series with it.

    Parameters
    ----------
    frequency : float or ndarray, hertz, >= 0

    Returns
    -------
    float or ndarray, ohm; 6 at 1 MHz, less below it and more above
        That turns lie close is a factor found at 1 MHz and taken to hold at all frequencies.

    Source
    ------
    `alternating_resistance` of its wire: the skin effect, exact for a round wire by itself.
    """
    return STATED * straight_resistance(frequency) / straight_resistance(STATED_AT)


@check_ranges
def straight_resistance(frequency: float) -> float:
    """Resistance of the coil's wire stretched out.

    Parameters
    ----------
    frequency : float or ndarray, hertz, >= 0

    Returns
    -------
    float or ndarray, ohm

    Source
    ------
    `alternating_resistance`.
    """
    return alternating_resistance(wire_length(TURNS, FORMER, COVERED), swg_diameter(GAUGE), frequency)

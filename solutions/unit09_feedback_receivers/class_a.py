"""What the meter in a class A stage's supply reads while the programme comes: the valve's bend rectifies a little."""

import numpy as np

from solutions.ranges import check_ranges
from solutions.unit05_valve.triode_current import triode_current

CYCLE = np.cos(2 * np.pi * (np.arange(180) + 0.5) / 180)
ROUNDS = 60  # of finding the current that its own load leaves room for
SETTLED = 1e-3  # of the largest current: by how much it may still change in a round


@check_ranges
def mean_current(
    supply: float, bias: float, swing: float, load: float, amplification_factor: float, perveance: float, offset: float
) -> float:
    """Anode current of a stage with a transformer, averaged over a tone.

    Parameters
    ----------
    supply : float, volt, > 0; the primary drops none of it
    bias : float, volt, on the grid
    swing : float, volt, crest, >= 0, of the tone on the grid
    load : float, ohm, > 0, that the tone finds in the primary
    amplification_factor, perveance, offset : float
        As in `triode_current`.

    Returns
    -------
    float, ampere; with a swing of 0 what the meter reads in silence

    Raises
    ------
    ValueError
        If going half of the way does not come to rest.

    Source
    ------
    The law at 180 moments of a cycle, with the anode at supply − load × (current − its mean): the primary passes its mean free
    of charge. Solved by going half of the way to what follows, again and again.
    """
    grid = bias + swing * CYCLE
    law = amplification_factor, perveance, offset
    current = np.full(CYCLE.size, float(triode_current(supply, bias, *law)))
    with np.errstate(over="ignore", invalid="ignore"):
        for _ in range(ROUNDS):
            anode = np.maximum(supply - load * (current - np.mean(current)), 0.0)
            drawn = triode_current(anode, grid, *law)
            current, before = (current + drawn) / 2, current
    if not np.max(np.abs(current - before)) <= SETTLED * np.max(np.abs(current)):
        raise ValueError("no current was found at which this stage comes to rest: its load is too large for its valve")
    return float(np.mean(current))


@check_ranges
def meter_rise(
    supply: float, bias: float, swing: float, load: float, amplification_factor: float, perveance: float, offset: float
) -> float:
    """By what share the meter of a class A stage rises when a tone comes.

    Parameters
    ----------
    supply, bias, swing, load, amplification_factor, perveance, offset
        As in `mean_current`.

    Returns
    -------
    float, a fraction

    Raises
    ------
    ValueError
        If the stage is cut off in silence; or as `mean_current`.

    Source
    ------
    `mean_current` with the tone and without it.
    """
    rest = supply, bias, 0.0, load, amplification_factor, perveance, offset
    silent = mean_current(*rest)
    if silent == 0.0:
        raise ValueError("this stage passes nothing in silence, and no share of nothing: take less bias")
    return mean_current(supply, bias, swing, load, *rest[4:]) / silent - 1

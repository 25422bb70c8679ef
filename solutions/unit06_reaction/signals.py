"""What becomes of the unit's numbers with a station's own carrier in the aerial: the engine of unit 7 beside the network.

The network takes valve and grid by their slopes at rest. A strong carrier moves both: the grid's bias sinks, its load falls,
the valve's slope changes. The lesson puts both answers side by side where they part.
"""

from functools import lru_cache

import numpy as np

from solutions.ranges import check_ranges
from solutions.unit06_reaction.club_set import on_station
from solutions.unit07_oscillation.envelope import RATE, Heard, carrier, follow, start

FINE = 4 * RATE  # steps a second
SETTLING = 60e-3  # second: longer than any swing of these pages needs to come to rest
SMALL_DEPTH, SLOW = 0.01, 50.0  # a fraction; hertz: a tone so low that no band of these pages holds it back
KEPT_UP = 20e-3  # second: how long a knock is watched


@lru_cache(maxsize=256)
def _heard(frequency: float, throttle: float, emf: float, tone: float = 0.0) -> Heard:
    time = np.arange(int(SETTLING * FINE) + 1) / FINE
    depth = SMALL_DEPTH * np.cos(2 * np.pi * tone * time) if tone else 0.0
    return follow(carrier(time, 0.0, emf, depth), FINE, frequency, on_station(frequency, throttle))


@check_ranges
def swing_with(frequency: float, throttle: float, emf: float) -> float:
    """Swing on the tuned circuit of the club's set with a bare carrier in the aerial, once it has settled, by the engine.

    Parameters
    ----------
    frequency : float, hertz, > 0, of the carrier; the set is tuned to it as it is at rest
    throttle : float, farad, > 0
    emf : float, volt, crest, > 0, in the aerial

    Returns
    -------
    float, volt, crest; an oscillation's where the set sings

    Raises
    ------
    ValueError
        As `follow`.
    """
    return float(np.abs(_heard(frequency, throttle, emf).grid[-1]))


@check_ranges
def gain_with(frequency: float, throttle: float, emf: float) -> float:
    """Volts on the tuned circuit for each volt in the aerial, with a carrier of this strength, by the engine.

    Parameters
    ----------
    frequency, throttle, emf
        As in `swing_with`.

    Returns
    -------
    float, a pure number

    Raises
    ------
    ValueError
        As `follow`.
    """
    return swing_with(frequency, throttle, emf) / emf


@check_ranges
def tone_left_with(frequency: float, throttle: float, emf: float, tone: float) -> float:
    """How much of a tone's depth the set leaves on the tuned circuit, against a very low tone's, by the engine.

    Parameters
    ----------
    frequency, throttle, emf
        As in `swing_with`.
    tone : float, hertz, at least 50, of which a whole period is heard

    Returns
    -------
    float, decibel

    Raises
    ------
    ValueError
        As `follow`.
    """
    return float(20 * np.log10(_depth(frequency, throttle, emf, tone) / _depth(frequency, throttle, emf, SLOW)))


def _depth(frequency, throttle, emf, tone):
    """Depth of the envelope's tone over the last third of the time, whole periods of it, for each bit that was sent."""
    grid = np.abs(_heard(frequency, throttle, emf, tone).grid)
    last = int(max(1, int(SETTLING / 3 * tone)) * FINE / tone)
    turning = np.exp(-2j * np.pi * tone * np.arange(last) / FINE)
    return 2 * np.abs(np.mean(grid[-last:] * turning)) / np.mean(grid[-last:]) / SMALL_DEPTH


@check_ranges
def knocked(frequency: float, throttle: float, swing: float = 1e-4) -> tuple[float, float]:
    """What a knock leaves in the set, no station being on: its pitch against the carrier's, and its growth, by the engine.

    Parameters
    ----------
    frequency, throttle
        As in `swing_with`.
    swing : float, volt, crest, > 0, of the knock, on the grid

    Returns
    -------
    offset : float, hertz, from the frequency that the set is tuned to
    growth : float, per second; below 0 the ring dies away

    Raises
    ------
    ValueError
        As `follow`.

    Source
    ------
    Straight lines through phase and logarithm of the swing while it is between a tenth and ten times what it was.
    """
    heard = follow(np.zeros(int(KEPT_UP * FINE)), FINE, frequency, on_station(frequency, throttle), state=start(seed=swing))
    size = np.abs(heard.grid) / np.abs(heard.grid[0])
    outside = np.flatnonzero((size < 0.1) | (size > 10))
    count = max(outside[0] if len(outside) else len(size), 4)
    time = np.arange(count) / FINE
    turned = np.unwrap(np.angle(heard.grid[:count]))
    return float(np.polyfit(time, turned, 1)[0] / (2 * np.pi)), float(np.polyfit(time, np.log(size[:count]), 1)[0])

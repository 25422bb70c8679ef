"""The three windings on one tube, in their order along it: aerial, tuned, tickler."""

import math
from dataclasses import dataclass
from typing import Any

import numpy as np

from . import physics
from .reading import Parts

WIRE_PER_METRE = 15e-6 / 28  # henry per metre: unit 06 reckons with 15 µH for the aerial wire of 8 m and 20 m
ABOVE_BAND = 1.25  # the aerial with its winding resonates this far above the band, so that there is no dead spot on the dial
MOST_TICKLER = 40
LEADS = 1.0  # metre of wire for the two ends of a winding


@dataclass(frozen=True)
class Windings:
    """Turns of the three windings, whole numbers; and whatever follows from them, one value for each drawn set."""

    aerial: int
    tuned: int
    tickler: int
    tuned_needed: np.ndarray
    aerial_inductance: np.ndarray
    tuned_inductance: np.ndarray
    tickler_inductance: np.ndarray
    aerial_tuned: np.ndarray
    tuned_tickler: np.ndarray
    aerial_tickler: np.ndarray
    own_capacitance: np.ndarray


def crowding() -> float:
    """How many times the straight wire's resistance a coil has, from the course's own coil at 1 MHz."""
    return float(physics.club_coil.STATED / physics.club_coil.straight_resistance(physics.club_coil.STATED_AT))


def tuned_needed(parts: Parts, former: Any, covered: Any, maximum: Any, stray: Any) -> np.ndarray:
    """Turns, fractions and all, that put the band's lowest frequency at the dial's end, for each drawn set."""
    return np.array([_turns(parts, *one) for one in zip(former, covered, maximum, stray, strict=True)])


def _turns(parts: Parts, former: Any, covered: Any, maximum: Any, stray: Any) -> float:
    own = 0.0
    for _ in range(3):  # the coil's own capacitance depends on its turns, a little
        inductance = physics.tuning.tuning_inductance(parts["band.lowest"], maximum, stray + own)
        try:
            turns = physics.winding.turns_needed(inductance, former, covered)
            own = physics.self_capacitance.self_capacitance(former + covered, turns * covered)
        except ValueError as problem:
            raise parts.fault("former.diameter", f"no close-wound coil on this tube serves: {problem}.") from None
    return turns


def aerial_turns(parts: Parts, aerial_capacitance: float, wire_inductance: float, former: Any, covered: Any) -> int:
    """Turns that bring the aerial's own resonance to just above the band."""
    above = ABOVE_BAND * parts["band.highest"]
    winding = physics.tuning.tuning_inductance(above, aerial_capacitance, 0.0) - wire_inductance
    try:
        return max(physics.winding.whole_turns(winding, former, covered), 2)
    except ValueError:  # less than a turn has
        return 2


def fit_on_tube(parts: Parts, turns: dict[str, int]) -> float:
    """Length of tube that the windings take with the gaps between them.

    Raises
    ------
    SheetFault
        If the tube is shorter.
    """
    gaps = parts["former.aerial_gap"] + (parts["former.tickler_gap"] if "tickler" in turns else 0.0)
    taken = sum(turns.values()) * parts["wire.covered"] + gaps
    if taken > parts["former.length"]:
        listed = ", ".join(f"{number} {name}" for name, number in turns.items())
        raise parts.fault(
            "former.length",
            f"the windings ({listed} turns) take {1e3 * taken:.0f} mm with their gaps, and the tube has "
            f"{1e3 * parts['former.length']:.0f} mm: take a longer tube or thinner wire, or close the gaps.",
        )
    return taken


def tuned_turns(needed: np.ndarray) -> int:
    """Whole turns that still reach the band's lowest frequency with the nominal parts."""
    return max(math.ceil(needed[0] - 1e-9), 2)


def inductances(turns: int, former: Any, covered: Any) -> np.ndarray:
    return physics.winding.close_wound_inductance(turns, former, covered)


def mutual(turns_1: int, turns_2: int, former: Any, covered: Any, gap: Any) -> np.ndarray:
    """Mutual inductance of two windings on the tube with a gap between their nearest ends, for each drawn set."""
    return np.array(
        [
            physics.mutual.coaxial_coils(
                turns_1, d + c, turns_1 * c, turns_2, d + c, turns_2 * c, (turns_1 + turns_2) * c / 2 + g
            )
            for d, c, g in zip(former, covered, gap, strict=True)
        ]
    )


def wind(sample: Any, tickler: int) -> Windings:
    """All that follows from the turns, for a number of turns on the tickler."""
    parts, former, covered = sample.parts, sample.former, sample.covered
    needed = sample.tuned_needed
    tuned, aerial = tuned_turns(needed), sample.aerial_turns
    gaps = parts["former.aerial_gap"] + sample.off["gaps"], parts["former.tickler_gap"] + sample.off["gaps"]
    near, far = (np.maximum(gap, 0.2e-3) for gap in gaps)
    try:
        own = physics.self_capacitance.self_capacitance(former + covered, tuned * covered)
    except ValueError as problem:
        raise parts.fault("former.diameter", f"the coil's own capacitance is not known: {problem}.") from None
    return Windings(
        aerial,
        tuned,
        tickler,
        needed,
        inductances(aerial, former, covered),
        inductances(tuned, former, covered),
        inductances(tickler, former, covered),
        mutual(aerial, tuned, former, covered, near),
        mutual(tickler, tuned, former, covered, far),
        mutual(aerial, tickler, former, covered, near + far + tuned * covered),
        own,
    )

"""Filament and anode: what the supplies have to give, and the resistors from the drawer."""

from dataclasses import dataclass

import numpy as np

from . import physics
from .keys import FILAMENTS, ISOLATED, QUENCHED
from .sample import Sample
from .spread import Spread, spread

SERIES = "E12"
ENOUGH = 0.05  # of its voltage that a filament's supply may be short of it: then it is fed without a dropper
WATTS = (0.25, 0.5, 1.0, 2.0, 5.0, 10.0, 25.0, 50.0)  # resistors as they are sold; common practice, no source
LEAST_CURRENT = 50e-6  # ampere: with less anode current the valve is as good as cut off
TWO_VALVES = (ISOLATED, QUENCHED)
FUSE = 50e-3  # ampere, quick: opens where a short on weak batteries would leave a 100 mA one whole (the course's safety page)


@dataclass(frozen=True)
class Supply:
    """Volts, ohms, amperes, watts. No dropper where the filament's own battery feeds it.

    `guard` is the least that HT may pass through on its way to a filament, by mistake and with LT out.
    """

    valves: int
    filament: tuple[float, float, str]
    exact: float
    dropper: float | None
    filament_current: Spread
    heat: float
    rating: float
    anode_current: Spread
    anode_voltage: Spread
    leak: float
    anode_resistor: float
    grid_condenser: float
    guard: float
    guard_rating: float
    anode_rating: float

    @property
    def guarded(self) -> bool:
        """Whether the anode resistor by itself saves the detector's filament."""
        return self.anode_resistor >= self.guard


def supply_of(sample: Sample) -> Supply:
    """The supplies of the builder's set.

    Raises
    ------
    SheetFault
        If LT is too low for the filament, or HT for the valve.
    """
    parts = sample.parts
    volts, amperes, heated = FILAMENTS[parts["valve.type"]]
    kind = f"type {parts['valve.type']}"
    if parts["supply.lt"] < volts * (1 - ENOUGH):
        raise parts.fault(
            "supply.lt",
            f"an LT supply of {parts['supply.lt']:g} V cannot feed the {volts:g} V {heated} of a {kind}: "
            "raise it, or choose another valve.",
        )
    exact = float(physics.dropper.dropper_resistance(max(parts["supply.lt"], volts), volts, amperes))
    dropper = float(physics.dropper.next_preferred(exact, SERIES)) if exact > 0.5 else None
    in_place = (dropper or 0.0) * (1 + sample.off["resistors"])
    current = physics.dropper.current_through_dropper(sample.lt, in_place, volts, amperes)
    heat = float(np.max(current) ** 2 * (dropper or 0.0))
    bias, anode, through = sample.at_rest
    if through[0] < LEAST_CURRENT:
        message = f"with {parts['supply.ht']:g} V the anode of a {kind} draws no current worth the name: raise HT."
        raise parts.fault("supply.ht", message)
    off = sample.off
    fresh = physics.faults.FRESH * parts["supply.ht"]
    guard = float(physics.dropper.next_preferred(physics.dropper.dropper_resistance(fresh, volts, amperes), SERIES))
    return Supply(
        2 if parts["set"] in TWO_VALVES else 1,
        (volts, amperes, heated),
        exact,
        dropper,
        spread(np.broadcast_to(current, off["supply"].shape), off),
        heat,
        rating(2 * heat),
        spread(through, off),
        spread(anode, off),
        float(physics.dropper.next_preferred(parts["valve.leak"], SERIES)),
        float(physics.dropper.next_preferred(parts["supply.anode_resistor"], SERIES)),
        float(physics.dropper.next_preferred(parts["valve.grid_condenser"] * 1e12, "E6")) * 1e-12,
        guard,
        rating(shorted(fresh, guard)),
        rating(shorted(fresh, parts["supply.anode_resistor"])),
    )


def rating(heat: float) -> float:
    """The smallest resistor sold, in watts, that bears this heat."""
    return next(watts for watts in (*WATTS, np.inf) if watts >= heat)


def shorted(ht: float, resistor: float) -> float:
    """Heat in a resistor with a short circuit behind it, for as long as the fuse may let it flow."""
    most = next(times for times, _, seconds in physics.faults.QUICK_FUSE if seconds < 1) * FUSE
    return min(ht / resistor, most) ** 2 * resistor

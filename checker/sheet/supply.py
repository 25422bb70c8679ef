"""Filament and anode: what the supplies have to give, and the resistors from the drawer."""

from dataclasses import dataclass

import numpy as np

from . import physics
from .keys import FILAMENTS, ISOLATED, QUENCHED
from .sample import Sample
from .spread import Spread, spread

SERIES = "E12"
ENOUGH = 0.05  # of its voltage that a filament's supply may be short of it: then it is fed without a dropper
WATTS = (0.25, 0.5, 1.0, 2.0, 5.0, 10.0)  # resistors as they are sold; common practice, no source
LEAST_CURRENT = 50e-6  # ampere: with less anode current the valve is as good as cut off
TWO_VALVES = (ISOLATED, QUENCHED)


@dataclass(frozen=True)
class Supply:
    """Volts, ohms, amperes, watts. No dropper where the filament's own battery feeds it."""

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
    return Supply(
        2 if parts["set"] in TWO_VALVES else 1,
        (volts, amperes, heated),
        exact,
        dropper,
        spread(np.broadcast_to(current, off["supply"].shape), off),
        heat,
        next(watts for watts in (*WATTS, np.inf) if watts >= 2 * heat),
        spread(through, off),
        spread(anode, off),
        *(float(physics.dropper.next_preferred(parts[name], SERIES)) for name in ("valve.leak", "supply.anode_resistor")),
        float(physics.dropper.next_preferred(parts["valve.grid_condenser"] * 1e12, "E6")) * 1e-12,
    )

"""Parts that are each in range and cannot go together: one sentence for each, at the key to change."""

import math
from collections.abc import Sequence

from . import physics
from .reading import Parts, Station
from .spread import Spread

ENDS = (("band", "lowest", "highest"), ("condenser", "minimum", "maximum"), ("valve", "throttle_minimum", "throttle_maximum"))


def refuse_impossible(parts: Parts) -> None:
    """Raise what can be seen before anything is worked out.

    Raises
    ------
    SheetFault
    """
    _wire(parts)
    for section, low, high in ENDS:
        if not parts[f"{section}.{low}"] < parts[f"{section}.{high}"]:
            raise parts.fault(f"{section}.{high}", f"{high} is not above {low}: exchange or correct them.")
    _aerial(parts)
    _condenser(parts)
    for station in parts.stations:
        _station(parts, station)


def _wire(parts: Parts) -> None:
    gauge, diameter = parts["wire.gauge"], parts["wire.diameter"]
    if (gauge is None) == (diameter is None):
        raise parts.fault(
            "wire",
            'the wire wants its gauge or its diameter, one of the two: write gauge = "26 SWG" or diameter = "0.457 mm".',
        )
    copper = diameter if gauge is None else gauge
    if parts["wire.covered"] < copper:
        message = f"over its covering the wire is thinner than its copper, {1e3 * copper:.3g} mm: measure again."
        raise parts.fault("wire.covered", message)


def _aerial(parts: Parts) -> None:
    height, top = parts["aerial.height"], parts["aerial.top"]
    if top < height:
        raise parts.fault(
            "aerial.top",
            "the level part is shorter than the upright one, for which the aerial's formula is not made: "
            "give at least the height.",
        )
    if height + top > physics.radiation.SPEED_OF_LIGHT / parts["band.highest"] / 4:
        raise parts.fault(
            "aerial.top",
            f"{height + top:.0f} m of wire is more than a quarter of a wave at the band's upper end, where the aerial's "
            "formula ends: shorten it.",
        )


def _condenser(parts: Parts) -> None:
    wanted = (parts["band.highest"] / parts["band.lowest"]) ** 2
    stray = parts["condenser.stray"]
    given = (parts["condenser.maximum"] + stray) / (parts["condenser.minimum"] + stray)
    if given < wanted:
        raise parts.fault(
            "condenser.maximum",
            f"this band wants {wanted:.3g} times the capacitance at one end as at the other, and condenser and strays give "
            f"{given:.3g} times: narrow the band, lessen minimum or stray, or take a larger condenser.",
        )


def _station(parts: Parts, station: Station) -> None:
    if not parts["band.lowest"] <= station.frequency <= parts["band.highest"]:
        message = f"its {station.frequency / 1e3:.6g} kHz lie outside the band: widen it or leave the station out."
        raise parts.fault((station.role, station.place, "frequency"), message)
    half_wave = physics.radiation.SPEED_OF_LIGHT / station.frequency / 2
    if station.distance is not None and station.distance < half_wave:
        raise parts.fault(
            (station.role, station.place, "distance"),
            f"within half a wavelength, {half_wave:.0f} m, a field is no wave yet: measure it and give field instead.",
        )


def refuse_out_of_reach(parts: Parts, ends: Sequence[Spread]) -> None:
    """Raise where the dial ends before the band does.

    Raises
    ------
    SheetFault
    """
    lowest, highest = (end.nominal for end in ends)
    if not (math.isfinite(lowest) and highest >= parts["band.highest"]):
        raise parts.fault(
            "band.highest",
            f"with the coil's own capacitance and the aerial's share the dial ends at {highest / 1e3:.0f} kHz: "
            "lower highest, lessen the condenser's minimum or stray, or widen aerial_gap.",
        )

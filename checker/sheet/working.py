"""A file's parts worked out: all that the page shows, in SI units."""

from dataclasses import dataclass
from typing import Any

import numpy as np

from . import dial, physics, reaction, sets
from .keys import CRYSTAL, GROUNDS, ISOLATED, QUENCHED, REACTION, SURROUNDINGS
from .possible import refuse_impossible, refuse_out_of_reach
from .reading import Parts, Station
from .sample import WoundSample, capacitance_for, sample_of, with_windings
from .spread import DRAWS, Spread, spread
from .supply import TWO_VALVES, Supply, supply_of
from .windings import fit_on_tube, tuned_turns

CO_CHANNEL = 40.0  # decibel by which a wanted carrier should be above another on its own frequency: ITU-R BS.560
FLAT_EARTH = 80e3  # metre at 1 MHz: so far the flat-earth formula is fair
ONE_VOLT = 1.0  # volt, crest: swing of a set that just oscillates, for what it sends
AUDIO_BAND = 6e3  # hertz in which noise is reckoned


@dataclass(frozen=True)
class Winding:
    """One winding: turns, henries, metres of wire and of tube."""

    name: str
    turns: int
    inductance: Spread
    wire: float
    length: float


@dataclass(frozen=True)
class DialMark:
    """A place on the dial: the station there or None, degrees, and farads of the throttle at the edge of oscillation."""

    frequency: float
    station: Station | None
    angle: Spread
    throttle: Spread | None


@dataclass(frozen=True)
class Reception:
    """One station: field, how far it is above the noise, decibels above the faintest on each set, and how each set sets it
    off from each local station: decibels by which its carrier is above that one's."""

    station: Station
    field: float
    above_noise: float
    beyond_flat_earth: bool
    levels: dict[str, Spread]
    above_locals: dict[str, list[tuple[str, Spread]]]


@dataclass(frozen=True)
class Sheet:
    """All that stands on a sheet."""

    parts: Parts
    windings: tuple[Winding, ...]
    needed: Spread
    tube: float
    tap: int | None
    couplings: tuple[tuple[str, Spread], ...]
    reach: tuple[Spread, Spread]
    marks: tuple[DialMark, ...]
    fierce: bool
    receptions: tuple[Reception, ...]
    supply: Supply
    sends: float | None
    draws: int


def work_out(parts: Parts, draws: int = DRAWS) -> Sheet:
    """Work a builder's file out.

    Parameters
    ----------
    parts : Parts
    draws : int
        How many sets are drawn within the parts' spread.

    Raises
    ------
    SheetFault
        If the parts cannot make a set, or a station lies where it cannot be heard.
    """
    refuse_impossible(parts)
    try:
        return _work_out(parts, draws)
    except ValueError as problem:
        message = f"these parts make no set that can be worked out ({problem}): change one of the parts named."
        raise parts.fault("set", message) from None


def _work_out(parts: Parts, draws: int) -> Sheet:
    sample = sample_of(parts, draws)
    supply = supply_of(sample)
    fit_on_tube(parts, {"aerial": sample.aerial_turns, "tuned": tuned_turns(sample.tuned_needed)})  # before a tickler is tried
    tickler = reaction.tickler_turns(parts)
    wound = with_windings(sample, tickler)
    of, chosen = wound.windings, parts["set"]
    turns = {"aerial": of.aerial, "tuned": of.tuned} | ({} if chosen in (CRYSTAL, "one valve") else {"tickler": tickler})
    tube = fit_on_tube(parts, turns)
    with_aerial = chosen not in TWO_VALVES
    lowest, highest = (spread(end, wound.off) for end in dial.reach(wound, with_aerial))
    refuse_out_of_reach(parts, [lowest, highest])
    tap = round(sets.tapping(wound) * of.tuned)
    marks = _marks(parts, wound, tickler, with_aerial)
    throttles = [mark.throttle for mark in marks if mark.throttle]
    return Sheet(
        parts,
        tuple(_winding(wound, name, number) for name, number in turns.items()),
        spread(of.tuned_needed, wound.off),
        tube,
        tap if chosen == CRYSTAL and tap < of.tuned else None,
        tuple(
            (names, spread(value, wound.off))
            for names, value in (("aerial and tuned", of.aerial_tuned), ("tuned and tickler", of.tuned_tickler))
            if names.split()[-1] in turns
        ),
        (lowest, highest),
        marks,
        bool(throttles) and any(not np.isfinite(one.nominal) for one in throttles),
        tuple(_reception(parts, wound, station) for station in parts.stations),
        supply,
        _radiated_power(wound) if chosen == REACTION else None,
        draws,
    )


def _winding(sample: WoundSample, name: str, turns: int) -> Winding:
    inductance = getattr(sample.windings, f"{name}_inductance")
    former, covered = sample.parts["former.diameter"], sample.parts["wire.covered"]
    wire = float(physics.winding.wire_length(turns, former, covered))
    return Winding(name, turns, spread(inductance, sample.off), wire, turns * covered)


def _marks(parts: Parts, sample: WoundSample, tickler: int, with_aerial: bool) -> tuple[DialMark, ...]:
    """The dial: round frequencies, and the stations."""
    reacts = parts["set"] in (REACTION, ISOLATED, QUENCHED)
    fewer = with_windings(sample_of(parts, min(reaction.DRAWS, len(sample.former))), tickler)
    places: list[tuple[float, Station | None]] = [
        (frequency, None) for frequency in dial.round_frequencies(parts["band.lowest"], parts["band.highest"])
    ]
    places += [(station.frequency, station) for station in parts.stations]
    marks = (_mark(fewer if reacts else sample, *place, with_aerial, reacts) for place in places)
    return tuple(sorted(marks, key=lambda mark: mark.frequency))


def _mark(sample: WoundSample, frequency: float, station: Station | None, with_aerial: bool, reacts: bool) -> DialMark:
    """One place on the dial, at the edge of oscillation where the throttle reaches it."""
    tuning, throttle = capacitance_for(sample, frequency, with_aerial), None
    if reacts:
        edge, at_edge = reaction.settings(sample, frequency, with_aerial)
        tuning, throttle = np.where(np.isfinite(at_edge), at_edge, tuning), spread(edge, sample.off)
    return DialMark(frequency, station, spread(dial.angles(sample, frequency, tuning), sample.off), throttle)


def field_of(station: Station) -> float:
    """Volts a metre, r.m.s., at the builder's aerial."""
    if station.field is not None:
        return station.field
    ground = GROUNDS[station.ground]
    return float(physics.field.ground_wave_field(station.power, station.distance, station.frequency, *ground))


def _reception(parts: Parts, sample: WoundSample, station: Station) -> Reception:
    field = field_of(station)
    fields = field * 10 ** (sample.off["field"] / 20)
    noise = physics.radiated.noise_field(station.frequency, AUDIO_BAND, *SURROUNDINGS[parts["aerial.surroundings"]])
    locals_ = (
        [other for other in parts.stations if other.role == "local" and other is not station]
        if station.role == "wanted"
        else []
    )
    levels, above = {}, {}
    for name, heard_on in sets.FIVE.items():
        heard = heard_on(sample, station.frequency, fields)
        levels[name] = spread(heard.level, sample.off)
        above[name] = [
            (
                other.name,
                spread(_above(fields, field_of(other), heard.holds_down(other.frequency - station.frequency)), sample.off),
            )
            for other in locals_
        ]
    far = station.distance is not None and station.distance > FLAT_EARTH / np.cbrt(station.frequency / 1e6)
    return Reception(station, field, 20 * np.log10(field / noise), far, levels, above)


def _above(fields: np.ndarray, other: float, held_down: Any) -> np.ndarray:
    return np.broadcast_to(physics.rejection.protection_left(fields, other, held_down), fields.shape)


def _radiated_power(sample: WoundSample) -> float:
    """Watts that the nominal set sends out when it oscillates with `ONE_VOLT` in the middle of the band."""
    middle = np.sqrt(sample.parts["band.lowest"] * sample.parts["band.highest"])
    current = physics.radiated.aerial_current(
        ONE_VOLT, middle, capacitance_for(sample, middle, True), sample.windings.aerial_tuned, sample.aerial_impedance(middle)
    )
    return float(physics.radiated.radiated_power(current, sample.effective_height, middle)[0])

"""The tickler's turns, and where the throttle stands at the edge of oscillation."""
from dataclasses import fields, replace
from typing import Any

import numpy as np

from . import physics
from .reading import Parts
from .sample import Sample, sample_of, with_windings
from .windings import MOST_TICKLER, THROTTLE_IN

DRAWS = 60  # of sets whose edge is looked for: each takes hundreds of eigenvalues
FEWEST = 2


def tickler_turns(parts: Parts) -> int:
    """The fewest turns on the tickler with which the nominal set oscillates anywhere on the dial, the throttle well open.

    Raises
    ------
    SheetFault
        If none up to forty do, or the aerial cannot be tuned.
    """
    lowest, highest = parts["band.lowest"], parts["band.highest"]
    places = np.array([lowest, np.sqrt(lowest * highest), highest])
    least, most = parts["valve.throttle_minimum"], parts["valve.throttle_maximum"]
    sample = sample_of(parts, 1)
    for turns in range(FEWEST, MOST_TICKLER + 1):
        trial = reaction_set(with_windings(sample, turns), places, least + THROTTLE_IN * (most - least))
        try:
            there = physics.stability.retuned(trial, places)
        except ValueError as problem:
            raise parts.fault("former.aerial_gap", f"{problem}: widen aerial_gap or shorten the aerial.") from None
        if np.all(physics.stability.ring(there)[1] > 0):
            return turns
    raise parts.fault(
        "former.tickler_gap",
        f"with {MOST_TICKLER} turns on the tickler this valve does not oscillate over the whole band: bring the tickler "
        "nearer, raise throttle_maximum or HT, or widen aerial_gap.",
    )


def reaction_set(sample: Sample, frequency: Any, throttle: Any, aerial: bool = True) -> physics.network.ReactionSet:
    """The set of unit 06 made of the builder's parts, before it is tuned.

    Parameters
    ----------
    sample : Sample
        With windings.
    frequency : float or ndarray, hertz, at which losses are reckoned
    throttle : float or ndarray, farad
    aerial : bool
        Whether the aerial is on the set itself, and not on a valve of its own.
    """
    of, (bias, anode, _) = sample.windings, sample.at_rest
    place = (anode, bias, *sample.law)
    leak, _, zero_current, slope = sample.grid_law
    own = sample.wire_resistance(of.tuned, frequency)
    if not aerial:
        first = sample.first_valve() + 2j * np.pi * frequency * of.aerial_inductance
        own = own + physics.reflected.reflected_impedance(frequency, of.aerial_tuned, first).real
    radiation = physics.radiation.radiation_resistance(sample.effective_height, frequency)
    return physics.network.ReactionSet(
        aerial_resistance=sample.earth + radiation,
        aerial_capacitance=sample.aerial_capacitance,
        aerial_inductance=of.aerial_inductance + sample.wire_inductance,
        tuned_inductance=of.tuned_inductance,
        tuned_resistance=own,
        tuning_capacitance=1 / ((2 * np.pi * frequency) ** 2 * of.tuned_inductance),
        tickler_inductance=of.tickler_inductance,
        tickler_resistance=sample.wire_resistance(of.tickler, frequency),
        throttle_capacitance=throttle,
        aerial_tuned=of.aerial_tuned * aerial,
        tuned_tickler=of.tuned_tickler,
        aerial_tickler=of.aerial_tickler * aerial,
        grid_conductance=1 / leak + zero_current * np.exp(bias / slope) / slope,
        transconductance=physics.triode.mutual_conductance(*place),
        anode_resistance=physics.triode.anode_resistance(*place),
    )


def settings(sample: Sample, frequency: float, aerial: bool) -> np.ndarray:
    """Throttle capacitance at the edge of oscillation on a frequency, for each drawn set; nan where the throttle does not reach
    it."""
    stops = sample.parts["valve.throttle_minimum"], sample.parts["valve.throttle_maximum"]
    found = np.full(len(sample.former), np.nan)
    try:
        there = physics.stability.retuned(reaction_set(sample, frequency, np.mean(stops), aerial), frequency)
    except ValueError:  # something else resonates there
        return found
    silent, swings = (physics.stability.ring(replace(there, throttle_capacitance=stop))[1] for stop in stops)
    reached = np.flatnonzero((silent < 0) & (swings > 0))
    if reached.size:
        found[reached] = physics.stability.threshold(_of(there, reached), "throttle_capacitance", *stops)
    return found


def _of(there: physics.network.ReactionSet, places: np.ndarray) -> physics.network.ReactionSet:
    """Some of the drawn sets."""
    rows = np.shape(there.tuned_inductance)
    return replace(there, **{part.name: np.broadcast_to(getattr(there, part.name), rows)[places] for part in fields(there)})


def travel(parts: Parts, throttle: float) -> float:
    """Part of the throttle's turn at a capacitance, its plates straight-line in frequency as the course's are."""
    power = physics.vanes.power_of("frequency")
    out, into, here = (value**power for value in (parts["valve.throttle_minimum"], parts["valve.throttle_maximum"], throttle))
    return (here - out) / (into - out)

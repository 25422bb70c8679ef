"""The tickler's turns, and where the throttle stands at the edge of oscillation."""

from typing import Any

import numpy as np

from . import physics
from .reading import Parts
from .sample import Sample, WoundSample, sample_of, with_windings
from .windings import MOST_TICKLER

DRAWS = 60  # of sets whose edge is looked for
FEWEST = 2
CHOKE_OWN, ANODE_WIRING = 3e-12, 2.9e-12  # farad: the choke's own capacitance; holder and leads


def tickler_turns(parts: Parts) -> int:
    """The fewest turns on the tickler with which the nominal set begins to oscillate well within the throttle's travel, anywhere
    on the dial.

    Raises
    ------
    SheetFault
        If none up to forty do, or the choke is too small.
    """
    lowest, highest = parts["band.lowest"], parts["band.highest"]
    dial = np.geomspace(lowest, highest, 5)
    sample = sample_of(parts, 1)
    _refuse_small_choke(parts, sample)
    trials = (
        reaction_set(with_windings(sample, turns), dial, parts["valve.throttle_maximum"])
        for turns in range(FEWEST, MOST_TICKLER + 1)
    )
    try:
        place, _ = physics.choosing.choose_tickler(
            trials, dial, parts["valve.throttle_minimum"], parts["valve.throttle_maximum"]
        )
    except ValueError:
        raise parts.fault(
            "former.tickler_gap",
            f"with no tickler of up to {MOST_TICKLER} turns does reaction come in well within the throttle's travel over the whole "
            "band: move the tickler nearer or further, or change throttle_maximum, by_pass or HT.",
        ) from None
    return FEWEST + place


def _refuse_small_choke(parts: Parts, sample: Sample) -> None:
    least = physics.choosing.least_choke(parts["band.lowest"], anode_capacitance(sample))
    if parts["valve.choke"] < least:
        raise parts.fault(
            "valve.choke",
            f"at the low end of this band a choke of less than {1e3 * least:.0f} mH takes back what the by-pass condenser does, "
            "and the set may sing by itself: take a larger choke or a larger by_pass.",
        )


def anode_capacitance(sample: Sample) -> float:
    """Farad from the anode to earth: valve, holder and leads, choke and by-pass."""
    return (
        physics.triodes.capacitances(sample.parts["valve.type"])[2] + ANODE_WIRING + CHOKE_OWN + sample.parts["valve.by_pass"]
    )


def reaction_set(sample: WoundSample, frequency: Any, throttle: Any, aerial: bool = True) -> physics.network.ReactionSet:
    """The set of unit 06 made of the builder's parts, before it is tuned.

    Parameters
    ----------
    sample : WoundSample
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
    grid_anode, grid_filament, _ = physics.triodes.capacitances(sample.parts["valve.type"])
    valve = physics.network.through_grid_condenser(
        sample.parts["valve.grid_condenser"],
        grid_anode,
        grid_filament,
        physics.triode.mutual_conductance(*place),
        physics.triode.anode_resistance(*place),
        1 / leak + zero_current * np.exp(bias / slope) / slope,
    )
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
        grid_conductance=valve[2],
        transconductance=valve[0],
        anode_resistance=valve[1],
        grid_anode_capacitance=valve[3],
        anode_capacitance=anode_capacitance(sample),
    )


def settings(sample: WoundSample, frequency: float, aerial: bool) -> tuple[np.ndarray, np.ndarray]:
    """Throttle and tuning condenser at the edge of oscillation on a frequency, farads for each drawn set; nan where the throttle
    does not reach it."""
    stops = sample.parts["valve.throttle_minimum"], sample.parts["valve.throttle_maximum"]
    return physics.choosing.edge(reaction_set(sample, frequency, stops[1], aerial), frequency, *stops)


def travel(parts: Parts, throttle: float) -> float:
    """Part of the throttle's turn at a capacitance, its plates straight-line in capacitance."""
    out, into = parts["valve.throttle_minimum"], parts["valve.throttle_maximum"]
    return (throttle - out) / (into - out)

"""The sets and stations of the browser bench as plain numbers: one place where its engine gets any from.

All sets here have the Circle's aerial and coils; what is new in each is the detector. Another, with nothing in common with
them but the ear, is made in `quenched_set`. Keys that come from a dataclass or a
named tuple of `solutions/` keep its field names.
"""

from dataclasses import asdict

import numpy as np

from course.bench.quenched_set import quenched_set
from course.circle.levels import FULL_SCALE, LOUD, LOUDEST, LOWEST
from course.circle.oscillating import NEXT_DOOR, STRAY
from course.circle.programme import DEPTH, TOP
from course.circle.set_in_hand import COUNTRY
from course.circle.sets import BOTH_WAYS, COUPLING, CRYSTAL_STAGE, CRYSTAL_WINDINGS, ISOLATING, VALVE_WINDINGS
from course.circle.stations import LOCAL, NIGHT_ONLY, STATIONS
from solutions.unit01_signal.aerial_voltage import effective_height
from solutions.unit02_coil_and_condenser.club_coil import coil_resistance
from solutions.unit04_crystal_set import crystal_set, phone_loudness
from solutions.unit06_reaction.network import (
    DIAL,
    SALTMARSH_SET,
    THROTTLE_RANGE,
    ReactionSet,
)
from solutions.unit06_reaction.reaction_controls import CONTROLS, FIXED_THROTTLE, SHUNTED_THROTTLE
from solutions.unit07_oscillation import cycle
from solutions.unit07_oscillation.stage import SALTMARSH_STAGE, Stage, at_rest, small_signal_set
from solutions.unit08_two_stations import club_evening
from solutions.unit09_feedback_receivers import isolated_set

COUPLING_KNOB = dict(zip(("low", "high", "start"), COUPLING, strict=True), unit="uH")
PROTECTION = 40.0  # decibel that a wanted station should be above another: ITU-R BS.560
START = LOCAL.frequency  # of the dial when the page opens
# What else turns reaction up: the control in `reaction_controls`, and the unit in which a setting writes it.
OTHER_KNOBS = {"swinging": ("swinging tickler", "uH"), "shunt": ("resistor across the tickler", "ohm")}
FIXED_PARTS = {
    "throttle": {},
    "swinging": {"throttle_capacitance": FIXED_THROTTLE},
    "shunt": {"throttle_capacitance": SHUNTED_THROTTLE},
}


def bench_figures() -> dict:
    """All that the bench's engine knows of the sets, the stations and the ear.

    Returns
    -------
    dict, ready for JSON; SI units throughout
    """
    sets = {
        "crystal": one_set("Crystal set", CRYSTAL_WINDINGS, {"crystal": CRYSTAL_STAGE}, reaction=False),
        "valve": one_set("One valve", VALVE_WINDINGS, {"fierce": SALTMARSH_STAGE}, reaction=False),
        "reaction": one_set("One valve with reaction", SALTMARSH_SET, BOTH_WAYS, reaction=True),
        "isolated": one_set("Isolated aerial with reaction", isolated_set.isolated_set(ISOLATING), BOTH_WAYS, reaction=True),
    }
    sets["quenched"] = quenched_set()
    sets["reaction"]["controls"] = FIXED_PARTS
    sets["reaction"]["knobs"] |= {name: stops_of(control, unit) for name, (control, unit) in OTHER_KNOBS.items()}
    sets["isolated"]["ahead"] = stage_ahead()
    sets["isolated"]["knobs"]["coupling"] = {**COUPLING_KNOB, "start": isolated_set.MUTUAL}
    height = float(effective_height(crystal_set.HEIGHT, crystal_set.TOP))
    return {
        "order": list(sets),
        "sets": sets,
        "dial": {
            "low": DIAL[0],
            "high": DIAL[1],
            "step": 1e3,
            "fine": 6e3,
            "least": 20.0,
            "tick": 10e3,
            "span": 24e3,
            "weakest": -80.0,
            "gain": -20.0,
        },
        "stations": all_stations(),
        "aerial": {"effective_height": height},
        "noise": {"level_at_1_mhz": COUNTRY[0], "fall": COUNTRY[1]},
        "neighbour": {"distance": NEXT_DOOR, "protection": PROTECTION},
        "ear": {
            "sensitivity": crystal_set.SENSITIVITY,
            "reference_pressure": phone_loudness.REFERENCE_PRESSURE,
            "threshold_frequency": phone_loudness.THRESHOLD_FREQUENCY.tolist(),
            "threshold_level": phone_loudness.THRESHOLD_LEVEL.tolist(),
            "lowest": LOWEST,
            "loudest": LOUDEST,
        },
        "programme": {"depth": DEPTH, "top": TOP},
        "full_scale": FULL_SCALE,
        "loud": LOUD,
        "cycle": {"moments": cycle.MOMENTS, "grid_points": cycle.GRID_POINTS, "grid_limit": cycle.GRID_LIMIT},
        "coil": coil_law(),
    }


def all_stations() -> list[dict]:
    """The stations by frequency; the one that only the night brings is marked so.

    Returns
    -------
    list of dict
    """
    by_day = [
        {"name": s.name, "frequency": s.frequency, "field": float(s.field), "power": s.power, "distance": s.distance}
        for s in STATIONS
    ]
    by_night = {
        "name": NIGHT_ONLY.name,
        "frequency": NIGHT_ONLY.frequency,
        "field": float(club_evening.skerry_vore_by_night()),
        "power": NIGHT_ONLY.power,
        "distance": NIGHT_ONLY.distance,
        "night": True,
    }
    return sorted([*by_day, by_night], key=lambda station: station["frequency"])


def stage_ahead() -> dict:
    """The isolating stage: its valve, its winding, and the aerial on its grid.

    Returns
    -------
    dict
    """
    valve = isolated_set.VALVES[ISOLATING]
    angular, capacitance = 2 * np.pi * START, SALTMARSH_SET.aerial_capacitance
    reactance = isolated_set.aerial_impedance(START).imag
    return {
        "amplification_factor": valve.amplification_factor,
        "anode_resistance": valve.anode_resistance,
        "anode_grid": valve.anode_grid,
        "grid_resistance": isolated_set.GRID_RESISTANCE,
        "winding_inductance": isolated_set.WINDING,
        "stray": STRAY,
        "aerial_resistance": SALTMARSH_SET.aerial_resistance,
        "aerial_capacitance": capacitance,
        "aerial_inductance": float((reactance + 1 / (angular * capacitance)) / angular),
    }


def one_set(title: str, windings: ReactionSet, stages: dict[str, Stage], reaction: bool) -> dict:
    """A set with the knobs it has.

    Parameters
    ----------
    title : str
    windings : ReactionSet
    stages : dict of Stage
        By how the valve is fed.
    reaction : bool
        Whether it has a throttle.

    Returns
    -------
    dict
    """
    feeds = {feed: fed(windings, stage) for feed, stage in stages.items()}
    least, start, most = (1 / ((2 * np.pi * place) ** 2 * windings.tuned_inductance) for place in (DIAL[1], START, DIAL[0]))
    across = feeds[next(iter(feeds))]["network"]["grid_anode_capacitance"]  # the scale is drawn with the valve in
    tuning = {"low": 0.95 * least - across, "high": 1.02 * most - across, "start": start - across}
    knobs = {"coupling": COUPLING_KNOB, "tuning": tuning}
    if reaction:
        knobs["throttle"] = {"low": THROTTLE_RANGE[0], "high": THROTTLE_RANGE[1], "start": THROTTLE_RANGE[0], "unit": "pF"}
    return {
        "title": title,
        "knobs": knobs,
        "feeds": list(feeds),
        "stages": feeds,
    }


def stops_of(control: str, unit: str) -> dict:
    """The knob of one of the ways to turn reaction up; it begins with least.

    Parameters
    ----------
    control : str, a key of `CONTROLS`
    unit : str

    Returns
    -------
    dict
    """
    low, high = (float(CONTROLS[control].value(place)) for place in (0.0, 1.0))
    return {"low": low, "high": high, "start": low, "unit": unit}


def fed(windings: ReactionSet, stage: Stage) -> dict:
    """A set's network at weak signals, its stage, and how it rests.

    Parameters
    ----------
    windings : ReactionSet
    stage : Stage

    Returns
    -------
    dict
    """
    valve = stage.perveance > 0
    bias, anode = at_rest(stage) if valve else (0.0, 0.0)
    small = small_signal_set(windings, stage) if valve else windings
    return {
        "network": {name: float(value) for name, value in asdict(small).items()},
        "stage": {name: float(value) for name, value in stage._asdict().items()},
        "rest": {"bias": bias, "anode": anode},
    }


def coil_law() -> list[float]:
    """The tuned coil's resistance over the dial, in few numbers: a wire's skin effect goes by powers of the frequency's root.

    Returns
    -------
    list of float, ohm
        What counts for √f, for 1, for 1/√f, for 1/f and for 1/f√f, f in megahertz, fitted over the dial and a little beyond.
    """
    frequency = np.linspace(0.95 * DIAL[0], 1.05 * DIAL[1], 60)
    powers = (frequency / 1e6)[:, None] ** np.array([0.5, 0, -0.5, -1, -1.5])
    return np.linalg.lstsq(powers, coil_resistance(frequency), rcond=None)[0].tolist()

"""Four ways to turn reaction up, on one network and one valve: what each is like near the edge.   Lesson: Reaction.

Throttle, swinging tickler, anode voltage, resistor across the tickler. Each knob is a number from 0, least reaction, to 1,
and says what the set's parts are at that place. Everything else about the four is asked of the same functions.
"""

from collections.abc import Callable
from dataclasses import replace
from functools import lru_cache
from typing import NamedTuple

import numpy as np

from solutions.ranges import check_ranges
from solutions.unit06_reaction.network import SALTMARSH_SET, THROTTLE_RANGE, ReactionSet, saltmarsh_set
from solutions.unit06_reaction.stability import retuned, ring
from solutions.unit07_oscillation.envelope import RATE, carrier, follow, start
from solutions.unit07_oscillation.stage import GENTLE_STAGE, SALTMARSH_STAGE, Stage, at_rest, small_signal_set

STEPS, HALVINGS = 50, 30  # of the knob's way: to find about where, and then exactly
CLOSE = 2e3  # hertz: the bandwidth from which on a set counts as near its edge
FINE = 4 * RATE  # steps a second, for a set that the knob has drawn some ten kilohertz away
SETTLED = 60e-3  # second: within it a swing has come to rest, or died away
LEAST_FOLLOWED = 0.3  # of the way to the edge: no set holds on further back
DEAD = 5e-3  # volt: what has sunk to this does not swing any more
TONE, DEPTH, WEAK = 400.0, 0.3, 5e-3  # hertz, a fraction, volt on the tuned circuit: a weak station, for comparing loudness


class Control(NamedTuple):
    """A knob: what turns reaction up."""

    name: str
    part: str  # the number that it changes, in words
    unit: str
    value: Callable[[float], float]  # of that number, SI, at a place from 0 to 1
    windings: Callable[[ReactionSet, float], ReactionSet]  # the set with that number in it
    stage: Callable[[Stage, float], Stage]


# Each with fixed parts with which its edge lies on the knob's way over the whole dial.
FIXED_THROTTLE, SHUNTED_THROTTLE = 200e-12, 300e-12  # farad: behind swinging tickler and anode voltage; behind the resistor
SWINGING = 20e-6  # henry: tickler and coil in line
SHUNT = 2e3  # ohm: the variable resistor across the tickler
POTENTIOMETER, LOWEST_SHARE = 50e3, 0.1  # ohm, across the HT; below this share of it the valve hardly passes anything


def _throttled(windings, capacitance):
    return replace(windings, throttle_capacitance=capacitance)


def _swung(windings, mutual):
    with_aerial = windings.aerial_tickler * mutual / windings.tuned_tickler
    return replace(_throttled(windings, FIXED_THROTTLE), tuned_tickler=mutual, aerial_tickler=with_aerial)


def _shunted(windings, resistance):
    return replace(_throttled(windings, SHUNTED_THROTTLE), tickler_conductance=1 / resistance)


def _starved(stage, share):
    """The potentiometer as its open voltage behind its own resistance."""
    own = POTENTIOMETER * share * (1 - share)
    return stage._replace(supply=share * stage.supply, load_resistance=stage.load_resistance + own)


def _as_it_is(part, _value):
    return part


CONTROLS = {
    control.name: control
    for control in (
        Control(
            "throttle",
            "capacitance of the throttle",
            "F",
            lambda place: THROTTLE_RANGE[0] + place * (THROTTLE_RANGE[1] - THROTTLE_RANGE[0]),
            _throttled,
            _as_it_is,
        ),
        Control(
            "swinging tickler",
            "mutual inductance of tickler and coil",
            "H",
            lambda place: SWINGING * np.sin(np.pi / 2 * place),
            _swung,
            _as_it_is,
        ),
        Control(
            "anode voltage",
            "share of the HT",
            "",
            lambda place: LOWEST_SHARE + place * (1 - LOWEST_SHARE),
            lambda windings, _share: _throttled(windings, FIXED_THROTTLE),
            _starved,
        ),
        Control(
            "resistor across the tickler", "resistance", "Ω", lambda place: SHUNT * np.maximum(place, 1e-3), _shunted, _as_it_is
        ),
    )
}


FEEDS = {"fierce": SALTMARSH_STAGE, "gentle": GENTLE_STAGE}


def feed(name: str) -> Stage:
    """One of the two feeds that the Circle's set is known with.

    Parameters
    ----------
    name : str, "fierce" for 90 V, 2 MΩ to the filament's positive end; "gentle" for 45 V, 0.5 MΩ to its negative end

    Returns
    -------
    Stage

    Raises
    ------
    ValueError
        If there is no such feed.
    """
    if name not in FEEDS:
        raise ValueError(f"no feed is called {name!r}: choose one of {', '.join(FEEDS)}")
    return FEEDS[name]


def turned(
    control: str, place: float, windings: ReactionSet = SALTMARSH_SET, stage: Stage = SALTMARSH_STAGE
) -> tuple[ReactionSet, Stage]:
    """The set with one of the four knobs at a place; its tuning is left alone.

    Parameters
    ----------
    control : str, a key of `CONTROLS`
    place : float, 0 to 1 of the knob's way, 1 for most reaction
    windings : ReactionSet
    stage : Stage

    Returns
    -------
    windings : ReactionSet, the valve in it by its slopes at rest
    stage : Stage

    Raises
    ------
    ValueError
        If there is no such knob, or the place is not from 0 to 1.

    Source
    ------
    The throttle has straight-line capacitance. A tickler that turns through a right angle shares the sine of its angle.
    A potentiometer is a battery of its open voltage behind its two parts side by side. The resistor turns evenly.
    """
    if control not in CONTROLS:
        raise ValueError(f"no way to turn reaction up is called {control!r}: choose one of {', '.join(CONTROLS)}")
    if not 0 <= place <= 1:
        raise ValueError(f"a knob stands from 0 to 1 of its way, not at {place:g}")
    knob = CONTROLS[control]
    value = knob.value(place)
    fed = knob.stage(stage, value)
    return small_signal_set(knob.windings(windings, value), fed), fed


@lru_cache(maxsize=64)
@check_ranges
def edge(control: str, frequency: float, stage: Stage = SALTMARSH_STAGE) -> float:
    """Place of the knob at which the club's set, kept on a station, begins to oscillate.

    Parameters
    ----------
    control : str, a key of `CONTROLS`
    frequency : float, hertz, > 0
    stage : Stage

    Returns
    -------
    float, 0 to 1

    Raises
    ------
    ValueError
        If the knob does not reach it there; or as `turned`.
    """
    return _place(control, frequency, stage, 0.0)


def _growth(control, place, frequency, stage):
    """Growth a second, the set kept on the station; nan where it cannot be: the valve cut off, or tuned out of reach."""
    try:
        return float(ring(_tuned(control, place, frequency, stage))[1])
    except ValueError:
        return np.nan


def _tuned(control, place, frequency, stage):
    there, _ = turned(control, place, saltmarsh_set(frequency), stage)
    return retuned(there, frequency)


def _place(control, frequency, stage, growth):
    """Least place at which a swing of the set grows at so much a second, or less than none."""
    turned(control, 1.0, stage=stage)
    for high in np.linspace(0, 1, STEPS + 1):
        if _growth(control, high, frequency, stage) >= growth:
            break
    else:
        raise ValueError(f"the {control} does not reach the edge at {frequency / 1e3:g} kHz: change the parts that stand fixed")
    low = max(high - 1 / STEPS, 0.0)
    for _ in range(HALVINGS):
        middle = (low + high) / 2
        low, high = (low, middle) if _growth(control, middle, frequency, stage) >= growth else (middle, high)
    return float(high)


@lru_cache(maxsize=64)
@check_ranges
def close_place(control: str, frequency: float, stage: Stage = SALTMARSH_STAGE) -> float:
    """Place of the knob at which the set's band is 2 kHz wide.

    Parameters
    ----------
    control, frequency, stage
        As in `edge`.

    Returns
    -------
    float, 0 to 1

    Raises
    ------
    ValueError
        As `edge`.
    """
    return _place(control, frequency, stage, -np.pi * CLOSE)


@check_ranges
def last_stretch(control: str, frequency: float, stage: Stage = SALTMARSH_STAGE) -> float:
    """Part of the knob's way in which the band narrows from 2 kHz to nothing: the more, the smoother.

    Parameters
    ----------
    control, frequency, stage
        As in `edge`.

    Returns
    -------
    float, a fraction of the whole way

    Raises
    ------
    ValueError
        As `edge`.
    """
    return edge(control, frequency, stage) - close_place(control, frequency, stage)


@check_ranges
def pulls(control: str, frequency: float, stage: Stage = SALTMARSH_STAGE) -> float:
    """How far the last stretch moves the tuning, the tuning condenser left alone.

    Parameters
    ----------
    control, frequency, stage
        As in `edge`.

    Returns
    -------
    float, hertz, positive upwards

    Raises
    ------
    ValueError
        As `edge`.
    """
    begun = _tuned(control, close_place(control, frequency, stage), frequency, stage)
    ended, _ = turned(control, edge(control, frequency, stage), saltmarsh_set(frequency), stage)
    return float(ring(replace(ended, tuning_capacitance=begun.tuning_capacitance))[0] - frequency)


@lru_cache(maxsize=64)
@check_ranges
def backlash(control: str, frequency: float, stage: Stage = SALTMARSH_STAGE) -> float:
    """How far the knob has to be turned back from where the set began to oscillate until it lets go, by the engine.

    Parameters
    ----------
    control, frequency, stage
        As in `edge`.

    Returns
    -------
    float, a fraction of the knob's whole way; next to nothing where the onset is smooth

    Raises
    ------
    ValueError
        As `edge`.

    Source
    ------
    A swing that has settled a little beyond the edge is followed at places further and further back, tuning left alone:
    the last one at which it goes on, found by halving.
    """
    begins = edge(control, frequency, stage)
    tuning = _tuned(control, begins, frequency, stage).tuning_capacitance
    silence = np.zeros(int(SETTLED * FINE) + 1, complex)

    def swinging(place, state):
        windings, fed = turned(control, place, saltmarsh_set(frequency), stage)
        return follow(silence, FINE, frequency, replace(windings, tuning_capacitance=tuning), fed, state)

    beyond = swinging(begins + 0.02 * (1 - begins), start(stage, 1.0)).state
    low, high = LEAST_FOLLOWED * begins, begins
    for _ in range(HALVINGS // 2):
        middle = (low + high) / 2
        low, high = (low, middle) if np.abs(swinging(middle, beyond).grid[-1]) > DEAD else (middle, high)
    return begins - high


@check_ranges
def loudness(control: str, frequency: float, stage: Stage = SALTMARSH_STAGE) -> float:
    """Tone in the telephones from a weak station with the set's band at 2 kHz, by the engine.

    Parameters
    ----------
    control, frequency, stage
        As in `edge`.

    Returns
    -------
    float, ampere, amplitude, at 400 Hz and 30 % for 5 mV of carrier on the tuned circuit

    Raises
    ------
    ValueError
        As `edge`.

    Source
    ------
    The engine, with a condenser across all in the anode's feed but the club's telephones and resistor.
    """
    place = close_place(control, frequency, stage)
    windings, fed = turned(control, place, saltmarsh_set(frequency), stage)
    _, anode = at_rest(fed)
    current = (fed.supply - anode) / fed.load_resistance
    fed = fed._replace(supply=anode + current * stage.load_resistance, load_resistance=stage.load_resistance)
    there = retuned(windings, frequency)
    time = np.arange(int(SETTLED * RATE) + 1) / RATE
    probe = follow(carrier(time, 0.0, 1e-6), RATE, frequency, there, fed)
    crest = 1e-6 * WEAK / np.abs(probe.grid[-1])
    heard = follow(carrier(time, 0.0, crest, DEPTH * np.cos(2 * np.pi * TONE * time)), RATE, frequency, there, fed)
    last = slice(-int(RATE / TONE) * 8, None)
    return float(2 * np.abs(np.mean(heard.phones[last] * np.exp(-2j * np.pi * TONE * time[1:][last]))))

"""The sound of a member's own receiver, beside the reference's.

The chain's links are functions of many exercises. Each is asked, in the worker, for the numbers that the chain needs; where a
link is missing or wrong the core's way stands in, or else the reference, and is named. What is moment by moment goes through the
member's own functions too. In a student pack the reference is a recorded sound, with the links' numbers beside it.
"""

from collections.abc import Callable
from dataclasses import dataclass

import numpy as np

from .answers import PIECE, ReferenceAnswers, StageMissing
from .chain import CORE, LENT, YOURS, Chain, Origin
from .listening import EACH, FAR, FRAME, RATE, SECONDS, aerial_signal, moves, setting_times, telephone_sound

LOUDNESS, PEAK = 10 ** (-20 / 20), 0.9  # of full scale: r.m.s. of the reference, and what no sample passes
IN_A_ROW = "the parts above, in a row"


@dataclass(frozen=True)
class Performance:
    """A sound, volts across the telephones; where each link came from; how the knobs stood; what could not be played."""

    sound: np.ndarray
    sources: dict[tuple[str, str], Origin]
    settings: np.ndarray
    missing: list[str]


def play(chain: Chain, who: ReferenceAnswers) -> Performance:
    """The demonstration, and then each station in turn; a part for which a stage is nowhere to be had is left out."""
    answers, sources, parts, missing = {}, {}, [], []
    for link in chain.links:
        answers[link.function], sources[link.exercise, link.function] = who.link(link)
    moments = setting_times().size
    crests = _crests(chain, answers)
    for name, part in (("circuit_voltage", _demonstration), ("receiver", _stations)):
        try:
            parts += part(chain, who, answers, crests, sources)
        except StageMissing:
            missing.append(name)
    for link in chain.links:
        if link.function in who.gave_out:
            sources[link.exercise, link.function] = Origin(LENT, who.gave_out[link.function])
    sound = np.concatenate([np.zeros(0), *map(telephone_sound, parts)])
    knobs = zip(answers["dial_angle"], answers["knobs"], answers["tuned_to"], strict=True)
    settings = np.array([(angle, throttle, tuned) for angle, (_, throttle), (tuned, _) in knobs], dtype=float).T
    return Performance(sound, sources, settings[:, :moments], missing)


def _crests(chain: Chain, answers: dict) -> np.ndarray:
    """Volts that each station brings into the aerial."""
    emfs = np.array(answers["aerial_emf"], dtype=float)
    wanted_fields = chain.link("ground_wave_field").wanted
    for place, field, wanted in zip(chain.numbers["ground"], answers["ground_wave_field"], wanted_fields, strict=True):
        emfs[place] *= field / wanted
    return np.sqrt(2) * emfs


def demonstration_emf(chain: Chain, crests: np.ndarray) -> np.ndarray:
    """The aerial during the demonstration: the local and the far station, and noise."""
    numbers = chain.numbers
    near = [
        (place, frequency, crests[place], numbers["fading"][place])
        for place, frequency in enumerate(numbers["frequencies"])
        if abs(frequency - FRAME) < 10e3
    ]
    return aerial_signal(near, numbers["noise"], FRAME, SECONDS)


def _demonstration(
    chain: Chain, who: ReferenceAnswers, answers: dict, crests: np.ndarray, sources: dict[tuple[str, str], Origin]
) -> list[np.ndarray]:
    emf, time = demonstration_emf(chain, crests), np.arange(round(SECONDS * RATE)) / RATE
    frequency, _, volume = moves(time)
    tuned = np.array(answers["tuned_to"][: setting_times().size], dtype=float).T
    found, width = (np.interp(time, setting_times(), part) for part in tuned)
    place = chain.numbers["frequencies"].index(FAR)
    return [
        _telephones(
            chain, who, answers, _grid(chain, who, answers, place, volume * emf, frequency - FRAME, found - FRAME, width)
        )
    ]


def _gains(chain: Chain, answers: dict, place: int) -> tuple[float, float, float]:
    """On a station: the first circuit's gain, its bandwidth in hertz, and the gain from its voltage to the detector's grid."""
    first_width = chain.numbers["frequencies"][place] / answers["loaded_quality_factor"][place]
    return (
        float(answers["tuned_voltage"][place]),
        float(first_width),
        float(chain.numbers["amplification"] * answers["gain"][place]),
    )


def _grid(
    chain: Chain,
    who: ReferenceAnswers,
    answers: dict,
    place: int,
    emf: np.ndarray,
    first_offset: np.ndarray,
    second_offset: np.ndarray,
    width: np.ndarray,
) -> np.ndarray:
    """Envelope on the detector's grid, behind both circuits; offsets and width, in hertz, at each moment."""
    circuit, numbers = who.stage("circuit_voltage"), chain.numbers
    first_gain, first_width, second_gain = _gains(chain, answers, place)
    middle = _in_pieces(circuit, emf, first_offset, np.full(emf.size, first_width), first_gain * first_width, 0.0)
    return _in_pieces(circuit, middle, second_offset, width, second_gain * numbers["second_width"], numbers["hardening"])


def _in_pieces(
    circuit: Callable, emf: np.ndarray, offset: np.ndarray, width: np.ndarray, gain_bandwidth: float, hardening: float
) -> np.ndarray:
    done, start = [], 0j
    for at in range(0, len(emf), PIECE):
        here = slice(at, at + PIECE)
        done.append(circuit(emf[here], float(RATE), offset[here], width[here], float(gain_bandwidth), hardening, start))
        start = complex(done[-1][-1])
    return np.concatenate(done)


def _telephones(chain: Chain, who: ReferenceAnswers, answers: dict, grid: np.ndarray) -> np.ndarray:
    """The member's own `telephones` where it is right, piece by piece; otherwise by what the detector holds, or its two tables."""
    table, (anode, _) = np.array(answers["bias_with_carrier"][0]), answers["operating_point"][0]
    swing, own = np.abs(grid), "telephones" in who.own
    held = None if own else who.held(swing)
    bias = np.interp(swing, np.linspace(0, 3, table.size), table) if held is None else table[0] - held
    through = np.interp(bias, chain.link("operating_point").inputs[0][2], anode)
    if not own:
        return through - np.mean(through)
    telephones = who.stage("telephones")
    # a piece has no steady part of its own; the tables know what it was
    return np.concatenate(
        [
            telephones(grid[at : at + PIECE], float(RATE)) + np.mean(through[at : at + PIECE])
            for at in range(0, len(grid), PIECE)
        ]
    ) - np.mean(through)


def _stations(
    chain: Chain, who: ReferenceAnswers, answers: dict, crests: np.ndarray, sources: dict[tuple[str, str], Origin]
) -> list[np.ndarray]:
    numbers, sounds = chain.numbers, []
    for place, frequency in enumerate(numbers["frequencies"]):
        near = [
            (other, at, crests[other], numbers["fading"][other])
            for other, at in enumerate(numbers["frequencies"])
            if abs(at - frequency) < 10e3
        ]
        frame = sum(at for _, at, _, _ in near) / len(near)
        emf = aerial_signal(near, numbers["noise"], frame, EACH)
        inputs = emf, float(RATE), frame, frequency, numbers["log"][place]
        sound, trouble = who.receiver(*inputs)
        source = Origin(YOURS)
        if sound is None and "circuit_voltage" in {*who.own, *who.by_core}:
            sound, source = _station(chain, who, answers, place, emf, frame), Origin(CORE, IN_A_ROW)
        elif sound is None:
            sound, source = who.stage("receiver")(*inputs), Origin(LENT, trouble)
        sources["receiver", f"receiver on {numbers['names'][place]}"] = source
        sounds.append(sound)
    return sounds


def _station(chain: Chain, who: ReferenceAnswers, answers: dict, place: int, emf: np.ndarray, frame: float) -> np.ndarray:
    """One station by the chain's links in a row, for somebody who has a circuit and no receiver."""
    numbers = chain.numbers
    places = len(numbers["frequencies"])
    found, width = answers["tuned_to"][-places:][place]
    first_gain, _, second_gain = _gains(chain, answers, place)
    volume = min(1.0, numbers["swing"] / (numbers["log"][place] * first_gain * second_gain))
    offsets = numbers["frequencies"][place] - frame, float(found) - frame
    steady = [np.full(emf.size, one) for one in (*offsets, float(width))]
    return _telephones(chain, who, answers, _grid(chain, who, answers, place, volume * emf, *steady))


def set_level(sound: np.ndarray, reference: np.ndarray) -> tuple[np.ndarray, bool]:
    """A sound on the scale on which the reference has its usual loudness, and whether it had to be turned down further."""
    scale = min(LOUDNESS / np.sqrt(np.mean(reference**2)), PEAK / np.max(np.abs(reference)))
    loudest = scale * np.max(np.abs(sound))
    return sound * scale * min(1.0, PEAK / loudest if loudest else 1.0), bool(loudest > PEAK)

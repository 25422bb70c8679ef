"""The sound of a member's own receiver, beside the reference's.

The chain's links are functions of many exercises. Each is asked, in the worker, for the numbers that the chain needs; where a
link is missing or wrong the reference gives them, and is named. What is moment by moment goes through the member's own
functions too. In a student pack the reference is a recorded sound, with the links' numbers beside it.
"""

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import Any

import numpy as np

from ..checks.exercise import relative
from ..course import find, load_physics
from ..judging.compare import difference
from ..judging.fingerprint import files_used
from ..judging.plan import numeric_call
from ..judging.protocols import WorkerLike
from .listening import EACH, FAR, FRAME, RATE, SECONDS, aerial_signal, moves, setting_times, telephone_sound

LOUDNESS, PEAK = 10 ** (-20 / 20), 0.9  # of full scale: r.m.s. of the reference, and what no sample passes
PIECE = 48_000  # values that go to the worker at a time
PATIENCE = 10.0  # seconds for one call
ALIKE = relative(1e-4, because="a difference too small to hear", floor=1e-15)
YOURS = "yours"


@dataclass(frozen=True)
class Link:
    """A function of an exercise, what it is for, and what it was asked and should give."""

    exercise: str
    function: str
    purpose: str
    inputs: list[tuple]
    wanted: list


@dataclass(frozen=True)
class Chain:
    """The links; plain numbers; and what does the work moment by moment, of the reference, if it is there."""

    links: tuple[Link, ...]
    numbers: Mapping
    stages: Mapping[str, Callable]


@dataclass(frozen=True)
class Performance:
    """A sound, volts across the telephones; where each link came from; how the knobs stood; what could not be played."""

    sound: np.ndarray
    sources: dict[tuple[str, str], str]
    settings: np.ndarray
    missing: list[str]


class StageMissing(Exception):
    """A part cannot be played; the text says what is missing."""


def reference_chain() -> Chain:
    """The chain with the reference behind it; not for a student pack."""
    data = load_physics("unit09_feedback_receivers.links")
    settings = [(float(frequency), float(bandwidth)) for frequency, bandwidth, _ in moves(setting_times()).T]
    stages = {name: getattr(data.club, name) for name in ("circuit_voltage", "telephones", "receiver")}
    return Chain(
        tuple(
            Link(exercise, function.__name__, purpose, inputs, [function(*one) for one in inputs])
            for exercise, function, purpose, inputs in data.links(settings, FAR, float(RATE))
        ),
        data.numbers(FRAME, RATE),
        stages,
    )


class ReferenceAnswers:
    """Answers as the reference does."""

    def __init__(self, chain: Chain) -> None:
        self.chain = chain

    def link(self, link: Link) -> tuple[list, str]:
        return link.wanted, "the reference's"

    def stage(self, name: str) -> Callable:
        if name not in self.chain.stages:
            raise StageMissing(name)
        return self.chain.stages[name]

    def receiver(self, *inputs: Any) -> tuple[np.ndarray, str]:
        """The sound of the whole receiver on one station, and where it came from."""
        return self.stage("receiver")(*inputs), "the reference's"


class MemberAnswers(ReferenceAnswers):
    """Answers with a member's functions where they are right, in the worker; otherwise as the reference."""

    def __init__(self, chain: Chain, files: Mapping[str, str], worker: WorkerLike) -> None:
        super().__init__(chain)
        self.files, self.worker, self.own = files, worker, set()

    def link(self, link: Link) -> tuple[list, str]:
        values, trouble = self._ask(link.exercise, link.function, link.inputs)
        if not trouble and any(difference(*pair, ALIKE) for pair in zip(values, link.wanted, strict=True)):
            trouble = "it does not give the right values"
        if trouble:
            return link.wanted, trouble
        self.own.add(link.function)
        return values, YOURS

    def stage(self, name: str) -> Callable:
        if name not in self.own:
            return super().stage(name)

        def own(*inputs: Any) -> Any:
            [value], trouble = self._ask("receiver", name, [inputs])
            return value if not trouble and _plain(value, len(inputs[0])) else super(MemberAnswers, self).stage(name)(*inputs)

        return own

    def receiver(self, *inputs: Any) -> tuple[np.ndarray, str]:
        [value], trouble = self._ask("receiver", "receiver", [inputs])
        if not trouble and _plain(value, len(inputs[0])) and np.isrealobj(value):
            return value, YOURS
        return self.stage("receiver")(*inputs), trouble or "it does not give a finite number for each moment"

    def _ask(self, exercise: str, function: str, inputs: list) -> tuple[list, str]:
        """(a value for each of the inputs, "") or (Nones, why there are none)."""
        path, nothing = find(exercise), [None] * len(inputs)
        if f"{path}.py" not in self.files:
            return nothing, "its file is not there"
        files = {name: self.files[name] for name in files_used(f"{path}.py", self.files)}
        with self.worker.session(path, files, PATIENCE) as session:
            replies = session.ask([numeric_call(function, one) for one in inputs])
        try:
            return [reply["value"] for reply in (*replies, *[{}] * (len(inputs) - len(replies)))], ""
        except KeyError:
            return nothing, _why(next((reply for reply in replies if "trouble" in reply), {}), path)


def _plain(value: Any, length: int) -> bool:
    return isinstance(value, np.ndarray) and value.shape == (length,) and bool(np.all(np.isfinite(value)))


def _why(reply: dict, path: str) -> str:
    kind, file = reply.get("trouble"), reply.get("file")
    if kind == "not written":
        other = "" if file in (None, f"{path}.py") else f"{file.rpartition('/')[2].removesuffix('.py')}, which it uses, is "
        return f"{other}not written yet"
    if kind == "missing module":
        return f"{str(reply.get('what')).rpartition('.')[2]}, which it uses, is not there"
    if kind == "no function":
        return "its file has no such function"
    stopped = f"it stopped with {reply.get('error', 'an error')}"
    return {"time": "it takes too long", None: "it ended without an answer"}.get(kind, stopped)


def play(chain: Chain, who: ReferenceAnswers) -> Performance:
    """The demonstration, and then each station in turn; a part for which a stage is nowhere to be had is left out."""
    answers, sources, parts, missing = {}, {}, [], []
    for link in chain.links:
        answers[link.function], sources[link.exercise, link.function] = who.link(link)
    crests = _crests(chain, answers)
    for name, part in (("circuit_voltage", _demonstration), ("receiver", _stations)):
        try:
            parts += part(chain, who, answers, crests, sources)
        except StageMissing:
            missing.append(name)
    sound = np.concatenate([np.zeros(0), *map(telephone_sound, parts)])
    _, throttle = np.array(answers["knobs"], dtype=float).T
    tuned, _ = np.array(answers["tuned_to"], dtype=float).T
    return Performance(sound, sources, np.array([answers["dial_angle"], throttle, tuned], dtype=float), missing)


def _crests(chain: Chain, answers: dict) -> np.ndarray:
    """Volts that each station brings into the aerial."""
    emfs = np.array(answers["aerial_emf"], dtype=float)
    link = next(link for link in chain.links if link.function == "ground_wave_field")
    for place, field, wanted in zip(chain.numbers["ground"], answers["ground_wave_field"], link.wanted, strict=True):
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
    chain: Chain, who: ReferenceAnswers, answers: dict, crests: np.ndarray, sources: dict[tuple[str, str], str]
) -> list[np.ndarray]:
    emf, time = demonstration_emf(chain, crests), np.arange(round(SECONDS * RATE)) / RATE
    frequency, _, volume = moves(time)
    first_width = FAR / answers["loaded_quality_factor"][0]
    found, width = (np.interp(time, setting_times(), part) for part in np.array(answers["tuned_to"], dtype=float).T)
    amplified = chain.numbers["amplification"] * answers["gain"][0] * chain.numbers["second_width"]
    circuit = who.stage("circuit_voltage")
    first_gain = float(answers["tuned_voltage"][0]) * first_width
    middle = _in_pieces(circuit, volume * emf, frequency - FRAME, np.full(time.size, first_width), first_gain, 0.0)
    grid = _in_pieces(circuit, middle, found - FRAME, width, amplified, chain.numbers["hardening"])
    return [_telephones(who, answers, grid)]


def _in_pieces(
    circuit: Callable, emf: np.ndarray, offset: np.ndarray, width: np.ndarray, gain_bandwidth: float, hardening: float
) -> np.ndarray:
    done, start = [], 0j
    for at in range(0, len(emf), PIECE):
        here = slice(at, at + PIECE)
        done.append(circuit(emf[here], float(RATE), offset[here], width[here], float(gain_bandwidth), hardening, start))
        start = complex(done[-1][-1])
    return np.concatenate(done)


def _telephones(who: ReferenceAnswers, answers: dict, grid: np.ndarray) -> np.ndarray:
    """The member's own `telephones` where it is right, piece by piece; otherwise by the detector's two tables."""
    bias, (anode, _) = np.array(answers["bias_with_carrier"][0]), answers["operating_point"][0]
    crest = np.interp(np.abs(grid), np.linspace(0, 3, bias.size), bias)
    by_tables = np.interp(crest, np.linspace(-3.5, 0.1, len(anode)), anode)
    if "telephones" not in getattr(who, "own", ()):
        return by_tables - np.mean(by_tables)
    own = who.stage("telephones")
    # a piece has no steady part of its own; the tables know what it was
    return np.concatenate(
        [own(grid[at : at + PIECE], float(RATE)) + np.mean(by_tables[at : at + PIECE]) for at in range(0, len(grid), PIECE)]
    ) - np.mean(by_tables)


def _stations(
    chain: Chain, who: ReferenceAnswers, answers: dict, crests: np.ndarray, sources: dict[tuple[str, str], str]
) -> list[np.ndarray]:
    numbers, sounds = chain.numbers, []
    for place, frequency in enumerate(numbers["frequencies"]):
        near = [
            (other, at, crests[other], numbers["fading"][other])
            for other, at in enumerate(numbers["frequencies"])
            if abs(at - frequency) < 10e3
        ]
        frame = sum(at for _, at, _, _ in near) / len(near)
        inputs = aerial_signal(near, numbers["noise"], frame, EACH), float(RATE), frame, frequency, numbers["log"][place]
        sound, source = who.receiver(*inputs)
        sources["receiver", f"receiver on {numbers['names'][place]}"] = source
        sounds.append(sound)
    return sounds


def set_level(sound: np.ndarray, reference: np.ndarray) -> tuple[np.ndarray, bool]:
    """A sound on the scale on which the reference has its usual loudness, and whether it had to be turned down further."""
    scale = min(LOUDNESS / np.sqrt(np.mean(reference**2)), PEAK / np.max(np.abs(reference)))
    loudest = scale * np.max(np.abs(sound))
    return sound * scale * min(1.0, PEAK / loudest if loudest else 1.0), bool(loudest > PEAK)

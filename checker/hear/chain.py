"""The links of a receiver's chain: each is a function of an exercise, or the core's way round it, or lent by the course."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass

from ..course import load_physics
from .listening import FRAME, RATE, moves, setting_times

YOURS, CORE, LENT = "yours", "yours, the core's way", "lent by the course"


@dataclass(frozen=True)
class Link:
    """A function of an exercise, what it is for, what it was asked and should give; and the core's functions that will do instead."""

    exercise: str
    function: str
    purpose: str
    inputs: list[tuple]
    wanted: list
    core: tuple["Link", ...] = ()


@dataclass(frozen=True)
class Origin:
    """Whose a link is (`YOURS`, `CORE` or `LENT`), and by which exercises, or why."""

    whose: str
    note: str = ""

    def __str__(self) -> str:
        return f"{self.whose}: {self.note}" if self.note else self.whose


@dataclass(frozen=True)
class Chain:
    """The links; plain numbers; and what does the work moment by moment, of the reference, if it is there."""

    links: tuple[Link, ...]
    numbers: Mapping
    stages: Mapping[str, Callable]

    def link(self, function: str) -> Link:
        return next(link for link in self.links if link.function == function)


def reference_chain() -> Chain:
    """The chain with the reference behind it; not for a student pack."""
    data = load_physics("unit09_feedback_receivers.links")
    settings = [(float(frequency), float(bandwidth)) for frequency, bandwidth, _ in moves(setting_times()).T]
    stages = {name: getattr(data.club, name) for name in ("circuit_voltage", "telephones", "receiver")}
    core = {
        function: tuple(_link(*one) for one in instead) for function, instead in data.core_links(settings, float(RATE)).items()
    }
    return Chain(
        tuple(
            _link(exercise, function, inputs, purpose, core.get(function.__name__, ()))
            for exercise, function, purpose, inputs in data.links(settings, float(RATE))
        ),
        data.numbers(FRAME, RATE),
        stages,
    )


def _link(exercise: str, function: Callable, inputs: list, purpose: str = "", core: tuple[Link, ...] = ()) -> Link:
    return Link(exercise, function.__name__, purpose, inputs, [function(*one) for one in inputs], core)

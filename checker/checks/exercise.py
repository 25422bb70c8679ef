"""The words in which an exercise says how it is judged: data, in the order in which a reader wants it.

An `Exercise` has a title, marks, three hints and one `Question` for each function it asks for. A question says what
the function is given, how closely it must agree with the reference and why, what must hold of it whatever the
reference says, which published figures it must meet, and which wrong turns are worth a name.
"""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, field
from typing import Any

import numpy as np

from .given import Given
from .units import tidily


@dataclass(frozen=True)
class Tolerance:
    """How far an answer may lie from the one wanted: |got - wanted| <= relative |wanted| + absolute."""

    relative: float
    absolute: float
    because: str

    @property
    def text(self) -> str:
        if not self.relative and not self.absolute:
            return "exactly"
        parts = [f"{self.relative:.2g} of the value"] * bool(self.relative) + [f"{self.absolute:.2g}"] * bool(self.absolute)
        return "within " + " plus ".join(parts)

    def allows(self, got: Any, wanted: Any) -> bool:
        """Whether each of `got` is near enough to `wanted` (arrays of one shape; the answer is one bool)."""
        if type(got) is float and type(wanted) is float:
            return got == wanted or abs(got - wanted) <= self.relative * abs(wanted) + self.absolute
        got, wanted = np.asarray(got), np.asarray(wanted)
        with np.errstate(all="ignore"):
            near = np.abs(got - wanted) <= self.relative * np.abs(wanted) + self.absolute
        return bool(np.all(near | (got == wanted)))


def relative(amount: float, because: str, floor: float = 0.0) -> Tolerance:
    """Within a fraction of the value; `floor` allows for values that may be zero."""
    return Tolerance(amount, floor, because)


def absolute(amount: float, because: str) -> Tolerance:
    """Within a fixed amount, in the unit of the value."""
    return Tolerance(0.0, amount, because)


def exactly(because: str) -> Tolerance:
    """Not a rounding error away: for whole numbers, words and table entries."""
    return Tolerance(0.0, 0.0, because)


def equal(left: Any, right: Any, tolerance: Tolerance) -> bool:
    return tolerance.allows(left, right)


def at_most(left: Any, right: Any, tolerance: Tolerance) -> bool:
    return bool(np.all(np.asarray(left) <= right + tolerance.relative * np.abs(right) + tolerance.absolute))


def less(left: Any, right: Any, tolerance: Tolerance) -> bool:
    return bool(np.all(np.asarray(left) < right))


@dataclass(frozen=True)
class Invariant:
    """A law of physics that the student's function must obey by itself: `law(f, *inputs)` gives (left, right)."""

    says: str
    law: Callable
    relation: Callable = equal


@dataclass(frozen=True)
class Published:
    """A figure from outside the project: inputs, the value printed, how near to come, where it stands, how it is known."""

    what: str
    given: tuple
    wanted: object
    within: Tolerance
    source: str
    known: str

    def __post_init__(self) -> None:
        if self.known not in ("found", "memory", "recomputed"):
            raise ValueError(f"{self.what}: known must be found, memory or recomputed, not {self.known!r}")


@dataclass(frozen=True)
class Refusal:
    """Inputs for which the docstring promises a ValueError; `what` finishes "should raise ValueError for …".

    What is `near` must be refused as well, for the same reason: nearer to what is right, or written almost as that is.
    """

    what: str
    given: tuple
    near: tuple[tuple, ...] = ()


@dataclass(frozen=True)
class Measurement:
    """Something measured on the student's function, and what is allowed: `of(f, seed)` gives (value, where it was worst)."""

    what: str
    of: Callable
    because: str
    unit: str = ""
    least: float = -np.inf
    most: float = np.inf

    @property
    def allowed(self) -> str:
        ends = ("at least", self.least), ("at most", self.most)
        return " and ".join(f"{word} {tidily(end, self.unit)}" for word, end in ends if np.isfinite(end))

    def meets(self, value: float) -> bool:
        return bool(self.least <= value <= self.most)


@dataclass(frozen=True)
class Slip:
    """A usual wrong turn: the sentence that finishes "You may have …", and the wrong function."""

    says: str
    wrong: Callable


@dataclass(frozen=True)
class Picture:
    """How `checker see` draws a function: its answer along one of its arguments.

    Where nothing is said it is the first that is a number in a range, over that whole range, with the others at their simplest.
    `at` gives others of them other values; `between` is another piece to draw; `points` how many (0: few where an answer takes
    long). `none` says in a sentence why there is nothing to draw.
    """

    along: str = ""
    at: Mapping[str, Any] = field(default_factory=dict)
    between: tuple[float, float] | None = None
    points: int = 0
    none: str = ""


@dataclass(frozen=True)
class Question:
    """One function asked for. `given` maps each argument, in order, to what it is drawn from.

    Where something is `measured` on it, that is what earns its numbers' marks; the cases then serve to know a slip by.
    Each of the `edges` takes inputs that were drawn and gives others at an end of what the docstring allows, which are asked too.
    `share` is its share of the exercise's marks, beside the other questions'. `same_for_all` says why a table of
    what a student pack holds does as well under any seed, where that is so. What is `further` is left out of the core
    though its exercise is in it (`checker.core`).
    """

    asks: Callable
    given: Mapping[str, Given]
    agrees_within: Tolerance
    gives: str | Sequence[str] = ""
    holds: Sequence[Invariant] = ()
    published: Sequence[Published] = ()
    refuses: Sequence[Refusal] = ()
    slips: Sequence[Slip] = ()
    measured: Sequence[Measurement] = ()
    where: Callable[..., bool] = lambda *inputs: True
    edges: Sequence[Callable[..., tuple]] = ()
    arrays: bool = True
    symbolic: bool = False
    no_published: str = ""
    same_for_all: str = ""
    sealed: bool = False
    further: bool = False
    share: int = 1
    picture: Picture = Picture()

    @property
    def name(self) -> str:
        return self.asks.__name__


@dataclass(frozen=True)
class Exercise:
    """One exercise, one file.

    `cases` is how many inputs are drawn for each function: fewer where an answer takes milliseconds. `path`
    ("unit03_tuned_circuit/resonance") is filled in by the loader.
    """

    title: str
    questions: Sequence[Question]
    hints: Sequence[str]
    marks: int = 10
    seconds: float = 2.0
    cases: int = 24
    path: str = field(default="", compare=False)

    def __post_init__(self) -> None:
        if len(self.hints) != 3:
            raise ValueError(f"{self.title}: an exercise has three hints, each saying more than the last")
        for question in self.questions:
            if not question.published and not question.no_published:
                raise ValueError(f"{question.name}: give a published value, or say in no_published why there is none")

    @property
    def name(self) -> str:
        return self.path.rpartition("/")[2]

    @property
    def unit(self) -> str:
        return self.path.partition("/")[0]


# In a check a law, a figure, a slip is written in small letters, as in a sentence: each of these makes one of the above.
invariant, value, measurement, slip, picture = Invariant, Published, Measurement, Slip, Picture


def refusal(what: str, given: tuple, *near: tuple) -> Refusal:
    return Refusal(what, given, near)

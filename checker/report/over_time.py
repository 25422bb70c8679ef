"""How a class went over a term: each piece of work, by its first hand-ins and by those that count."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field
from fractions import Fraction

from ..marks.attempts import WorkMarks
from ..term.term import Work


@dataclass
class WorkSummary:
    """One piece of work over the class."""

    work: Work
    of: int = 0
    members: int = 0
    handed_in: int = 0
    late: int = 0
    again: int = 0
    first: Fraction = Fraction(0)
    amount: Fraction = Fraction(0)

    def add(self, one: WorkMarks) -> None:
        """Count one more member."""
        self.members += 1
        self.of = one.of
        if one.handed_in:
            self.handed_in += 1
            self.late += one.lateness.is_late
            self.again += len(one.handed_in) > 1
            self.first += one.handed_in[0].earned
            self.amount += one.amount or 0

    @property
    def first_mean(self) -> Fraction:
        return self.first / self.handed_in if self.handed_in else Fraction(0)

    @property
    def mean(self) -> Fraction:
        return self.amount / self.handed_in if self.handed_in else Fraction(0)


@dataclass
class OverTime:
    """The pieces of work of a class, in their order."""

    works: dict[str, WorkSummary] = field(default_factory=dict)

    def add(self, works: Iterable[WorkMarks]) -> None:
        """Count one more member."""
        for one in named(works):
            self.works.setdefault(one.work.name, WorkSummary(one.work)).add(one)


def named(works: Iterable[WorkMarks]) -> list[WorkMarks]:
    """The pieces of work of a term, without what was marked beside them."""
    return [one for one in works if one.work.name]


def term_share(works: Sequence[WorkMarks]) -> Fraction | None:
    """The share of all that was to be had, by the weights of the pieces of work, late or missing ones included; None without any."""
    weights = sum((one.work.weight for one in named(works)), Fraction(0))
    if not weights:
        return None
    shares = (one.work.weight * (one.after_late or 0) / one.of for one in named(works) if one.of)
    return sum(shares, Fraction(0)) / weights

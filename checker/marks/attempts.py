"""All that one member handed in for a piece of work, and which of it counts.

What a hand-in leaves out is taken from the one before: whoever hands in one corrected file keeps the others' marks.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import UTC, datetime
from fractions import Fraction
from itertools import groupby

from ..judging.verdict import NOT_HANDED_IN, NOT_READ, Verdict
from ..term.lateness import Lateness, lateness_of
from ..term.term import BEST, Work
from .store import Override

Verdicts = Mapping[str, Verdict]
_LONG_AGO = datetime.min.replace(tzinfo=UTC)


@dataclass(frozen=True)
class Sighting:
    """A hand-in as one run saw it: when it came, whether somebody said so, the hash of its answers, what they earned.

    `content` is empty where there were no answers, and None where a run of an earlier form did not note it.
    """

    when: datetime | None
    is_told: bool
    content: str | None
    verdicts: Verdicts


@dataclass(frozen=True)
class HandedIn:
    """One hand-in: when, what it earned then, how late it is, and, of the one that counts, why."""

    when: datetime | None
    is_told: bool
    earned: Fraction
    lateness: Lateness
    verdicts: Verdicts
    why: str = ""

    @property
    def counts(self) -> bool:
        return bool(self.why)

    @property
    def after_late(self) -> Fraction:
        return self.earned * self.lateness.keeps


@dataclass(frozen=True)
class WorkMarks:
    """A member's piece of work: its hand-ins in order, and what the one that counts is worth, marks set by hand included.

    `amount` is before anything is taken off for being late; it is None where nothing was handed in and nothing set by hand.
    `override` is a mark that a person has set on the whole piece: it counts as it stands, late or not.
    """

    work: Work
    handed_in: tuple[HandedIn, ...]
    amount: Fraction | None
    of: int
    override: Override | None = None

    @property
    def is_told(self) -> bool:
        """Whether there is something to tell of how it came to its marks: a piece of work of a term, or several hand-ins."""
        return bool(self.work.name) or len(self.handed_in) > 1

    @property
    def counting(self) -> HandedIn | None:
        return next((one for one in self.handed_in if one.counts), None)

    @property
    def lateness(self) -> Lateness:
        return self.counting.lateness if self.counting else Lateness()

    @property
    def after_late(self) -> Fraction | None:
        """What counts."""
        if self.override:
            return self.override.mark
        return None if self.amount is None else self.amount * self.lateness.keeps


def key_of_work(name: str) -> str:
    """What a mark set by hand on a whole piece of work is kept under, where one on an exercise has the exercise's path."""
    return f"work: {name}"


def hand_ins(work: Work, seen: Sequence[Sighting]) -> tuple[HandedIn, ...]:
    """The hand-ins of a member for a piece of work, in the order in which they came, the one that counts marked.

    Parameters
    ----------
    work : Work
    seen : sequence of Sighting
        In the order of the runs. The same answers, seen again, are the same hand-in, marked anew.
    """
    merged = [_one(list(same)) for _, same in groupby(seen, key=lambda one: one.content)]
    merged = [one for one in merged if one.content != ""]
    if work.name:
        merged.sort(key=lambda one: one.when or _LONG_AGO)
    standing: dict[str, Verdict] = {}
    found = []
    for one in merged:
        standing = standing | {path: v for path, v in one.verdicts.items() if not (is_missing(v) and path in standing)}
        earned = sum((standing[path].earned for path in work.paths if path in standing), Fraction(0))
        when = one.when.astimezone().replace(tzinfo=None) if one.when else None
        found.append(HandedIn(when, one.is_told, earned, lateness_of(work, when), standing))
    if not found:
        return ()
    at, why = _counting(work, found)
    return tuple(
        one if place != at else HandedIn(one.when, one.is_told, one.earned, one.lateness, one.verdicts, why)
        for place, one in enumerate(found)
    )


def is_missing(verdict: Verdict) -> bool:
    """Whether a verdict says that there was no file, or none that could be read."""
    return verdict.kind in (NOT_HANDED_IN, NOT_READ)


def _one(same: Sequence[Sighting]) -> Sighting:
    """One hand-in that several runs saw: it came when somebody last said, else when it was first seen; it is marked as it was last."""
    told = [one.when for one in same if one.is_told]
    times = [one.when for one in same if one.when]
    verdicts = {path: verdict for one in same for path, verdict in one.verdicts.items()}
    return Sighting(told[-1] if told else min(times, default=None), bool(told), same[0].content, verdicts)


def _counting(work: Work, found: Sequence[HandedIn]) -> tuple[int, str]:
    """(which counts, why)."""
    taken = [place for place, one in enumerate(found) if one.lateness.keeps or not one.lateness.is_late]
    if not taken:
        return len(found) - 1, "none was accepted"
    left = len(found) - len(taken)
    among = f"the {'best' if work.counts == BEST else 'last'} of {len(taken)}" if len(taken) > 1 else "the only one"
    if left:
        among += " accepted"
    best = max(taken, key=lambda place: found[place].after_late) if work.counts == BEST else taken[-1]
    return best, among

"""What a class as a whole had trouble with, gathered member by member."""

from collections.abc import Sequence
from dataclasses import dataclass, field
from fractions import Fraction

from ..judging.verdict import PASSED, WITHOUT_MARK, WRONG, Finding
from ..marks.marksheet import MemberMarks
from ..text import ended

SHOWN, ENOUGH = 15, 8


@dataclass
class ExerciseSummary:
    """One exercise over the class: who tried it, who passed, what was earned by those who tried."""

    path: str
    of: int = 0
    tried: int = 0
    passed: int = 0
    amount: Fraction = Fraction(0)

    @property
    def mean(self) -> Fraction:
        return self.amount / self.tried if self.tried else Fraction(0)

    @property
    def share(self) -> Fraction:
        return self.mean / self.of if self.of else Fraction(0)


@dataclass(frozen=True)
class Trouble:
    """One thing that went wrong, and the members (by their place in the class) with whom it did."""

    path: str
    function: str
    says: str
    members: tuple[int, ...]


@dataclass
class Summary:
    """Of a class, for the exercises at `paths`: how each went, and what went wrong."""

    paths: Sequence[str]
    exercises: dict[str, ExerciseSummary] = field(init=False)
    members: int = 0
    _troubles: dict[tuple[str, str, str], list[int]] = field(default_factory=dict)

    def __post_init__(self) -> None:
        self.exercises = {path: ExerciseSummary(path) for path in self.paths}

    def add(self, member: MemberMarks) -> None:
        """Count one more member."""
        for mark in member.marks:
            exercise = self.exercises[mark.exercise]
            exercise.of = mark.of
            if mark.verdict.kind not in WITHOUT_MARK:
                exercise.tried += 1
                exercise.passed += mark.verdict.kind == PASSED
                exercise.amount += mark.amount
            for function, says in dict.fromkeys((finding.function, _in_words(finding)) for finding in mark.verdict.findings):
                if says:
                    self._troubles.setdefault((mark.exercise, function, says), []).append(self.members)
        self.members += 1

    def commonest(self) -> list[Trouble]:
        """What went wrong for most members, the commonest first; slips of one member only as far as there is room."""
        order = {path: place for place, path in enumerate(self.paths)}
        troubles = [Trouble(*key, tuple(members)) for key, members in self._troubles.items()]
        troubles.sort(key=lambda trouble: (-len(trouble.members), order[trouble.path]))
        shared = [trouble for trouble in troubles if len(trouble.members) > 1][:SHOWN]
        single = [trouble for trouble in troubles if len(trouble.members) == 1 and trouble.says.startswith(_SLIP)]
        return shared + single[: max(0, ENOUGH - len(shared))]

    def hardest(self) -> list[ExerciseSummary]:
        """The exercises that somebody tried, the one with the smallest share of its marks first."""
        return sorted((one for one in self.exercises.values() if one.tried), key=lambda one: one.share)


_SLIP = "You may have"


def _in_words(finding: Finding) -> str:
    """The slip; failing that, what is said of an answer that is wrong for everybody in the same way."""
    if finding.slip:
        return ended(f"{_SLIP} {finding.slip}")
    return finding.says if finding.kind == WRONG else ""

"""Submissions that are nearly the same, laid side by side for a person to judge. Nothing here is a verdict.

What all share is no evidence: the lines of the stub, what the reference has too (it is the natural way to write it), and
what many in the class have written. What is left is a member's own. Stretches of it that only a few members share, and
that run over more than one line, are shown: word for word, and by shape, that is with the names that members chose left
out, so that renaming hides nothing.
"""

from collections import Counter, defaultdict
from collections.abc import Collection, Iterable, Mapping, Sequence
from dataclasses import asdict, dataclass
from itertools import combinations, groupby
from typing import Any

from ..course import ROOT
from ..faults import attempt
from ..text import clean
from .tokens import Handout, Stretches, code_lines, grams, inside

MOST = 100  # pairs listed
LONGEST = 40_000  # characters of a file that are compared; ten times what an exercise takes
LINE_SHOWN = 400
SHARE = 0.5  # of what is the one's own who wrote less


@dataclass(frozen=True)
class Manner:
    """A way to compare: how many members may share a stretch, how long it must be, how much must be shared in all."""

    name: str
    holders: int
    stretch: int
    needed: int

    def few(self, members: int) -> int:
        """The most members that may share a stretch for it to be evidence: a sixth of those who tried, or three."""
        return max(3, min(members // 6, self.holders))


# Word for word the same, chosen names and remarks included, tells even in a larger group than the same shape does.
WORD_FOR_WORD = Manner("word for word", holders=12, stretch=14, needed=60)
IN_SHAPE = Manner("in shape", holders=4, stretch=20, needed=80)


@dataclass(frozen=True)
class Side:
    """One member's text: (line number, line, whether a shared stretch is in it), without docstrings and empty lines."""

    member: str
    lines: tuple[tuple[int, str, bool], ...]


@dataclass(frozen=True)
class AlikeExercise:
    """What two members share on one exercise: words and signs, out of how many of the one's own who wrote less.

    `held_by` is how many members have the stretch that most have, these two included.
    """

    exercise: str
    manner: str
    shared: int
    of: int
    held_by: int
    sides: tuple[Side, Side]


@dataclass(frozen=True)
class Alike:
    """Two members and the exercises on which they are alike, the most alike first."""

    members: tuple[str, str]
    exercises: tuple[AlikeExercise, ...]

    @property
    def shared(self) -> int:
        return sum(exercise.shared for exercise in self.exercises)


def alike_to_data(alike: Alike) -> dict:
    """A pair as plain data for JSON."""
    return asdict(alike)


def alike_from_data(data: dict) -> Alike:
    """The pair that `alike_to_data` described; KeyError, TypeError or ValueError for anything else."""
    first, second = data["members"]
    return Alike((first, second), tuple(_exercise_from_data(**exercise) for exercise in data["exercises"]))


def _exercise_from_data(sides: Iterable, **rest: Any) -> AlikeExercise:
    first, second = (
        Side(side["member"], tuple((number, line, shared) for number, line, shared in side["lines"])) for side in sides
    )
    return AlikeExercise(sides=(first, second), **rest)


def compare_submissions(
    submissions: Sequence[tuple[str, Mapping[str, str]]], paths: Iterable[str]
) -> tuple[list[Alike], dict[str, str]]:
    """(pairs of members whose own code is alike, the most alike first, at most `MOST`; exercise → why it was not compared).

    Parameters
    ----------
    submissions : sequence of (str, mapping of str to str)
        Each member's name, and their files: path ("unit03_tuned_circuit/resonance.py") to source text.
    paths : iterable of str
        The exercises to compare.
    """
    found, faults = defaultdict(list), {}
    for path in paths:
        file = f"{path}.py"
        texts = {member: files[file][:LONGEST] for member, (_, files) in enumerate(submissions) if file in files}
        alike_here, fault = attempt(_alike_on, path, texts)
        if alike_here is None:
            faults[path] = fault
            continue
        for pair, (manner, shared, of, held_by, lines) in alike_here.items():
            first, second = (_side(submissions[member][0], texts[member], lines[member]) for member in pair)
            found[pair].append(AlikeExercise(path, manner, shared, of, held_by, (first, second)))
    alike = [
        Alike((submissions[a][0], submissions[b][0]), tuple(sorted(exercises, key=lambda one: -one.shared)))
        for (a, b), exercises in sorted(found.items())
    ]
    return sorted(alike, key=lambda one: -one.shared)[:MOST], faults


def _alike_on(path: str, texts: Mapping[int, str]) -> dict:
    """Pairs alike on one exercise: (manner, shared, of, held by, {member: lines})."""
    stub, reference = ((ROOT / folder / f"{path}.py").read_text("utf-8") for folder in ("exercises", "solutions"))
    handout = Handout(stub)
    own = {member: handout.own_stretches(text) for member, text in texts.items() if text != stub}
    natural = handout.own_stretches(reference)
    in_shape = {member: handout.shape_of(stretches) for member, stretches in own.items()}
    return {
        **_sharing(in_shape, handout.shape_of(natural), IN_SHAPE),
        **_sharing(own, natural, WORD_FOR_WORD),
    }


def _sharing(own: Mapping[int, Stretches], natural: Stretches, manner: Manner) -> dict:
    known = grams(natural)
    by_member = {member: grams(stretches) - known for member, stretches in own.items()}
    held = Counter(gram for of_member in by_member.values() for gram in of_member)
    few = manner.few(len(own))
    rare = {member: {gram for gram in of_member if held[gram] <= few} for member, of_member in by_member.items()}
    holders = defaultdict(list)
    for member, of_member in rare.items():
        for gram in of_member:
            holders[gram].append(member)
    together = Counter(pair for members in holders.values() for pair in combinations(members, 2))
    found = {}
    for pair, _ in together.most_common(2 * MOST):
        common = rare[pair[0]] & rare[pair[1]]
        stretches = {member: _long_stretches(own[member], common, manner) for member in pair}
        shared = min(sum(map(len, of_member)) for of_member in stretches.values())
        of = min(sum(sum(inside(stretch, rare[member])) for stretch in own[member]) for member in pair)
        if shared >= manner.needed and shared >= SHARE * of:
            lines = {member: {line for stretch in of_member for _, line in stretch} for member, of_member in stretches.items()}
            found[pair] = manner.name, shared, of, max(held[gram] for gram in common), lines
    return found


def _long_stretches(stretches: Stretches, wanted: Collection[int], manner: Manner) -> Stretches:
    """Where a member's tokens lie in the grams wanted, if that is long enough and on more than one line."""
    runs = (
        [token for token, _ in run]
        for stretch in stretches
        for is_in, run in groupby(zip(stretch, inside(stretch, wanted), strict=True), key=lambda pair: pair[1])
        if is_in
    )
    return [run for run in runs if len(run) >= manner.stretch and run[0][1] < run[-1][1]]


def _side(name: str, text: str, shared: Collection[int]) -> Side:
    lines = enumerate(code_lines(text), 1)
    return Side(name, tuple((number, clean(line, LINE_SHOWN), number in shared) for number, line in lines if line.strip()))

"""Submissions that are nearly the same, laid side by side for a person to judge. Nothing here is a verdict.

What all share is no evidence: the lines of the stub, what the reference has too (it is the natural way to write it), and
what many in the class have written. What is left is a member's own. Stretches of it that only a few members share, and
that run over more than one line, are shown: word for word, and by shape, that is with the names that members chose left
out, so that renaming hides nothing. Beside them stand those who are wrong in the same uncommon way (`wrong_alike`).
"""

from collections import defaultdict
from collections.abc import Collection, Iterable, Mapping, Sequence
from dataclasses import asdict, dataclass, replace
from typing import Any

import numpy as np

from ..course import ROOT
from ..faults import attempt
from ..text import clean
from .tokens import Handout, Stretches, code_lines, grams, inside
from .wrong_alike import ENOUGH, SameWrong, WrongAnswer, same_wrong

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
WRONG_ALIKE = Manner("wrong alike", holders=4, stretch=0, needed=0)


@dataclass(frozen=True)
class Side:
    """One member's text: (line number, line, whether a shared stretch is in it), without docstrings and empty lines."""

    member: str
    lines: tuple[tuple[int, str, bool], ...]


@dataclass(frozen=True)
class AlikeExercise:
    """What two members share on one exercise: words and signs, out of how many of the one's own who wrote less.

    `held_by` is how many members have the stretch that most have, these two included. `wrong` are the wrong answers that both
    gave, in words, and `wrong_by` how many in the class gave the commonest of them; of an exercise that is alike in these alone the
    manner is `WRONG_ALIKE`, and what is shared are equal texts or nothing.
    """

    exercise: str
    manner: str
    shared: int
    of: int
    held_by: int
    sides: tuple[Side, Side]
    wrong: tuple[str, ...] = ()
    wrong_by: int = 0


@dataclass(frozen=True)
class Alike:
    """Two members and the exercises on which they are alike: those with the same wrong answers first, then the most alike."""

    members: tuple[str, str]
    exercises: tuple[AlikeExercise, ...]

    @property
    def wrong_on(self) -> int:
        """On how many exercises they gave the same wrong answers."""
        return sum(bool(exercise.wrong) for exercise in self.exercises)

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


def _exercise_from_data(sides: Iterable, wrong: Iterable[str] = (), **rest: Any) -> AlikeExercise:
    first, second = (
        Side(side["member"], tuple((number, line, shared) for number, line, shared in side["lines"])) for side in sides
    )
    return AlikeExercise(sides=(first, second), wrong=tuple(wrong), **rest)


def compare_submissions(
    submissions: Sequence[tuple[str, Mapping[str, str]]],
    paths: Iterable[str],
    wrong: Sequence[Mapping[str, Collection[WrongAnswer]]] = (),
) -> tuple[list[Alike], dict[str, str]]:
    """(pairs of members who are alike, the most alike first, at most `MOST`; exercise → why it was not compared).

    Pairs with enough wrong answers in common come before those whose code alone is alike.

    Parameters
    ----------
    submissions : sequence of (str, mapping of str to str)
        Each member's name, and their files: path ("unit03_tuned_circuit/resonance.py") to source text.
    paths : iterable of str
        The exercises to compare.
    wrong : sequence of mapping of str to collection of WrongAnswer, optional
        For each of these members the wrong answers, by exercise.
    """
    by_pair: dict[tuple[int, int], list[AlikeExercise]] = defaultdict(list)
    wrong_by_pair: dict[tuple[int, int], dict[str, SameWrong]] = defaultdict(dict)
    texts_of: dict[str, dict[int, str]] = {}
    faults = {}
    for path in paths:
        file = f"{path}.py"
        texts = {member: files[file][:LONGEST] for member, (_, files) in enumerate(submissions) if file in files}
        answers = {member: of_one[path] for member, of_one in enumerate(wrong) if path in of_one and member in texts}
        found, fault = attempt(_alike_on, path, texts, answers)
        if found is None:
            faults[path] = fault
            continue
        texts_of[path], (alike_here, wrong_here) = texts, found
        for pair, (manner, shared, of, held_by, lines) in alike_here.items():
            first, second = (_side(submissions[member][0], texts[member], lines[member]) for member in pair)
            by_pair[pair].append(AlikeExercise(path, manner, shared, of, held_by, (first, second)))
        for pair, same in wrong_here.items():
            wrong_by_pair[pair][path] = same
    for pair, by_path in wrong_by_pair.items():
        if pair in by_pair or sum(same.weight for same in by_path.values()) >= ENOUGH:
            names = [submissions[member][0] for member in pair]
            by_pair[pair] = _with_wrong(
                by_pair.get(pair, []), by_path, [(name, pair[at]) for at, name in enumerate(names)], texts_of
            )
    alike = [
        Alike(
            (submissions[a][0], submissions[b][0]),
            tuple(sorted(exercises, key=lambda one: (-bool(one.wrong), -one.shared))),
        )
        for (a, b), exercises in sorted(by_pair.items())
    ]
    return sorted(alike, key=lambda one: (-one.wrong_on, -one.shared))[:MOST], faults


def _with_wrong(
    exercises: Iterable[AlikeExercise],
    by_path: Mapping[str, SameWrong],
    members: Iterable[tuple[str, int]],
    texts_of: Mapping[str, Mapping[int, str]],
) -> list[AlikeExercise]:
    """What a pair is alike in, with the wrong answers that both gave; and the exercises that are alike in these alone."""
    found = {one.exercise: one for one in exercises}
    for path, same in by_path.items():
        if path not in found:
            first, second = (_side(name, texts_of[path][member], ()) for name, member in members)
            found[path] = AlikeExercise(path, WRONG_ALIKE.name, 0, 0, same.held_by, (first, second))
        said = tuple(answer.in_words for answer in same.answers)
        found[path] = replace(found[path], wrong=said, wrong_by=same.held_by)
    return list(found.values())


def _alike_on(
    path: str, texts: Mapping[int, str], wrong: Mapping[int, Collection[WrongAnswer]]
) -> tuple[dict, dict[tuple[int, int], SameWrong]]:
    """On one exercise: pairs whose code is alike, (manner, shared, of, held by, {member: lines}); and pairs who are wrong alike."""
    stub, reference = ((ROOT / folder / f"{path}.py").read_text("utf-8") for folder in ("exercises", "solutions"))
    handout = Handout(stub)
    own = {member: handout.own_stretches(text) for member, text in texts.items() if text != stub}
    natural = handout.own_stretches(reference)
    in_shape = {member: handout.shape_of(stretches) for member, stretches in own.items()}
    tried = {member: answers for member, answers in wrong.items() if member in own}
    return {
        **_sharing(in_shape, handout.shape_of(natural), IN_SHAPE),
        **_sharing(own, natural, WORD_FOR_WORD),
    }, dict(same_wrong(tried, own, WRONG_ALIKE.few(len(own))))


def _sharing(own: Mapping[int, Stretches], natural: Stretches, manner: Manner) -> dict:
    rows = {member: grams(stretches) for member, stretches in own.items()}
    known = _set_of(grams(natural))
    by_member = {member: np.setdiff1d(_set_of(of_member), known, assume_unique=True) for member, of_member in rows.items()}
    every, held = np.unique(np.concatenate([*by_member.values(), known[:0]]), return_counts=True)
    few = held <= manner.few(len(own))
    rare = {member: np.intersect1d(of_member, every[few], assume_unique=True) for member, of_member in by_member.items()}
    found = {}
    for pair in _most_together(rare):
        common = np.intersect1d(rare[pair[0]], rare[pair[1]], assume_unique=True)
        stretches = {member: _long_stretches(own[member], rows[member], common, manner) for member in pair}
        shared = min(sum(map(len, of_member)) for of_member in stretches.values())
        of = min(sum(int(inside(row, rare[member]).sum()) for row in rows[member] if len(row)) for member in pair)
        if shared >= manner.needed and shared >= SHARE * of:
            lines = {member: {line for stretch in of_member for _, line in stretch} for member, of_member in stretches.items()}
            held_by = int(held[np.searchsorted(every, common)].max())
            found[pair] = manner.name, shared, of, held_by, lines
    return found


def _set_of(rows: Sequence[np.ndarray]) -> np.ndarray:
    """The grams of all rows, sorted, each once."""
    return np.unique(np.concatenate([*rows, np.zeros(0, np.uint64)]))


def _most_together(rare: Mapping[int, np.ndarray]) -> list[tuple[int, int]]:
    """The pairs of members who have the most grams in common, at most twice `MOST`."""
    members = np.repeat(np.array(list(rare), np.int64), [len(of_member) for of_member in rare.values()])
    held = np.concatenate([*rare.values(), np.zeros(0, np.uint64)])
    order = np.lexsort((members, held))
    members, held = members[order], held[order]
    together, most = [np.zeros(0, np.int64)], max(rare, default=0) + 1
    for apart in range(1, len(rare)):
        same = held[apart:] == held[:-apart]
        if not same.any():  # the holders of one gram stand side by side, and are few
            break
        together.append(members[:-apart][same] * most + members[apart:][same])
    pairs, counts = np.unique(np.concatenate(together), return_counts=True)
    return [divmod(pair, most) for pair in pairs[np.argsort(-counts, kind="stable")[: 2 * MOST]].tolist()]


def _long_stretches(stretches: Stretches, rows: Sequence[np.ndarray], wanted: np.ndarray, manner: Manner) -> Stretches:
    """Where a member's tokens lie in the grams wanted, if that is long enough and on more than one line."""
    runs = []
    for stretch, row in zip(stretches, rows, strict=True):
        if len(row):
            edges = np.flatnonzero(np.diff(inside(row, wanted), prepend=False, append=False))
            runs += [stretch[start:end] for start, end in edges.reshape(-1, 2).tolist()]
    return [run for run in runs if len(run) >= manner.stretch and run[0][1] < run[-1][1]]


def _side(name: str, text: str, shared: Collection[int]) -> Side:
    lines = enumerate(code_lines(text), 1)
    return Side(name, tuple((number, clean(line, LINE_SHOWN), number in shared) for number, line in lines if line.strip()))

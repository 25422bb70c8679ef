"""Members who are wrong in the same uncommon way: a right answer is everybody's, a wrong one is somebody's.

One such answer in common may be chance, and a usual slip is no surprise in anyone. What tells is more of them, in more than one
exercise, or in a program of some length that is the same word for word.
"""

import re
from collections import defaultdict
from collections.abc import Collection, Iterator, Mapping, Sequence
from dataclasses import dataclass
from itertools import combinations

from .tokens import Stretches

_NUMBER = re.compile(r"\d[\d.]*(?:e[-+]?\d+)?", re.IGNORECASE)
_ANYBODY_S = {0.0, 1.0}  # what a placeholder returns

# What an exercise counts for that two members have wrong in the same way, by how their programs compare, and how much in all is laid
# before a person. The natural answer to a short exercise is often the same word for word, and so is its usual slip.
OTHER_WORDS, SAME_WORDS, MANY_SAME_WORDS = "other words", "the same words", "many words, and the same"
USUAL = {OTHER_WORDS: 0, SAME_WORDS: 1, MANY_SAME_WORDS: 3}
UNUSUAL = {OTHER_WORDS: 2, SAME_WORDS: 3, MANY_SAME_WORDS: 6}
ENOUGH = 6
MANY_WORDS = 20  # of a member's own in a program: more than the natural short answer takes
FEWEST_WORDS = 4  # of a member's own in a stretch, on the average; a placeholder takes two


@dataclass(frozen=True)
class WrongAnswer:
    """What a member's function gave where it was wrong: the same inputs were put to everyone. `usual` is a slip that many make."""

    function: str
    inputs: tuple[tuple[str, str], ...]
    got: str
    usual: bool = False

    @property
    def says_something(self) -> bool:
        """Whether the answer is somebody's own: not nought, one, nothing, or an input handed back."""
        numbers = {float(number.rstrip(".")) for number in _NUMBER.findall(self.got) if number.count(".") < 2}
        return bool(numbers - _ANYBODY_S) and self.got not in {text for _, text in self.inputs}

    @property
    def in_words(self) -> str:
        return f"{self.function} gave {self.got}"


@dataclass(frozen=True)
class SameWrong:
    """What two members have wrong in the same way on one exercise; how many in the class have it, and what it counts for."""

    answers: tuple[WrongAnswer, ...]
    held_by: int
    weight: int


def same_wrong(
    wrong: Mapping[int, Collection[WrongAnswer]], own: Mapping[int, Stretches], few: int
) -> Iterator[tuple[tuple[int, int], SameWrong]]:
    """The pairs of members who are wrong in the same uncommon way on one exercise.

    Parameters
    ----------
    wrong : mapping of int to collection of WrongAnswer
        By member.
    own : mapping of int to Stretches
        Each member's own words and signs in the exercise's file: a stretch for each function that is written, or more.
    few : int
        The most members that may have an answer for it to be uncommon.
    """
    words = {member: [word for stretch in own[member] for word, _ in stretch] for member in wrong}
    holders: dict[WrongAnswer, list[int]] = defaultdict(list)
    for member, answers in wrong.items():
        if len(words[member]) >= FEWEST_WORDS * len(own[member]):
            for answer in sorted(answers, key=lambda one: one.in_words):
                holders[answer].append(member)
    shared: dict[tuple[int, int], list[WrongAnswer]] = defaultdict(list)
    for answer, members in holders.items():
        if answer.says_something and len(members) <= few:
            for one, other in combinations(sorted(members), 2):
                shared[one, other].append(answer)
    for pair, of_pair in shared.items():
        weights = USUAL if all(answer.usual for answer in of_pair) else UNUSUAL
        weight = weights[_compared(*(words[member] for member in pair))]
        if weight:
            yield pair, SameWrong(tuple(of_pair), max(len(holders[answer]) for answer in of_pair), weight)


def _compared(one: Sequence[str], other: Sequence[str]) -> str:
    if one != other:
        return OTHER_WORDS
    return MANY_SAME_WORDS if len(one) >= MANY_WORDS else SAME_WORDS

"""Marking members: each exercise is judged in a process, several at a time; what is kept already is not run again."""

import os
from collections import deque
from collections.abc import Generator, Iterable, Sequence
from dataclasses import dataclass, field
from fractions import Fraction
from itertools import count

from ..course import PATHS
from ..faults import attempt
from ..judging.fingerprint import Fingerprints, VerdictKey
from ..judging.judge import absent, not_judged
from ..judging.verdict import Verdict
from ..submissions.members import Member
from .judges import Judges, Task
from .store import Store


@dataclass(frozen=True)
class MemberVerdicts:
    """A member with a verdict for every exercise, in the course's order, and the key of each."""

    member: Member
    verdicts: tuple[Verdict, ...]
    keys: tuple[VerdictKey, ...] = ()

    @property
    def earned(self) -> Fraction:
        return sum((verdict.earned for verdict in self.verdicts), Fraction(0))

    @property
    def marks(self) -> int:
        return sum(verdict.marks for verdict in self.verdicts)


@dataclass
class _Entry:
    """A member at work: the verdicts so far, by exercise."""

    member: Member
    keys: dict[str, VerdictKey]
    absent: list[str] = field(default_factory=list)
    verdicts: dict[str, Verdict] = field(default_factory=dict)

    @property
    def is_done(self) -> bool:
        return len(self.verdicts) == len(self.keys)

    def keep(self, path: str, verdict: Verdict, store: Store | None) -> None:
        self.verdicts[path] = store.put(self.keys[path], verdict) if store else verdict

    def result(self) -> MemberVerdicts:
        return MemberVerdicts(self.member, tuple(self.verdicts[path] for path in self.keys), tuple(self.keys.values()))


def mark(
    members: Iterable[Member], seed: int, paths: Sequence[str] = PATHS, store: Store | None = None, jobs: int | None = None
) -> Generator[MemberVerdicts, None, None]:
    """Each member with verdicts on the exercises `paths`, in the order given; the next few are worked on meanwhile.

    Members are taken as they are needed and let go when they are done, so a class of any size fits.

    Parameters
    ----------
    members : iterable of Member
    seed : int
        Draws the inputs: the same for all members.
    paths : sequence of str
    store : Store, optional
        Where verdicts are looked up first and kept at once.
    jobs : int, optional
        How many members at a time; the number of processors if left out.

    Raises
    ------
    StoreProblem
        If the store stops working. What it has acknowledged is kept.
    """
    jobs = jobs or os.cpu_count() or 1
    coming, numbers, ahead, todo = iter(members), count(), deque[_Entry](), deque[tuple[_Entry, Task]]()
    at_work: dict[int, _Entry] = {}
    with Judges(jobs) as judges:
        while True:
            while len(ahead) <= 2 * jobs and (member := next(coming, None)) is not None:
                entry, tasks = _entry(member, next(numbers), seed, paths, store)
                ahead.append(entry)
                todo += [(entry, task) for task in tasks]
            if not ahead:
                return
            while todo and judges.free:
                place = judges.place_of_next([task.path for _, task in todo])
                entry, task = todo[place]
                del todo[place]
                at_work[id(task)] = entry
                judges.begin(task)
            if ahead[0].is_done:
                yield ahead.popleft().result()
                continue
            waiting = next((entry for entry in ahead if entry.absent), None)
            if waiting:  # there is nothing to be run for it, so no judge has to load the exercise
                path = waiting.absent.pop()
                waiting.keep(path, verdict_without_file(waiting.member, path), store)
            for task, verdict in judges.finished(at_once=bool(waiting)):
                at_work.pop(id(task)).keep(task.path, verdict, store)


def verdict_without_file(member: Member, path: str) -> Verdict:
    """The verdict on an exercise that is not among a member's files."""
    verdict, fault = attempt(absent, path, member.why_unread(path))
    return verdict or not_judged(path, fault)


def _entry(member: Member, number: int, seed: int, paths: Sequence[str], store: Store | None) -> tuple[_Entry, list[Task]]:
    """A member with the verdicts that are kept, and what is still to be judged. A verdict sees only the files of its key."""
    entry, tasks, prints = _Entry(member, {}), [], Fingerprints(member.files)
    for path in paths:
        entry.keys[path] = prints.key(path, seed)
        kept = store.get(entry.keys[path]) if store and not member.why_unread(path) else None
        if kept is None and f"{path}.py" not in member.files:
            entry.absent.append(path)
        elif kept is None:
            files = {name: member.files[name] for name in prints.files_used(f"{path}.py")}
            tasks.append(Task(path, files, seed, number))
        else:
            entry.verdicts[path] = kept
    return entry, tasks

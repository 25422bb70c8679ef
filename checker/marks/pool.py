"""Marking members: each exercise is judged in a process, several at a time; what is kept already is not run again."""

import os
from collections import deque
from collections.abc import Generator, Iterable, Sequence
from dataclasses import dataclass, field
from fractions import Fraction

from ..course import PATHS
from ..judging.fingerprint import VerdictKey, files_used, key_of
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
    verdicts: dict[str, Verdict] = field(default_factory=dict)

    @property
    def is_done(self) -> bool:
        return len(self.verdicts) == len(self.keys)

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
    coming, ahead, todo = iter(members), deque[_Entry](), deque[tuple[_Entry, Task]]()
    at_work: dict[int, _Entry] = {}
    with Judges(jobs) as judges:
        while True:
            while len(ahead) <= 2 * jobs and (member := next(coming, None)) is not None:
                entry, tasks = _entry(member, seed, paths, store)
                ahead.append(entry)
                todo += [(entry, task) for task in tasks]
            if not ahead:
                return
            while todo and judges.free:
                entry, task = todo.popleft()
                at_work[id(task)] = entry
                judges.begin(task)
            if ahead[0].is_done:
                yield ahead.popleft().result()
                continue
            for task, verdict in judges.finished():
                entry = at_work.pop(id(task))
                entry.verdicts[task.path] = store.put(entry.keys[task.path], verdict) if store else verdict


def _entry(member: Member, seed: int, paths: Sequence[str], store: Store | None) -> tuple[_Entry, list[Task]]:
    """A member with the verdicts that are kept, and what is still to be judged. A verdict sees only the files of its key."""
    entry, tasks = _Entry(member, {}), []
    for path in paths:
        files = {name: member.files[name] for name in files_used(f"{path}.py", member.files)}
        entry.keys[path] = key_of(path, files, seed)
        kept = store.get(entry.keys[path]) if store else None
        if kept is None:
            tasks.append(Task(path, files, seed))
        else:
            entry.verdicts[path] = kept
    return entry, tasks

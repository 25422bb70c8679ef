"""Marking members, several at a time, each exercise in a process of its own."""
import os
import threading
from collections.abc import Iterator, Sequence
from concurrent.futures import ThreadPoolExecutor
from dataclasses import dataclass
from fractions import Fraction

from .course import PATHS
from .judge import judge
from .submissions import Member
from .verdict import Verdict
from .workers import Worker, WorkerLost


@dataclass(frozen=True)
class Marked:
    """A member with a verdict for every exercise, in the course's order."""

    member: Member
    verdicts: tuple[Verdict, ...]

    @property
    def earned(self):
        return sum((verdict.earned for verdict in self.verdicts), Fraction(0))

    @property
    def marks(self):
        return sum(verdict.marks for verdict in self.verdicts)


def mark(members: Sequence[Member], seed: int, paths: Sequence[str] = PATHS, jobs: int | None = None) -> Iterator[Marked]:
    """Each member with verdicts on the exercises `paths`, in the order given; the next are worked on meanwhile.

    Parameters
    ----------
    members : sequence of Member
    seed : int
        Draws the inputs: the same for all members.
    paths : sequence of str
    jobs : int, optional
        How many members at a time; the number of processors if left out.
    """
    with _Workers() as workers, ThreadPoolExecutor(jobs or os.cpu_count() or 1) as pool:
        try:
            yield from pool.map(lambda member: Marked(member, tuple(workers.judge(p, member.files, seed) for p in paths)), members)
        except BaseException:
            pool.shutdown(wait=False, cancel_futures=True)
            raise


class _Workers:
    """A warm worker for each thread that asks for one; a lost one is replaced, once."""

    def __init__(self):
        self._own, self._all, self._lock = threading.local(), [], threading.Lock()

    def __enter__(self):
        return self

    def __exit__(self, *exception):
        for worker in self._all:
            worker.close()

    def judge(self, path, files, seed):
        try:
            return judge(path, files, self._worker(), seed)
        except WorkerLost:
            self._own.worker = None
            return judge(path, files, self._worker(), seed)

    def _worker(self):
        if getattr(self._own, "worker", None) is None:
            self._own.worker = Worker()
            with self._lock:
                self._all.append(self._own.worker)
        return self._own.worker

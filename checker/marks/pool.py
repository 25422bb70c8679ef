"""Marking members, several at a time, each exercise in a process of its own; what is kept already is not run again."""

import os
import threading
from collections import deque
from collections.abc import Callable, Generator, Iterable, Mapping, Sequence
from concurrent.futures import ThreadPoolExecutor
from dataclasses import dataclass
from fractions import Fraction

from ..course import PATHS
from ..judging.fingerprint import files_used, judged_by, key_of
from ..judging.judge import judge
from ..judging.verdict import Verdict
from ..sandbox.workers import FreshWorker, WarmWorker, WorkerLost, start_worker
from ..submissions.members import Member
from .store import Store

Judge = Callable[[str, Mapping[str, str], int], Verdict]


@dataclass(frozen=True)
class MemberVerdicts:
    """A member with a verdict for every exercise, in the course's order."""

    member: Member
    verdicts: tuple[Verdict, ...]

    @property
    def earned(self) -> Fraction:
        return sum((verdict.earned for verdict in self.verdicts), Fraction(0))

    @property
    def marks(self) -> int:
        return sum(verdict.marks for verdict in self.verdicts)


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
    for path in paths:  # once, and not in the threads: Python 3.11 cannot parse in two of them at a time
        judged_by(path)
    jobs = jobs or os.cpu_count() or 1
    with Workers() as workers, ThreadPoolExecutor(jobs) as pool:

        def of_member(member: Member) -> MemberVerdicts:
            return MemberVerdicts(
                member, tuple(cached_verdict(path, member.files, seed, store, workers.judge) for path in paths)
            )

        ahead = deque()
        try:
            for member in members:
                ahead.append(pool.submit(of_member, member))
                if len(ahead) > 2 * jobs:
                    yield ahead.popleft().result()
            while ahead:
                yield ahead.popleft().result()
        finally:
            pool.shutdown(wait=False, cancel_futures=True)


def cached_verdict(path: str, files: Mapping[str, str], seed: int, store: Store | None, judge: Judge) -> Verdict:
    """The verdict from the store, or a new one that is put there. A verdict sees only the files that its key speaks for."""
    files = {name: files[name] for name in files_used(f"{path}.py", files)}
    if store is None:
        return judge(path, files, seed)
    key = key_of(path, files, seed)
    return store.get(key) or store.put(key, judge(path, files, seed))


class Workers:
    """A warm worker for each thread that asks for one; a lost one is replaced, once."""

    def __init__(self) -> None:
        self._own, self._all, self._lock = threading.local(), [], threading.Lock()

    def __enter__(self) -> "Workers":
        return self

    def __exit__(self, *exception: object) -> None:
        for worker in self._all:
            worker.close()

    def judge(self, path: str, files: Mapping[str, str], seed: int) -> Verdict:
        """As `judge.judge`, with this thread's own worker."""
        try:
            return judge(path, files, self._worker(), seed)
        except WorkerLost:
            self._own.worker = None
            return judge(path, files, self._worker(), seed)

    def _worker(self) -> WarmWorker | FreshWorker:
        if getattr(self._own, "worker", None) is None:
            self._own.worker = start_worker()
            with self._lock:
                self._all.append(self._own.worker)
        return self._own.worker

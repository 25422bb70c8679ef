"""Processes that judge, an exercise at a time, each with its own worker, its own plans and its own hypothesis.

A judge that takes longer than the budget is ended and another put in its place: what it was at is not judged, and nobody else
has waited for it.
"""

import multiprocessing
import os
import socket
import subprocess
import sys
import time
from collections.abc import Callable, Hashable, Iterator, Mapping, Sequence
from contextlib import AbstractContextManager, ExitStack, suppress
from dataclasses import dataclass
from multiprocessing.connection import Connection, wait
from typing import Any, Self

from ..budgets import BUDGET, patience
from ..faults import Problem, attempt
from ..judging.judge import judge, not_judged
from ..judging.plans import plan_for
from ..judging.protocols import WorkerLike
from ..judging.stand_ins import built_on
from ..judging.verdict import Verdict
from ..sandbox.workers import FreshWorker, WarmWorker, WorkerLost, start_worker
from .memory import limited_memory

# A fork has the course and its libraries from the start. Elsewhere it is not safe, or not to be had.
_PROCESSES: Any = multiprocessing.get_context("fork" if sys.platform == "linux" else "spawn")
MEMBERS_KEPT = 4  # members whose files a judge keeps as compiled
ALONE = 1.0  # seconds after which a judge with nothing to do looks whether it is still wanted


@dataclass(frozen=True)
class Task:
    """One exercise of one member: what `judge` takes, and whose it is, by anything that is nobody else's."""

    path: str
    files: Mapping[str, str]
    seed: int
    member: int | str | None = None


class Judges:
    """So many processes at most, started as they are needed."""

    def __init__(self, most: int, start: "Start | None" = None) -> None:
        self._most, self._start, self._idle, self._busy = most, start or fork_judge, [], {}

    def __enter__(self) -> Self:
        return self

    def __exit__(self, *exception: object) -> None:
        for one in (*self._idle, *self._busy.values()):
            one.end()

    @property
    def free(self) -> int:
        """How many more tasks can be begun now."""
        return self._most - len(self._busy)

    def place_of_next(self, paths: Sequence[str]) -> int:
        """Which of some exercises is to be begun next: the first whose plan the judge that is free has drawn, or none has.

        To draw a plan takes longer than to judge by it.
        """
        here = self._idle[-1].drawn if self._idle else set()
        elsewhere = set().union(*(one.drawn for one in (*self._idle, *self._busy.values()))) - here
        return next((place for place, path in enumerate(paths) if path not in elsewhere), 0)

    def begin(self, task: Task) -> None:
        """Hand a task to a judge that is free."""
        one = self._idle.pop() if self._idle else JudgingProcess(self._start)
        one.begin(task)
        self._busy[one.connection] = one

    def judge_one(self, task: Task) -> Verdict:
        """The verdict on a task, where nothing else is at work."""
        self.begin(task)
        [(_, verdict)] = self.finished()
        return verdict

    def finished(self, at_once: bool = False) -> Iterator[tuple[Task, Verdict]]:
        """Each task that is over, well or badly: wait until at least one is, or, `at_once`, do not wait."""
        over = False
        while self._busy and not over:
            soonest = 0.0 if at_once else min(one.deadline for one in self._busy.values())
            over = at_once
            ready = wait(list(self._busy), None if soonest == float("inf") else max(0.0, soonest - time.monotonic()))
            for connection, one in list(self._busy.items()):
                verdict = one.result(connection in ready)
                if verdict is not None:
                    over = True
                    del self._busy[connection]
                    self._idle += [one] if one.is_alive else []
                    yield one.task, verdict


class JudgingProcess:
    """One process, and what it is at."""

    def __init__(self, start: "Start") -> None:
        self.connection, self._end = start()
        self.is_alive, self.deadline = True, float("inf")
        self.drawn: set[str] = set()
        self.task: Task

    def begin(self, task: Task) -> None:
        self.task, self.deadline = task, float("inf")
        self.drawn.add(task.path)
        with suppress(OSError):  # it has gone: that is found out when its answer is waited for
            self.connection.send(task)

    def result(self, ready: bool) -> Verdict | None:
        """The verdict, if there is one by now; what stands in its place if the process is late or gone."""
        try:
            if not ready:
                return self._failed("it took too long") if time.monotonic() > self.deadline else None
            said = self.connection.recv()
        except (EOFError, OSError):
            return self._failed("its process has ended")
        if isinstance(said, Problem):
            raise said
        if isinstance(said, Exception):
            return self._failed(type(said).__name__)
        if isinstance(said, float):
            self.deadline = time.monotonic() + said
            return None
        return said

    def _failed(self, why: str) -> Verdict:
        self.end()
        return not_judged(self.task.path, why)

    def end(self) -> None:
        self.is_alive = False
        self._end()
        self.connection.close()


Start = Callable[
    [], tuple[Connection, Callable[[], None]]
]  # starts a process that serves; gives the line to it, and how to end it


def fork_judge() -> tuple[Connection, Callable[[], None]]:
    """A judge that is a fork of this process, where that can be had."""
    ours, theirs = _PROCESSES.Pipe()
    process = _PROCESSES.Process(target=serve, args=(theirs,), name="judge")
    process.start()
    theirs.close()

    def end() -> None:
        process.kill()
        process.join()

    return ours, end


def launch_judge() -> tuple[Connection, Callable[[], None]]:
    """A judge that is a Python of its own, for a process with threads, which must not be forked: on a machine of a cluster."""
    if not hasattr(os, "fork"):
        return fork_judge()  # a Python of its own too there, and no descriptor could be handed over
    ours, theirs = socket.socketpair()
    process = subprocess.Popen(
        [sys.executable, "-c", _LAUNCHED, str(theirs.fileno()), *sys.path], pass_fds=[theirs.fileno()], stdin=subprocess.DEVNULL
    )
    theirs.close()

    def end() -> None:
        process.kill()
        process.wait()

    return Connection(ours.detach()), end


_LAUNCHED = """import sys; sys.path[:] = sys.argv[2:]
from multiprocessing.connection import Connection
from checker.marks.judges import serve
serve(Connection(int(sys.argv[1])))"""


def serve(connection: Connection) -> None:
    """Judge what comes until nobody is there to send more. For each task: seconds allowed from now on, then the verdict."""
    parent, workers = multiprocessing.parent_process(), Workers()
    with workers, suppress(KeyboardInterrupt, EOFError, BrokenPipeError):
        while parent is None or parent.is_alive():
            if connection.poll(ALONE):
                task = connection.recv()
                connection.send(_told(_judge, task, workers, connection))


def _told(action: Callable, *arguments: Any) -> Any:
    """What an action gives, or the exception that ended it, to be raised on the other side."""
    try:
        return action(*arguments)
    except Exception as error:
        return error


def _judge(task: Task, workers: "Workers", connection: Connection) -> Verdict:
    plan, _ = attempt(plan_for, task.path, task.seed)  # a fault in it is met again, and told, in judging
    seconds = plan.exercise.seconds if plan else 0.0
    if plan:
        workers.prepare(task.files, any(question.symbolic for question in plan.exercise.questions))
    again = (
        patience(seconds) + BUDGET.exchanges + BUDGET.lending if built_on(task.path) else 0.0
    )  # with stand-ins for earlier exercises
    connection.send(patience(seconds) + BUDGET.asking + again + BUDGET.judging + BUDGET.mending)
    with limited_memory(BUDGET.memory):
        return workers.judge(task.path, task.files, task.seed, task.member)


class Workers:
    """A worker, started when it is needed, with what it has compiled for the last few members; a lost one is replaced, once."""

    def __init__(self) -> None:
        self._worker: WarmWorker | FreshWorker | None = None
        self._members: dict[Hashable, tuple[WorkerLike, ExitStack]] = {}

    def __enter__(self) -> Self:
        return self

    def __exit__(self, *exception: object) -> None:
        while self._members:
            self._forget(next(iter(self._members)))
        if self._worker:
            self._worker.close()
        self._worker = None

    def prepare(self, files: Mapping[str, str], symbolic: bool) -> None:
        """Have what is needed started before anybody's time runs; a worker that is lost is found out in judging."""
        with suppress(WorkerLost):
            self._worker = self._worker or start_worker()
            self._worker.prepare(files, symbolic)

    def judge(self, path: str, files: Mapping[str, str], seed: int, member: Hashable = None) -> Verdict:
        """As `judge.judge`, with this worker; `member` tells whose files these are, if more of the same will come."""
        try:
            return judge(path, files, self._worker_for(member), seed)
        except WorkerLost:
            self.__exit__()
            return judge(path, files, self._worker_for(member), seed)

    def _worker_for(self, member: Hashable) -> WorkerLike:
        self._worker = self._worker or start_worker()
        if member is None:
            return self._worker
        if member not in self._members:
            if len(self._members) == MEMBERS_KEPT:
                self._forget(next(iter(self._members)))
            stack = ExitStack()
            own: AbstractContextManager[WorkerLike] = self._worker.for_member()
            self._members[member] = stack.enter_context(own), stack
        return self._members[member][0]

    def _forget(self, member: Hashable) -> None:
        _, stack = self._members.pop(member)
        with suppress(WorkerLost):
            stack.close()

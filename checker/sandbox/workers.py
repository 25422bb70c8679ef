"""The judge's end of the line to the worker: start it, give it an exercise, ask, and end it whatever it does.

Where the system can fork, one warm process forks a child for each exercise. Elsewhere each exercise gets a fresh Python.
"""

import array
import contextlib
import os
import re
import select
import signal
import socket
import subprocess
import sys
from collections.abc import Iterator, Mapping, Sequence
from functools import lru_cache
from pathlib import Path
from typing import Self

from ..budgets import GRACE
from ..faults import Problem
from ..worker.wire import ANSWER, FORGET, FORK, FORK_COMPILER, FORK_WITH_SCRATCH, ORDER, REAP, START_ENVIRONMENT
from .compiled import CompiledFiles
from .session import LenderLike, PipeLine, Session, ThreadLine

STARTING = 20.0  # seconds for a fresh Python to import numpy and sympy, on a slow machine
# The worker's package is put on the path by itself, so that nothing of the judge's can be imported with it.
_PATH = "import sys; sys.path.insert(0, sys.argv[1]); "
_WARM = _PATH + "from worker.warm import main; del sys.path[0]; main(int(sys.argv[2]), *sys.argv[3:])"
_FRESH = _PATH + "from worker.fresh import main; del sys.path[0]; main(*sys.argv[2:])"


class WorkerLost(Problem):
    """The warm process itself has gone: nobody's submission is to blame for what was not answered."""

    def __init__(self) -> None:
        super().__init__("The worker process has ended unexpectedly; start the run again.")


def start_worker(rehearsed: bool = True) -> "WarmWorker | FreshWorker":
    """A worker of the best kind this system has; `rehearsed` if it is to run so many exercises that a rehearsal of sympy pays.

    `with start_worker() as worker, worker.session(…) as session: session.ask(calls)`.
    """
    return WarmWorker(rehearsed) if hasattr(os, "fork") and hasattr(socket, "SCM_RIGHTS") else FreshWorker()


def start_own_worker() -> "WarmWorker | FreshWorker":
    """A worker for somebody's own files: shut in where the system can do it, a plain Python where it cannot.

    Only Linux has the walls. Elsewhere a fork has no use, and a Mac's numpy does not always live through one.
    """
    return start_worker(rehearsed=False) if sys.platform == "linux" else FreshWorker()


def _python(code: str, *arguments: str) -> list[str]:
    keeps_bytecode = () if not sys.dont_write_bytecode else ("-B",)
    return [sys.executable, "-I", *keeps_bytecode, "-c", code, str(Path(__file__).parents[1]), *arguments]


class WarmWorker:
    """Warm processes, which fork a contained child for each session: one with numpy, others that have sympy or more of numpy too.

    With sympy it is thrice the size, and a fork of it thrice the work, so that one is there for those who speak of sympy. Each
    is started when it is first needed, and has one child at a time.
    """

    def __init__(self, rehearsed: bool = True) -> None:
        self._rehearsed = rehearsed
        self._started: dict[tuple[str, ...], WarmProcess] = {}

    @contextlib.contextmanager
    def for_member(self) -> Iterator["MemberWorker"]:
        """A worker for the exercises of one member alone: what their files import is compiled once."""
        compiled = CompiledFiles(lambda: self._warm().child(FORK_COMPILER))
        try:
            yield MemberWorker(self, compiled)
        finally:
            compiled.close()

    def __enter__(self) -> Self:
        return self

    def __exit__(self, *exception: object) -> None:
        self.close()

    def close(self) -> None:
        for process in self._started.values():
            process.close()

    @contextlib.contextmanager
    def session(
        self,
        exercise: str,
        files: Mapping[str, str],
        seconds: float,
        symbolic: bool = False,
        lender: LenderLike | None = None,
        compiled: CompiledFiles | None = None,
    ) -> Iterator[Session]:
        """A fresh child that has loaded `exercise` from `files` (path → source), asked with `Session.ask`.

        `symbolic` says that the calls will be made with symbols; `lender` answers for earlier exercises; `compiled` is of the
        member whose files these are. The child ends with the session: whatever is run next is run in another.
        """
        warm = self._warm_for(files, symbolic)
        child = warm.child(FORK_WITH_SCRATCH if _mention(files, _OF_FILES) else FORK)
        session = Session(child.line, seconds, lender)
        try:
            session.begin(exercise, files, compiled.of(files) if compiled else {})
            warm.fork_ahead()
            yield session
        except BaseException:
            child.end()
            raise
        session.signal = child.end(want_signal=bool(session.ended))

    def prepare(self, files: Mapping[str, str], symbolic: bool) -> None:
        """Wait until what a session with these, and what compiles them, will need is there: nobody is to be late for that."""
        for warm in {self._warm(), self._warm_for(files, symbolic)}:
            warm.wait_until_warm()

    def _warm_for(self, files: Mapping[str, str], symbolic: bool) -> "WarmProcess":
        return self._warm(*_libraries(files, symbolic))

    def _warm(self, *libraries: str) -> "WarmProcess":
        if libraries not in self._started:
            self._started[libraries] = WarmProcess(*libraries, rehearsed=self._rehearsed)
        return self._started[libraries]


class MemberWorker:
    """As `WarmWorker`, for one member."""

    def __init__(self, worker: WarmWorker, compiled: CompiledFiles) -> None:
        self._worker, self._compiled = worker, compiled

    def session(
        self, exercise: str, files: Mapping[str, str], seconds: float, symbolic: bool = False, lender: LenderLike | None = None
    ) -> contextlib.AbstractContextManager[Session]:
        """As `WarmWorker.session`."""
        return self._worker.session(exercise, files, seconds, symbolic, lender, self._compiled)


class Child:
    """A contained process, forked on order: the line to it, and its end.

    The line is a pair of sockets, not of pipes: a pipe could be opened anew, through /proc/self/fd, from its other end.
    """

    def __init__(self, warm: "WarmProcess", order: bytes) -> None:
        self._end, theirs = socket.socketpair()
        self._end.setblocking(False)
        self.line, self._warm = PipeLine(self._end.fileno(), self._end.fileno()), warm
        self._pid: int | None = None
        try:
            warm.order(order, 0, [theirs.fileno()])
        except BaseException:
            self._end.close()
            raise
        finally:
            theirs.close()

    def learn_number(self) -> None:
        """Wait until it has been forked. Until then the warm process answers nothing else."""
        self._pid, self._pidfd = self._warm.answer()

    @property
    def is_there(self) -> bool:
        """Whether it waits to be told something, or is about to; where it has ended, the other end of the line is closed."""
        line = select.poll()
        line.register(self._end, 0)
        return not line.poll(0)

    def end(self, want_signal: bool = False) -> int | None:
        """Kill the child. With `want_signal`, return the signal that had already ended it, if one had."""
        self._end.close()
        if self._pid is None:
            return None
        _kill(self._pid, self._pidfd)
        self._warm.order(REAP if want_signal else FORGET, self._pid)
        status = self._warm.answer()[0] if want_signal else 0
        return os.WTERMSIG(status) if os.WIFSIGNALED(status) else None


class WarmProcess:
    """A process that has imported numpy and `libraries`, if `rehearsed` used sympy once too, and forks on order."""

    def __init__(self, *libraries: str, rehearsed: bool = True) -> None:
        self._channel, theirs = socket.socketpair()
        environment = {key: value for key, value in os.environ.items() if key.startswith("OPENBLAS")} | START_ENVIRONMENT
        self._process = subprocess.Popen(
            _python(_WARM, str(theirs.fileno()), "rehearse" * rehearsed, *libraries),
            stdin=subprocess.DEVNULL,
            stdout=subprocess.DEVNULL,
            stderr=subprocess.DEVNULL,
            pass_fds=[theirs.fileno()],
            env=environment,
            cwd="/",
            start_new_session=True,
        )
        theirs.close()
        _lift_limit(self._process.pid)
        self._ahead: Child | None = None
        self._unanswered: Child | None = None

    def child(self, order: bytes) -> Child:
        """A child that has read nothing yet: the one forked ahead if it is of the kind, else a new one."""
        if order == FORK and (ahead := self._take_ahead()):
            if self._process.poll() is None and ahead.is_there:
                return ahead
            ahead.end()
        child = Child(self, order)
        child.learn_number()
        return child

    def fork_ahead(self) -> None:
        """Have the next child forked and shut in while this one is at work and its answers are compared."""
        if self._ahead is None:
            self._ahead = self._unanswered = Child(self, FORK)

    def wait_until_warm(self) -> None:
        """Wait until it forks: until then it imports."""
        self.fork_ahead()
        self._settle()

    def _take_ahead(self) -> Child | None:
        self._settle()
        ahead, self._ahead = self._ahead, None
        return ahead

    def _settle(self) -> None:
        """Read the answer that is still to come, so that the next is to what is asked next."""
        unanswered, self._unanswered = self._unanswered, None
        if unanswered:
            unanswered.learn_number()

    def close(self) -> None:
        with contextlib.suppress(WorkerLost):
            if ahead := self._take_ahead():
                ahead.end()
        self._channel.close()
        try:
            self._process.wait(timeout=GRACE)
        except subprocess.TimeoutExpired:
            self._process.kill()
            self._process.wait()

    def order(self, order: bytes, child: int = 0, descriptors: Sequence[int] = ()) -> None:
        self._settle()
        rights = [(socket.SOL_SOCKET, socket.SCM_RIGHTS, array.array("i", descriptors))] if descriptors else []
        try:
            self._channel.sendmsg([ORDER.pack(order, child)], rights)
        except OSError:
            raise WorkerLost from None

    def answer(self) -> tuple[int, int | None]:
        data, ancillary, _, _ = self._channel.recvmsg(ANSWER.size, socket.CMSG_LEN(array.array("i").itemsize))
        if len(data) != ANSWER.size:
            raise WorkerLost
        descriptors = array.array("i")
        for _, _, rights in ancillary:
            descriptors.frombytes(rights)
        return ANSWER.unpack(data)[0], (descriptors[0] if descriptors else None)


class FreshWorker:
    """A new Python for each session, where there is no fork. Slow, and contained by nothing but its time limit."""

    def __enter__(self) -> Self:
        return self

    def __exit__(self, *exception: object) -> None:
        pass

    close = __exit__

    def prepare(self, files: Mapping[str, str], symbolic: bool) -> None:
        """Nothing: each session has time of its own to start."""

    def for_member(self) -> contextlib.AbstractContextManager["FreshWorker"]:
        """As `WarmWorker.for_member`."""
        return contextlib.nullcontext(self)

    @contextlib.contextmanager
    def session(
        self, exercise: str, files: Mapping[str, str], seconds: float, symbolic: bool = False, lender: LenderLike | None = None
    ) -> Iterator[Session]:
        """As `WarmWorker.session`."""
        kept = {key: value for key, value in os.environ.items() if key.upper() in ("SYSTEMROOT", "TEMP", "TMP")}
        process = subprocess.Popen(
            _python(_FRESH, *_libraries(files, symbolic)),
            stdin=subprocess.PIPE,
            stdout=subprocess.PIPE,
            stderr=subprocess.DEVNULL,
            env=kept | START_ENVIRONMENT,
        )
        session = Session(ThreadLine(process), seconds, lender, starting=STARTING)
        try:
            session.begin(exercise, files)
            yield session
        finally:
            process.kill()
            with contextlib.suppress(OSError):
                if process.stdin:
                    process.stdin.close()
            status = process.wait()
            session.signal = -status if status < 0 else None


_SYMBOLIC = ("mpmath", "sympy")
_OF_SYMBOLS = re.compile("|".join(_SYMBOLIC))
# `from numpy import *` imports it, and it would look where a submission may not: it is there beforehand, for those who want it.
_TESTING = ("numpy.testing",)
_OF_TESTING = re.compile(r"import\s*\*|\btesting\b")
# Only then is it worth giving a child a disk of its own to write on.
_OF_FILES = re.compile(r"open\s*\(|tempfile|memmap|\.(?:save|tofile|write_|touch|mkdir|makedirs)")


def _libraries(files: Mapping[str, str], symbolic: bool) -> tuple[str, ...]:
    """What a process imports beside numpy before it has these files: what they speak of, or will be called with."""
    of_symbols = symbolic or _mention(files, _OF_SYMBOLS)
    return _SYMBOLIC * of_symbols + _TESTING * _mention(files, _OF_TESTING)


def _mention(files: Mapping[str, str], words: re.Pattern[str]) -> bool:
    return any(_matches(words, source) for source in files.values())


@lru_cache(maxsize=512)
def _matches(words: re.Pattern[str], source: str) -> bool:
    return words.search(source) is not None


def _lift_limit(pid: int) -> None:
    """A process just started has its own memory to use, and not what is left of the judge's."""
    with contextlib.suppress(ImportError, AttributeError, OSError, ValueError):
        import resource  # late: Windows has none

        _, hard = resource.getrlimit(resource.RLIMIT_AS)
        resource.prlimit(pid, resource.RLIMIT_AS, (hard, hard))


def _kill(pid: int, pidfd: int | None) -> None:
    with contextlib.suppress(ProcessLookupError, PermissionError, AttributeError):
        os.killpg(pid, signal.SIGKILL)
    if pidfd is not None:
        with contextlib.suppress(ProcessLookupError, PermissionError, AttributeError):
            signal.pidfd_send_signal(pidfd, signal.SIGKILL)
    with contextlib.suppress(ProcessLookupError, PermissionError):
        os.kill(pid, signal.SIGKILL)
    if pidfd is not None:
        os.close(pidfd)

"""One exercise at work in a child: the questions, the replies, and how it ended."""

import contextlib
import os
import queue
import select
import subprocess
import threading
import time
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from types import MappingProxyType
from typing import Any, Protocol

from ..budgets import BUDGET, patience
from ..worker.wire import Malformed, line
from .replies import read_reply


class LenderLike(Protocol):
    """What stands in for earlier exercises: what there is, as `worker.stand_ins` takes it, and the answer to a question."""

    @property
    def offers(self) -> Mapping[str, Any]: ...

    def answer(self, question: Mapping[str, Any], size: int) -> Mapping[str, Any]:
        """The message that answers a question of so many bytes; `Malformed` if it is none that is to be answered."""


class NothingLent:
    """There is nothing to ask for, and whoever asks has forged the question."""

    offers: Mapping[str, Any] = {}

    def answer(self, question: Mapping[str, Any], size: int) -> Mapping[str, Any]:
        raise Malformed("a question out of place")


@dataclass(frozen=True)
class SessionEnd:
    """The worker's end before it had answered: `why` is "slow", "died" or "malformed"."""

    why: str


class Session:
    """One exercise at work in a child.

    Asking never raises for what the child does: it returns replies, or fewer and says why in `ended`.
    """

    def __init__(
        self, line_to_child: "PipeLine | ThreadLine", seconds: float, lender: LenderLike | None = None, starting: float = 0.0
    ) -> None:
        self._line, self._seconds, self._starting = line_to_child, seconds, starting
        self._lender = lender or NothingLent()
        self._bytes, self._waiting = BUDGET.replies, patience(seconds) + BUDGET.asking
        self._lending, self._exchanges = 0.0, BUDGET.exchanges
        self.ended: SessionEnd | None = None
        self.signal: int | None = None

    def begin(self, exercise: str, files: Mapping[str, str], code: Mapping[str, str] = MappingProxyType({})) -> None:
        """Hand over the exercise, with the code of such files as have been compiled, once the child has said that it is ready."""
        deadline = self._deadline() + self._starting
        self._try(self._line.receive, deadline, BUDGET.reply)
        if not self.ended:
            begun = {
                "exercise": exercise,
                "files": files,
                "code": dict(code),
                "seconds": self._seconds,
                "offers": self._lender.offers,
            }
            self._try(self._line.send, begun, deadline)

    def ask(self, calls: Sequence[dict]) -> list[dict]:
        """A reply for each call, as many as came: read, with clean texts, the value decoded. Questions are answered meanwhile."""
        began, deadline, replies = time.monotonic(), self._deadline(), []
        self._lending = 0.0
        if not self.ended:
            self._try(self._line.send, {"calls": calls}, deadline)
        while len(replies) < len(calls) and not self.ended:
            raw = self._try(self._line.receive, deadline + self._lending, min(BUDGET.reply, self._bytes))
            reply = self._try(read_reply, raw) if raw is not None else None
            if reply and "asks" in reply:
                self._lend(reply, len(raw), deadline)
            elif reply:
                self._bytes -= len(raw)
                replies.append(reply)
        self._waiting -= time.monotonic() - began - self._lending
        return replies

    def _lend(self, question: Mapping[str, Any], size: int, deadline: float) -> None:
        """Answer a question; what that takes is not the child's time."""
        began = time.monotonic()
        answer = self._try(self._lender.answer, question, size)
        exchange = min(BUDGET.exchange, self._exchanges)
        self._exchanges -= exchange
        self._lending += time.monotonic() - began + exchange
        if answer is not None:
            self._try(self._line.send, answer, deadline + self._lending)

    def _deadline(self) -> float:
        return time.monotonic() + min(patience(self._seconds), max(0.0, self._waiting))

    def _try(self, action: Callable, *arguments: Any) -> Any:
        """What the action returns, or None with `ended` set."""
        try:
            return action(*arguments)
        except TimeoutError:
            self.ended = SessionEnd("slow")
        except Malformed:
            self.ended = SessionEnd("malformed")
        except (EOFError, OSError):
            self.ended = SessionEnd("died")
        return None


class PipeLine:
    """Messages over two pipes, or one socket, waited for with select; TimeoutError, EOFError or Malformed where there is none to be had."""

    def __init__(self, requests: int, replies: int) -> None:
        self._requests, self._replies, self._buffer = requests, replies, bytearray()

    def send(self, message: dict, deadline: float) -> None:
        data = memoryview(line(message))
        while data:
            if not select.select([], [self._requests], [], max(0, deadline - time.monotonic()))[1]:
                raise TimeoutError
            with contextlib.suppress(BlockingIOError):
                data = data[os.write(self._requests, data) :]

    def receive(self, deadline: float, most: int) -> bytes:
        """A line of at most so many bytes; what is longer is not read to its end."""
        searched = 0
        while (end := self._buffer.find(b"\n", searched)) < 0:
            searched = len(self._buffer)
            if searched > most:
                raise Malformed("message too long")
            if not select.select([self._replies], [], [], max(0, deadline - time.monotonic()))[0]:
                raise TimeoutError
            chunk = os.read(self._replies, 1 << 16)
            if not chunk:
                raise EOFError
            self._buffer += chunk
        if end > most:
            raise Malformed("message too long")
        raw = bytes(self._buffer[:end])
        del self._buffer[: end + 1]
        return raw


class ThreadLine:
    """Messages to and from a process, read by a thread of its own, for systems whose select knows no pipes."""

    def __init__(self, process: subprocess.Popen) -> None:
        self._process, self._lines = process, queue.Queue()
        threading.Thread(target=self._read, daemon=True).start()

    def _read(self) -> None:
        """Queue lines until there are no more, or more than the judge will read."""
        assert self._process.stdout is not None
        left = BUDGET.replies + BUDGET.questions
        while left > 0 and (raw := self._process.stdout.readline(BUDGET.reply + 1)):
            self._lines.put(raw)
            left -= len(raw)
        self._lines.put(b"")

    def send(self, message: dict, deadline: float) -> None:
        assert self._process.stdin is not None
        self._process.stdin.write(line(message))
        self._process.stdin.flush()

    def receive(self, deadline: float, most: int) -> bytes:
        """As `PipeLine.receive`."""
        try:
            raw = self._lines.get(timeout=max(0, deadline - time.monotonic()))
        except queue.Empty:
            raise TimeoutError from None
        if not raw:
            self._lines.put(raw)
            raise EOFError
        if len(raw) > most:
            raise Malformed("message too long")
        return raw

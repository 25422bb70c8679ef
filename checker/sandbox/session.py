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
from typing import Any

from ..worker.wire import MAX_LINE, Malformed, line, parse_line, printable

GRACE = 1.0
_REPLY_FIELDS = {
    "value": None,
    "altered": list,
    "trouble": str,
    "what": str,
    "error": str,
    "text": str,
    "file": (str, type(None)),
    "line": (int, type(None)),
    "names": list,
    "printed": str,
}


@dataclass(frozen=True)
class SessionEnd:
    """The worker's end before it had answered: `why` is "slow", "died" or "malformed"."""

    why: str


class Session:
    """One exercise at work in a child.

    Asking never raises for what the child does: it returns replies, or fewer and says why in `ended`.
    """

    def __init__(self, line_to_child: "PipeLine | ThreadLine", seconds: float, starting: float = 0.0) -> None:
        self._line, self._seconds, self._starting = line_to_child, seconds, starting
        self.ended: SessionEnd | None = None
        self.signal: int | None = None

    def begin(self, exercise: str, files: Mapping[str, str]) -> None:
        """Hand over the exercise, once the child has said that it is ready."""
        deadline = self._deadline() + self._starting
        self._try(self._line.receive, deadline)
        if not self.ended:
            self._try(self._line.send, {"exercise": exercise, "files": files, "seconds": self._seconds}, deadline)

    def ask(self, calls: Sequence[dict]) -> list[dict]:
        """A reply (dict) for each call, as many as came."""
        deadline, replies = self._deadline(), []
        if not self.ended:
            self._try(self._line.send, {"calls": calls}, deadline)
        while len(replies) < len(calls) and not self.ended:
            raw = self._try(self._line.receive, deadline)
            if raw is not None:
                reply = self._try(lambda raw=raw: checked_reply(parse_line(raw)))
                replies += [reply] if reply is not None else []
        return replies

    def _deadline(self) -> float:
        return time.monotonic() + 2 * self._seconds + GRACE

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

    def receive(self, deadline: float) -> bytes:
        while (end := self._buffer.find(b"\n")) < 0:
            if len(self._buffer) > MAX_LINE:
                raise Malformed("message too long")
            if not select.select([self._replies], [], [], max(0, deadline - time.monotonic()))[0]:
                raise TimeoutError
            chunk = os.read(self._replies, 1 << 16)
            if not chunk:
                raise EOFError
            self._buffer += chunk
        raw = bytes(self._buffer[:end])
        del self._buffer[: end + 1]
        return raw


class ThreadLine:
    """Messages to and from a process, read by a thread of its own, for systems whose select knows no pipes."""

    def __init__(self, process: subprocess.Popen) -> None:
        self._process, self._lines = process, queue.Queue()
        threading.Thread(target=self._read, daemon=True).start()

    def _read(self) -> None:
        assert self._process.stdout is not None
        while raw := self._process.stdout.readline(MAX_LINE + 1):
            self._lines.put(raw)
        self._lines.put(None)

    def send(self, message: dict, deadline: float) -> None:
        assert self._process.stdin is not None
        self._process.stdin.write(line(message))
        self._process.stdin.flush()

    def receive(self, deadline: float) -> bytes:
        try:
            raw = self._lines.get(timeout=max(0, deadline - time.monotonic()))
        except queue.Empty:
            raise TimeoutError from None
        if raw is None:
            self._lines.put(None)
            raise EOFError
        return raw


def checked_reply(message: dict) -> dict:
    """The message with its texts made printable, if it has the shape of a reply; `Malformed` otherwise."""
    if ("value" in message) == ("trouble" in message):
        raise Malformed("neither an answer nor a reason")
    for field, value in message.items():
        wanted = _REPLY_FIELDS.get(field, ())
        if wanted is not None and not isinstance(value, wanted):
            raise Malformed(f"field {field[:20]!r}")
    return {
        field: printable(value) if isinstance(value, str) and field != "value" else value for field, value in message.items()
    }

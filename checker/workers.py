"""The judge's end of the line to the worker: start it, give it an exercise, ask, and end it whatever it does."""
import array
import contextlib
import os
import select
import signal
import socket
import subprocess
import sys
import time
from dataclasses import dataclass
from pathlib import Path

from .worker.contain import START_ENVIRONMENT
from .worker.wire import ANSWER, FORK, MAX_LINE, REAP, Malformed, line, parse_line

GRACE = 1.0
_START = "import sys; sys.path.insert(0, sys.argv[1]); from worker.warm import main; del sys.path[0]; main(int(sys.argv[2]))"


@dataclass(frozen=True)
class Ended:
    """The worker's end before it had answered: `why` is "slow", "died" or "malformed"."""

    why: str
    signal: int | None = None


class WorkerLost(Exception):
    """The warm process itself has gone: nobody's submission is to blame for what was not answered."""


class Worker:
    """A warm process. `with Worker() as worker: with worker.session(…) as session: session.ask(calls)`."""

    def __init__(self):
        ours, theirs = socket.socketpair()
        environment = {key: value for key, value in os.environ.items() if key.startswith("OPENBLAS")} | START_ENVIRONMENT
        self._process = subprocess.Popen(
            [sys.executable, "-I", "-B", "-c", _START, str(Path(__file__).parent), str(theirs.fileno())],
            stdin=subprocess.DEVNULL, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL, pass_fds=[theirs.fileno()],
            env=environment, cwd="/", start_new_session=True)
        theirs.close()
        self._channel = ours

    def __enter__(self):
        return self

    def __exit__(self, *exception):
        self.close()

    def close(self):
        self._channel.close()
        try:
            self._process.wait(timeout=GRACE)
        except subprocess.TimeoutExpired:
            self._process.kill()
            self._process.wait()

    @contextlib.contextmanager
    def session(self, exercise, files, seconds):
        """A fresh child that has loaded `exercise` from `files` (path → source), asked with `Session.ask`."""
        requests_read, requests_write = os.pipe()
        replies_read, replies_write = os.pipe()
        rights = array.array("i", [requests_read, replies_write])
        try:
            self._channel.sendmsg([FORK], [(socket.SOL_SOCKET, socket.SCM_RIGHTS, rights)])
        except BrokenPipeError:
            os.close(requests_write)
            os.close(replies_read)
            raise WorkerLost("The worker process has ended unexpectedly; start the run again.") from None
        finally:
            os.close(requests_read)
            os.close(replies_write)
        os.set_blocking(requests_write, False)
        pid, pidfd = self._answer()
        session = Session(requests_write, replies_read, seconds)
        try:
            session._send({"exercise": exercise, "files": files, "seconds": seconds})
            yield session
        finally:
            os.close(requests_write)
            os.close(replies_read)
            _kill(pid, pidfd)
            self._channel.sendall(REAP)
            status, _ = self._answer()
            session.signal = os.WTERMSIG(status) if os.WIFSIGNALED(status) else None

    def _answer(self):
        data, ancillary, _, _ = self._channel.recvmsg(ANSWER.size, socket.CMSG_LEN(array.array("i").itemsize))
        if len(data) != ANSWER.size:
            raise WorkerLost("The worker process has ended unexpectedly; start the run again.")
        descriptors = array.array("i")
        for _, _, rights in ancillary:
            descriptors.frombytes(rights)
        return ANSWER.unpack(data)[0], (descriptors[0] if descriptors else None)


class Session:
    """One child at work. Asking never raises for what the child does: it returns replies, or `Ended`."""

    def __init__(self, requests, replies, seconds):
        self._requests, self._replies, self._seconds = requests, replies, seconds
        self._buffer, self.ended, self.signal = b"", None, None

    def ask(self, calls):
        """A reply (dict) for each call, as many as came; `self.ended` says why there are fewer."""
        if self.ended:
            return []
        deadline = time.monotonic() + self._seconds + GRACE
        replies = []
        self._send({"calls": calls})
        while len(replies) < len(calls) and not self.ended:
            raw = self._line(deadline)
            if raw is None:
                break
            try:
                replies.append(checked_reply(parse_line(raw)))
            except Malformed:
                self.ended = Ended("malformed")
        return replies

    def _send(self, message):
        data, deadline = line(message), time.monotonic() + self._seconds + GRACE
        while data and not self.ended:
            if not select.select([], [self._requests], [], max(0, deadline - time.monotonic()))[1]:
                self.ended = Ended("slow")
                return
            try:
                data = data[os.write(self._requests, data):]
            except BlockingIOError:
                continue
            except BrokenPipeError:
                self.ended = Ended("died")

    def _line(self, deadline):
        while b"\n" not in self._buffer:
            left = deadline - time.monotonic()
            if left <= 0 or not select.select([self._replies], [], [], left)[0]:
                self.ended = Ended("slow")
                return None
            chunk = os.read(self._replies, 1 << 16)
            if not chunk or len(self._buffer) > MAX_LINE:
                self.ended = Ended("malformed" if chunk else "died")
                return None
            self._buffer += chunk
        raw, self._buffer = self._buffer.split(b"\n", 1)
        return raw


_REPLY_FIELDS = {"value": None, "altered": list, "trouble": str, "what": str, "error": str, "text": str,
                 "file": (str, type(None)), "line": (int, type(None)), "names": list, "printed": str}


def checked_reply(message):
    """The message, if it has the shape of a reply; `Malformed` otherwise."""
    if ("value" in message) == ("trouble" in message):
        raise Malformed("neither an answer nor a reason")
    for field, value in message.items():
        wanted = _REPLY_FIELDS.get(field, ())
        if wanted is not None and not isinstance(value, wanted):
            raise Malformed(f"field {field[:20]!r}")
    return message


def _kill(pid, pidfd):
    for end in (lambda: os.killpg(pid, signal.SIGKILL), lambda: signal.pidfd_send_signal(pidfd, signal.SIGKILL)):
        with contextlib.suppress(ProcessLookupError, PermissionError, AttributeError):
            end()
    if pidfd is not None:
        os.close(pidfd)

"""One child: read a request, load the student's file, answer calls until the judge hangs up."""

import contextlib
import io
import os
import signal
import sys
import time
from collections import deque
from collections.abc import Callable, Iterator, Mapping, Sequence
from functools import partial
from typing import Any

from .denials import Attempt, watch_audit
from .stand_ins import Asking
from .student import Printed, Stop, call, load, trouble
from .wire import MAX_LINE, MAX_REPLIES, MAX_REPLY, Malformed, line, parse_line


class Replies:
    """The way back: one line a reply, those to one function's calls together, and a limit on their sum."""

    def __init__(self, descriptor: int) -> None:
        self.descriptor, self.left, self.waiting = descriptor, MAX_REPLIES, bytearray()

    def add(self, message: dict) -> None:
        try:
            data = line(message)
        except Exception:  # something in it is of a kind of the student's own
            data = line({"trouble": "undescribed"})
        if len(data) > min(self.left, MAX_REPLY):
            much = "3 MB in one answer" if self.left >= MAX_REPLY else "8 MB in all"
            data = line({"value": {"oversize": f"more than {much}"}, "altered": []})
        self.left -= len(data)
        self.waiting += data

    def send(self, more: bytes = b"") -> None:
        self.waiting += more
        while self.waiting:
            del self.waiting[: os.write(self.descriptor, self.waiting)]


_ANSWERS = {"lends", "raises", "refuses"}


class Requests:
    """The way here: batches of calls, and the answers to what was asked of earlier functions, each kept until it is wanted."""

    def __init__(self, descriptor: int) -> None:
        self._file, self._kept = os.fdopen(descriptor, "rb", buffering=1 << 16), deque[dict]()

    def next(self) -> dict | None:
        """The next message of any kind; None if there is none, or what came is none."""
        raw = self._file.readline(MAX_LINE + 1)
        try:
            return parse_line(raw) if raw else None
        except Malformed:
            return None

    def next_calls(self) -> Sequence[dict] | None:
        """The calls of the next batch; an answer that nobody waits for any more is passed over, and anything else is the end."""
        message = self._kept.popleft() if self._kept else self.next()
        while message is not None and _ANSWERS & message.keys():
            message = self.next()
        return message.get("calls") if message else None

    def next_answer(self) -> dict | None:
        """The answer that is waited for; a batch that came before it is kept."""
        while (message := self.next()) is not None and "calls" in message:
            self._kept.append(message)
        return message


class Clock:
    """Stops the student's code when its time is up, at a line that can be named; the judge's own clock is behind it.

    The time is that of the clock on the wall; where others keep the processor busy it is stretched, to at most `STRETCHED` times as
    much, until the code has had its time of the processor. What has had less than `BUSY` of it waits for something else.
    """

    STRETCHED, BUSY = 2.0, 0.1

    def __init__(self) -> None:
        self.inside = False
        self._seconds = self._began = self._used = 0.0
        if hasattr(signal, "SIGALRM"):
            signal.signal(signal.SIGALRM, self._ring)

    def start(self, seconds: float) -> None:
        self._seconds, self._began, self._used = seconds, time.monotonic(), time.process_time()
        self._set(seconds)

    def stop(self) -> None:
        self._set(0)

    def run_guarded(self, action: Callable[[], Any], files: Mapping[str, str]) -> tuple[Any, dict | None]:
        """(result, None) or (None, what went wrong). Saying what went wrong may run the student's code too, and has no more time."""
        try:
            self.inside = True
            return action(), None
        except BaseException as error:
            return None, trouble(error, files)
        finally:
            self.inside = False

    @contextlib.contextmanager
    def paused(self) -> Iterator[None]:
        """While this is open no time passes, and nothing is stopped."""
        left, inside, paused = self._set(0), self.inside, time.monotonic()
        self.inside = False
        try:
            yield
        finally:
            self.inside = inside
            self._began += time.monotonic() - paused
            if left:
                self._set(left)

    def _set(self, seconds: float) -> float:
        """What was left until it would have rung."""
        return signal.setitimer(signal.ITIMER_REAL, seconds)[0] if hasattr(signal, "setitimer") else 0.0

    def _ring(self, number: int, frame: object) -> None:
        if more := self.still_due():
            self._set(more)
        elif self.inside:
            raise Stop("time")
        else:
            self._set(0.01)

    def still_due(self) -> float:
        """Seconds that the code may go on, as others had the processor meanwhile; 0 if none."""
        used = time.process_time() - self._used
        due = min(self._seconds - used, self.STRETCHED * self._seconds - (time.monotonic() - self._began))
        return due if used > self.BUSY * self._seconds and due > 0.01 else 0.0


class Attempts:
    """Remembers the first thing tried that a submission may not do, and stops the code that tried it.

    It remembers even if the code catches what stops it: an attempt is refused, whatever comes of it.
    """

    def __init__(self) -> None:
        self.first: Attempt | None = None

    def __call__(self, attempt: Attempt) -> None:
        self.first = self.first or attempt
        raise Stop("refused", attempt.kind)

    def refusal(self, exercise: str) -> dict | None:
        if self.first is None:
            return None
        return {
            "trouble": "refused",
            "what": self.first.kind,
            "text": self.first.path,
            "file": f"{exercise}.py",
            "line": self.first.line,
        }


def serve(request_descriptor: int, reply_descriptor: int, readable: Sequence[str], scratch: str | None) -> None:
    """Answer until the judge closes the line. `readable` and `scratch` are what the student's code may open.

    It says {"ready": true} before it has read anything. One exercise comes, as {"exercise", "files", "code",
    "seconds", "offers"}, then
    lines {"calls": [...]}: a reply a call, in order. There is no second exercise: a process that has run one judges no other.
    In between it may ask for what is offered, a line {"asks", "arguments", "named"} at a time, and is told {"lends": value},
    {"raises": kind, "text"} or {"refuses": true}.
    """
    requests, replies = Requests(request_descriptor), Replies(reply_descriptor)
    sys.stdin = io.StringIO()
    clock, attempts, files = Clock(), Attempts(), {}
    watch_audit(attempts, files, readable, (scratch,) if scratch else ())
    replies.add({"ready": True})
    replies.send()
    begun = requests.next()
    if begun is None:
        return
    exercise, seconds, offers = begun["exercise"], begun["seconds"], begun["offers"]
    files.update({f"{path}.py": "" for path in offers} | begun["files"])
    ask = Asking(replies.send, requests.next_answer, clock.paused)
    printed = sys.stdout = sys.stderr = Printed()
    clock.start(seconds)
    module, failure = clock.run_guarded(lambda: load(exercise, files, begun["code"], offers, ask), files)
    clock.stop()
    if failure and failure["trouble"] == "raised":
        failure["trouble"] = "not loaded"
    failure = attempts.refusal(exercise) or failure
    while (calls := requests.next_calls()) is not None:
        clock.start(seconds)
        asked = None
        for request in calls:
            if request["function"] != asked:
                replies.send()  # what is answered is answered, whatever the next function does to this process
                asked = request["function"]
            if failure is None:
                reply, stopped = clock.run_guarded(partial(call, module, request), files)
                reply = stopped or reply
                failure = attempts.refusal(exercise) or (reply if reply.get("trouble") in FATAL else None)
                reply = failure or reply
            else:
                reply = failure
            replies.add(reply | {"printed": printed.kept} if printed.kept else reply)
            printed.kept = ""
        clock.stop()
        replies.send()


# After one of these the rest of the batch is answered alike: running on would only repeat it, slowly.
FATAL = {"time", "printed", "memory"}

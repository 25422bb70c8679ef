"""One child, one exercise: read a request, load the student's file, answer calls until the judge hangs up."""
import io
import os
import resource
import signal
import sys
import time

import numpy as np

from .student import Printed, Stop, call, load, trouble
from .wire import MAX_LINE, Malformed, line, parse_line

MAX_REPLY = 8 << 20


class Replies:
    """The way back: one line a reply, and a limit on their sum."""

    def __init__(self, descriptor):
        self.descriptor, self.left = descriptor, MAX_REPLY

    def send(self, message):
        data = line(message)
        if len(data) > self.left:
            data = line({"value": {"oversize": "more than 8 MB in all"}, "altered": []})
        self.left -= len(data)
        while data:
            data = data[os.write(self.descriptor, data):]


def serve(request_descriptor, reply_descriptor):
    """Answer batches until the judge closes the pipe.

    First line: {"exercise", "files", "seconds"}; every later line: {"calls": [...]}. A reply a call, in order.
    """
    requests = os.fdopen(request_descriptor, "rb", buffering=1 << 16)
    replies = Replies(reply_descriptor)
    first = _next(requests)
    if first is None:
        return
    files, seconds = first["files"], first["seconds"]
    printed = sys.stdout = sys.stderr = Printed()
    sys.stdin = io.StringIO()
    signal.signal(signal.SIGALRM, _time_up)
    np.seterr(all="ignore")
    module, failure = _guarded(lambda: load(first["exercise"], files), files, seconds)
    while (message := _next(requests)) is not None:
        deadline = time.monotonic() + seconds
        for request in message["calls"]:
            if failure is None:
                left = max(0.01, deadline - time.monotonic())
                reply, stopped = _guarded(lambda request=request: call(module, request), files, left)
                failure = stopped if stopped and stopped["trouble"] in FATAL else None
                reply = stopped or reply
            else:
                reply = failure
            replies.send(reply | {"printed": printed.kept} if printed.kept else reply)
            printed.kept = ""


# After one of these the rest of the batch is answered alike: running on would only repeat it, slowly.
FATAL = {"time", "printed", "memory"}


def _guarded(action, files, seconds):
    """(result, None) or (None, what went wrong)."""
    signal.setitimer(signal.ITIMER_REAL, seconds)
    try:
        return action(), None
    except BaseException as error:
        signal.setitimer(signal.ITIMER_REAL, 0)
        return None, trouble(error, files)
    finally:
        signal.setitimer(signal.ITIMER_REAL, 0)


def _time_up(number, frame):
    raise Stop("time")


def _next(requests):
    raw = requests.readline(MAX_LINE + 1)
    if not raw:
        return None
    try:
        return parse_line(raw)
    except Malformed:
        return None


def limit_resources(cpu_seconds, memory_bytes):
    """Rlimits that hold where nothing stronger is to be had."""
    with open("/proc/self/statm") as statm:
        used = int(statm.read().split()[0]) * resource.getpagesize()
    for what, most in ((resource.RLIMIT_CPU, cpu_seconds), (resource.RLIMIT_AS, used + memory_bytes),
                       (resource.RLIMIT_FSIZE, 1 << 20), (resource.RLIMIT_NOFILE, 64), (resource.RLIMIT_CORE, 0)):
        resource.setrlimit(what, (most, most))

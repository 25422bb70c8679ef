"""What a submission tried that it may not, in words.

Python tells an audit hook what is about to be done (PEP 578; the table of audit events in the library reference). The
hook here gives the sentence. It is no wall: code that goes round Python goes round it, and meets the kernel's.
"""

import errno
import os
import sys
from collections.abc import Callable, Collection, Sequence
from dataclasses import dataclass
from types import FrameType, TracebackType
from typing import Any

LONGEST_NAME = 80
OWN_FOLDER = os.path.join(os.path.dirname(os.path.abspath(__file__)), "")

# What each kind of attempt is called, after "tried to". These keys, not the words, should cross to the judge.
WORDS = {
    "network": "open a network connection",
    "program": "start another program",
    "process": "start another process",
    "thread": "start a thread",
    "signal": "send a signal",
    "lock": "lock a file",
    "read": "read a file outside its own folder",
    "list": "list a folder outside its own",
    "write": "write outside its own folder",
    "change": "change, move or remove a file outside its own folder",
    "machine": "call the computer's libraries behind Python's back (ctypes)",
    "limits": "change its own limits",
    "watch": "put a watch of its own on Python",
    "other": "do something that the system refused",
}

# Audit events that mean an attempt whatever their arguments are.
_EVENTS = {
    "network": "socket.__new__ socket.connect socket.bind socket.sendto socket.sendmsg socket.getaddrinfo "
    "socket.gethostbyname socket.gethostbyaddr socket.getnameinfo socket.sethostname urllib.Request "
    "http.client.connect ftplib.connect smtplib.connect poplib.connect imaplib.open nntplib.connect "
    "telnetlib.Telnet.open webbrowser.open syslog.syslog",
    "program": "subprocess.Popen os.system os.exec os.spawn os.posix_spawn os.startfile pty.spawn",
    "process": "os.fork os.forkpty",
    "thread": "_thread.start_new_thread _thread.start_joinable_thread",
    "signal": "os.kill os.killpg signal.pthread_kill",
    "lock": "fcntl.flock fcntl.lockf os.lockf",
    "change": "os.chmod os.chown os.link os.symlink os.utime os.setxattr os.removexattr os.chflags",
    "machine": "ctypes.dlopen ctypes.dlsym ctypes.dlsym/handle ctypes.call_function ctypes.string_at ctypes.wstring_at "
    "ctypes.cdata/buffer ctypes.set_exception",
    "limits": "resource.setrlimit resource.prlimit",
    "watch": "sys.addaudithook",
}
_KIND_OF = {event: kind for kind, events in _EVENTS.items() for event in events.split()}

# Audit events whose first argument, or first two, are paths; an attempt if they lead outside.
_ON_PATHS = {
    "os.listdir": "list",
    "os.scandir": "list",
    "os.remove": "change",
    "os.rename": "change",
    "os.rmdir": "change",
    "os.truncate": "change",
    "os.mkdir": "write",
    "sqlite3.connect": "write",
}
# Why a package is not here, where there is more to say than what is.
_HERE = "numpy, sympy, mpmath and Python's own library"
_WHY = {
    "scipy": f"It does the work that the exercises ask for: write that with {_HERE}",
    "numba": f"It makes machine code, which nothing here may run, and arrays are fast enough: use {_HERE}",
    "matplotlib": 'Nothing is drawn while marking: keep the drawing, with its import, under if __name__ == "__main__":',
}
_WRITING = os.O_WRONLY | os.O_RDWR | os.O_CREAT | os.O_TRUNC | os.O_APPEND


@dataclass(frozen=True)
class Attempt:
    """One thing tried: its kind (a key of `WORDS`), the path it was tried on if any, the student's line if known."""

    kind: str
    path: str = ""
    line: int | None = None

    @property
    def words(self) -> str:
        """As in "tried to read a file outside its own folder: /etc/passwd, line 3"."""
        path = f": {self.path}" if self.path else ""
        line = f", line {self.line}" if self.line else ""
        return f"tried to {WORDS[self.kind]}{path}{line}"


class NotHere(ModuleNotFoundError):
    """A module that the student's code cannot have, with the reason; like any that is missing, it can be done without."""


def not_here(name: str) -> NotHere:
    """The error for a package that is neither Python's own, nor one of the course's, nor handed in."""
    package = name.partition(".")[0]
    return NotHere(_WHY.get(package, f"This course uses {_HERE}"), name=name)


def import_library(name: str, action: Callable[[], Any]) -> Any:
    """What importing a library module gives; `NotHere` if the module cannot be loaded behind the walls.

    What a library does while it is imported is no attempt of the student's: it is not done, and the import fails.
    """
    try:
        return action()
    except ImportError as error:
        raise NotHere(str(error), name=name) from None
    except Exception as error:
        raise NotHere(f"It cannot be loaded here ({type(error).__name__})", name=name) from None


def watch_audit(
    callback: Callable[[Attempt], None], source: Collection[str], readable: Sequence[str] = (), writable: Sequence[str] = ()
) -> None:
    """Call `callback` with each `Attempt` from now on, before it is made; if it raises, the attempt is not made.

    The hook cannot be taken away again, and it slows every audited action by well under a microsecond.

    Parameters
    ----------
    callback : callable
        Gets an `Attempt`.
    source : collection of str
        File names (`co_filename`) of the student's code, for the line.
    readable, writable : sequence of str
        Trees in which opening and changing files is no attempt.
    """
    may_write = tuple(map(os.path.normcase, (*writable, os.devnull)))
    may_read = (*map(os.path.normcase, readable), *may_write)

    def hook(event: str, arguments: tuple) -> None:
        if event == "open" and type(arguments[0]) is str and arguments[0] in source:
            return  # Python itself looks for the file that a syntax error is in; there is none of that name to be found
        if event == "open":
            found = _opened(arguments, may_read, may_write)
        elif event in _KIND_OF:
            found = _KIND_OF[event], ""
        elif event in _ON_PATHS and not _looks_for_a_module(event, sys._getframe(1)):
            found = _reached(_ON_PATHS[event], arguments, may_read, may_write)
        else:
            return
        if found:
            (kind, path), frame = found, sys._getframe(1)
            if kind == "read" and _looks_for_a_line(arguments[0], frame, source):
                raise FileNotFoundError(errno.ENOENT, os.strerror(errno.ENOENT), arguments[0])
            if _is_imported(frame, source):
                raise ImportError(f"It would {WORDS[kind]}, which nothing here may")
            callback(Attempt(kind, path, line_of(frame, source)))

    sys.addaudithook(hook)


def describe_denial(error: BaseException, source: Collection[str]) -> Attempt | None:
    """The attempt that an exception tells of, where the audit hook saw none; None if it is no denial."""
    line = line_in(error.__traceback__, source)
    if issubclass(type(error), PermissionError):
        return Attempt("other", shown(getattr(error, "filename", None)), line)
    if issubclass(type(error), RuntimeError) and "start new thread" in str(error):
        return Attempt("thread", "", line)
    return None


def _is_imported(frame: FrameType | None, source: Collection[str]) -> bool:
    """Whether a library is at work that is just being imported, and no code of the student's within it."""
    while frame is not None and frame.f_code.co_filename not in source:
        if frame.f_code is import_library.__code__:
            return True
        frame = frame.f_back
    return False


def line_of(frame: FrameType | None, source: Collection[str]) -> int | None:
    """The innermost line of the student's own among a frame and its callers."""
    while frame is not None:
        if frame.f_code.co_filename in source:
            return frame.f_lineno
        frame = frame.f_back
    return None


def line_in(traceback: TracebackType | None, source: Collection[str]) -> int | None:
    """The innermost line of the student's own in a traceback."""
    found = None
    while traceback is not None:
        if traceback.tb_frame.f_code.co_filename in source:
            found = traceback.tb_lineno
        traceback = traceback.tb_next
    return found


def shown(path: object) -> str:
    """A path fit to be printed: short, on one line, nothing in it that a terminal would obey."""
    if isinstance(path, bytes):
        path = os.fsdecode(path)
    if not isinstance(path, str):
        return ""
    text = "".join(letter if letter.isprintable() else "?" for letter in path)
    return text if len(text) <= LONGEST_NAME else text[: LONGEST_NAME - 1] + "…"


def _opened(arguments: tuple, may_read: Any, may_write: Any) -> Any:
    path, _, flags = arguments
    if not isinstance(flags, int) or flags & _WRITING:
        return _reached("write", (path,), may_read, may_write)
    return _reached("read", (path,), may_read, may_write)


def _looks_for_a_module(event: str, frame: FrameType) -> bool:
    """The import system lists folders, and takes a refusal for an empty one."""
    return event == "os.listdir" and frame.f_code.co_filename.startswith("<frozen importlib")


def _looks_for_a_line(path: object, frame: FrameType, source: Collection[str]) -> bool:
    """Python, showing a traceback, looks for lines to quote: in the worker, or beside its library under a student's file's name."""
    if type(path) is not str:
        return False
    folder, name = os.path.split(path)
    beside_the_library = folder in sys.path and name in {os.path.basename(one) for one in source}
    return beside_the_library or (path.startswith(OWN_FOLDER) and frame.f_code.co_filename not in source)


def _reached(kind: str, arguments: tuple, may_read: Any, may_write: Any) -> Any:
    """(kind, path) if a path among the first two arguments leads outside; None if not. Descriptors are open already."""
    allowed = may_read if kind in ("read", "list") else may_write
    for path in arguments[:2]:
        if isinstance(path, (str, bytes)):
            full = os.path.normcase(os.path.abspath(os.fsdecode(path)))
            if not any(full == tree or full.startswith(tree + os.sep) for tree in allowed):
                return kind, shown(path)
    return None

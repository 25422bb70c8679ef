"""A child that compiles a member's files and runs none of them, so that those who load them need not do it again each time.

What it makes goes to the same member's children alone. Where it makes nothing of a file (it does not read as Python, is too
large, or takes too long), whoever loads the file compiles it, and meets there what is wrong with it.
"""

import base64
import marshal
import os
from types import CodeType

from .wire import MAX_CODE, MAX_LINE, line, parse_line


def serve_compiler(descriptor: int) -> None:
    """Answer until the judge closes the line: {"ready": true} at once; for each {"path", "source"} then {"code": text or null}."""
    _send(descriptor, {"ready": True})
    with os.fdopen(descriptor, "rb") as requests:
        while raw := requests.readline(MAX_LINE + 1):
            request = parse_line(raw)
            _send(descriptor, {"code": compiled(request["source"], request["path"])})


def _send(descriptor: int, message: dict) -> None:
    data = memoryview(line(message))
    while data:
        data = data[os.write(descriptor, data) :]


def compile_source(source: str, path: str) -> CodeType:
    """A file's code, as whoever loads it makes it."""
    return compile(source, path, "exec", dont_inherit=True)


def compiled(source: str, path: str) -> str | None:
    """A file's code as text; None if there is none to be had."""
    try:
        data = marshal.dumps(compile_source(source, path))
    except Exception:  # what is wrong with it is said where it is loaded
        return None
    return base64.b64encode(data).decode() if len(data) <= MAX_CODE else None


def code_from(text: str) -> CodeType:
    """The code that `compiled` made. Only for a child that is shut in: what it reads is not to be trusted."""
    return marshal.loads(base64.b64decode(text))

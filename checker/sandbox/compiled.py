"""One member's files as Python compiles them, each once: made in one contained child, read in others, here never taken apart."""

import time
from collections.abc import Callable, Mapping
from typing import Protocol

from ..budgets import BUDGET
from ..worker.wire import MAX_CODE, Malformed
from .replies import read_code
from .session import PipeLine

_MOST_SENT = 3 * MAX_CODE


class Compiler(Protocol):
    """A contained child that runs nothing of what it compiles."""

    @property
    def line(self) -> PipeLine: ...

    def end(self) -> object: ...


class CompiledFiles:
    """Code of one member's files, by path and source, as text.

    It is nobody else's: not even a fault of Python's compiler would let one member's file become another's code. What fails, or
    would cost more than the budget, is left to the child that loads it.
    """

    def __init__(self, start: Callable[[], Compiler]) -> None:
        self._start = start
        self._compiler: Compiler | None = None
        self._codes: dict[tuple[str, str], str | None] = {}
        self._seconds, self._left = BUDGET.compiling, BUDGET.compiled

    def of(self, files: Mapping[str, str]) -> dict[str, str]:
        """The code of these files, of as many as there is some."""
        if sum(map(len, files.values())) > MAX_CODE:  # both must fit into one line
            return {}
        for key in files.items():
            if key not in self._codes and self._seconds > 0:
                self._codes[key] = None
                self._codes[key] = self._compile(*key)
        codes = {path: code for path, source in files.items() if (code := self._codes.get((path, source)))}
        return codes if sum(map(len, codes.values())) <= _MOST_SENT else {}

    def _compile(self, path: str, source: str) -> str | None:
        began = time.monotonic()
        deadline = began + self._seconds
        try:
            if self._compiler is None:
                self._compiler = self._start()
                self._compiler.line.receive(deadline, BUDGET.reply)
            self._compiler.line.send({"path": path, "source": source}, deadline)
            code = read_code(self._compiler.line.receive(deadline, BUDGET.reply))
        except (OSError, EOFError, Malformed):  # a TimeoutError is an OSError
            self.close()
            code = None
        self._seconds -= time.monotonic() - began
        self._left -= len(code or "")
        return code if self._left >= 0 else None

    def close(self) -> None:
        """End the child. It is started again if there is more to compile."""
        if self._compiler:
            self._compiler.end()
        self._compiler = None

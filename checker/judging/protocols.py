"""What the judge wants of whoever runs a submission: sessions that answer calls. The sandbox has it; so may a test."""

from collections.abc import Mapping, Sequence
from contextlib import AbstractContextManager
from typing import Any, Protocol

Call = dict[str, Any]
Reply = dict[str, Any]
Inputs = tuple[Any, ...]


class End(Protocol):
    """How a session ended before it had answered: "slow", "died" or "malformed"."""

    @property
    def why(self) -> str: ...


class SessionLike(Protocol):
    """One exercise at work, in a process in which no other has been."""

    @property
    def ended(self) -> End | None: ...

    @property
    def signal(self) -> int | None: ...

    def ask(self, calls: Sequence[Call]) -> list[Reply]:
        """A reply for each call, as many as came."""


class WorkerLike(Protocol):
    """Runs submissions."""

    def session(
        self, exercise: str, files: Mapping[str, str], seconds: float, symbolic: bool = False, lender: Any = None
    ) -> AbstractContextManager[SessionLike]:
        """A session for one exercise, from its files; `lender` answers what they ask of earlier ones."""

"""What stands in for the earlier exercises that one builds on: the course's own functions, worked out on this side of the wall.

An exercise builds on those earlier ones that its reference imports from, and on no others: nothing ever stands in for a
function of the exercise that is judged, nor for one of a later exercise.
"""

import contextlib
import signal
import threading
import time
import warnings
from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from functools import cache
from itertools import zip_longest
from math import prod
from typing import Any

import numpy as np

from ..budgets import BUDGET
from ..course import PATHS, ROOT, load_exercise, load_physics
from ..imports import Sources
from ..text import clean
from ..worker.stand_ins import RAISED, NotLent, as_received, parts, sendable
from ..worker.wire import Malformed, Unusable

PHYSICS = Sources(ROOT, ("solutions",))
MOST_REFUSED = 1000  # questions to which there is no answer, until whoever goes on asking is no student's function


@dataclass(frozen=True)
class Earlier:
    """An exercise that a later one builds on: what stands in for its functions, and its constants, plain data."""

    path: str
    functions: Mapping[str, Callable]
    constants: Mapping[str, Any]


class NotRecorded(LookupError):
    """A function stands in that knows some values only, and this is none of them."""


@cache
def built_on(path: str) -> Mapping[str, frozenset[str]]:
    """The earlier exercises that one builds on, by path: the names that its reference imports from each."""
    found: dict[str, set[str]] = {}
    for name in PHYSICS.imports(_module(path)):
        module, _, imported = name.rpartition(".")
        earlier = module.removeprefix("solutions.").replace(".", "/")
        if earlier in PATHS and PATHS.index(earlier) < PATHS.index(path):
            found.setdefault(earlier, set()).add(imported)
    return {earlier: frozenset(found[earlier]) for earlier in PATHS if earlier in found}


@cache
def references_for(path: str) -> tuple[Earlier, ...]:
    """What stands in for the exercises that one builds on: their references. Helpers that their files come with, too."""
    return tuple(_earlier(earlier, names) for earlier, names in built_on(path).items())


def _earlier(path: str, names: frozenset[str]) -> Earlier:
    module = vars(load_physics(path.replace("/", ".")))
    functions = {name: module[name] for name in sorted(names) if callable(module.get(name))}
    functions |= {question.name: question.asks for question in load_exercise(path).questions}
    return Earlier(path, functions, {name: value for name, value in module.items() if name.isupper() and _is_plain(value)})


def _module(path: str) -> str:
    return f"solutions.{path.replace('/', '.')}"


def _is_plain(value: Any) -> bool:
    if isinstance(value, dict):
        return all(isinstance(key, str) and _is_plain(item) for key, item in value.items())
    return type(value) in (int, float) or isinstance(value, tuple) and all(map(_is_plain, value))


class Lender:
    """Answers what a child asks of earlier functions, within the budget; afterwards, what was asked and what was refused."""

    def __init__(self, earlier: Sequence[Earlier]) -> None:
        self._functions = {f"{one.path}.{name}": function for one in earlier for name, function in one.functions.items()}
        self.offers = {one.path: {"functions": list(one.functions), "constants": dict(one.constants)} for one in earlier}
        self.asked: dict[str, bool] = {}  # "path.function" → whether every question had an answer
        self._bytes, self._values, self._seconds = BUDGET.questions, BUDGET.lent, BUDGET.lending
        self._refused = 0

    def answer(self, question: Mapping[str, Any], size: int) -> Mapping[str, Any]:
        """The message that answers a question of so many bytes. `Malformed` for what no stand-in asks."""
        name, arguments, named = question["asks"], question["arguments"], question["named"]
        if name not in self._functions or any(type(part) is Unusable for part in parts([*arguments, *named.values()])):
            raise Malformed("not a question that a stand-in asks")
        self._bytes -= size
        self._values -= 1
        answer = self._answer(name, as_received(arguments), {word: as_received(value) for word, value in named.items()})
        self.asked[name] = self.asked.get(name, True) and answer is not None
        if answer is None:
            self._refused += 1
            if self._refused > MOST_REFUSED:
                raise Malformed("questions without end")
        return answer or {"refuses": True}

    def _answer(self, name: str, arguments: tuple, named: Mapping[str, Any]) -> Mapping[str, Any] | None:
        """The answer, None where there is none: it is not known, too large, or takes longer than there is time for."""
        if min(self._bytes, self._values, self._seconds) <= 0 or _size((*arguments, *named.values())) > BUDGET.lent_numbers:
            return None
        began = time.thread_time()
        try:
            with _limited_seconds(self._seconds), warnings.catch_warnings(), np.errstate(all="ignore"):
                warnings.simplefilter("ignore")
                value = self._functions[name](*arguments, **named)
            return {"lends": sendable(with_numpys(value), name)}
        except tuple(RAISED.values()) as error:
            kind = next(word for word, one in RAISED.items() if isinstance(error, one))
            return {"raises": kind, "text": clean(str(error))}
        except _Overtime:
            self._seconds = 0.0
            return None
        except (Exception, NotLent):  # not recorded, no memory, arguments for which the reference was not made
            return None
        finally:
            self._seconds -= time.thread_time() - began


class _Overtime(BaseException):
    """A reference has had its seconds."""


@contextlib.contextmanager
def _limited_seconds(seconds: float) -> Iterator[None]:
    """While this is open, what takes more of the processor is stopped with `_Overtime`, in a main thread and where the system can."""
    if threading.current_thread() is not threading.main_thread() or not hasattr(signal, "setitimer"):
        yield
        return

    def ring(number: int, frame: object) -> None:
        raise _Overtime

    before = signal.signal(signal.SIGPROF, ring)
    try:
        signal.setitimer(signal.ITIMER_PROF, seconds)
        try:
            yield
        finally:
            signal.setitimer(signal.ITIMER_PROF, 0)
    finally:
        signal.signal(signal.SIGPROF, before or signal.SIG_DFL)


def _size(values: Sequence[Any]) -> int:
    """How many numbers there can be in anything that the values are broadcast to."""
    shapes = [np.shape(part) for part in parts(values) if isinstance(part, np.ndarray)]
    shapes += [(len(value),) for value in values if isinstance(value, tuple)]
    return prod(map(max, zip_longest(*map(reversed, shapes), fillvalue=1)))


def with_numpys(value: Any) -> Any:
    """A value with numpy's own numbers as arrays without axes, which is how they cross as what they are."""
    if isinstance(value, (tuple, list)):
        return tuple(map(with_numpys, value))
    return np.asarray(value) if isinstance(value, np.generic) else value

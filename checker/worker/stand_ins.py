"""What stands in a child for the earlier exercises that one builds on: functions that ask the judge, and no code of theirs.

A stand-in sends its arguments over the line and waits for the value. Constants come with the exercise. For any other name
the member's own file is loaded, once it is asked for: a helper of theirs is still found.
"""

import importlib.abc
import importlib.machinery
from collections.abc import Callable, Iterator, Mapping
from contextlib import AbstractContextManager
from types import ModuleType
from typing import Any

import numpy as np

from .wire import MAX_ASKING, Unusable, from_wire, line, plain_text, to_wire

Offers = Mapping[str, Mapping[str, Any]]  # path of an exercise → {"functions": names, "constants": {name: value}}
# What a reference raises for arguments that it does not take, by the name under which it comes over the line.
RAISED = {kind.__name__: kind for kind in (ValueError, TypeError, ZeroDivisionError, OverflowError, IndexError, KeyError)}


class NotLent(BaseException):
    """There is no value to be had of an earlier function; not an Exception, so that no `except Exception` takes it for one."""


class Asking:
    """The way to the judge and back, for one value at a time.

    `send` takes bytes, `receive` gives the next message that answers, or None; while `paused` is open the time of waiting is
    not the student's.
    """

    def __init__(self, send: Callable[[bytes], None], receive: Callable[[], Any], paused: Callable[[], AbstractContextManager]):
        self._send, self._receive, self._paused = send, receive, paused
        self._answers: dict[bytes, Mapping[str, Any]] = {}  # what was asked before is not asked again

    def __call__(self, function: str, arguments: tuple, named: Mapping[str, Any]) -> Any:
        with self._paused():
            sent = [sendable(argument, function) for argument in arguments]
            by_name = {plain_text(name): sendable(argument, function) for name, argument in named.items()}
            data = line({"asks": function, "arguments": sent, "named": by_name})
            if len(data) > MAX_ASKING:
                raise NotLent(function)
            if data not in self._answers:
                self._send(data)
                self._answers[data] = self._receive() or {}
            answer = self._answers[data]
        if "raises" in answer:
            raise RAISED.get(answer["raises"], ValueError)(answer["text"])
        if "lends" not in answer:
            raise NotLent(function)
        return as_received(from_wire(answer["lends"]))


def sendable(value: Any, function: str) -> Any:
    """A value as it crosses; `NotLent` for what is neither number, array nor text: formulas, and things of the student's."""
    sent = to_wire(value)
    if any(type(part) is Unusable for part in parts(from_wire(sent))):
        raise NotLent(function)
    return sent


def parts(value: Any) -> Iterator[Any]:
    """What is in lists and tuples, and in those in them; a value that is neither by itself."""
    if type(value) in (list, tuple):
        for item in value:
            yield from parts(item)
    else:
        yield value


def as_received(value: Any) -> Any:
    """A value as the other side had it: tuples for sequences, numpy's own numbers for arrays without axes."""
    if type(value) is list:
        return tuple(map(as_received, value))
    return value[()] if type(value) is np.ndarray else value


class StandIns(importlib.abc.MetaPathFinder, importlib.abc.Loader):
    """Imports what is offered in place of the submitted files; `load_own` runs the member's own file in a module."""

    def __init__(self, offers: Offers, ask: Asking, load_own: Callable[[ModuleType], None]) -> None:
        self._offers = {"exercises." + path.replace("/", "."): (path, offer) for path, offer in offers.items()}
        self._ask, self._load_own = ask, load_own

    def find_spec(self, name: str, path: Any = None, target: Any = None) -> importlib.machinery.ModuleSpec | None:
        return importlib.machinery.ModuleSpec(name, self) if name in self._offers else None

    def exec_module(self, module: ModuleType) -> None:
        path, offer = self._offers[module.__name__]
        own: list[ModuleType] = []

        def of_their_own(name: str) -> Any:
            if name.startswith("__"):
                raise AttributeError(name)
            if not own:
                own.append(ModuleType(module.__name__))
                self._load_own(own[0])
            return getattr(own[0], name)

        constants = {name: _as_constant(value) for name, value in offer["constants"].items()}
        functions = {name: self._stand_in(path, name) for name in offer["functions"]}
        vars(module).update(constants | functions, __getattr__=of_their_own)

    def _stand_in(self, path: str, name: str) -> Callable:
        def stand_in(*arguments: Any, **named: Any) -> Any:
            return self._ask(f"{path}.{name}", arguments, named)

        stand_in.__name__ = stand_in.__qualname__ = name
        return stand_in


def _as_constant(value: Any) -> Any:
    return tuple(map(_as_constant, value)) if type(value) is list else value

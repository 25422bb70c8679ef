"""What a student pack holds for `checker see`: what there is to see of each function, with the reference's curve; no code of it."""

from dataclasses import fields
from typing import Any

from ..course import ROOT, load_exercise
from ..judging.sealed import BrokenSeal, seal, unseal
from ..worker.wire import Malformed, from_wire, to_wire
from .views import Argument, View, views_of


def file_of(path: str) -> str:
    """Where a pack keeps the views of the exercise at a path, below its top folder."""
    return f"practice/{path}_see.sealed"


def seal_views(path: str) -> bytes:
    """The views of an exercise as bytes to be written to a file; the same each time."""
    data = [[to_wire(_plain(getattr(view, field.name))) for field in fields(View)] for view in views_of(load_exercise(path))]
    return seal(data, file_of(path))


def read_sealed_views(path: str) -> tuple[View, ...]:
    """The views of an exercise, from the practice/ folder of a student pack.

    Raises
    ------
    BrokenSeal
        If the file is missing or damaged.
    """
    try:
        data = unseal((ROOT / file_of(path)).read_bytes(), file_of(path))
        return tuple(_view(*map(from_wire, values)) for values in data)
    except (OSError, ValueError, KeyError, TypeError, Malformed):
        raise BrokenSeal(f"{file_of(path)} is missing or damaged. Unpack the student pack again.") from None


def _plain(value: Any) -> Any:
    """A field of a view as plain values: arguments by their fields."""
    if isinstance(value, tuple) and value and isinstance(value[0], Argument):
        return [[getattr(argument, field.name) for field in fields(Argument)] for argument in value]
    return value


def _view(function: str, gives: Any, symbolic: bool, arguments: list, needed: int, along: int, *rest: Any) -> View:
    points, reference, none, judged = rest
    return View(
        function,
        gives,
        symbolic,
        tuple(Argument(name, unit, text, _tupled(example), shown) for name, unit, text, example, shown in arguments),
        needed,
        along,
        tuple(map(tuple, points)),
        tuple(map(_tupled, reference)),
        none,
        tuple(map(tuple, judged)),
    )


def _tupled(value: Any) -> Any:
    return tuple(value) if isinstance(value, list) else value

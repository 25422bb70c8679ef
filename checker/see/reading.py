"""Values as a person types them, "200 µH" or "30-950j Ω", as what a function is given."""

import re
from collections.abc import Sequence
from typing import Any

import numpy as np

from ..checks.given import shown
from ..checks.units import LOOK_ALIKES, any_quantity, quantity
from .views import Argument, View

_COMPLEX = re.compile(r"\(?\s*([-+]?[0-9.]+(?:e[-+]?[0-9]+)?)\s*([-+])\s*([0-9.]+(?:e[-+]?[0-9]+)?)\s*j\s*\)?\s*(\S*)")
_ENDINGS = {1: "st", 2: "nd", 3: "rd"}
_TRUTHS = {"true": True, "yes": True, "false": False, "no": False}


class UnreadableValue(ValueError):
    """A value cannot be read; the text says which, what was wanted and how it is written."""


def read_values(view: View, texts: Sequence[str]) -> tuple:
    """What a function is given, from a text for each of its arguments, in their order.

    Raises
    ------
    UnreadableValue
        If there are too few or too many, or one is not a value of its argument's kind.
    """
    if not view.needed <= len(texts) <= len(view.arguments):
        wanted = "; ".join(f"{argument.name}, such as {as_typed(argument)}" for argument in view.arguments)
        most = len(view.arguments)
        count = "1 value" if most == 1 else f"{most} values" if view.needed == most else f"{view.needed} to {most} values"
        raise UnreadableValue(f"{view.function} takes {count}, and {len(texts)} came. It wants {wanted}.")
    return tuple(_read(argument, text) for argument, text in zip(view.arguments, texts, strict=False))


def as_typed(argument: Argument) -> str:
    """An example of a value as it is typed after the command: "100 pF", in quotation marks where it has spaces."""
    if type(argument.example) is int:
        return str(argument.example)
    text = argument.shown.strip("'")
    if isinstance(argument.example, (tuple, list, np.ndarray)) and "…" in text:
        return f"a list: {argument.text}"
    return f'"{text}"'


def _read(argument: Argument, text: str) -> Any:
    try:
        return _by_kind(argument, text.strip())
    except ValueError:
        raise UnreadableValue(f"{argument.name}: {text!r} cannot be read. Write it as in {as_typed(argument)}.") from None


def _by_kind(argument: Argument, text: str) -> Any:
    example = argument.example
    if isinstance(example, str):
        return text
    if isinstance(example, bool):
        if text.lower() not in _TRUTHS:
            raise ValueError(text)
        return _TRUTHS[text.lower()]
    if isinstance(example, tuple):
        return _several(argument, text)
    if isinstance(example, (list, np.ndarray)):
        return np.array([_number(part, argument.unit) for part in text.strip("[]").split(",")])
    if isinstance(example, complex):
        return _complex(text, argument.unit)
    number = _number(text, argument.unit)
    return int(number) if isinstance(example, int) and number.is_integer() else number


def _number(text: str, unit: str) -> float:
    """A number with its unit, or without: then it is in the unit itself."""
    try:
        return float(text)
    except ValueError:
        return quantity(text, unit)


def _complex(text: str, unit: str) -> complex:
    match = _COMPLEX.fullmatch(text.translate(LOOK_ALIKES))
    if not match:
        return complex(_number(text, unit))
    scale = quantity(f"1 {match[4]}", unit) if match[4] else 1.0
    return complex(float(match[1]) * scale, float(match[2] + match[3]) * scale)


def _several(argument: Argument, text: str) -> tuple:
    """A few numbers, each with its own unit: "30 Ω, 160 pF, 36 µH"."""
    values = [any_quantity(part) for part in text.strip("()").split(",")]
    wanted = [any_quantity(part)[1] for part in argument.shown.split(",")]
    if [unit for _, unit in values] != wanted:
        raise ValueError(text)
    return tuple(value for value, _ in values)


def answer_lines(view: View, answer: Any) -> list[tuple[str, str]]:
    """An answer as (name, text) pairs, with its units; of several answers, one for each."""
    if isinstance(answer, (list, tuple)) and not isinstance(view.gives, str):
        pairs = zip(answer, view.gives, strict=False)
        return [(f"{ordinal(place)} answer", shown(value, unit)) for place, (value, unit) in enumerate(pairs, 1)]
    return [("answer", shown(answer, view.gives if isinstance(view.gives, str) else ""))]


def ordinal(place: int) -> str:
    return f"{place}{_ENDINGS.get(place, 'th')}"

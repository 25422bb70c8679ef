"""Numbers in the prose, computed when the page is built."""

import importlib
from collections.abc import Callable
from functools import lru_cache
from typing import Any

import numpy as np

from checker.checks.units import any_quantity, in_full
from course.press.faults import Fault

NO_BREAK = "\N{NO-BREAK SPACE}"


class Text(str):
    """Words to be handed to a function as they are, though they read like a quantity."""


def value(what: str, *arguments: Any, part: int | str | None = None, **named: Any) -> Any:
    """What a function of `solutions/` returns for the given values.

    Parameters
    ----------
    what : str
        "unitNN_topic.module:function".
    *arguments, **named : number or str
        A number, or a quantity such as "365 pF".
    part : int or str, optional
        Which part to take of a result with several.

    Returns
    -------
    float, or the function's own kind of result

    Raises
    ------
    Fault
        If there is no such function, it refuses the values, or there is no such part.
    """
    function = find_function(what)
    try:
        result = answer_of(
            function, *map(read_quantity, arguments), **{name: read_quantity(text) for name, text in named.items()}
        )
        if part is None:
            return result
        return result[part] if isinstance(part, int) else getattr(result, part)
    except Exception as error:
        raise Fault(f"{what} failed: {type(error).__name__}: {error}") from error


def number(
    what: str,
    *arguments: Any,
    unit: str | None = None,
    figures: int = 4,
    times: float = 1,
    part: int | str | None = None,
    **named: Any,
) -> str:
    """The same, as text with an engineering prefix: "589.1 kHz". What is text already stays so."""
    result = value(what, *arguments, part=part, **named)
    if isinstance(result, str):
        return result.replace(" ", NO_BREAK)
    if unit is None:
        raise Fault(f'{what}: say the unit, by unit="Hz"; a number without one has unit=""')
    result = np.asarray(result)
    if result.size != 1 or not np.isreal(result).all():
        raise Fault(f"{what} gave {result!r}, not one real number: say which part, by part=")
    try:
        text = in_full(float(result.real.item()) * times, unit, figures)
    except ValueError as error:
        raise Fault(f"{what}: {error}") from None
    return text.replace("-", "\N{MINUS SIGN}").replace(" ", NO_BREAK)


def answer_of(function: Callable[..., Any], *arguments: Any, **named: Any) -> Any:
    """What a function returns, worked out once for the same values: several parts of one answer may stand in a page."""
    try:
        hash((*arguments, *named.values()))
    except TypeError:
        return function(*arguments, **named)
    return first_answer(function, *arguments, **named)


@lru_cache(maxsize=None, typed=True)
def first_answer(function: Callable[..., Any], *arguments: Any, **named: Any) -> Any:
    return function(*arguments, **named)


def number_in_formula(*arguments: Any, **named: Any) -> str:
    """The same, as LaTeX."""
    size, _, unit = number(*arguments, **named).partition(NO_BREAK)
    unit = unit.replace("%", r"\%").replace("Ω", r"\Omega").replace("µ", r"\text{µ}").replace("·", r"\cdot ")
    return size.replace("\N{MINUS SIGN}", "-").replace("°", r"^\circ") + (rf"\,\mathrm{{{unit}}}" if unit else "")


def find_function(what: str) -> Callable[..., Any]:
    """The function of `solutions/` that a text names; looked up each time, as `mkdocs serve` reads the physics afresh."""
    module, _, function = what.partition(":") if isinstance(what, str) else ("", "", "")
    name = f"solutions.{module}"
    missing = f'there is no function {what!r} below solutions/: write "unitNN_topic.module:function"'
    try:
        found: Callable[..., Any] = getattr(importlib.import_module(name), function)
        return found
    except ImportError as error:
        ours = name.startswith(error.name or name)
        raise Fault(missing if ours else f"{what}: {name} cannot be imported: {error}") from None
    except (AttributeError, ValueError):
        raise Fault(missing) from None


def read_quantity(argument: Any) -> Any:
    """A number from a quantity in words; anything else as it is."""
    if isinstance(argument, Text) or not isinstance(argument, str):
        return argument
    try:
        return any_quantity(argument)[0]
    except ValueError:
        return argument


MAKERS: dict[str, Callable[..., Any]] = {"number": number, "value": value, "text": Text}
IN_FORMULA: dict[str, Callable[..., Any]] = MAKERS | {"number": number_in_formula}

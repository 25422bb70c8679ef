"""The text of one key into its value."""

from collections.abc import Sequence
from difflib import get_close_matches

from ..checks.units import any_quantity
from . import physics
from .keys import MUST, Key, OneOf, Quantity, Text, Wire


def quoted(text: object) -> str:
    """Anything from the file, fit to stand in a sentence: on one line, not long, nothing hidden in it."""
    shown = str(text)
    return f"“{shown[:60]}”" if shown.isprintable() else ascii(shown)[:60]


def value_of(text: object, key: Key) -> object:
    """What a key's value in the file stands for.

    Raises
    ------
    ValueError
        What is wrong with it and what to do, in a sentence without its full stop.
    """
    example = f'{key.name} = "{key.takes.example}"'
    if isinstance(text, (bool, int, float)) and isinstance(key.takes, (Quantity, Wire)):
        bare = f"{key.name} is the bare {'word' if isinstance(text, bool) else 'number'} {quoted(str(text).lower())}"
        raise ValueError(f"{bare}: give it its unit, in quotes, such as {example}")
    if not isinstance(text, str):
        raise ValueError(f"{key.name} wants text in quotes: write it as {example}")
    match key.takes:
        case Text(longest):
            if (not text.strip() and key.default is MUST) or len(text) > longest:
                raise ValueError(f"{key.name} wants 1 to {longest} characters: write such as {example}")
            return text.strip()
        case OneOf(choices):
            return _choice(text, key.name, choices)
        case Wire():
            return _gauge(text, example)
    return _quantity(text, key.takes, key.name, example)


def _choice(text: str, name: str, choices: Sequence[str]) -> str:
    if text not in choices:
        close = get_close_matches(text, choices, n=1)
        meant = f"did you mean {close[0]}" if close else f"choose one of {', '.join(choices)}"
        raise ValueError(f"there is no {name} {quoted(text)} here: {meant}")
    return text


def _gauge(text: str, example: str) -> float:
    number, _, table = text.partition(" ")
    table = table.strip().upper()
    if table not in ("SWG", "AWG") or not (number.isascii() and number.isdecimal() and len(number) <= 3):
        how = f"write its number and its table, SWG or AWG, as in {example}, or give the wire's diameter"
        raise ValueError(f"{quoted(text)} is no gauge: {how}")
    if table == "SWG":
        return physics.wire.swg_diameter(int(number))
    if not 10 <= int(number) <= 40:
        raise ValueError(f"{quoted(text)} is beyond 10 to 40 AWG: give the wire's diameter instead")
    return float(physics.wire.awg_diameter(int(number)))


def _quantity(text: str, takes: Quantity, name: str, example: str) -> float:
    try:
        value, unit = any_quantity(text)
    except ValueError:
        how = f"write a number, a space and a unit with its prefix (metres, not inches), such as {example}"
        raise ValueError(f"{quoted(text)} is not a quantity with a unit that is known here: {how}") from None
    if {unit, takes.unit} not in ({takes.unit}, {"Ω", "ohm"}):
        has = f"is in {unit}" if unit else "has no unit"
        raise ValueError(f"{quoted(text)} {has}, and {name} is wanted in {takes.unit}: write such as {example}")
    low, high = takes.limits
    if not low <= value <= high:
        covered = f"{takes.low} to {takes.high}, which is what the sheet can work with"
        raise ValueError(f"{name} of {quoted(text)} is outside {covered}: check number and prefix")
    return value

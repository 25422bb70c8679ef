"""The keys of a term's file, in its order: what each wants, and what is taken where it is left out.

Each reader makes a value of what TOML gave; its ValueError says what the key wants, as the end of a sentence.
"""

import re
from collections.abc import Callable
from dataclasses import dataclass
from datetime import date, datetime, time
from decimal import Decimal
from fractions import Fraction
from typing import Any

from ..core import SET
from .term import BEST, HIDDEN, LAST, SHOWN

MUST = object()
LONGEST = 200
NOTHING, REFUSED = "nothing", "not accepted"
_SHARE = re.compile(r"\s*(\d{1,3}(?:\.\d{1,3})?)\s*%\s*a\s+day\s*")


@dataclass(frozen=True)
class TermKey:
    """A key, an example of it as TOML, its reader, and the value where it is left out; MUST where it may not be."""

    name: str
    example: str
    read: Callable[[Any], Any]
    default: Any = MUST


def _text(value: Any) -> str:
    if not isinstance(value, str) or not value.strip() or len(value) > LONGEST or not value.isprintable():
        raise ValueError(f"wants 1 to {LONGEST} characters in quotes")
    return value.strip()


def _optional_text(value: Any) -> str:
    return "" if value == "" else _text(value)


def _one_of(*choices: str) -> Callable[[Any], str]:
    def read(value: Any) -> str:
        if value not in choices:
            raise ValueError(f"wants one of {', '.join(choices)}, in quotes")
        return value

    return read


def _day(value: Any) -> date:
    if isinstance(value, datetime) or not isinstance(value, date):
        raise ValueError("wants a day, without quotes")
    return value


def _moment(at_end: bool) -> Callable[[Any], datetime]:
    def read(value: Any) -> datetime:
        if isinstance(value, datetime):
            if value.tzinfo:
                raise ValueError("wants a time by your own clock, without a zone")
            return value
        return datetime.combine(_day(value), time(23, 59, 59) if at_end else time())

    return read


def _number(most: int, least: int = 0) -> Callable[[Any], Fraction]:
    def read(value: Any) -> Fraction:
        if isinstance(value, bool) or not isinstance(value, (int, float)) or not least <= value <= most:
            raise ValueError(f"wants a number from {least} to {most}, without quotes")
        return Fraction(Decimal(str(value)))

    return read


def _late(value: Any) -> Fraction | None:
    if value in (NOTHING, REFUSED):
        return None if value == REFUSED else Fraction(0)
    share = _SHARE.fullmatch(value) if isinstance(value, str) else None
    if not share or not 0 < Fraction(share[1]) <= 100:
        raise ValueError(f'wants "{NOTHING}", "{REFUSED}" or a share such as "10 % a day"')
    return Fraction(share[1]) / 100


def _names(value: Any) -> tuple[str, ...]:
    if not isinstance(value, list) or not value or not all(isinstance(one, str) for one in value):
        raise ValueError("wants a list of units and exercises, each in quotes")
    return tuple(value)


def _seed(value: Any) -> int:
    if isinstance(value, bool) or not isinstance(value, int) or not 0 <= value < 10**9:
        raise ValueError("wants a whole number from 0 to 999999999, without quotes")
    return value


TOP = (
    TermKey("title", '"Crystal to Reaction, autumn"', _text),
    TermKey("club", '"Saltmarsh Point Wireless Circle"', _text),
    TermKey("begins", "2026-09-01", _day, None),
    TermKey("ends", "2026-12-18", _day, None),
    TermKey("class_id", '"autumn-evening"', _optional_text, ""),
    TermKey("roster", '"roster.csv"', _optional_text, ""),
    TermKey("names", '"{name}_{number}_submission"', _optional_text, ""),
    TermKey("values", f'"{SHOWN}"', _one_of(SHOWN, HIDDEN), SHOWN),
)
WORK = (
    TermKey("name", '"Crystal set"', _text),
    TermKey("set", '["03", "crystal_reach"]', _names),
    TermKey("path", '"core"', _one_of(*SET), "all"),
    TermKey("weight", "1", _number(1000), Fraction(1)),
    TermKey("opens", "2026-09-14", _moment(at_end=False), None),
    TermKey("due", "2026-10-05", _moment(at_end=True), None),
    TermKey("grace", "1", _number(365), Fraction(0)),
    TermKey("late", '"10 % a day"', _late, Fraction(0)),
    TermKey("counts", f'"{BEST}"', _one_of(BEST, LAST), BEST),
    TermKey("seed", "41", _seed, None),
)

"""A term as values, and as plain data for the store."""

import unicodedata
from collections import Counter
from dataclasses import asdict, dataclass, replace
from datetime import date, datetime
from fractions import Fraction
from functools import cached_property
from typing import Any

SHOWN, HIDDEN = "shown", "hidden"
BEST, LAST = "best", "last"


@dataclass(frozen=True)
class Person:
    """One on the roster; `also` is another name that they hand in under."""

    id: str
    name: str
    address: str = ""
    also: str = ""


@dataclass(frozen=True)
class Work:
    """One piece of work.

    `paths` are the exercises set, in the course's order; `path` is how they are marked, a key of `core.SET`. `late` is the share of
    the marks that each day costs, or None where late hand-ins are not accepted. `grace` is in days.
    """

    name: str
    paths: tuple[str, ...]
    path: str = "all"
    weight: Fraction = Fraction(1)
    opens: datetime | None = None
    due: datetime | None = None
    grace: Fraction = Fraction(0)
    late: Fraction | None = Fraction(0)
    counts: str = BEST
    seed: int | None = None


@dataclass(frozen=True)
class Term:
    """A course over a term. `roster` is empty where there is none; `names` is the pattern of the names of folders."""

    title: str
    club: str
    works: tuple[Work, ...] = ()
    roster: tuple[Person, ...] = ()
    begins: date | None = None
    ends: date | None = None
    class_id: str = ""
    names: str = ""
    values: str = SHOWN

    def work(self, name: str) -> Work | None:
        """The piece of work of a name, capitals or not."""
        return next((work for work in self.works if _look(work.name) == _look(name)), None)

    def person(self, *called: str) -> Person | None:
        """Who on the roster is called so, by id or by name; nobody where two share the name."""
        return next((found for name in called if (found := self._called.get(_look(name)))), None)

    @cached_property
    def _called(self) -> dict[str, Person]:
        names = Counter(_look(person.name) for person in self.roster)
        alone = {_look(person.name): person for person in self.roster if names[_look(person.name)] == 1}
        return (
            alone
            | {_look(person.also): person for person in self.roster if person.also}
            | {_look(person.id): person for person in self.roster}
        )


def _look(name: str) -> str:
    return " ".join(unicodedata.normalize("NFKC", name).casefold().split())


def term_to_data(term: Term) -> dict:
    """A term as plain data for JSON: dates as ISO 8601, shares as exact fractions."""

    def plain(value: Any) -> Any:
        if isinstance(value, Fraction):
            return str(value)
        if isinstance(value, date):
            return value.isoformat()
        if isinstance(value, dict):
            return {key: plain(one) for key, one in value.items()}
        return [plain(one) for one in value] if isinstance(value, (list, tuple)) else value

    return plain(asdict(term))


def term_from_data(data: dict) -> Term:
    """The term that `term_to_data` described; KeyError, TypeError or ValueError for anything else."""
    works = tuple(
        replace(
            Work(**one),
            paths=tuple(one["paths"]),
            weight=Fraction(one["weight"]),
            opens=_moment(one["opens"]),
            due=_moment(one["due"]),
            grace=Fraction(one["grace"]),
            late=None if one["late"] is None else Fraction(one["late"]),
        )
        for one in data["works"]
    )
    begins, ends = (None if day is None else date.fromisoformat(day) for day in (data["begins"], data["ends"]))
    roster = tuple(Person(**one) for one in data["roster"])
    return replace(Term(**data), works=works, roster=roster, begins=begins, ends=ends)


def _moment(text: str | None) -> datetime | None:
    return None if text is None else datetime.fromisoformat(text)

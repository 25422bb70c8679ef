"""A term's file into a `Term`. Whatever is wrong with it is one sentence with its line."""

from collections.abc import Sequence
from difflib import get_close_matches
from pathlib import Path
from typing import Any

from ..core import SET
from ..course import PATHS, UnknownExercise, exercises_named
from ..submissions.names import WrongPattern, member_name
from ..text import display_text
from ..toml_source import Source, open_source
from .keys import MUST, TOP, WORK, TermKey
from .roster import read_roster
from .term import Person, Term, Work

EXAMPLE = 'tables as [[work]] and keys as title = "Crystal to Reaction"'
MOST_WORKS = 100


def read_term(file: Path) -> Term:
    """The term that a file describes, with the roster that it names.

    Raises
    ------
    FileFault
        If anything in it, or in the roster, cannot be used.
    """
    source = open_source(file, EXAMPLE)
    tables = _work_tables(source)
    _refuse_unknown(source, (), source.data, [*(key.name for key in TOP), "work"], "a term's file")
    given: dict[str, Any] = {key.name: _value(source, (), source.data, key) for key in TOP}
    if given["begins"] and given["ends"] and given["begins"] >= given["ends"]:
        raise source.fault(("ends",), "the term ends before it begins: give its first day to begins and its last to ends.")
    if given["names"]:
        try:
            member_name("", given["names"])
        except WrongPattern as problem:
            raise source.fault(("names",), str(problem)) from None
    works = tuple(_work(source, place, table) for place, table in enumerate(tables))
    _refuse_doubles(source, works)
    roster: tuple[Person, ...] = ()
    if given.pop("roster"):
        try:
            roster = read_roster(file.parent / source.data["roster"], given["class_id"])
        except ValueError as problem:
            raise source.fault(("roster",), f"{problem}.") from None
    return Term(works=works, roster=roster, **given)


def _work_tables(source: Source) -> list[dict]:
    tables = source.data.get("work", [])
    if not isinstance(tables, list) or not all(isinstance(one, dict) for one in tables):
        raise source.fault(
            ("work",), "a piece of work is a table, of which there may be several: write [[work]], in two brackets."
        )
    if len(tables) > MOST_WORKS:
        raise source.fault(("work", MOST_WORKS), f"there are more than {MOST_WORKS} pieces of work: leave some out.")
    return tables


def _refuse_unknown(source: Source, path: tuple, table: dict, known: Sequence[str], where: str) -> None:
    for name in table:
        if name not in known:
            near = get_close_matches(name, known, n=1)
            hint = f"did you mean {near[0]}" if near else f"it has {', '.join(known)}"
            raise source.fault((*path, name), f"there is no key “{display_text(name)}” in {where}: {hint}.")


def _value(source: Source, path: tuple, table: dict, key: TermKey) -> Any:
    if key.name not in table:
        if key.default is MUST:
            where = "[[work]]" if path else "the top of the file"
            raise source.fault((*path, key.name), f"{key.name} is missing from {where}: add {key.name} = {key.example}.")
        return key.default
    try:
        return key.read(table[key.name])
    except ValueError as problem:
        raise source.fault((*path, key.name), f"{key.name} {problem}: write such as {key.name} = {key.example}.") from None


def _work(source: Source, place: int, table: dict) -> Work:
    path = ("work", place)
    _refuse_unknown(source, path, table, [key.name for key in WORK], "[[work]]")
    given: dict[str, Any] = {key.name: _value(source, path, table, key) for key in WORK}
    asked: set[str] = set()
    for name in given.pop("set"):
        try:
            asked |= set(exercises_named(name))
        except UnknownExercise as problem:
            hint = str(problem).replace("\n", " ")
            raise source.fault((*path, "set"), f"{hint} Units are named by their number, such as “03”.") from None
    paths = tuple(one for one in SET[given["path"]] if one in asked)
    if not paths:
        raise source.fault(
            (*path, "set"), f"none of these exercises is on the {given['path']} path: set others, or leave path out."
        )
    if given["opens"] and given["due"] and given["opens"] >= given["due"]:
        raise source.fault((*path, "due"), "the work is due before it opens: give opens the earlier day.")
    if not given["due"]:
        for key in ("grace", "late"):
            if key in table:
                raise source.fault(
                    (*path, key), f"{key} says nothing without a day that the work is due: add due = 2026-10-05."
                )
    return Work(paths=paths, **given)


def _refuse_doubles(source: Source, works: Sequence[Work]) -> None:
    """No two pieces of one name, and no exercise in two of them: a mark has one place."""
    names: dict[str, str] = {}
    first: dict[str, Work] = {}
    for place, work in enumerate(works):
        if work.name.casefold() in names:
            raise source.fault(("work", place, "name"), f"two pieces of work are called {work.name}: give each its own name.")
        names[work.name.casefold()] = work.name
        for path in sorted(work.paths, key=PATHS.index):
            if path in first:
                name = path.rpartition("/")[2]
                says = f"{name} is set in {first[path].name} already: set each exercise once, by its name where a unit is shared out."
                raise source.fault(("work", place, "set"), says)
            first[path] = work

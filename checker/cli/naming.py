"""Which exercises a person means: by a name, a unit, a function's name, a file; and the nearest, where it is not quite any."""

import re
import sys
from collections.abc import Sequence
from difflib import get_close_matches
from pathlib import Path

from ..course import PATHS, UNITS, Unit, UnknownExercise
from ..pack.index import index
from ..submissions.members import exercise_of
from .called import called_as

_UNIT = re.compile(r"(?:unit)?\s*(\d{1,2})(?:_\w*)?")
NEAR_ENOUGH = 0.7  # how much of it must be alike for a name to be taken for another, on difflib's scale from 0 to 1


def unit_named(text: str) -> Unit | None:
    """The unit of a number ("03", "3", "unit03"), a folder or a title; None if it is none."""
    said = text.strip().strip("/\\").replace("\\", "/").rpartition("/")[2].casefold()
    number = _UNIT.fullmatch(said)
    for unit in UNITS:
        if said in (unit.folder, unit.title.casefold()) or (number and int(number[1]) == int(unit.number)):
            return unit
    return None


def exercise_named(text: str) -> str:
    """The path of the one exercise that is meant; where it is only nearly named, that is said.

    Raises
    ------
    UnknownExercise
        If nothing is near enough, or a unit is named.
    """
    exact = _exactly(text)
    if exact:
        return exact
    if unit := unit_named(text):
        raise UnknownExercise(f"{text} is a unit. Name one of its exercises: {', '.join(unit.exercises)}.")
    said = _last(text)
    names = [path.rpartition("/")[2] for path in PATHS]
    near = get_close_matches(said, [*names, *_functions()], n=1, cutoff=NEAR_ENOUGH)
    if near:
        path = _exactly(near[0])
        assert path
        print(f"{text} is taken for {near[0]}.", file=sys.stderr)
        return path
    far = get_close_matches(said, names, n=1)
    hint = f"Did you mean {far[0]}?" if far else f"{called_as()} try --list names them all."
    raise UnknownExercise(f"There is no exercise called {text!r}. {hint}")


def exercises_named(text: str) -> Sequence[str]:
    """The paths of the exercises that are meant: all of a unit, or one, as `exercise_named` finds it."""
    unit = None if _exactly(text) else unit_named(text)
    return [f"{unit.folder}/{name}" for name in unit.exercises] if unit else [exercise_named(text)]


def _exactly(text: str) -> str | None:
    """The exercise of a path, a file, a name or a function's name, written as it is."""
    said = _last(text)
    file = Path(text).as_posix().replace("\\", "/").removesuffix("/")
    as_file = exercise_of(file if file.endswith(".py") else f"{file}.py")
    return as_file or _functions().get(said)


def _last(text: str) -> str:
    return text.strip().replace("\\", "/").rpartition("/")[2].removesuffix(".py").removesuffix("()")


def _functions() -> dict[str, str]:
    """Which exercise asks for a function; of two that ask for one of the same name, the first."""
    found: dict[str, str] = {}
    for path, entry in index().items():
        for name, *_ in entry.functions:
            found.setdefault(name, path)
    return found

"""What `checker see` is asked about: an exercise, or one function of one."""

import re
from difflib import get_close_matches
from functools import cache

from ..course import PATHS, ROOT, UnknownExercise, find

_DEFINED = re.compile(r"^def ([a-z]\w*)\(", re.MULTILINE)


def find_asked(name: str, called: str = "checker") -> tuple[str, str]:
    """The path of an exercise and the function that was meant, "" for all of its functions.

    Parameters
    ----------
    name : str
        As `course.find` takes it; a function's name; or both with a point between, "metres.wavelength".

    Raises
    ------
    UnknownExercise
        If it is neither, or a function of several exercises. A name that is both an exercise's and a function's is the exercise's.
    """
    try:
        return find(name), ""
    except UnknownExercise:
        exercise, _, function = name.strip().rpartition(".")
    owners = [path for path in functions().get(function, ()) if exercise in ("", path, path.rpartition("/")[2])]
    if len(owners) == 1:
        return owners[0], function
    if owners:
        names = [f"{path.rpartition('/')[2]}.{function}" for path in owners]
        raise UnknownExercise(f"Several exercises have a function {function}. Write {' or '.join(names)}.")
    known = [path.rpartition("/")[2] for path in PATHS] + list(functions())
    near = get_close_matches(name, known, n=1)
    hint = f"Did you mean {near[0]}?" if near else f"{called} try --list names all exercises."
    raise UnknownExercise(f"There is no exercise and no function called {name!r}. {hint}")


@cache
def functions() -> dict[str, list[str]]:
    """Each function that the stubs define, with the paths of the exercises that have it."""
    found: dict[str, list[str]] = {}
    for path in PATHS:
        for name in _DEFINED.findall((ROOT / "exercises" / f"{path}.py").read_text("utf-8")):
            found.setdefault(name, []).append(path)
    return found

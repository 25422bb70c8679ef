"""Which exercise a file answers that is not called as it was handed out: by its name but for what was added, or by its functions.

Read where there is no doubt, and said; where there is some, not read, and said with a guess.
"""

import json
import re
from difflib import get_close_matches
from functools import cache

from ..course import PATHS, ROOT

_DEFINED = re.compile(r"^def[ \t]+(\w+)[ \t]*\(", re.M)
_NAMES = {path.rpartition("/")[2]: path for path in PATHS}
# What people and programs add to a name: a number, "copy", "final", a date, initials; and ".txt" behind it all.
_ADDED = re.compile(r"[\W\d_]+(?:.*)")
_MAGIC = re.compile(r"^[ \t]*[%!?]|\?[ \t]*$")
SOURCES = (".py", ".py.txt", ".ipynb")
LIKE = 0.75  # how like an exercise's name a name is that is taken for a slip of it


def stem_of(name: str) -> str:
    """The name of a file without what says of which kind it is."""
    return re.sub(r"(?i)(\.py|\.txt|\.ipynb)+$", "", name.rpartition("/")[2])


def named_like(name: str) -> str | None:
    """The exercise that a file's name means but for its capitals or for what was added behind it; None if none."""
    stem = stem_of(name).casefold().strip()
    if stem in _NAMES:
        return _NAMES[stem]
    begun = [one for one in _NAMES if stem.startswith(one) and _ADDED.fullmatch(stem[len(one) :])]
    return _NAMES[max(begun, key=len)] if begun else None


def near_in_name(name: str) -> str | None:
    """The exercise that a file's name is nearest to; None if it is near none."""
    close = get_close_matches(stem_of(name).casefold(), _NAMES, n=1, cutoff=LIKE)
    return _NAMES[close[0]] if close else None


@cache
def functions_of(path: str) -> frozenset[str]:
    """The functions that an exercise asks for, by its stub; none where that is gone or written in."""
    try:
        return frozenset(unwritten_in((ROOT / "exercises" / f"{path}.py").read_text("utf-8")))
    except (OSError, UnicodeDecodeError):
        return frozenset()


def defined_in(source: str) -> set[str]:
    """Names of the functions that a source defines at its left edge."""
    return set(_DEFINED.findall(source))


def unwritten_in(source: str) -> set[str]:
    """Names of those that are as they were handed out."""
    _, *pieces = _DEFINED.split(source)
    return {name for name, body in zip(pieces[::2], pieces[1::2], strict=True) if "raise NotImplementedError" in body}


def is_unwritten(path: str, source: str) -> bool:
    """Whether all that an exercise asks for is as it was handed out."""
    return bool(functions_of(path)) and functions_of(path) <= unwritten_in(source)


def answered_by(source: str) -> list[str]:
    """The exercises all of whose functions a source defines; none that shares them with another which it defines as well."""
    defined = defined_in(source)
    whole = [path for path in PATHS if functions_of(path) and functions_of(path) <= defined]
    return [path for path in whole if not any(functions_of(path) < functions_of(other) for other in whole)]


def partly_answered_by(source: str) -> list[str]:
    """The exercises some of whose functions a source defines, those of which it has most first."""
    defined = defined_in(source)
    held = {path: len(functions_of(path) & defined) for path in PATHS}
    return sorted((path for path in PATHS if held[path]), key=lambda path: -held[path])


def code_of_notebook(text: str) -> tuple[str, int]:
    """The code of a notebook (nbformat 4), cell by cell, and how many lines were left out: those that only a notebook obeys.

    Raises
    ------
    ValueError
        If it is no notebook.
    """
    try:
        cells = json.loads(text)["cells"]
        sources = ["".join(cell["source"]) for cell in cells if cell["cell_type"] == "code"]
    except (ValueError, KeyError, TypeError, RecursionError):
        raise ValueError("it is no notebook that can be read") from None
    lines = "\n\n\n".join(sources).split("\n")
    if lines and lines[0].startswith("%%"):
        lines[0] = f"# {lines[0]}"
    kept = [f"# left out: {line.strip()}" if _MAGIC.search(line) else line for line in lines]
    return "\n".join(kept) + "\n", sum(line.startswith("# left out: ") for line in kept)

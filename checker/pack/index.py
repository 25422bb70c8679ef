"""What every exercise asks for, without its check or its figures: its title, marks and functions, and where it is taught."""

import json
from dataclasses import asdict, dataclass
from functools import cache

from ..course import PATHS, ROOT, SEALED, load_exercise
from ..judging.sealed import BrokenSeal
from .cache import keep, read_kept
from .lessons import Lesson, lesson_in_sources

PATH = "practice/index.json"
_KEPT = "index.json"


@dataclass(frozen=True)
class Asked:
    """One exercise: `functions` holds each function that it asks for, with its share of the marks and
    whether it is further than the core."""

    title: str
    marks: int
    functions: tuple[tuple[str, int, bool], ...]
    lesson: Lesson


def index() -> dict[str, Asked]:
    """Every exercise by its path, in the course's order.

    Raises
    ------
    BrokenSeal
        In a student pack, if its own is missing or damaged.
    """
    return _read_index() if SEALED else _made_once()


def make_index() -> str:
    """The index as text to be written to a file."""
    made = {}
    for path in PATHS:
        exercise = load_exercise(path)
        functions = tuple((question.name, question.share, question.further) for question in exercise.questions)
        made[path] = asdict(Asked(exercise.title, exercise.marks, functions, lesson_in_sources(path)))
    return json.dumps(made, indent=1, ensure_ascii=True)


@cache
def _read_index() -> dict[str, Asked]:
    try:
        return _entries((ROOT / PATH).read_bytes())
    except (OSError, ValueError, KeyError, TypeError):
        raise BrokenSeal(f"{PATH} is missing or damaged. Unpack the student pack again.") from None


@cache
def _made_once() -> dict[str, Asked]:
    if (kept := read_kept(_KEPT)) is not None:
        return _entries(kept)
    text = make_index()
    keep(_KEPT, text.encode())
    return _entries(text.encode())


def _entries(text: bytes) -> dict[str, Asked]:
    return {
        path: Asked(one["title"], one["marks"], tuple(map(tuple, one["functions"])), Lesson(**one["lesson"]))
        for path, one in json.loads(text).items()
    }

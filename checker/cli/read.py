"""`checker read`: the lesson of an exercise, opened in the browser."""

import argparse
import webbrowser
from pathlib import Path

from ..pack.index import index
from ..pack.lessons import Lesson, Place, place_of, source_of
from ..report.text import Line, wrap
from .called import beside
from .common import DONE, NOT_YET, Command, terminal_width
from .guide import from_here, lesson_in_words
from .naming import exercise_named, unit_named
from .terminal import show

_FIRST = Lesson("index", "")
_IN_A_PACK = (
    "The lessons did not come with this pack, nor the address where they are. Ask whoever gave it to you for a pack with the lessons "
    "in it, or for the address of the club's site."
)


def add_arguments(parser: argparse.ArgumentParser) -> None:
    parser.add_argument(
        "exercise",
        nargs="?",
        metavar="NAME",
        help="an exercise such as resonance, or a unit such as 03; left out: the first page",
    )


def run(options: argparse.Namespace) -> int:
    lesson, title = _lesson_of(options.exercise)
    place = place_of(lesson)
    if place:
        show([Line(title, "bold"), Line(f"  {_shown(place)}")])
        webbrowser.open(place.address)
        return DONE
    source = source_of(lesson)
    if source:
        show([Line(title, "bold"), Line(f"  {from_here(source)}"), *wrap(_how_to_build(), terminal_width())])
    else:
        show(wrap(_IN_A_PACK, terminal_width(), "yellow"))
    return NOT_YET


def _lesson_of(name: str | None) -> tuple[Lesson, str]:
    if name is None:
        return _FIRST, "Crystal to Reaction"
    unit = unit_named(name)
    if unit:
        return Lesson(f"{unit.folder}/index", ""), unit.title
    path = exercise_named(name)
    return index()[path].lesson, lesson_in_words(path)


def _how_to_build() -> str:
    return (
        "To have it as a page, with its sounds and the bench, build the site once, at the top of the course (Node.js is needed for the "
        f'formulas): {beside("pip")} install -c constraints.txt -e ".[site]", then {beside("mkdocs")} build -f course/mkdocs.yml.'
    )


def _shown(place: Place) -> str:
    return place.shown if "://" in place.shown else from_here(Path(place.shown))


COMMAND = Command("read", "open the lesson of an exercise in the browser", add_arguments, run)

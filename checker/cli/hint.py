"""`checker hint`: one of an exercise's three hints."""

import argparse

from ..judging.plans import exercise_at
from ..report.text import Line, wrap
from .called import called_as
from .common import DONE, Command, terminal_width
from .naming import exercise_named
from .terminal import show


def add_arguments(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("exercise", metavar="EXERCISE")
    parser.add_argument("number", nargs="?", type=int, choices=(1, 2, 3), default=1, metavar="1|2|3")


def run(options: argparse.Namespace) -> int:
    exercise = exercise_at(exercise_named(options.exercise))
    heading = Line(f"{exercise.name} · hint {options.number} of 3", "bold")
    show([heading, *wrap(exercise.hints[options.number - 1], terminal_width())])
    if options.number < 3:
        show([Line(f"  More: {called_as()} hint {exercise.name} {options.number + 1}", "dim")])
    return DONE


COMMAND = Command("hint", "a hint for an exercise; ask again with 2 and 3 for more", add_arguments, run)

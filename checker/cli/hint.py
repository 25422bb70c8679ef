"""`checker hint`: one of an exercise's three hints."""

import argparse

from ..course import PRACTICE_SEED
from ..judging.plans import plan_for
from ..report.text import Line, wrap
from .common import DONE, Command, called_as, terminal_width
from .terminal import show


def add_arguments(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("exercise", metavar="EXERCISE")
    parser.add_argument("number", nargs="?", type=int, choices=(1, 2, 3), default=1, metavar="1|2|3")


def run(options: argparse.Namespace) -> int:
    exercise = plan_for(options.exercise, PRACTICE_SEED).exercise
    heading = Line(f"{exercise.name} · hint {options.number} of 3", "bold")
    show([heading, *wrap(exercise.hints[options.number - 1], terminal_width())])
    if options.number < 3:
        show([Line(f"  More: {called_as()} hint {exercise.name} {options.number + 1}", "dim")])
    return DONE


COMMAND = Command("hint", "a hint for an exercise; ask again with 2 and 3 for more", add_arguments, run)

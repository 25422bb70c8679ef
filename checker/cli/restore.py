"""`checker restore`: the stub of an exercise put back where it was."""

import argparse
from itertools import count
from pathlib import Path

from ..files import open_replacement
from ..pack.originals import original_stub
from ..report.text import Line
from .called import called_as
from .common import DONE, Command, UsageError, add_folder_argument, exercises_folder
from .guide import from_here, name_of
from .naming import exercise_named
from .terminal import show


def add_arguments(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("exercise", metavar="EXERCISE", help="a name such as resonance")
    parser.add_argument(
        "--over",
        action="store_true",
        help="where a file is there already: put the stub in its place, and keep the old one beside it",
    )
    add_folder_argument(parser)


def run(options: argparse.Namespace) -> int:
    path = exercise_named(options.exercise)
    folder = exercises_folder(options.folder)
    file = folder / f"{path}.py"
    stub = original_stub(path)
    if stub is None:
        raise UsageError(
            f"The stub of {name_of(path)} is nowhere on this computer any more. Unpack the course once more beside this folder, and "
            f"copy exercises/{path}.py from there."
        )
    if file.exists() and not options.over:
        raise UsageError(
            f"{from_here(file)} is there, and was left alone. {called_as()} restore {name_of(path)} --over puts the stub in its "
            "place, and keeps what you have beside it."
        )
    old = _out_of_the_way(file) if file.exists() else None
    file.parent.mkdir(parents=True, exist_ok=True)
    with open_replacement(file, "wb") as out:
        out.write(stub)
    show([Line(f"{from_here(file)} is the stub again.")])
    if old:
        show([Line(f"What was there is in {from_here(old)}.")])
    return DONE


def _out_of_the_way(file: Path) -> Path:
    """Give a file a name that nothing reads as an exercise: resonance.py.old, then resonance.py.old2."""
    free = (file.with_name(f"{file.name}.old{number if number > 1 else ''}") for number in count(1))
    old = next(path for path in free if not path.exists())
    file.rename(old)
    return old


COMMAND = Command("restore", "put the stub of an exercise back, where its file is gone", add_arguments, run)

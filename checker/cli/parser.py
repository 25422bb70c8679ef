"""The command line as a whole: its commands in three groups, for whoever learns, teaches, builds."""

import argparse
import io
import sys
from collections.abc import Sequence
from importlib.metadata import PackageNotFoundError, version

from ..course import PACKAGE, UnknownExercise
from ..judging.sealed import BrokenSeal
from ..marks.cluster import ClusterProblem
from ..marks.run import NotContained
from ..marks.store_problem import StoreProblem
from ..pack.stubs import NotAStub
from ..sandbox.workers import WorkerLost
from ..submissions.members import UnreadableFolder
from . import amend, hear, hint, mark, pack, see, sheet, try_
from .common import INTERRUPTED, USAGE_ERROR, Command, UsageError

GROUPS: tuple[tuple[str, tuple[Command, ...]], ...] = (
    ("to learn", (try_.COMMAND, see.COMMAND, hear.COMMAND, hint.COMMAND)),
    ("to teach", (mark.COMMAND, amend.COMMAND, pack.COMMAND)),
    ("to build", (sheet.COMMAND,)),
)

# Each of these says in one sentence what is wrong and what to do.
_PROBLEMS = (
    UnknownExercise,
    UnreadableFolder,
    WorkerLost,
    BrokenSeal,
    UsageError,
    NotContained,
    ClusterProblem,
    StoreProblem,
    NotAStub,
)


def main(arguments: Sequence[str] | None = None) -> int:
    """Run one command. The exit code says how it went: 0 well, 1 not yet, 2 a usage error, 130 interrupted."""
    for stream in (sys.stdout, sys.stderr):
        if isinstance(stream, io.TextIOWrapper):
            stream.reconfigure(errors="replace")  # a terminal that has not all letters shows a mark for those it lacks
    options = parser().parse_args(arguments)
    try:
        return options.run(options)
    except _PROBLEMS as problem:
        print(problem, file=sys.stderr)
        return USAGE_ERROR
    except OSError as problem:
        print(f"{problem.filename or 'A file'}: {problem.strerror or problem}.", file=sys.stderr)
        return USAGE_ERROR
    except KeyboardInterrupt:
        print("Stopped. What was finished has been kept.", file=sys.stderr)
        return INTERRUPTED


def parser() -> argparse.ArgumentParser:
    """The parser of all commands."""
    made = argparse.ArgumentParser(
        prog="checker",
        formatter_class=argparse.RawDescriptionHelpFormatter,
        usage="checker COMMAND …",
        description="Checks exercises of the course Crystal to Reaction.\n\n" + _commands_by_group(),
        epilog="checker COMMAND --help says more of a command.\n"
        "Exit codes: 0 passed or done, 1 not yet passed or something could not be read, 2 usage error.",
    )
    made.add_argument("--version", action="version", version=f"checker {_version()}")
    commands = made.add_subparsers(required=True, metavar="COMMAND", help=argparse.SUPPRESS)
    for _, group in GROUPS:
        for command in group:
            one = commands.add_parser(command.name, description=command.help)
            command.add_arguments(one)
            one.set_defaults(run=command.run)
    return made


def _commands_by_group() -> str:
    lines = []
    for title, group in GROUPS:
        lines += [f"{title}:", *(f"  {command.name:<8}{command.help}" for command in group), ""]
    return "\n".join(lines).rstrip()


def _version() -> str:
    try:
        return version(PACKAGE)
    except PackageNotFoundError:
        return "of a checkout that is not installed"

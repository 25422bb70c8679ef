"""The command line as a whole: its commands in three groups, for whoever learns, teaches, builds.

A command's module is imported when it is asked for: what one needs, another need not wait for.
"""

import argparse
import importlib
import os
import sys
from collections.abc import Sequence

from ..course import PACKAGE
from ..faults import Problem
from .common import INTERRUPTED, USAGE_ERROR, Command
from .encoding import prepare_terminal

GROUPS = {
    "to learn": ("try", "read", "see", "hear", "hint", "restore"),
    "to teach": ("mark", "amend", "pack"),
    "to build": ("sheet",),
}
_MODULES = {"try": "try_"}  # of a name that is a word of Python's


def main(arguments: Sequence[str] | None = None) -> int:
    """Run one command. The exit code says how it went: 0 well, 1 not yet, 2 a usage error, 130 interrupted."""
    prepare_terminal()
    arguments = sys.argv[1:] if arguments is None else arguments
    options = parser(arguments[:1]).parse_args(arguments)
    try:
        return options.run(options)
    except Problem as problem:
        print(problem, file=sys.stderr)
        return USAGE_ERROR
    except BrokenPipeError:  # whoever was reading has seen enough: nothing more is to be said, by Python at its end neither
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
        return INTERRUPTED
    except OSError as problem:
        print(f"{problem.filename or 'A file'}: {problem.strerror or problem}.", file=sys.stderr)
        return USAGE_ERROR
    except KeyboardInterrupt:
        print("Stopped. What was finished has been kept.", file=sys.stderr)
        return INTERRUPTED


def command_called(name: str) -> Command:
    """The command of a name."""
    return importlib.import_module(f"checker.cli.{_MODULES.get(name, name)}").COMMAND


def parser(asked: Sequence[str] = ()) -> argparse.ArgumentParser:
    """The parser of the command that is `asked` for by its name; of all commands where none is."""
    every = [name for group in GROUPS.values() for name in group]
    commands = [command_called(name) for name in every if [name] == list(asked)] or list(map(command_called, every))
    made = argparse.ArgumentParser(
        prog="checker",
        formatter_class=argparse.RawDescriptionHelpFormatter,
        usage="checker COMMAND …",
        description="Checks exercises of the course Crystal to Reaction.\n\n" + _by_group(commands),
        epilog="checker COMMAND --help says more of a command.\n"
        "Exit codes: 0 passed or done, 1 not yet passed or something could not be read, 2 usage error.",
    )
    made.add_argument("--version", action=_Version, nargs=0, help="show the version and leave")
    parsers = made.add_subparsers(required=True, metavar="COMMAND", help=argparse.SUPPRESS)
    for command in commands:
        one = parsers.add_parser(command.name, description=command.help)
        command.add_arguments(one)
        one.set_defaults(run=command.run)
    return made


def _by_group(commands: Sequence[Command]) -> str:
    says = {command.name: command.help for command in commands}
    lines = []
    for title, names in GROUPS.items():
        lines += [f"{title}:", *(f"  {name:<9}{says[name]}" for name in names if name in says), ""]
    return "\n".join(lines).rstrip()


class _Version(argparse.Action):
    """Prints the version; looks it up only then."""

    def __call__(self, parser: argparse.ArgumentParser, *unused: object) -> None:
        from importlib.metadata import PackageNotFoundError, version  # late: takes a third of numpy's time

        try:
            print(f"checker {version(PACKAGE)}")
        except PackageNotFoundError:
            print("checker of a checkout that is not installed")
        parser.exit()

"""The marks table, and a progress bar or plain lines, through rich."""

import sys
from collections.abc import Callable, Iterable, Iterator
from typing import TypeVar

from rich.console import Console
from rich.progress import BarColumn, MofNCompleteColumn, Progress, TextColumn, TimeRemainingColumn
from rich.table import Table
from rich.text import Text

from ..report.text import WIDTH

Item = TypeVar("Item")
NAME_WIDTH = 16  # of the first column, however many follow


def console(stderr: bool = False) -> Console:
    """A console that keeps to 80 columns when its output is not a terminal, and never reads markup out of text."""
    made = Console(stderr=stderr, highlight=False, markup=False, emoji=False)
    return made if made.is_terminal else Console(stderr=stderr, highlight=False, markup=False, emoji=False, width=WIDTH)


def show_table(headings: list[str], rows: list[list[str]]) -> None:
    """Print a table: the first column text, the others numbers to the right."""
    table = Table(box=None, padding=(0, 1, 0, 0), pad_edge=False, header_style="bold")  # one space between columns
    for place, heading in enumerate(headings):
        table.add_column(
            Text(heading), justify="left" if place == 0 else "right", no_wrap=place > 0, min_width=0 if place else NAME_WIDTH
        )
    for row in rows:
        table.add_row(*map(Text, row))
    console().print(table)


def with_progress(items: Iterable[Item], total: int, name: Callable[[Item], str]) -> Iterator[Item]:
    """The items, with a progress bar on stderr if that is a terminal, else a line for each; `name(item)` is its text."""
    if not sys.stderr.isatty():
        for count, item in enumerate(items, 1):
            print(f"{count} of {total}  {name(item)}", file=sys.stderr)
            yield item
        return
    columns = TextColumn("{task.description}"), BarColumn(), MofNCompleteColumn(), TimeRemainingColumn()
    with Progress(*columns, console=console(stderr=True), transient=True) as bar:
        task = bar.add_task("marking", total=total)
        for item in items:
            yield item
            bar.advance(task)

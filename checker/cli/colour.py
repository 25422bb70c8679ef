"""Lines in colour, through rich, which knows what each terminal can show."""

from collections.abc import Iterable

from rich.console import Console
from rich.text import Text

from ..report.text import Line


def print_coloured(lines: Iterable[Line]) -> None:
    """Print lines in their styles, if this terminal has colours and wants them; markup is never read out of text."""
    out = Console(highlight=False, markup=False, emoji=False)
    for line in lines:
        out.print(Text(line.text, style=line.style), soft_wrap=True)

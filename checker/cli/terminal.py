"""Printing to a terminal: lines with their styles, or plain ones where nobody would see a style."""

import sys
from collections.abc import Iterable

from ..report.text import Line


def show(lines: Iterable[Line]) -> None:
    """Print lines with their styles; in plain text where there is no terminal or no colour is wanted."""
    if not sys.stdout.isatty():
        for line in lines:
            print(line.text)
        return
    from .colour import print_coloured  # late: it takes half as long as numpy, and only a terminal wants it

    print_coloured(lines)

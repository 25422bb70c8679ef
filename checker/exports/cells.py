"""Text that is safe in a cell of a table.

A spreadsheet takes a cell that begins with = + - or @ for a formula, and a formula can fetch and send. Members choose
their names, and so could choose one that runs on the instructor's computer. Every text therefore goes through
`text_cell`: a formula's beginning gets an apostrophe before it, which spreadsheets read as "this is text". That goes
for the beginning of the text and for what follows a comma, semicolon or bar, since a spreadsheet set to another
separator cuts there. Line breaks and characters that do not show become spaces. Numbers that the checker has worked
out are written as they are.
"""

import csv
import re
import unicodedata
from collections.abc import Iterable
from typing import IO

# The full-width forms count too: some spreadsheets read them as the plain ones.
_FORMULA = re.compile(r"(^|[,;|])(\s*)(?=[=+\-@＝＋－＠])")


def text_cell(text: str) -> str:
    """The text, on one line, so that no spreadsheet takes it or a part of it for a formula."""
    flat = "".join(" " if unicodedata.category(char)[0] == "C" or char in "\u2028\u2029" else char for char in text)
    return _FORMULA.sub(r"\1'\2", flat)


def write_rows(file: IO[str], rows: Iterable[Iterable[str]]) -> None:
    """Rows as CSV (RFC 4180): every cell in quotes, lines ended by CR LF."""
    csv.writer(file, quoting=csv.QUOTE_ALL, lineterminator="\r\n").writerows(rows)

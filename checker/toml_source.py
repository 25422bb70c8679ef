"""A file that a person writes as TOML, and the line that each of its keys stands in."""

import re
import tomllib
from collections.abc import Iterator
from dataclasses import dataclass
from functools import cached_property
from pathlib import Path

from .faults import Problem

LARGEST, LONGEST = 64 * 1024, 500  # bytes, lines
_WHERE = re.compile(r" \(at (?:line (\d+), column \d+|end of document)\)$")


class FileFault(Problem):
    """Nothing can be made of a file. The text is one sentence: file, line, what, what to do."""


@dataclass(frozen=True)
class Source:
    """The file's name as it was given, its text, and what TOML makes of that."""

    name: str
    text: str
    data: dict

    @cached_property
    def lines(self) -> dict[tuple, int]:
        """The line of each table and key, by its path, such as ("wanted", 0, "power").

        The line of a key is the first that TOML cannot do without if it is to find the key there.
        """
        found, whole = {}, 0
        rows = self.text.split("\n")
        for number in range(1, len(rows) + 1):
            try:
                data = tomllib.loads("\n".join(rows[:number]) + "\n")
            except (ValueError, RecursionError):
                continue
            for path in _paths(data):
                found.setdefault(path, whole + 1)
            whole = number
        return found

    def fault(self, path: tuple, sentence: str) -> FileFault:
        """A fault at a key; at the table that it is missing from; or, if that is missing too, at the file's end."""
        for end in range(len(path), 0, -1):
            if path[:end] in self.lines:
                return FileFault(f"{self.name}, line {self.lines[path[:end]]}: {sentence}")
        return FileFault(f"{self.name}, line {_end(self.text)}: {sentence}")


def _paths(data: dict) -> Iterator[tuple]:
    """The paths of all tables and keys, down to the keys of a list's tables."""
    for name, value in data.items():
        yield (name,)
        tables = value if isinstance(value, list) else [value]
        for place, table in enumerate(tables):
            above = (name, place) if isinstance(value, list) else (name,)
            yield above
            if isinstance(table, dict):
                yield from ((*above, key) for key in table)


def _end(text: str) -> int:
    return text.rstrip("\n").count("\n") + 1


SHEET = 'tables as [former] and keys as diameter = "75 mm"'


def open_source(file: Path, example: str = SHEET) -> Source:
    """A file, read.

    Raises
    ------
    FileFault
        If it cannot be opened, is too large, is not UTF-8 or is not TOML.
    """
    try:
        with open(file, "rb") as opened:
            data = opened.read(LARGEST + 1)
    except (OSError, ValueError) as problem:
        reason = getattr(problem, "strerror", None) or problem
        raise FileFault(f"{file}: {reason}: name a file that can be read.") from None
    return source_of(data, str(file), example)


def source_of(data: bytes, name: str, example: str = SHEET) -> Source:
    """What a file of these bytes holds; `example` is how such a file is written.

    Raises
    ------
    FileFault
        As `open_source`.
    """
    if len(data) > LARGEST or data.count(b"\n") > LONGEST:
        raise FileFault(f"{name}, line {LONGEST}: it may have at most {LONGEST} lines and {LARGEST // 1024} kB: shorten it.")
    try:
        text = data.decode("utf-8-sig").replace("\r\n", "\n")
    except UnicodeDecodeError as problem:
        line = data[: problem.start].count(b"\n") + 1
        raise FileFault(f"{name}, line {line}: a byte here is not UTF-8: save the file as UTF-8 text.") from None
    try:
        return Source(name, text, tomllib.loads(text))
    except RecursionError:
        raise FileFault(f"{name}, line {_end(text)}: brackets are nested too deep: write keys and plain tables.") from None
    except ValueError as problem:
        where = _WHERE.search(str(problem))
        line = int(where[1]) if where and where[1] else _end(text)
        what = str(problem)[: where.start() if where else None].rstrip(".")
        raise FileFault(f"{name}, line {line}: this is not TOML ({what[:120]}): write {example}.") from None

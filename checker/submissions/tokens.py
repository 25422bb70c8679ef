"""Programs as rows of words and signs, with what every member was given taken out."""

import builtins
import keyword
import re
from collections.abc import Collection, Iterator

GRAM = 10  # words and signs in a row that are looked at together

# What is opened and never closed goes on to the end, so that no text, however made, is gone through again and again.
_STRING = r""""(?:[^"\\\n]|\\.)*(?:"|\\?)|'(?:[^'\\\n]|\\.)*(?:'|\\?)"""
_DOCSTRING = re.compile(
    r'''(?P<docstring>"""(?:[^\\]|\\.)*?(?:"""|\\?\Z)|\'\'\'(?:[^\\]|\\.)*?(?:\'\'\'|\\?\Z))|\#[^\n]*|''' + _STRING, re.DOTALL
)
_WORD = re.compile(
    r"\#.*|[rbfuRBFU]{0,2}(?:" + _STRING + r")|[^\W\d]\w*|\.?\d[\w.]*(?:(?<=[eE])[-+]\d+)?|\*\*|//|[-=!<>+*/]=|->|\S"
)
_LANGUAGE = frozenset(dir(builtins)) | frozenset(keyword.kwlist)

# A word or sign, and its line. A word of a remark has "#" before it.
Token = tuple[str, int]
Stretches = list[list[Token]]


def code_lines(text: str) -> list[str]:
    """The lines of a program, with docstrings made empty. Any text will do, be it Python or not."""

    def emptied(match: re.Match[str]) -> str:
        return "\n" * match[0].count("\n") if match["docstring"] else match[0]

    return _DOCSTRING.sub(emptied, text).split("\n")


def words(line: str) -> list[str]:
    """The words and signs of one line; numbers written alike, each word of a remark by itself."""
    found = []
    for word in _WORD.findall(line):
        if word[0] == "#":
            found += [f"#{part.lower()}" for part in re.findall(r"\w+", word)]
        else:
            found.append(_plain_number(word) if word[0] in ".0123456789" else word)
    return found


def _plain_number(word: str) -> str:
    try:
        return repr(float(word.replace("_", "")))
    except ValueError:
        return word


class Handout:
    """What a stub gives to every member: lines, heads of functions, names."""

    def __init__(self, stub: str) -> None:
        row = [word for line in code_lines(stub) for word in words(line)]
        self.lines = {line.strip() for line in stub.split("\n")}
        self.functions = {name for word, name in zip(row, row[1:], strict=False) if word == "def"}
        self.names = _LANGUAGE | set(row)

    def own_stretches(self, text: str) -> Stretches:
        """A program's words and signs without what was given: the stretches between, each in one piece."""
        stretches, depth = [[]], None  # depth: brackets open in the head of a function that was asked for
        for number, line in enumerate(code_lines(text), 1):
            plain = line.strip()
            if not plain:
                continue
            if depth is None and (plain in self.lines or plain.startswith(("import ", "from "))):
                stretches.append([])
                continue
            found = words(plain)
            if depth is None and found[:1] == ["def"] and found[1:2] and found[1] in self.functions:
                depth = 0
            for word in found:
                if depth is None:
                    stretches[-1].append((word, number))
                else:
                    depth += (word in "([{") - (word in ")]}")
                    if word == ":" and not depth:
                        depth = None
                        stretches.append([])
        return [stretch for stretch in stretches if stretch]

    def shape_of(self, stretches: Stretches) -> Stretches:
        """The same without remarks, and with one sign for every name that the member chose."""
        shaped = []
        for stretch in stretches:
            code = [(word, line) for word, line in stretch if word[0] != "#"]
            before = ["", *(word for word, _ in code)]
            shaped.append(
                [
                    ("·" if word.isidentifier() and word not in self.names and last != "." else word, line)
                    for last, (word, line) in zip(before, code, strict=False)
                ]
            )
        return shaped


def grams(stretches: Stretches) -> set[int]:
    """Every run of `GRAM` words and signs, as a hash."""
    return {gram for stretch in stretches for _, gram in _grams(stretch)}


def inside(stretch: list[Token], wanted: Collection[int]) -> list[bool]:
    """For each token of a stretch whether it lies in one of the grams wanted."""
    covered = [False] * len(stretch)
    for place, gram in _grams(stretch):
        if gram in wanted:
            covered[place : place + GRAM] = [True] * GRAM
    return covered


def _grams(stretch: list[Token]) -> Iterator[tuple[int, int]]:
    row = [word for word, _ in stretch]
    for place in range(len(row) - GRAM + 1):
        yield place, hash(tuple(row[place : place + GRAM]))

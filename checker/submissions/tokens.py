"""Programs as rows of words and signs, with what every member was given taken out."""

import builtins
import keyword
import re

import numpy as np

GRAM = 10  # words and signs in a row that are looked at together
MOST_WORDS = 4_000  # of a member's own in one file that are looked at; six times what the longest exercise takes
_MULTIPLIER = np.uint64(0x9E37_79B9_7F4A_7C15)  # odd, so that every word of a run counts

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
        """A program's words and signs without what was given: the stretches between, each in one piece.

        Of a program longer than `MOST_WORDS`, the beginning.
        """
        stretches, depth = [[]], None  # depth: brackets open in the head of a function that was asked for
        left = MOST_WORDS
        for number, line in enumerate(code_lines(text), 1):
            plain = line.strip()
            if not plain:
                continue
            if left <= 0:
                break
            if depth is None and (plain in self.lines or plain.startswith(("import ", "from "))):
                stretches.append([])
                continue
            found = words(plain)[:left]
            left -= len(found)
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


def grams(stretches: Stretches) -> list[np.ndarray]:
    """For each stretch, every run of `GRAM` words and signs in order, as a hash: in time that grows with the length alone."""
    return [_grams(stretch) for stretch in stretches]


def inside(row: np.ndarray, wanted: np.ndarray) -> np.ndarray:
    """For each word and sign of a stretch whether it lies in one of the grams wanted; `row` is the stretch's grams."""
    changes = np.zeros(len(row) + GRAM, np.int64)
    [places] = np.nonzero(np.isin(row, wanted))
    changes[places] += 1
    changes[places + GRAM] -= 1
    return np.cumsum(changes)[:-1] > 0


def _grams(stretch: list[Token]) -> np.ndarray:
    row = np.fromiter((hash(word) for word, _ in stretch), np.int64, len(stretch)).view(np.uint64)
    count = max(0, len(row) - GRAM + 1)
    hashes = np.zeros(count, np.uint64)
    for place in range(GRAM):
        hashes = hashes * _MULTIPLIER + row[place : place + count]
    return hashes

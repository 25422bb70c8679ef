"""Text by strangers made fit to show: on a terminal, in a sentence, in a page, in a table, in XML.

`clean` is the one way in. Whatever a stranger wrote goes through it where it enters, so that nothing further on has to think
of it: names of files and folders, replies of a child, lines of a source that are quoted.
"""

import re
import unicodedata
from collections.abc import Sequence

LONGEST_NAME = 80
LONGEST = 500
# Combining marks pile up on one letter without end and cover the lines beside it; no script's writing needs so many.
_PILED = re.compile(
    r"((?:[\u0300-\u036f\u0483-\u0489\u1ab0-\u1aff\u1dc0-\u1dff\u20d0-\u20ff\ufe20-\ufe2f]){3})[\u0300-\u036f\u0483-\u0489\u1ab0-\u1aff\u1dc0-\u1dff\u20d0-\u20ff\ufe20-\ufe2f]+"
)


def clean(text: str, longest: int = LONGEST, lines: bool = False, instead: str = "?") -> str:
    """A text of which every character shows itself and no more.

    Parameters
    ----------
    text : str
        Anything at all, half characters included.
    longest : int
        Characters that are kept; where there are more, an ellipsis stands for the rest.
    lines : bool
        Whether line breaks stay; without it the text is one line.
    instead : str
        What stands for a character that does not show: one that a terminal obeys, that turns the direction of writing, that no
        file can hold.
    """
    cut = text[: longest + 1]
    if not (cut.isascii() and cut.isprintable()):
        cut = "".join(_shown(char, lines, instead) for char in cut)
        cut = _PILED.sub(r"\1", cut)
    return cut if len(text) <= longest else cut[:longest] + "…"


def _shown(char: str, lines: bool, instead: str) -> str:
    if char.isprintable() or (lines and char == "\n"):
        return char
    return " " if unicodedata.category(char) == "Zs" or (char.isspace() and instead) else instead


def display_name(text: str) -> str:
    """A name on one line, what does not show left out, not too long."""
    return clean(text, LONGEST_NAME, instead="") or "(no name)"


def ended(sentence: str) -> str:
    """A sentence that ends in someone else's words, with one full stop, question mark or exclamation mark at its end."""
    sentence = sentence.rstrip(": ")
    return sentence if sentence.endswith((".", "?", "!", "…")) else f"{sentence}."


def display_text(text: str) -> str:
    """A text of any length on one line, without what a terminal or a page would not show."""
    return " ".join(display_name(word) for word in text.split())


def listed(words: Sequence[str]) -> str:
    """Words as a sentence holds them: "bass, voice and treble"."""
    *most, last = words
    return f"{', '.join(most)} and {last}" if most else last


def escape_unseen(value: object) -> object:
    """A text with the characters that do not show, or that turn the direction of writing, as their code: \\u202e."""
    if type(value) is not str or value.isprintable():
        return value
    return "".join(
        char
        if char.isprintable() or char in "\n\t" or unicodedata.category(char) == "Zs"
        else char.encode("unicode-escape").decode()
        for char in value
    )

"""What a terminal that lacks a letter is given in its place: words and signs that a reader understands."""

import codecs
import io
import sys
import unicodedata
from typing import TextIO

READABLE = "readable"
_INSTEAD = {
    "µ": "u",
    "\N{GREEK SMALL LETTER MU}": "u",
    "Ω": "ohm",
    "\N{OHM SIGN}": "ohm",
    "π": "pi",
    "ε": "epsilon",
    "λ": "lambda",
    "ω": "w",
    "√": "sqrt ",
    "·": "-",
    "×": "x",
    "÷": "/",
    "±": "+/-",
    "−": "-",
    "–": "-",
    "—": "-",
    "→": "->",
    "←": "<-",
    "≤": "<=",
    "≥": ">=",
    "≈": "about ",
    "°": " degrees ",
    "⁻": "^-",
    "…": "...",
    "‘": "'",
    "’": "'",
    "“": '"',
    "”": '"',
    "✓": "+",
    "✗": "x",
    "━": "=",
    "╸": "=",
    "╺": "-",
    "•": "*",
    "½": "1/2",
    "ß": "ss",
}
_RAISED = str.maketrans("⁰¹²³⁴⁵⁶⁷⁸⁹", "0123456789")


def make_readable(stream: TextIO) -> None:
    """From now on a letter that a stream's encoding lacks is written in letters that it has."""
    if isinstance(stream, io.TextIOWrapper):
        stream.reconfigure(errors=READABLE)


def instead_of(text: str, encoding: str) -> str:
    """A text in the letters that an encoding has."""
    return text.encode(encoding, READABLE).decode(encoding)


def _replace(error: UnicodeError) -> tuple[str, int]:
    """The codec error handler: what stands for the letters that cannot be written, all of it in ASCII."""
    if not isinstance(error, UnicodeEncodeError):
        raise error
    return "".join(_for(letter) for letter in error.object[error.start : error.end]), error.end


def _for(letter: str) -> str:
    if letter in _INSTEAD:
        return _INSTEAD[letter]
    if letter.translate(_RAISED) != letter:
        return f"^{letter.translate(_RAISED)}"
    return unicodedata.normalize("NFKD", letter).encode("ascii", "ignore").decode() or "?"


codecs.register_error(READABLE, _replace)


def prepare_terminal() -> None:
    """Let what is printed be read on any terminal."""
    for stream in (sys.stdout, sys.stderr):
        make_readable(stream)

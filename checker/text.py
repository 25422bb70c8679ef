"""Text by strangers made fit to show: on a terminal, in a sentence, in a page."""

import unicodedata

LONGEST_NAME = 80


def display_name(text: str) -> str:
    """A name safe to show: control and direction characters out, one line, not too long."""
    text = text.encode("utf-8", "replace").decode()
    shown = "".join(char for char in text if unicodedata.category(char)[0] != "C")
    return (shown[:LONGEST_NAME] + "…" if len(shown) > LONGEST_NAME + 1 else shown) or "(no name)"


def display_text(text: str) -> str:
    """A text of any length on one line, without what a terminal or a page would not show."""
    return " ".join(display_name(word) for word in text.split())


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

"""HTML in pieces, each exactly as it was written: a page is changed in a few places and left alone in all others."""

from dataclasses import dataclass, field
from html.parser import HTMLParser
from typing import Literal

Kind = Literal["start", "end", "empty", "text", "other"]
VOID = {"area", "br", "col", "hr", "img", "input", "link", "meta", "source", "wbr"}


@dataclass(frozen=True)
class Piece:
    """A tag, a run of text, or something else such as a comment; `empty` is a tag that has no end tag."""

    kind: Kind
    source: str
    name: str = ""
    attributes: dict[str, str | None] = field(default_factory=dict)


class _Places(HTMLParser):
    """Where each piece begins, and what it is."""

    def __init__(self, html: str) -> None:
        super().__init__(convert_charrefs=False)
        self.lines = [0]
        for line in html.split("\n"):
            self.lines.append(self.lines[-1] + len(line) + 1)
        self.found: list[tuple[int, Kind, str, dict[str, str | None]]] = []
        self.feed(html)
        self.close()

    def note(self, kind: Kind, name: str = "", attributes: list[tuple[str, str | None]] | None = None) -> None:
        line, column = self.getpos()
        if not (kind == "text" and self.found and self.found[-1][1] == "text"):
            self.found.append((self.lines[line - 1] + column, kind, name, dict(attributes or [])))

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.note("empty" if tag in VOID else "start", tag, attrs)

    def handle_startendtag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.note("empty", tag, attrs)

    def handle_endtag(self, tag: str) -> None:
        self.note("end", tag)

    def handle_data(self, data: str) -> None:
        self.note("text")

    def handle_entityref(self, name: str) -> None:
        self.note("text")

    def handle_charref(self, name: str) -> None:
        self.note("text")

    def handle_comment(self, data: str) -> None:
        self.note("other")

    def handle_decl(self, decl: str) -> None:
        self.note("other")

    def handle_pi(self, data: str) -> None:
        self.note("other")

    def unknown_decl(self, data: str) -> None:
        self.note("other")


def pieces(html: str) -> list[Piece]:
    """The pieces of some HTML or inline SVG, in order; their sources joined are the HTML again.

    Parameters
    ----------
    html : str

    Returns
    -------
    list of Piece
        Text is one piece from tag to tag, with its character references as they were written.
    """
    found = _Places(html).found
    ends = [*(place for place, *_ in found), len(html)][1:]
    return [Piece(kind, html[at:end], name, attributes) for (at, kind, name, attributes), end in zip(found, ends, strict=True)]

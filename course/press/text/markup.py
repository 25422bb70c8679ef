"""HTML in pieces, each exactly as it was written: a page is changed in a few places and left alone in all others."""

import re
from html import unescape
from typing import Literal, NamedTuple

Kind = Literal["start", "end", "empty", "text", "other"]
VOID = {"area", "br", "col", "hr", "img", "input", "link", "meta", "source", "wbr"}


class Piece(NamedTuple):
    """A tag, a run of text, or something else such as a comment; `empty` is a tag that has no end tag."""

    kind: Kind
    source: str
    name: str = ""
    within: str = ""  # what stands in a tag after its name

    @property
    def attributes(self) -> dict[str, str | None]:
        """The attributes of a tag by name, None for one without a value."""
        found: dict[str, str | None] = {}
        for match in ATTRIBUTE.finditer(self.within):
            value = next((text for text in match.group("double", "single", "bare") if text is not None), None)
            found[match["name"].lower()] = None if value is None else unescape(value)
        return found


TOKEN = re.compile(
    r"(?P<end></(?P<ended>[a-z][^\s/>]*)[^>]*>)"
    r"|(?P<start><(?P<started>[a-z][^\s/>]*)(?P<within>(?:[^<>\"']++|\"[^\"]*\"|'[^']*')*+)>)"
    r"|<!--.*?-->|<![^>]*>|<\?[^>]*>",
    re.S | re.I,
)
ATTRIBUTE = re.compile(
    r"""(?P<name>[^\s"'=/>][^\s"'=>]*)(?:\s*=\s*(?:"(?P<double>[^"]*)"|'(?P<single>[^']*)'|(?P<bare>[^\s"'>]+)))?"""
)
AS_IT_STANDS = {"script", "style"}  # no tag begins within


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
    found: list[Piece] = []
    at = 0
    while match := TOKEN.search(html, at):
        if at < match.start():
            found.append(Piece("text", html[at : match.start()]))
        at = match.end()
        if match["start"]:
            name, within = match["started"].lower(), match["within"]
            empty = name in VOID or within.endswith("/")
            found.append(Piece("empty" if empty else "start", match[0], name, within))
            if name in AS_IT_STANDS and not empty:
                end = re.compile(rf"</{name}\s*>", re.I).search(html, at)
                stop = end.start() if end else len(html)
                if at < stop:
                    found.append(Piece("text", html[at:stop]))
                at = stop
        elif match["end"]:
            found.append(Piece("end", match[0], match["ended"].lower()))
        else:
            found.append(Piece("other", match[0]))
    if at < len(html):
        found.append(Piece("text", html[at:]))
    return found

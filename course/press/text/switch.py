"""The two vocabularies in a whole page: the words of one stand in it, those of the other are held ready for the switch."""

import re
from collections.abc import Callable
from html import escape

from course.press.text.markup import Piece, pieces
from course.press.text.vocabulary import Vocabulary, article_for, pair

UNTOUCHED = {"code", "pre", "kbd", "samp", "script", "style", "title", "desc", "math", "annotation", "textarea"}
WITHIN_A_LINE = {"em", "strong", "a", "b", "i", "span", "dfn", "abbr", "small"}
ARTICLE_LAST = re.compile(r"(?<!\w)(an?)(\s+)$", re.I)


def mark_words(html: str, vocabulary: Vocabulary) -> str:
    """A page, or a piece of one, with its words marked by `pair`.

    Code, formulas, addresses, everything in `data-keep`, and what stands before `<body>` stay as they were.

    Parameters
    ----------
    html : str
    vocabulary : Vocabulary

    Returns
    -------
    str
    """
    start = max(html.find("<body"), 0)
    written = [html[:start]]
    open_tags: list[tuple[str, bool]] = []  # name, and whether its text is left as it is
    article_at = None  # where in `written` a text ended in "a" or "an"
    for piece in pieces(html[start:]):
        if piece.kind == "text":
            untouched = bool(open_tags) and open_tags[-1][1]
            tag = "tspan" if any(name == "svg" for name, _ in open_tags) else "span"
            if article_at is not None and not untouched:
                written[article_at] = fit_article(written[article_at], piece.source, vocabulary, tag)
            written.append(piece.source if untouched else vocabulary.mark(piece.source, tag))
            article_at = len(written) - 1 if not untouched and ARTICLE_LAST.search(piece.source) else None
            continue
        written.append(piece.source)
        if piece.name and piece.name not in WITHIN_A_LINE:
            article_at = None
        if piece.kind == "start":
            open_tags.append((piece.name, stays(piece) or bool(open_tags and open_tags[-1][1])))
        elif piece.kind == "end":
            while open_tags and open_tags.pop()[0] != piece.name:
                pass
    return "".join(written)


def stays(piece: Piece) -> bool:
    """Whether the words in an element are to be left alone."""
    classes = (piece.attributes.get("class") or "").split()
    return piece.name in UNTOUCHED or "data-keep" in piece.attributes or any(name.startswith("katex") for name in classes)


def fit_article(before: str, after: str, vocabulary: Vocabulary, tag: str) -> str:
    """An article that ends a text, made to fit our word that begins the next: "an <em>earth</em>"."""
    article = ARTICLE_LAST.search(before)
    match = vocabulary.pattern.match(after)
    american = vocabulary.american_for(match["term"]) if match and match["term"] and not match["article"] else None
    if article is None or american is None or article_for(american, article[1]) == article[1]:
        return before
    return before[: article.start()] + pair(article[1], article_for(american, article[1]), tag) + article[2]


def american_first(html: str) -> str:
    """A marked page with the American words in it, and the British ones held ready for the switch."""
    return replace_pairs(html, lambda tag, british, american: f'<{tag} data-gb="{british}">{american}</{tag}>')


def in_american(html: str, vocabulary: Vocabulary) -> str:
    """A piece of HTML or SVG with the American words, and nothing held ready for a switch."""
    return replace_pairs(mark_words(html, vocabulary), lambda tag, british, american: american)


def replace_pairs(html: str, replacement: Callable[[str, str, str], str]) -> str:
    """A marked page with each `pair` in it replaced.

    Parameters
    ----------
    html : str
    replacement : function of (tag, British, American) to HTML
        The words as HTML.

    Returns
    -------
    str
    """
    written, found = [], pieces(html)
    at = 0
    while at < len(found):
        american = found[at].attributes.get("data-us")
        if found[at].kind == "start" and american is not None:
            inside = [(piece.kind, piece.name) for piece in found[at + 1 : at + 3]]
            if inside != [("text", ""), ("end", found[at].name)]:
                raise ValueError(f"{found[at].source} holds something else than one word")
            written.append(replacement(found[at].name, found[at + 1].source, escape(american)))
            at += 3
        else:
            written.append(found[at].source)
            at += 1
    return "".join(written)

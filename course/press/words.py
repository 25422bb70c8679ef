"""Two vocabularies: the British word in the page, the American one beside it for the switch.

The pairs, the glossary and the phrases left alone are in `course/glossary.toml`.
"""

import re
import tomllib
from dataclasses import dataclass, field
from html import escape
from pathlib import Path

from course.press.faults import Fault

VOID = {"area", "br", "col", "hr", "img", "input", "link", "meta", "source", "wbr"}
UNTOUCHED = {"code", "pre", "kbd", "samp", "script", "style", "title", "desc", "math", "annotation", "textarea"}
UNTOUCHED_MARK = re.compile(r"\bdata-keep\b|\bclass=\"(?:[^\"]* )?katex\b")
WITHIN_A_LINE = {"em", "strong", "a", "b", "i", "span", "dfn", "abbr", "small"}
TOKEN = re.compile(r"<script\b.*?</script>|<!--.*?-->|<(?:\"[^\"]*\"|'[^']*'|[^>\"'])*>|[^<]+", re.S)


@dataclass(frozen=True)
class Term:
    """One entry of the glossary; `american` is empty where both sides of the ocean say the same."""

    british: str
    meaning: str
    american: str = ""
    forms: dict[str, str] = field(default_factory=dict)

    @property
    def anchor(self) -> str:
        return re.sub(r"\W+", "-", self.british.lower()).strip("-")

    def pairs(self) -> dict[str, str]:
        """British to American: the word, its plural, and its other forms."""
        if not self.american:
            return {}
        return {self.british: self.american, plural(self.british): plural(self.american)} | self.forms


def plural(word: str) -> str:
    if word.endswith("y") and word[-2:-1] not in "aeiou":
        return word[:-1] + "ies"
    return word + ("es" if word.endswith(("s", "x", "ch", "sh")) else "s")


class Words:
    """The terms of one file, ready to be found in a text.

    Parameters
    ----------
    file : Path
        TOML with `keep`, a list of phrases, and `[[term]]` tables.
    """

    def __init__(self, file: Path):
        data = tomllib.loads(file.read_text("utf-8"))
        self.terms = [Term(**entry) for entry in data["term"]]
        self.keep = data["keep"]
        self.pairs = {simple(british): american for term in self.terms for british, american in term.pairs().items()}
        longest_first = sorted(self.pairs, key=len, reverse=True)
        self.pattern = re.compile(
            rf"(?<![\w&])(?:(?P<keep>{alternatives(self.keep)})|"
            rf"(?:(?P<article>an?)(?P<gap>\s+))?(?P<term>{alternatives(longest_first)}))(?!\w)",
            re.IGNORECASE,
        )

    def american_for(self, british: str) -> str | None:
        """The American word in the same case, or None if the word is not one of ours."""
        word = simple(british)
        if word in self.pairs:
            return self.pairs[word]
        american = self.pairs.get(word.lower())
        if american is None:
            return None
        if word.isupper():
            return american.upper()
        return american[0].upper() + american[1:] if word[0].isupper() else american

    def term_of(self, text: str) -> Term:
        """The glossary's entry for a word in any of its forms, an article before it allowed."""
        word = simple(re.sub(r"^an?\s+", "", text, flags=re.I))
        for term in self.terms:
            forms = [simple(form) for form in (term.british, plural(term.british), *term.forms)]
            if word in forms or word.lower() in forms:
                return term
        raise Fault(f"{text} is not in the glossary: add it to course/glossary.toml")

    def marked(self, text: str, tag: str = "span") -> str:
        """A run of HTML text, each of our words in an element that also holds the American."""

        def swap(match: re.Match) -> str:
            if match["keep"] is not None:
                return match[0]
            american = self.american_for(match["term"])
            if american is None:
                return match[0]
            article, gap = match["article"], match["gap"]
            if article is None:
                return pair(match["term"], american, tag)
            fitting = article_for(american, article)
            if fitting == article:
                return article + gap + pair(match["term"], american, tag)
            return pair(article + gap + match["term"], f"{fitting} {american}", tag)

        return self.pattern.sub(swap, text)

    def said_twice(self, text: str) -> list[str]:
        """Places where the author wrote the American word in brackets after the British."""
        found = []
        for match in self.pattern.finditer(text):
            american = match["term"] and self.american_for(match["term"])
            if american and text[match.end() :].lstrip().startswith((f"({american})", f"({plural(american)})")):
                found.append(match["term"])
        return found


def simple(phrase: str) -> str:
    """A phrase with plain spaces and a plain apostrophe."""
    return re.sub(r"[\s-]+", " ", phrase).replace("\N{RIGHT SINGLE QUOTATION MARK}", "'")


def alternatives(phrases: list[str]) -> str:
    """A pattern for any of some phrases; a space may be a line break or a hyphen."""
    return "|".join(re.escape(simple(phrase)).replace(r"\ ", r"[\s-]+").replace("'", "['’]") for phrase in phrases) or "(?!)"


def pair(british: str, american: str, tag: str = "span") -> str:
    return f'<{tag} data-us="{escape(american)}">{british}</{tag}>'


def american_first(html: str) -> str:
    """A marked page with the American words in it, and the British ones held ready for the switch."""
    return re.sub(
        r"<(span|tspan) data-us=\"([^\"]*)\">([^<]*)</\1>", lambda m: f'<{m[1]} data-gb="{m[3]}">{m[2]}</{m[1]}>', html
    )


def in_american(text: str, words: Words) -> str:
    """A piece of HTML or SVG with the American words, and nothing held ready for a switch."""
    marked = mark_page(f"<body>{text}", words).removeprefix("<body>")
    return re.sub(r"<(span|tspan) data-us=\"([^\"]*)\">[^<]*</\1>", r"\2", marked)


def article_for(word: str, like: str) -> str:
    """a or an, as the word sounds: "an antenna", "a tube", "an RF stage"; in the case of `like`."""
    spelt_out = re.match(r"[A-Z]{2}|[A-Z]\b", word)
    vowel = word[0] in "AEFHILMNORSX" if spelt_out else word[0].lower() in "aeiou"
    return like[0] + ("n" if vowel else "")


def mark_page(html: str, words: Words) -> str:
    """A whole page with its words marked; code, formulas, addresses and everything in `data-keep` as they were."""
    start = max(html.find("<body"), 0)
    pieces = [html[:start]]
    open_tags: list[tuple[str, bool]] = []
    article_at = None
    for token in TOKEN.findall(html[start:]):
        if not token.startswith("<"):
            untouched = bool(open_tags) and open_tags[-1][1]
            tag = "tspan" if any(name == "svg" for name, _ in open_tags) else "span"
            if article_at is not None and not untouched:
                pieces[article_at] = fit_article(pieces[article_at], token, words, tag)
            pieces.append(token if untouched else words.marked(token, tag))
            ends_in_article = not untouched and re.search(r"(?<!\w)an?\s+$", token, re.I)
            article_at = len(pieces) - 1 if ends_in_article else None
            continue
        pieces.append(token)
        match = re.match(r"<(/?)([\w-]+)", token)
        if not match or token.startswith("<script"):
            continue
        closing, name = match.groups()
        if name not in WITHIN_A_LINE:
            article_at = None
        if closing:
            while open_tags and open_tags.pop()[0] != name:
                pass
        elif name not in VOID and not token.endswith("/>"):
            untouched = name in UNTOUCHED or bool(UNTOUCHED_MARK.search(token))
            open_tags.append((name, untouched or bool(open_tags and open_tags[-1][1])))
    return "".join(pieces)


def fit_article(before: str, after: str, words: Words, tag: str) -> str:
    """An article that ends a text, made to fit our word that begins the next: "an <em>earth</em>"."""
    article = re.search(r"(?<!\w)(an?)(\s+)$", before, re.I)
    match = words.pattern.match(after)
    american = words.american_for(match["term"]) if match and match["term"] and not match["article"] else None
    if american is None or article_for(american, article[1]) == article[1]:
        return before
    return before[: article.start()] + pair(article[1], article_for(american, article[1]), tag) + article[2]


def glossary_html(words: Words) -> str:
    """The glossary: every term with both words and its sentence, then the American words in their own order."""
    entries = "".join(
        f'<div id="{term.anchor}"><dt><dfn data-keep>{escape(term.british)}</dfn>'
        + (f' <span class="other" data-keep>American: <b>{escape(term.american)}</b></span>' if term.american else "")
        + f"</dt><dd>{escape(term.meaning)}</dd></div>\n"
        for term in sorted(words.terms, key=lambda term: term.british.lower())
    )
    back = "".join(
        f'<li><a href="#{term.anchor}">{escape(term.american)}</a>: {escape(term.british)}</li>\n'
        for term in sorted(words.terms, key=lambda term: term.american.lower())
        if term.american
    )
    return (
        f'<dl class="glossary">\n{entries}</dl>\n<h2 id="from-american">From the American word</h2>\n'
        f'<ul class="from-american" data-keep>\n{back}</ul>\n'
    )


def term_html(words: Words, text: str, link: str) -> str:
    """First use of a word, the other vocabulary's beside it; switching exchanges the two."""
    match = words.pattern.fullmatch(text)
    american = words.american_for(match["term"]) if match and match["term"] else None
    if american is None:
        return f'<a class="term" href="{link}"><dfn>{escape(text)}</dfn></a>'
    article = match["article"] or ""
    british = match["term"] if simple(match["term"]) in words.pairs else match["term"].lower()
    shown = f"{article_for(american, article)} {american}" if article else american
    return (
        f'<span data-keep><a class="term" href="{link}"><dfn>{pair(escape(text), shown)}</dfn></a> '
        f"({pair('American', 'British')}: {pair(american.lower() if british.islower() else american, british)})</span>"
    )

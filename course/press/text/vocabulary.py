"""The words that differ on the two sides of the ocean, and how they are found in a text.

The pairs, the glossary and the phrases left alone are in `course/glossary.toml`.
"""

import re
import tomllib
from collections.abc import Iterable
from dataclasses import dataclass, field
from html import escape
from pathlib import Path

from course.press.faults import Fault


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


class Vocabulary:
    """The terms of one file, ready to be found in a text.

    Parameters
    ----------
    file : Path
        TOML with `keep`, a list of phrases, and `[[term]]` tables.
    """

    def __init__(self, file: Path) -> None:
        data = tomllib.loads(file.read_text("utf-8"))
        self.terms = [Term(**entry) for entry in data["term"]]
        self.keep: list[str] = data["keep"]
        self.pairs = {simplify(british): american for term in self.terms for british, american in term.pairs().items()}
        longest_first = sorted(self.pairs, key=len, reverse=True)
        self.pattern = re.compile(
            rf"(?<![\w&])(?:(?P<keep>{pattern_of_any(self.keep)})|"
            rf"(?:(?P<article>an?)(?P<gap>\s+))?(?P<term>{pattern_of_any(longest_first)}))(?!\w)",
            re.IGNORECASE,
        )

    def american_for(self, british: str) -> str | None:
        """The American word in the same case, or None if the word is not one of ours."""
        word = simplify(british)
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
        word = simplify(re.sub(r"^an?\s+", "", text, flags=re.I))
        for term in self.terms:
            forms = [simplify(form) for form in (term.british, plural(term.british), *term.forms)]
            if word in forms or word.lower() in forms:
                return term
        raise Fault(f"{text} is not in the glossary: add it to course/glossary.toml")

    def mark(self, text: str, tag: str = "span") -> str:
        """A run of HTML text, each of our words in an element that also holds the American."""

        def mark_one(match: re.Match[str]) -> str:
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

        return self.pattern.sub(mark_one, text)

    def said_twice(self, text: str) -> list[str]:
        """Places where the author wrote the American word in brackets after the British."""
        found = []
        for match in self.pattern.finditer(text):
            american = match["term"] and self.american_for(match["term"])
            if american and text[match.end() :].lstrip().startswith((f"({american})", f"({plural(american)})")):
                found.append(match["term"])
        return found


def simplify(phrase: str) -> str:
    """A phrase with plain spaces and a plain apostrophe."""
    return re.sub(r"[\s-]+", " ", phrase).replace("\N{RIGHT SINGLE QUOTATION MARK}", "'")


def pattern_of_any(phrases: Iterable[str]) -> str:
    """A pattern for any of some phrases; a space may be a line break or a hyphen."""
    return "|".join(re.escape(simplify(phrase)).replace(r"\ ", r"[\s-]+").replace("'", "['’]") for phrase in phrases) or "(?!)"


def article_for(word: str, like: str) -> str:
    """a or an, as the word sounds: "an antenna", "a tube", "an RF stage"; in the case of `like`."""
    spelt_out = re.match(r"[A-Z]{2}|[A-Z]\b", word)
    vowel = word[0] in "AEFHILMNORSX" if spelt_out else word[0].lower() in "aeiou"
    return like[0] + ("n" if vowel else "")


def pair(british: str, american: str, tag: str = "span") -> str:
    """The British word as HTML, with the American held ready in `data-us` for the reader's switch."""
    return f'<{tag} data-us="{escape(american)}">{british}</{tag}>'

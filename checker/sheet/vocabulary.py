"""British and American words: both are on the page, and a switch that needs no script shows one of them."""

import re
from functools import partial

# As in course/glossary.toml; plurals in -s are made by rule.
AMERICAN = {
    "accumulator": "storage battery",
    "aerial": "antenna",
    "anode": "plate",
    "condenser": "capacitor",
    "earth": "ground",
    "earthed": "grounded",
    "valve": "tube",
    "reaction": "regeneration",
    "mains": "line voltage",
    "HF choke": "RF choke",
    "HT": "B+",
    "LT": "A battery",
    "coil former": "coil form",
}
_TERMINALS = {"HT+": "B+", "LT+": "A+"}  # of a battery: the sign is part of the name
_TAG = re.compile(r"(<[^>]*>)")
_SKIP = ("style", "code", "bdi", "title", "desc", "script")
# A word with the article before it, since "an anode" is "a plate".
_WORD = re.compile(
    r"\b(?:(an?)(\s+))?(?:("
    + "|".join(map(re.escape, _TERMINALS))
    + r")|("
    + "|".join(sorted(map(re.escape, AMERICAN), key=len, reverse=True))
    + r")(s?)\b)",
    re.I,
)


def mark_vocabulary(html: str) -> str:
    """A page with each word that has an American one marked: `<span class="gb">valve</span><span class="us">tube</span>`.

    Left alone: attributes, styles, code, titles of pictures, and what stands in `<bdi>`, which is what the builder wrote.
    """
    inside, pieces, tag = [], [], "span"
    for piece in _TAG.split(html):
        if piece.startswith("<"):
            name = re.sub(r"</?([a-zA-Z0-9]*).*", r"\1", piece, flags=re.S).lower()
            if name in _SKIP:
                inside = inside[:-1] if piece.startswith("</") else [*inside, name]
            if name == "svg":
                tag = "span" if piece.startswith("</") else "tspan"
            pieces.append(piece)
        else:
            pieces.append(piece if inside else _WORD.sub(partial(_pair, tag), piece))
    return "".join(pieces)


def _pair(tag: str, match: re.Match[str]) -> str:
    article, space, terminal, word, plural = match[1] or "", match[2] or "", match[3], match[4], match[5]
    american = _TERMINALS.get(terminal) if terminal else AMERICAN.get(word) or AMERICAN.get(word.lower())
    if american is None:
        return match[0]
    if word:
        american = _plural(american) if plural else american
        if word[0].isupper() and not word.isupper():
            american = american[0].upper() + american[1:]
    british = match[0][len(article + space) :]
    other = _article(american, article)
    if other == article:
        return f"{article}{space}{_both(tag, british, american)}"
    return _both(tag, match[0], f"{other}{space}{american}")


def _both(tag: str, british: str, american: str) -> str:
    return f'<{tag} class="gb">{british}</{tag}><{tag} class="us">{american}</{tag}>'


def _article(word: str, before: str) -> str:
    """The article before a word, written as the one that stood there; "" if none did."""
    if not before:
        return ""
    # Letters that are spoken one by one go by the sound of the first: an RF choke, a B+, an A battery.
    vowel = word[0] in "AEFHILMNORSX" if word[:2].isupper() or word[1:2] in "+ " else word[0].lower() in "aeiou"
    return before[0] + "n" * vowel


def _plural(word: str) -> str:
    return word[:-1] + "ies" if word.endswith("y") else word + "s"

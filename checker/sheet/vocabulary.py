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
_TAG = re.compile(r"(<[^>]*>)")
_SKIP = ("style", "code", "bdi", "title", "desc", "script")
_WORD = re.compile(r"\b(" + "|".join(sorted(map(re.escape, AMERICAN), key=len, reverse=True)) + r")(s?)\b", re.I)


def mark_vocabulary(html: str) -> str:
    """A page with each word that has an American one marked: `<span class="gb">valve</span><span class="us">tube</span>`.

    Left alone: attributes, styles, code, titles of pictures, and what stands in `<bdi>`, which is what the builder wrote.
    """
    inside, pieces, tag = [], [], "span"
    for piece in _TAG.split(html):
        if piece.startswith("<"):
            name = re.match(r"</?([a-zA-Z0-9]*)", piece)[1].lower()
            if name in _SKIP:
                inside = inside[:-1] if piece.startswith("</") else [*inside, name]
            if name == "svg":
                tag = "span" if piece.startswith("</") else "tspan"
            pieces.append(piece)
        else:
            pieces.append(piece if inside else _WORD.sub(partial(_pair, tag), piece))
    return "".join(pieces)


def _pair(tag, match):
    word, plural = match[1], match[2]
    american = AMERICAN.get(word) or AMERICAN.get(word.lower())
    if american is None:
        return match[0]
    american = _plural(american) if plural else american
    if word[0].isupper() and not word.isupper():
        american = american[0].upper() + american[1:]
    return f'<{tag} class="gb">{match[0]}</{tag}><{tag} class="us">{american}</{tag}>'


def _plural(word):
    return word[:-1] + "ies" if word.endswith("y") else word + "s"

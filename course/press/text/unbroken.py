"""A number and its unit on one line: the space between them made one at which no line ends."""

import re

from checker.checks.units import PLAIN, PREFIXED, PREFIXES
from course.press.text.markup import pieces
from course.press.text.switch import UNTOUCHED, WITHIN_A_LINE

SPACE = "\N{NO-BREAK SPACE}"
MORE = (
    "dBFS",
    "dBµ",
    "VA",
    "VAR",
    "bit",
    "min",
    "h",
    "Np",
    "kg",
    "g",
    "N",
    "t",
    "l",
    "mol",
    "Wh",
    "Ah",
    "cm",
    "mm²",
    "mm",
    "m³",
    "HT",
    "SWG",
)
WORDS = (
    "volt", "ampere", "watt", "ohm", "hertz", "henry", "farad", "metre", "meter", "second", "minute", "hour", "day", "week", "month",
    "year", "turn", "decibel", "degree", "mark", "milliampere", "microampere", "millivolt", "microvolt", "kilohertz", "megahertz",
    "picofarad", "microhenry", "kilometre", "millimetre", "centimetre", "cycle", "per cent", "time", "millisecond", "microsecond",
)  # fmt: skip


def _unit_pattern() -> str:
    prefixes = "".join(prefix for prefix in PREFIXES.values() if prefix)
    symbols = "|".join(sorted(map(re.escape, PREFIXED), key=len, reverse=True))
    whole = "|".join(sorted(map(re.escape, {*PLAIN, *MORE} - {"", "°"}), key=len, reverse=True))
    return rf"(?:[{prefixes}c]?(?:{symbols})|{whole}|(?:{'|'.join(WORDS)})(?:e?s)?)(?![^\W\d_])"


UNIT = _unit_pattern()
DIGIT = r"[\d½¼¾²³]"
NUMBER_ENDS = re.compile(rf"{DIGIT}$")
BEFORE_UNIT = re.compile(rf"(?<={DIGIT}) (?={UNIT})")
BEGINS_WITH_UNIT = re.compile(rf" (?={UNIT})")
TIMES = re.compile(r"(?<=\d) ?(×) ?(?=\d)")


def keep_units(html: str) -> str:
    """A page in which no number leaves its unit.

    Code, formulas, pictures and what stands before `<body>` stay as they were.

    Parameters
    ----------
    html : str

    Returns
    -------
    str
    """
    start = max(html.find("<body"), 0)
    written, number_before = [html[:start]], False
    open_tags: list[tuple[str, bool]] = []
    for piece in pieces(html[start:]):
        source = piece.source
        if piece.kind == "text":
            if not (open_tags and open_tags[-1][1]):
                source = TIMES.sub(f"{SPACE}×{SPACE}", BEFORE_UNIT.sub(SPACE, source))
                if number_before and BEGINS_WITH_UNIT.match(source):
                    source = SPACE + source[1:]
            number_before = bool(NUMBER_ENDS.search(source))
        elif piece.name not in {*WITHIN_A_LINE, "sup", "sub"}:
            number_before = False
        if piece.kind == "start":
            formula = (piece.attributes.get("class") or "").startswith("katex")
            untouched = formula or piece.name == "svg" or piece.name in UNTOUCHED
            open_tags.append((piece.name, untouched or bool(open_tags and open_tags[-1][1])))
        elif piece.kind == "end":
            while open_tags and open_tags.pop()[0] != piece.name:
                pass
        written.append(source)
    return "".join(written)

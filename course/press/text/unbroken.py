"""A number and its unit on one line: the space between them made one at which no line ends."""

import re

from checker.checks.units import PLAIN, PREFIXED, PREFIXES
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
INSIDE_A_NUMBER = {*WITHIN_A_LINE, "sup", "sub"}
WHOLE = "|".join(sorted(UNTOUCHED | {"svg"}))
TOKEN = re.compile(rf"<(?P<whole>{WHOLE})\b.*?</(?P=whole)>|</?(?P<tag>[\w-]+)[^>]*>|<!.*?>|[^<]+", re.S)
TIMES = re.compile(r"(?<=\d) × (?=\d)")


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
    number_before = False

    def keep(token: re.Match[str]) -> str:
        nonlocal number_before
        source, tag = token[0], token["whole"] or token["tag"]
        if tag is not None or source[0] == "<":
            number_before = number_before and tag in INSIDE_A_NUMBER
            return source
        kept = TIMES.sub(f"{SPACE}×{SPACE}", BEFORE_UNIT.sub(SPACE, source))
        if number_before and BEGINS_WITH_UNIT.match(kept):
            kept = SPACE + kept[1:]
        number_before = NUMBER_ENDS.search(kept) is not None
        return kept

    return html[:start] + TOKEN.sub(keep, html[start:])

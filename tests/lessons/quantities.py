"""The quantities of cautions, in figures or in words, and the blocks in which cautions stand."""

import re
from collections.abc import Iterator
from pathlib import Path
from typing import NamedTuple

ROOT = Path(__file__).parents[2]
LESSONS, SHEET, SAFETY = ROOT / "course/lessons", "design sheet", "safety.md"
KINDS = "danger", "caution", "bench", "instructor"
PREFIXES = {"p": 1e-12, "n": 1e-9, "µ": 1e-6, "m": 1e-3, "": 1.0, "k": 1e3, "M": 1e6}
UNITS = {"volt": 1.0, "ampere": 1.0, "ohm": 1.0, "watt": 1.0, "second": 1.0, "minute": 60.0, "hour": 3600.0, "decibel": 1.0}
WORDS = {
    "half a": 0.5,
    "half an": 0.5,
    "a quarter of a": 0.25,
    "a tenth of a": 0.1,
    "a hundredth of a": 0.01,
    "a": 1.0,
    "an": 1.0,
    "one": 1.0,
    "two": 2.0,
    "three": 3.0,
    "four": 4.0,
    "five": 5.0,
    "six": 6.0,
    "seven": 7.0,
    "eight": 8.0,
    "nine": 9.0,
    "ten": 10.0,
    "twelve": 12.0,
    "fifteen": 15.0,
    "twenty": 20.0,
    "thirty": 30.0,
    "forty": 40.0,
    "fifty": 50.0,
    "hundred": 100.0,
}
FIGURES = r"(?:\d+(?:\.\d+)?|½)"
SPELT = "|".join(sorted(WORDS, key=len, reverse=True))
QUANTITY = re.compile(
    rf"(?<![\w.])(?:(?P<low>{FIGURES}) to )?(?:(?P<figures>{FIGURES})|(?i:(?P<words>{SPELT})))[ -]"
    r"(?:(?P<prefix>[pnµmkM]?)(?P<symbol>V|A|Ω|W|F|s|dB|°C)(?![\w/])|(?P<spelt>milli|kilo|meg)?"
    rf"(?P<unit>{'|'.join(UNITS)})s?\b)"
)
ORDINAL = re.compile(r"(?i:a|per) second")  # "a second adult", "a few a second": no length of time
SPELT_PREFIX = {None: 1.0, "milli": 1e-3, "kilo": 1e3, "meg": 1e6}


class Block(NamedTuple):
    """A caution: where it stands, and its text on one line, title first; numbers that are computed already are "#"."""

    page: str
    kind: str
    text: str


class Found(NamedTuple):
    """A quantity: where in a text, and its one or two values in SI units."""

    start: int
    end: int
    values: tuple[float, ...]


def quantities(text: str) -> list[Found]:
    """All quantities of volts, amperes, ohms, watts, farads, seconds, decibels and degrees in a text."""
    found = []
    for one in QUANTITY.finditer(text):
        if ORDINAL.fullmatch(one[0]):
            continue
        scale = PREFIXES[one["prefix"] or ""] if one["symbol"] else SPELT_PREFIX[one["spelt"]] * UNITS[one["unit"]]
        sizes = (one["low"], one["figures"] or WORDS[one["words"].lower()])
        values = (0.5 if size == "½" else float(size) for size in sizes if size is not None)
        found.append(Found(one.start(), one.end(), tuple(scale * value for value in values)))
    return found


def plain(text: str) -> str:
    """Text on one line, without macros and emphasis."""
    text = re.sub(r"\{\{ number\(.*?\) \}\}", "#", text)
    text = re.sub(r'\{\{ (?:term|keep)\("([^"]*)"\) \}\}', r"\1", text)
    return re.sub(r"\s+", " ", text.replace("*", "")).strip()


def lesson_blocks(page: Path) -> list[Block]:
    """The cautions of one lesson."""
    lines, blocks = page.read_text("utf-8").split("\n"), []
    for number, line in enumerate(lines):
        opened = re.match(r'( *)!!! (\w+) *"?(.*?)"?$', line)
        if not opened or opened[2] not in KINDS:
            continue
        inside, depth = [opened[3] + "."], len(opened[1]) + 4
        for other in lines[number + 1 :]:
            if other.strip() and len(other) - len(other.lstrip()) < depth:
                break
            inside.append(other)
        blocks.append(Block(str(page.relative_to(LESSONS)), opened[2], plain(" ".join(inside))))
    return blocks


def safety_page() -> list[Block]:
    """The page that is nothing but cautions, whole, a section a block."""
    sections = re.split(r"\n(?=##)", (LESSONS / SAFETY).read_text("utf-8"))
    return [Block(SAFETY, "section", plain(section)) for section in sections]


def sheet_blocks() -> Iterator[Block]:
    """The cautions of the design sheet's page."""
    html = (ROOT / "checker/sheet/pages/sheet.html").read_text("utf-8")
    for kind, inside in re.findall(r'<div class="(danger|caution)"[^>]*>(.*?)</div>', html, re.DOTALL):
        text = re.sub(r"\{%.*?%\}", " ", re.sub(r"\{\{.*?\}\}", "#", inside))
        yield Block(SHEET, kind, plain(re.sub(r"<[^>]+>", " ", text)))


def all_blocks() -> list[Block]:
    """Every caution of the lessons and of the design sheet."""
    pages = [page for page in sorted(LESSONS.rglob("*.md")) if page != LESSONS / SAFETY]
    return [block for page in pages for block in lesson_blocks(page)] + safety_page() + list(sheet_blocks())

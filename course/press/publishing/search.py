"""What the pages' search looks through: each section, exercise and word of the glossary, in a script that works from a USB stick too."""

import html
import json
import re
from collections import Counter
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import astuple, dataclass
from pathlib import Path

from course.press.publishing.booklet import Finished
from course.press.publishing.kept import Kept

CUT = re.compile(r'(?=<h[123]\b[^>]*\bid=)|(?=<section class="exercise")|(?<=</section>)|(?=<div id="[^"]*"><dt)')
HEAD = re.compile(r'<(h[123]|section|div)\b[^>]*\bid="([^"]*)"')
TITLE = re.compile(r'<h[123]\b.*?</h[123]>|<p class="exercise-title".*?</p>|<dfn\b.*?</dfn>', re.S)
NAME = re.compile(r"<(?:strong|dfn)\b.*?</(?:strong|dfn)>|<summary>(?:(?!</summary>).)*?<code>.*?</code>", re.S)
OTHER_WORD = re.compile(r'data-(?:us|gb)="([^"]*)"')
UNREAD = re.compile(r"<(script|style|svg|math|nav|output|select|button|noscript|pre)\b.*?</\1>", re.S)
FORMULA = '<span class="katex"'
SPAN = re.compile(r"<(/?)span\b")
BREAK = re.compile(r"</(?:p|li|td|th|summary|div|dt|dd|h[1-6])>")
ASIDE = re.compile(
    r'<p class="(?:unit-line|question-line|exercise-head|exercise-how|take-pack|heard-note|take-licence)".*?</p>', re.S
)
WORD = re.compile(r"[^\W_]+(?:[_'’-][^\W_]+)*")
KINDS = {"section": "exercise", "div": "word"}
SAYS = 140  # letters of a line of context, at most
EVERYWHERE = 0.2  # of the sections: a word that is in more tells none from another


@dataclass(frozen=True)
class Section:
    """What can be found: where it is, its kind, its page's title and its own, what is named in it, a line, and all its words."""

    address: str
    kind: str
    page: str
    title: str
    names: str
    says: str
    words: Sequence[str]
    formula: bool


def sections_of(page: Finished) -> Iterator[Section]:
    """The sections of a page; its exercises and the entries of a glossary are sections of their own.

    Parameters
    ----------
    page : Finished

    Yields
    ------
    Section
        With the words of both vocabularies.
    """
    found: list[list[str]] = []  # of each section its HTML, in parts
    current: list[str] = []
    for part in CUT.split(page.text):
        head = HEAD.match(part)
        if head is None:
            current.append(part)
            continue
        found.append([part])
        if head[1] not in KINDS:
            current = found[-1]
    for parts in found:
        head = HEAD.match(parts[0])
        if head:
            yield section(page, head[2], KINDS.get(head[1], "section"), "".join(parts))


def section(page: Finished, identity: str, kind: str, part: str) -> Section:
    """One section of a page, from its HTML."""
    title = TITLE.search(part)
    rest = ASIDE.sub("", part.replace(title[0], "", 1) if title else part)
    read, others = read_in(rest), html.unescape(" ".join(OTHER_WORD.findall(part)))
    names = [read_in(name.rpartition("<code>")[2]) for name in NAME.findall(rest)]
    own = read_in(title[0]) if title else ""
    words = {word.lower() for word in WORD.findall(f"{read} {others} {own}")}
    return Section(
        address=f"{page.address}#{identity}",
        kind=kind,
        page=read_in(page.title),
        title=own,
        names=" ".join(dict.fromkeys([*names, *(name.replace("_", " ") for name in names if "_" in name)])),
        says=first_sentence(read),
        words=sorted(word for word in words if len(word) > 1 and not word[0].isdigit()),
        formula='class="formula"' in part,
    )


def read_in(part: str) -> str:
    """The words of some HTML, without pictures, formulas and programs."""
    text = re.sub(r"<[^>]*>", "", BREAK.sub(" ", UNREAD.sub("", without_formulas(part))))
    return re.sub(r"\s+", " ", html.unescape(text)).strip()


def without_formulas(part: str) -> str:
    """Some HTML with the spans cut out in which KaTeX has set its formulas."""
    kept, at = [], 0
    while (start := part.find(FORMULA, at)) >= 0:
        kept.append(part[at:start])
        depth, at = 0, len(part)
        for span in SPAN.finditer(part, start):
            depth += -1 if span[1] else 1
            if depth == 0:
                at = part.index(">", span.start()) + 1
                break
    return "".join(kept) + part[at:]


def first_sentence(text: str) -> str:
    """As much of it as fits on a line."""
    sentence = re.split(r"(?<=[.!?])\s", text, maxsplit=1)[0]
    return sentence if len(sentence) <= SAYS else f"{sentence[:SAYS].rpartition(' ')[0]} …"


def write_search(site: Path, pages: Iterable[Finished], kept: Kept) -> None:
    """Write `search-index.js`: the sections, and of each the numbers of its words in one sorted list, as steps from one to the next.

    Parameters
    ----------
    site : Path
        Folder to write to.
    pages : iterable of Finished
    kept : Kept
        Where the sections of pages that have not changed are found.
    """

    def sections_in(page: Finished) -> list[Section]:
        parts = ("sections", page.address, page.title, page.text)
        return [Section(*entry) for entry in kept.of(lambda: [astuple(found) for found in sections_of(page)], *parts)]

    sections = [section for page in pages for section in sections_in(page)]
    counts = Counter(word for section in sections for word in section.words)
    words = sorted(word for word, count in counts.items() if count <= max(EVERYWHERE * len(sections), 3))
    place = {word: number for number, word in enumerate(words)}

    def steps(of: Sequence[str]) -> str:
        numbers = sorted(place[word] for word in of if word in place)
        return " ".join(base_36(after - before) for before, after in zip([0, *numbers], numbers, strict=False))

    titles = list(dict.fromkeys(section.page for section in sections))
    rows = [
        [s.address, s.kind, titles.index(s.page), s.title, s.names, s.says, int(s.formula), steps(s.words)] for s in sections
    ]
    index = json.dumps({"words": " ".join(words), "pages": titles, "sections": rows}, ensure_ascii=False, separators=(",", ":"))
    (site / "search-index.js").write_text(f"globalThis.COURSE_SEARCH={index};\n", "utf-8")


def base_36(number: int) -> str:
    """As JavaScript's `parseInt(…, 36)` reads it."""
    digits = "0123456789abcdefghijklmnopqrstuvwxyz"
    return digits[number] if number < 36 else base_36(number // 36) + digits[number % 36]

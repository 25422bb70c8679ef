"""Several pages as one, for paper: a unit as a booklet, the course as one book."""

import posixpath
import re
from dataclasses import dataclass

from course.press.pages import BOOKLETS
from course.press.publishing.kept import Kept
from course.press.templates import render
from course.press.text.markup import pieces
from course.press.text.printed import printed
from course.press.text.unbroken import keep_units

QUESTION = re.compile(r'<details class="block question">\s*<summary[^>]*>(.*?)</summary>(.*?)</details>', re.S)
TYPED = re.compile(r'<fieldset class="typed".*?</fieldset>', re.S)
LEGEND = re.compile(r"<legend>(.*?)</legend>")
INSTANCE = re.compile(r'<p class="typed-given"[^>]*>(.*?)</p>(.*?)<p class="typed-do">', re.S)
NUMBER = re.compile(r'<label[^>]*>(.*?)</label>.*? data-wanted="([^"]*)"', re.S)
NOT_FOR_PAPER = re.compile(
    r'<details class="take".*?</details>|<audio\b.*?</audio>|<p class="heard-note">.*?</p>|<label class="hold">.*?</label>'
    r'|<p>Next: .*?</p>|<a class="to-margin".*?</a>',
    re.S,
)
RULES = "club-rules"
FOLDED = re.compile(r'<details class="(?:asked|held)"(?! open)')
REFERS = {"aria-labelledby", "aria-describedby", "for"}


@dataclass(frozen=True)
class Finished:
    """A finished page: its address in the site, its title and its text as HTML."""

    address: str
    title: str
    text: str


def main_of(html: str) -> str:
    """What stands in a page's `<main>`; nothing if it has none."""
    found = re.search(r"<main\b[^>]*>(.*)</main>", html, re.S)
    return found[1] if found else ""


def join_pages(pages: list[Finished], kept: Kept, rules: Finished | None = None) -> str:
    """The pages one after another: a list of them, their texts, the club's rules, and the answers of the self-tests and in numbers.

    Parameters
    ----------
    pages : list of Finished, in reading order
    kept : Kept
        Where the text of each, as it stands in this booklet, is kept from one build to the next.
    rules : Finished, optional
        The club's own page of rules, which gets the id `RULES`.

    Returns
    -------
    str
        HTML for a page in the folder `BOOKLETS`; every address in it leads within the booklet where it can.
    """
    places = {page.address: f"p{number}" for number, page in enumerate(pages, 1)}
    if rules:
        pages, places = [*pages, rules], places | {rules.address: RULES}
    answers: list[str] = []
    numbers: list[list[tuple[str, str]]] = []

    def number_question(match: re.Match[str]) -> str:
        answers.append(match[2])
        return render("booklet_question.html", number=len(answers), question=match[1])

    def number_instances(match: re.Match[str]) -> str:
        first = len(numbers) + 1
        asked = [(given, NUMBER.findall(parts)) for given, parts in INSTANCE.findall(match[0])]
        numbers.extend(parts for _, parts in asked)
        return render("booklet_typed.html", legend=LEGEND.findall(match[0])[0], first=first, asked=asked)

    def text_of(page: Finished) -> str:
        parts = ("rebased", page.text, page.address, *places, *places.values())
        return str(kept.of(lambda: rebase(for_paper(page.text), page.address, places), *parts))

    texts = [text_of(page) for page in pages]
    sections = [
        (places[page.address], page.title, TYPED.sub(number_instances, QUESTION.sub(number_question, text)))
        for page, text in zip(pages, texts, strict=True)
    ]
    return render(
        "booklet.html", sections=sections, answers=answers, numbers=numbers, printed=lambda wanted: keep_units(printed(wanted))
    )


def for_paper(text: str) -> str:
    """A page's HTML without what paper cannot do, and with its exercises unfolded."""
    return FOLDED.sub(r"\g<0> open", NOT_FOR_PAPER.sub("", text))


def rebase(text: str, address: str, places: dict[str, str]) -> str:
    """A page's HTML with ids of its own in the booklet, and its addresses as they are seen from there.

    Parameters
    ----------
    text : str
    address : str
        Of the page in the site.
    places : dict
        Of each page in the booklet, by address, the id it has there.

    Returns
    -------
    str
    """
    own = places[address]

    def attribute(match: re.Match[str]) -> str:
        name, value = match[1], match[2]
        if name == "id":
            value = f"{own}-{value}"
        elif name in REFERS:
            value = " ".join(f"{own}-{part}" for part in value.split())
        elif name in ("href", "src", "xlink:href"):
            value = rebase_link(value, address, places)
        return f'{name}="{value}"'

    def tag(source: str) -> str:
        return re.sub(r'([\w:-]+)="([^"]*)"', attribute, source).replace("url(#", f"url(#{own}-")

    return "".join(tag(piece.source) if piece.kind in ("start", "empty") else piece.source for piece in pieces(text))


def rebase_link(value: str, address: str, places: dict[str, str]) -> str:
    """Where a link of a page leads, as seen from the booklet."""
    if re.match(r"[a-z][a-z+.-]*:", value):
        return value
    path, hash_, place = value.partition("#")
    target = posixpath.normpath(posixpath.join(posixpath.dirname(address), path)) if path else address
    if target in places:
        return f"#{places[target]}-{place}" if place else f"#{places[target]}"
    return posixpath.relpath(target, BOOKLETS) + hash_ + place

"""Several pages as one, for paper: a unit as a booklet, the course as one book."""

import posixpath
import re
from dataclasses import dataclass

FOLDER = "print"
QUESTION = re.compile(r'<details class="block question">\s*<summary[^>]*>(.*?)</summary>(.*?)</details>', re.S)
NOT_FOR_PAPER = re.compile(
    r'<details class="take".*?</details>|<audio\b.*?</audio>|<p class="heard-note">.*?</p>|<label class="hold">.*?</label>'
    r'|<p>Next: .*?</p>',
    re.S,
)
REFERS = {"aria-labelledby", "aria-describedby", "for"}


@dataclass(frozen=True)
class Finished:
    """A finished page: its address in the site, its title and its text as HTML."""

    address: str
    title: str
    text: str


def text_of(html: str) -> str:
    """What stands in a page's `<main>`."""
    return re.search(r"<main\b[^>]*>(.*)</main>", html, re.S)[1]


def booklet(pages: list[Finished]) -> str:
    """The pages one after another: a list of them, their texts, and the answers of their self-tests at the end.

    Parameters
    ----------
    pages : list of Finished, in reading order

    Returns
    -------
    str
        HTML for a page in the folder `FOLDER`; every address in it leads within the booklet where it can.
    """
    places = {page.address: f"p{number}" for number, page in enumerate(pages, 1)}
    contents = "".join(f'<li><a href="#{places[page.address]}">{page.title}</a></li>\n' for page in pages)
    parts, answers = [], []
    for page in pages:

        def asked(match: re.Match) -> str:
            answers.append(match[2])
            mark = f'<b class="asked-number">{len(answers)}</b>'
            return f'<div class="block question" id="q{len(answers)}"><p class="block-title">{mark}{match[1]}</p></div>'

        text = moved(NOT_FOR_PAPER.sub("", page.text), page.address, places)
        parts.append(f'<section class="page" id="{places[page.address]}">\n{QUESTION.sub(asked, text)}\n</section>\n')
    if answers:
        contents += '<li><a href="#answers">Answers to the self-tests</a></li>\n'
        parts.append(answers_html(answers))
    nav = f'<nav class="booklet-contents" aria-label="In this booklet"><ol>\n{contents}</ol></nav>\n'
    return nav + "".join(parts)


def answers_html(answers: list[str]) -> str:
    items = "".join(
        f'<div class="answer"><b class="asked-number">{number}</b>{answer}</div>\n' for number, answer in enumerate(answers, 1)
    )
    return f'<section class="page" id="answers">\n<h1>Answers to the self-tests</h1>\n{items}</section>\n'


def moved(text: str, address: str, places: dict[str, str]) -> str:
    """A page's HTML with ids of its own in the booklet, and its addresses as they are seen from there."""
    own = places[address]

    def attribute(match: re.Match) -> str:
        name, value = match[1], match[2]
        if name == "id":
            value = f"{own}-{value}"
        elif name in REFERS:
            value = " ".join(f"{own}-{part}" for part in value.split())
        elif name in ("href", "src", "xlink:href"):
            value = link(value, address, places)
        return f'{name}="{value}"'

    def tag(match: re.Match) -> str:
        return re.sub(r'([\w:-]+)="([^"]*)"', attribute, match[0]).replace("url(#", f"url(#{own}-")

    return re.sub(r"<[a-zA-Z](?:\"[^\"]*\"|'[^']*'|[^>\"'])*>", tag, text)


def link(value: str, address: str, places: dict[str, str]) -> str:
    """Where a link of a page leads, as seen from the booklet."""
    if re.match(r"[a-z][a-z+.-]*:", value):
        return value
    path, hash_, place = value.partition("#")
    target = posixpath.normpath(posixpath.join(posixpath.dirname(address), path)) if path else address
    if target in places:
        return f"#{places[target]}-{place}" if place else f"#{places[target]}"
    return posixpath.relpath(target, FOLDER) + hash_ + place

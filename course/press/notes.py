"""The instructor's notes to each section of a unit, from the lists of the instructor's page.

In a list under "How to take the sections" the number of an item is the section's. Elsewhere an item is a note to each
section that it names: "(section 3)".
"""

import re
from html.parser import HTMLParser

BY_NUMBER = "how-to-take-the-sections"


class Items(HTMLParser):
    """The items of the page's own lists: the heading's id they stand under, their number in the list, where they are."""

    def __init__(self, html: str):
        super().__init__(convert_charrefs=False)
        self.lines = [0, *(match.end() for match in re.finditer("\n", html))]
        self.heading, self.depth, self.count, self.start = "", 0, 0, 0
        self.found: list[tuple[str, int, str]] = []
        self.html = html
        self.feed(html)

    def place(self) -> int:
        line, column = self.getpos()
        return self.lines[line - 1] + column

    def handle_starttag(self, tag, attrs):
        if tag == "h2":
            self.heading = dict(attrs).get("id") or ""
        elif tag in ("ol", "ul"):
            self.depth += 1
            self.count = 0 if self.depth == 1 else self.count
        elif tag == "li" and self.depth == 1:
            self.count += 1
            self.start = self.place() + len(self.get_starttag_text())

    def handle_endtag(self, tag):
        if tag in ("ol", "ul"):
            self.depth -= 1
        elif tag == "li" and self.depth == 1:
            self.found.append((self.heading, self.count, self.html[self.start : self.place()]))


def notes(instructor: str) -> list[tuple[int, str]]:
    """The notes of an instructor's page: section and HTML, in the page's order.

    Parameters
    ----------
    instructor : str
        HTML of the page's text.

    Returns
    -------
    list of (int, str)
    """
    found = []
    for heading, number, html in Items(instructor).found:
        if heading == BY_NUMBER:
            found.append((number, html))
            continue
        for named in re.findall(r"\b[Ss]ections? ((?:\d+)(?:(?:, | and )\d+)*)", re.sub(r"<[^>]+>", "", html)):
            found += [(int(section), html) for section in re.findall(r"\d+", named)]
    return found


def notes_html(instructor: str) -> str:
    """The notes for the page of a lesson: not shown there, but given to the window that the speaker reads."""
    items = "".join(f'<div data-section="{section}">{without_ids(html)}</div>\n' for section, html in notes(instructor))
    return f'<div id="notes" hidden>\n{items}</div>' if items else ""


def without_ids(html: str) -> str:
    return re.sub(r'\sid="[^"]*"', "", html)

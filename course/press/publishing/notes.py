"""The instructor's notes to each section of a unit, from the lists of the instructor's page.

In a list under "How to take the sections" the number of an item is the section's. Elsewhere an item is a note to each
section that it names: "(section 3)".
"""

import re
from collections.abc import Iterator

from course.press.templates import render
from course.press.text.markup import pieces

BY_NUMBER = "how-to-take-the-sections"


def list_items(html: str) -> Iterator[tuple[str, int, str]]:
    """The items of a page's own lists: the id of the heading they stand under, their number in the list, their HTML."""
    heading, depth, count = "", 0, 0
    item: list[str] = []
    for piece in pieces(html):
        tag = (piece.kind, piece.name)
        if tag == ("start", "h2"):
            heading = piece.attributes.get("id") or ""
        elif tag in (("end", "ol"), ("end", "ul")):
            depth -= 1
        if tag == ("end", "li") and depth == 1:
            yield heading, count, "".join(item)
        if tag == ("start", "li") and depth == 1:
            count, item = count + 1, []
        else:
            item.append(piece.source)
        if tag in (("start", "ol"), ("start", "ul")):
            depth += 1
            count = 0 if depth == 1 else count


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
    for heading, number, html in list_items(instructor):
        if heading == BY_NUMBER:
            found.append((number, html))
            continue
        for named in re.findall(r"\b[Ss]ections? ((?:\d+)(?:(?:, | and )\d+)*)", re.sub(r"<[^>]+>", "", html)):
            found += [(int(section), html) for section in re.findall(r"\d+", named)]
    return found


def notes_html(instructor: str) -> str:
    """The notes for the page of a lesson: not shown there, but given to the window that the speaker reads."""
    return render("notes.html", notes=[(section, without_ids(html)) for section, html in notes(instructor)])


def without_ids(html: str) -> str:
    """Some HTML without its ids, which are the instructor's page's."""
    return re.sub(r'\sid="[^"]*"', "", html)

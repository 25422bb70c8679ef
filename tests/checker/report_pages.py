"""The pages that are written for a class, taken apart."""

from datetime import date
from html.parser import HTMLParser

from checker.course import PATHS, ROOT
from checker.report.pages import write_reports

DAY = date(2031, 5, 4)
STYLE = (ROOT / "checker/report/report.css").read_text("utf-8")
SCRIPT = (ROOT / "checker/report/pages/class.js").read_bytes()


class Page(HTMLParser):
    """A page taken apart: elements with their attributes, ids, links, and all text."""

    def __init__(self, html):
        super().__init__()
        self.elements, self.words = [], []
        self.feed(html)

    def handle_starttag(self, tag, attributes):
        self.elements.append((tag, dict(attributes)))

    def handle_data(self, data):
        self.words.append(data)

    @property
    def text(self):
        return "".join(self.words)

    @property
    def ids(self):
        return [attributes["id"] for _, attributes in self.elements if "id" in attributes]

    @property
    def links(self):
        return [attributes["href"] for tag, attributes in self.elements if tag == "a"]


def pages(members, folder, alike=()):
    """Name to page, of all that is written for a class."""
    index = write_reports(members, PATHS, folder, DAY, alike)
    return {file.relative_to(folder).as_posix(): Page(file.read_text("utf-8")) for file in index.parent.rglob("*.html")}

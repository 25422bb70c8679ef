"""One building of the site, from its first page to what lies beside the last."""

import importlib
import json
import logging
import re
from collections import Counter
from collections.abc import Callable
from dataclasses import replace
from functools import cached_property
from html import escape
from pathlib import Path
from typing import Any

from mkdocs.structure.pages import Page
from mkdocs.structure.toc import AnchorLink, get_toc
from mkdocs.utils import CountHandler

from course.press import pages
from course.press.boxes import bench_box, club_box, glossary_box, list_boxes
from course.press.boxes.exercise_box import exercise_html
from course.press.boxes.media_boxes import MediaBoxes
from course.press.boxes.paper_box import paper_html
from course.press.boxes.published_box import published_figures_html
from course.press.boxes.sheet_keys_box import sheet_keys_html
from course.press.boxes.typed_box import TypedAnswers
from course.press.club import Club
from course.press.current_page import CurrentPage
from course.press.faults import Fault
from course.press.media.sources import MediaSources
from course.press.media.store import MediaStore
from course.press.publishing.bench_files import write_bench
from course.press.publishing.booklet import Finished, join_pages, main_of
from course.press.publishing.kept import Kept, as_text, from_text, write_files
from course.press.publishing.links import link_faults
from course.press.publishing.notes import notes_html
from course.press.publishing.page_faults import page_faults
from course.press.publishing.scripts import write_page_scripts
from course.press.publishing.search import write_search
from course.press.publishing.served import write_served
from course.press.publishing.typefaces import copy_typefaces
from course.press.text.calls import Maker
from course.press.text.formulas import Typesetter
from course.press.text.markdown import CourseMarkdown
from course.press.text.prose import Prose
from course.press.text.switch import american_first, in_american, mark_words
from course.press.text.unbroken import keep_units
from course.press.text.vocabulary import Vocabulary

GLOSSARY = "glossary.html"
MEDIA_CALL = re.compile(r"""\{\{\s*(figure|sound)\(["']([^"']+)["']\)""")
WARNINGS = CountHandler(level=logging.WARNING)
logging.getLogger("mkdocs").addHandler(WARNINGS)


class Edition:
    """The state of one build.

    Parameters
    ----------
    course : Path
        Folder of `mkdocs.yml`.
    club : Club
        Who publishes it.
    code : str, optional
        Hash of all that a page follows from besides its text; without it nothing is kept for the next build.
    """

    def __init__(self, course: Path, club: Club, code: str = "") -> None:
        self.course, self.club = course, club
        self.kept = Kept(course / "build" / "pages", code)
        self.current = CurrentPage()
        self.vocabulary = Vocabulary(course / "glossary.toml")
        self.typesetter = Typesetter()
        self.prose = Prose(self.typesetter, self.current.note_fault)
        sources = MediaSources(course.parent)
        store = MediaStore(sources, course / "build", {"raster": 1000 * club.raster})
        self.media = MediaBoxes(store, self.prose, self.current, self.first_words, club.address)
        self.typed = TypedAnswers(course.parent, sources.modules, course / "build" / "answers")
        self.benches: Counter[str] = Counter()  # how many a page has
        self.finished: dict[str, Finished] = {}
        self.beside: dict[str, bytes] = {}  # files, by address
        for makers in (self.media.makers, self.list_makers(), self.club_makers(), self.word_makers(), MAKERS):
            self.prose.add_makers(makers)
        self.prose.add_makers({"bench": self.bench})
        self.prose.add_makers({"by_raster": self.by_raster}, in_formulas=True)

    def list_makers(self) -> dict[str, Maker]:
        """The lists of units and of what belongs to them."""
        lists = {
            "units": list_boxes.units_html,
            "instructor_pages": list_boxes.instructor_pages_html,
            "booklets": list_boxes.booklets_html,
        }

        def maker(html: Callable[[list[pages.UnitPages], Callable[[str], str]], str]) -> Maker:
            return lambda: html(self.units, self.current.relative)

        return {name: maker(html) for name, html in lists.items()}

    def club_makers(self) -> dict[str, Maker]:
        """What the club's file says."""
        return {
            "club_safety": lambda: club_box.safety_html(self.club, self.current.relative),
            "club_pack": lambda: club_box.pack_html(self.club, self.current.relative),
            "exercise": lambda name: exercise_html(name, self.typed, club_box.pack_address(self.club, self.current.relative)),
            "club_lines": lambda: club_box.lines_html(self.club),
        }

    def word_makers(self) -> dict[str, Maker]:
        """The two vocabularies."""
        return {
            "term": self.term,
            "keep": glossary_box.keep_html,
            "glossary": lambda: glossary_box.glossary_html(self.vocabulary),
        }

    def term(self, text: str) -> str:
        """First use of a word, with a link into the glossary."""
        entry = self.vocabulary.term_of(text)
        return glossary_box.term_html(self.vocabulary, text, self.current.relative(f"{GLOSSARY}#{entry.anchor}"))

    def bench(self, setting: str, size: str = "small") -> str:
        """A bench that stands at a setting, the next on its page."""
        url = self.current.known.url
        self.benches[url] += 1
        address = "whole-bench" if size == "whole" else f"bench-{self.benches[url]}"
        bench = bench_box.bench_html(setting, address, self.current.relative, self.media.circuit, size)
        return bench + paper_html(self.club.address, f"{url}#{address}", "Turn the knobs")

    def by_raster(self, nine: Any, ten: Any) -> Any:
        """The one of two numbers or texts that fits the club's raster, of 9 or of 10 kHz; a text is in our Markdown."""
        fitting = ten if self.club.raster == 10 else nine
        return f"<span>{self.prose.inline(fitting)}</span>" if isinstance(fitting, str) else fitting

    def markdown_extension(self) -> CourseMarkdown:
        return self.prose.markdown_extension()

    def begin_page(self, page: Page) -> None:
        """What is asked and found wrong from now on belongs to this page."""
        self.current.page = page

    def begin_text(self, markdown: str, files: list[str]) -> str:
        """What is still to be turned into HTML of a page's text: nothing if its HTML is kept.

        Parameters
        ----------
        markdown : str
        files : list of str
            The sources of all that lies in the site, to which the page may lead.
        """
        page = self.current.known
        self.text_parts = ("text", page.file.src_uri, page.url, markdown, repr(page.meta), *files, repr(self.units))
        self.kept_text = self.kept.find(*self.text_parts)
        self.troubles = self.count_troubles()
        return "" if self.kept_text else markdown

    @cached_property
    def units(self) -> list[pages.UnitPages]:
        """The units, as this build finds them."""
        return pages.units_in(self.course / "lessons")

    def notes(self, instructor: str) -> str:
        """The speaker's notes, from the HTML of an instructor's page."""
        return str(self.kept.of(lambda: notes_html(instructor), "notes", instructor))

    def make_ahead(self) -> None:
        """The figures and sounds of all lessons, unless the last build with the same code was complete."""
        if self.kept.find("complete") is None:
            texts = [page.read_text("utf-8-sig") for page in sorted((self.course / "lessons").rglob("*.md"))]
            self.media.make_ahead(dict.fromkeys(call for text in texts for call in MEDIA_CALL.findall(text)))

    def finish_text(self, html: str) -> str:
        """The HTML of the page's text, as it is kept or as it has now been made; its files and title noted with it."""
        page = self.current.known
        entry = self.kept_text or {
            "html": html,
            "title": page.title,
            "toc": [toc_token(link) for link in page.toc],
            "benches": self.benches[page.url],
            "files": as_text(self.media.files),
        }
        if self.kept_text:
            page.title, page.toc = entry["title"], get_toc(entry["toc"])
            self.benches[page.url] = entry["benches"]
            self.beside |= from_text(entry["files"])
        elif self.count_troubles() == self.troubles:
            self.kept.keep(entry, *self.text_parts)
        self.beside |= self.media.files
        self.media.files.clear()
        return str(entry["html"])

    def count_troubles(self) -> int:
        """How many faults and warnings there have been: a page that has any is not kept, or the next build would be silent."""
        return len(self.current.faults) + sum(number for _, number in WARNINGS.get_counts())

    def finish_page(self, html: str) -> str:
        """The page with its words marked, its tables in boxes that scroll, and what is wrong with it noted."""
        page = self.current.known
        faults = self.kept.of(lambda: list(page_faults(html, self.vocabulary)), "faults", html)
        for sentence, text in faults:
            self.current.note_fault(sentence, text)
        html = self.kept.of(lambda: self.mark_page(html), "page", html)
        self.finished[page.file.src_uri] = Finished(page.file.dest_uri, self.mark_title(str(page.title)), main_of(html))
        return html

    def mark_page(self, html: str) -> str:
        """The page with its words marked, its tables in boxes that scroll, each number with its unit."""
        html = re.sub(r"<th[^>]*></th>", "<td></td>", html)
        html = re.sub(r"<table\b.*?</table>", r'<div class="wide">\g<0></div>', html, flags=re.S)
        return keep_units(self.with_switch(mark_words(html, self.vocabulary)))

    def mark_title(self, text: str) -> str:
        """A title as HTML with its words marked."""
        return self.with_switch(self.vocabulary.mark(escape(text)))

    def with_switch(self, marked: str) -> str:
        """Marked HTML that begins with the club's words."""
        return american_first(marked) if self.club.american else marked

    def first_words(self, html: str) -> str:
        """HTML or SVG that leaves the page, in the words that the pages begin with."""
        return in_american(html, self.vocabulary) if self.club.american else html

    def booklets(self, render: Callable[..., str]) -> dict[str, str]:
        """A booklet of each unit and one of the whole course, by address.

        Parameters
        ----------
        render : function
            Makes a page of a booklet's `title`, `question`, `content`, and `back`, the page it belongs to.
        """
        found = {}
        for unit in self.units:
            content = self.join([self.finished[name] for name in unit.pages])
            title, question = self.mark_title(f"Unit {unit.number}: {unit.title}"), self.mark_title(unit.question)
            found[f"{pages.BOOKLETS}/{unit.folder}.html"] = render(title, question, content, f"{unit.folder}/index.html")
        if self.units:
            found[f"{pages.BOOKLETS}/course.html"] = render("The whole course", "", self.whole_course(self.units), "index.html")
        return found

    def whole_course(self, units: list[pages.UnitPages]) -> str:
        """All lessons between the safety page and the glossary, then the instructor's pages; each with its unit's number."""
        number = {name: f"{unit.number} " for unit in units for name in (*unit.pages, unit.instructor)}
        order = ["safety.md", *(name for unit in units for name in unit.pages), "glossary.md"]
        order += [unit.instructor for unit in units if unit.instructor]
        parts = [(number.get(name, ""), self.finished[name]) for name in order if name in self.finished]
        return self.join([replace(page, title=unit + page.title) for unit, page in parts])

    def join(self, parts: list[Finished]) -> str:
        """Pages as a booklet, with the club's own rules at its end: a link to them leads nowhere on paper."""
        return join_pages(parts, self.kept, self.finished.get(self.club.rules_page))

    def numbers_asked(self) -> dict[str, int]:
        """Of each page of a unit, by its address, how many numbers a reader is asked for."""
        names = [name for unit in self.units for name in unit.pages]
        found = [self.finished[name] for name in names if name in self.finished]
        return {page.address: page.text.count(" data-wanted=") for page in found}

    def write_scripts(self, folder: Path) -> None:
        """The scripts of every page, with what they take from the checker's reader and from the pages."""
        reader = importlib.import_module("course.answers.reader").reader_tables()
        write_page_scripts(self.course / "theme", folder, {"READER": reader, "PAGES": self.numbers_asked()})

    def finish(self, site: Path, render_booklet: Callable[..., str], says: str) -> list[str]:
        """Put what belongs beside the pages there: booklets, what is taken away, the bench, scripts, typefaces.

        Parameters
        ----------
        site : Path
            Folder of the finished pages.
        render_booklet : function
            As `booklets` takes it.
        says : str
            What the course is, in a sentence.

        Returns
        -------
        list of str
            All faults found in this build, dead links too.
        """
        self.typesetter.close()
        write_files(site, {name: html.encode() for name, html in self.booklets(render_booklet).items()} | self.beside)
        if not self.club.address:
            for leftover in site.glob("sitemap.xml*"):
                leftover.unlink()
        try:
            asked = json.dumps(self.numbers_asked())
            self.kept.write(site, self.write_scripts, "scripts", asked)
            write_search(site, self.finished.values(), self.kept)
            if any(self.benches.values()):
                self.kept.write(site / "bench", lambda folder: write_bench(self.course, folder), "bench")
        except Fault as fault:
            self.current.faults.append(str(fault))
        if self.club.pack_file:
            (site / self.club.pack_file).write_bytes((self.course / self.club.pack_file).read_bytes())
        copy_typefaces(self.course / "node_modules", site)
        write_served(site, self.course / "theme", self.club, says, self.kept)
        faults = self.current.faults or link_faults(site, self.kept)
        if not faults:
            self.kept.keep("yes", "complete")
        self.kept.drop_unused()
        return faults


def toc_token(link: AnchorLink) -> Any:
    """A heading with those under it, as MkDocs takes them from Markdown."""
    return {"level": link.level, "id": link.id, "name": link.title, "children": [toc_token(child) for child in link.children]}


# What needs nothing of the build.
MAKERS: dict[str, Maker] = {
    "outside_checks": published_figures_html,
    "sheet_keys": sheet_keys_html,
}

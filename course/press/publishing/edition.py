"""One building of the site, from its first page to what lies beside the last."""

import re
from collections import Counter
from collections.abc import Callable
from dataclasses import replace
from html import escape
from pathlib import Path
from typing import Any

from mkdocs.structure.pages import Page

from course.press import pages
from course.press.boxes import bench_box, club_box, glossary_box, list_boxes
from course.press.boxes.exercise_box import exercise_html
from course.press.boxes.media_boxes import MediaBoxes
from course.press.boxes.published_box import published_figures_html
from course.press.boxes.sheet_keys_box import sheet_keys_html
from course.press.club import Club
from course.press.current_page import CurrentPage
from course.press.faults import Fault
from course.press.media.sources import MediaSources
from course.press.media.store import MediaStore
from course.press.publishing.bench_files import write_bench
from course.press.publishing.booklet import Finished, join_pages, main_of
from course.press.publishing.links import link_faults
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


class Edition:
    """The state of one build.

    Parameters
    ----------
    course : Path
        Folder of `mkdocs.yml`.
    club : Club
        Who publishes it.
    """

    def __init__(self, course: Path, club: Club) -> None:
        self.course, self.club = course, club
        self.current = CurrentPage()
        self.vocabulary = Vocabulary(course / "glossary.toml")
        self.typesetter = Typesetter()
        self.prose = Prose(self.typesetter, self.current.note_fault)
        store = MediaStore(MediaSources(course.parent), course / "build", {"raster": 1000 * club.raster})
        self.media = MediaBoxes(store, self.prose, self.current, self.first_words)
        self.benches: Counter[str] = Counter()  # how many a page has
        self.finished: dict[str, Finished] = {}
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
            return lambda: html(pages.units_in(self.course / "lessons"), self.current.relative)

        return {name: maker(html) for name, html in lists.items()}

    def club_makers(self) -> dict[str, Maker]:
        """What the club's file says."""
        return {
            "club_safety": lambda: club_box.safety_html(self.club, self.current.relative),
            "club_pack": lambda: club_box.pack_html(self.club, self.current.relative),
            "exercise": lambda name: exercise_html(name, club_box.pack_address(self.club, self.current.relative)),
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
        return bench_box.bench_html(setting, address, self.current.relative, self.media.circuit, size)

    def by_raster(self, nine: Any, ten: Any) -> Any:
        """The one of two numbers or texts that fits the club's raster, of 9 or of 10 kHz; a text is in our Markdown."""
        fitting = ten if self.club.raster == 10 else nine
        return f"<span>{self.prose.inline(fitting)}</span>" if isinstance(fitting, str) else fitting

    def markdown_extension(self) -> CourseMarkdown:
        return self.prose.markdown_extension()

    def begin_page(self, page: Page) -> None:
        """What is asked and found wrong from now on belongs to this page."""
        self.current.page = page

    def finish_page(self, html: str) -> str:
        """The page with its words marked, its tables in boxes that scroll, and what is wrong with it noted."""
        page = self.current.known
        for sentence, text in page_faults(html, self.vocabulary):
            self.current.note_fault(sentence, text)
        html = re.sub(r"<th[^>]*></th>", "<td></td>", html)
        html = re.sub(r"<table\b.*?</table>", r'<div class="wide">\g<0></div>', html, flags=re.S)
        html = keep_units(self.with_switch(mark_words(html, self.vocabulary)))
        self.finished[page.file.src_uri] = Finished(page.file.dest_uri, self.mark_title(str(page.title)), main_of(html))
        return html

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
        units = pages.units_in(self.course / "lessons")
        found = {}
        for unit in units:
            content = join_pages([self.finished[name] for name in unit.pages])
            title, question = self.mark_title(f"Unit {unit.number}: {unit.title}"), self.mark_title(unit.question)
            found[f"{pages.BOOKLETS}/{unit.folder}.html"] = render(title, question, content, f"{unit.folder}/index.html")
        if units:
            found[f"{pages.BOOKLETS}/course.html"] = render("The whole course", "", self.whole_course(units), "index.html")
        return found

    def whole_course(self, units: list[pages.UnitPages]) -> str:
        """All lessons between the safety page and the glossary, then the instructor's pages; each with its unit's number."""
        number = {name: f"{unit.number} " for unit in units for name in (*unit.pages, unit.instructor)}
        order = ["safety.md", *(name for unit in units for name in unit.pages), "glossary.md"]
        order += [unit.instructor for unit in units if unit.instructor]
        parts = [(number.get(name, ""), self.finished[name]) for name in order if name in self.finished]
        return join_pages([replace(page, title=unit + page.title) for unit, page in parts])

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
        beside = {name: html.encode() for name, html in self.booklets(render_booklet).items()} | self.media.files
        for name, content in beside.items():
            (site / name).parent.mkdir(parents=True, exist_ok=True)
            (site / name).write_bytes(content)
        if not self.club.address:
            for leftover in site.glob("sitemap.xml*"):
                leftover.unlink()
        try:
            write_page_scripts(self.course / "theme", site)
            write_search(site, self.finished.values())
            if self.benches:
                write_bench(self.course, site / "bench")
        except Fault as fault:
            self.current.faults.append(str(fault))
        if self.club.pack_file:
            (site / self.club.pack_file).write_bytes((self.course / self.club.pack_file).read_bytes())
        copy_typefaces(self.course / "node_modules", site)
        write_served(site, self.course / "theme", self.club, says)
        return self.current.faults or link_faults(site)


# What needs nothing of the build.
MAKERS: dict[str, Maker] = {
    "outside_checks": published_figures_html,
    "sheet_keys": sheet_keys_html,
}

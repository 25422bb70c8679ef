"""One building of the site: what a page's calls make, what was used, and what was found wrong."""

import base64
import json
import re
import shutil
from collections import Counter
from collections.abc import Callable
from dataclasses import replace
from html import escape
from pathlib import Path

from markdown import Markdown
from mkdocs.utils import get_relative_url

from course.press import bench_box, booklet, boxes, club, numbers, pages, take, words
from course.press.bench import write_bench
from course.press.calls import answer, replace_calls
from course.press.exercise_box import exercise_html
from course.press.faults import Fault
from course.press.formulas import Typesetter
from course.press.links import link_faults
from course.press.made import FIGURE, SOUND, Made, made
from course.press.markdown import CourseMarkdown
from course.press.outside import outside_html
from course.press.sheet_keys import sheet_keys_html
from course.press.sources import Sources
from course.settings import RASTER

GLOSSARY = "glossary.html"
SITE_SETTINGS = {"raster": RASTER}
KATEX_FONTS = re.compile(r",url\([^)]*\) format\(\"(?:woff|truetype)\"\)")
NOT_PROSE = re.compile(r"<(code|pre|script|style|annotation|mark)\b.*?</\1>", re.S)
LEFT_OVER = re.compile(r"\{\{|\}\}|\$\$|!!!")
TYPEFACES = {
    "alegreya-sans": ("latin-400-normal", "latin-400-italic", "latin-700-normal", "greek-400-normal"),
    "alegreya": ("latin-700-normal",),
}
PICTURE_LETTERS = (
    ("latin-400-normal", 400, ""),
    ("latin-700-normal", 700, ""),
    ("greek-400-normal", 400, ";unicode-range:U+0370-03FF"),
)


class Edition:
    """The state of one build.

    Parameters
    ----------
    course : Path
        Folder of `mkdocs.yml`.
    for_club : Club
        Who publishes it.
    """

    def __init__(self, course: Path, for_club: club.Club):
        self.course = course
        self.club = for_club
        self.site = {"raster": 1000 * for_club.raster}
        self.build = course / "build"
        self.sources = Sources(course.parent)
        self.typesetter = Typesetter(course)
        self.words = words.Words(course / "glossary.toml")
        self.page = None
        self.faults: list[str] = []
        self.benches: Counter[str] = Counter()
        self.taken: dict[str, bytes] = {}
        self.finished: dict[str, booklet.Finished] = {}
        self.makers = {
            "figure": self.figure,
            "sound": self.sound,
            "exercise": exercise_html,
            "bench": self.bench,
            "number": numbers.number,
            "value": numbers.value,
            "text": numbers.Text,
            "term": self.term,
            "keep": lambda text: f"<span data-keep>{text}</span>",
            "units": lambda: boxes.units_html(pages.units(course / "lessons"), self.relative),
            "instructor_pages": lambda: boxes.instructor_pages_html(pages.units(course / "lessons"), self.relative),
            "outside_checks": outside_html,
            "glossary": lambda: words.glossary_html(self.words),
            "by_raster": self.by_raster,
            "booklets": lambda: boxes.booklets_html(pages.units(course / "lessons"), self.relative),
            "club_safety": lambda: club.safety_html(self.club, self.relative),
            "club_lines": lambda: club.lines_html(self.club),
            "sheet_keys": sheet_keys_html,
        }

    def markdown_extension(self) -> CourseMarkdown:
        return CourseMarkdown(self.formula, self.call, self.fault)

    def fault(self, sentence: str, text: str = "") -> None:
        """Note what is wrong, with the page and, where it can be found, the line."""
        source = Path(self.page.file.abs_src_path)
        content = source.read_text("utf-8-sig")
        place = f", line {content[: content.index(text)].count(chr(10)) + 1}" if text and text in content else ""
        note = f"{self.page.file.src_uri}{place}: {sentence}"
        if note not in self.faults:
            self.faults.append(note)

    def tried(self, make: Callable[[], str], text: str) -> str:
        try:
            return make()
        except Fault as fault:
            self.fault(f"{fault}", text)
            return f'<mark class="fault">{escape(text)}</mark>'

    def call(self, text: str) -> str:
        """HTML or plain text for one `{{ … }}`."""
        return self.tried(lambda: answer(text, self.makers), text)

    def formula(self, tex: str, display: bool, stop: str = "") -> str:
        """HTML of one formula, its numbers computed first, and of the stop that follows it."""

        def typeset() -> str:
            in_formula = {"number": numbers.number_in_formula, "value": numbers.value, "text": numbers.Text}
            in_formula |= {"by_raster": self.by_raster}
            computed = replace_calls(tex, lambda call: answer(call, in_formula))
            return self.typesetter.set(computed + (rf"\text{{{stop}}}" if stop else ""), display)

        return self.tried(typeset, tex)

    def inline(self, text: str) -> str:
        """HTML of a caption or another short text in our Markdown."""
        html = Markdown(extensions=[self.markdown_extension()]).convert(text)
        return html.removeprefix("<p>").removesuffix("</p>")

    def relative(self, address: str) -> str:
        return get_relative_url(address, self.page.url)

    def by_raster(self, nine, ten):
        """The one of two numbers or texts that fits the club's raster, of 9 or of 10 kHz; a text is in our Markdown."""
        fitting = ten if self.club.raster == 10 else nine
        return f"<span>{self.inline(fitting)}</span>" if isinstance(fitting, str) else fitting

    def figure(self, name: str) -> str:
        picture = made(FIGURE, name, self.sources, self.build, self.site)
        caption, drawn = self.inline(picture.about["caption"]), picture.files[".svg"].read_text("utf-8")
        label = self.label("figure", name, picture.about, picture.about["alt"])
        svg = take.standing_alone(self.worded(drawn), label)
        self.taken[f"figures/{name}.svg"] = svg.encode()
        take_away = self.take("figure", name, picture, label, (".svg",))
        return boxes.figure_html(picture, caption, anchor("figure", name), take_away)

    def sound(self, name: str) -> str:
        sound = made(SOUND, name, self.sources, self.build, self.site)
        caption, transcript = (self.inline(sound.about[part]) for part in ("caption", "transcript"))
        title = name.split("/")[1].replace("_", " ").capitalize()
        picture = sound.files[".svg"].read_text("utf-8")
        label = self.label("sound", name, sound.about, sound.about["transcript"])
        self.taken[f"sounds/{name}.wav"] = take.labelled_wav(sound.files[".wav"].read_bytes(), label)
        self.taken[f"sounds/{name}.mp3"] = sound.files[".mp3"].read_bytes()
        if picture:
            self.taken[f"sounds/{name}.svg"] = take.standing_alone(self.worded(picture), label).encode()
        suffixes = (".wav", ".mp3", ".svg") if picture else (".wav", ".mp3")
        take_away = self.take("sound", name, sound, label, suffixes)
        address = self.relative(f"sounds/{name}")
        return boxes.sound_html(caption, transcript, anchor("sound", name), title, address, take_away, picture)

    def worded(self, text: str) -> str:
        """A text or drawing that leaves the page, in the words that the pages begin with."""
        return words.in_american(text, self.words) if self.club.american else text

    def label(self, kind: str, name: str, about: dict, seen_or_heard: str) -> take.Label:
        """What goes with the file of a picture or sound, in plain words."""
        texts = (replace_calls(text, lambda call: str(self.call(call))) for text in (about["caption"], seen_or_heard))
        caption, told = (take.plain(self.worded(text)) for text in texts)
        changed = {}
        for setting, value in self.site.items():
            kind_of = SITE_SETTINGS[setting]
            if setting in about["settings"] and kind_of.show(value) != about["settings"][setting][1]:
                changed[setting] = kind_of.show(value)
        return take.label(kind, name, about["settings"], caption, told, changed)

    def take(self, kind: str, name: str, made: Made, label: take.Label, suffixes: tuple[str, ...]) -> str:
        self.taken[f"{kind}s/{name}.txt"] = label.text.encode()
        return boxes.take_html(label, made.about["settings"], self.relative(f"{kind}s/{name}"), suffixes)

    def bench(self, setting: str, whole: bool = False) -> str:
        self.benches[self.page.url] += 1
        address = "whole-bench" if whole else f"bench-{self.benches[self.page.url]}"
        return bench_box.bench_html(setting, address, self.relative, self.circuit, whole)

    def circuit(self, name: str) -> str:
        return made(FIGURE, f"bench/{name}", self.sources, self.build).files[".svg"].read_text("utf-8")

    def put_bench(self, target: Path) -> None:
        """The bench's scripts and style sheet, once for all the pages that hold one."""
        try:
            write_bench(self.course, target)
        except Fault as fault:
            self.faults.append(f"{fault}")
        (target / "bench.css").write_text(bench_box.style_sheet(), "utf-8")

    def term(self, text: str) -> str:
        term = self.words.term_of(text)
        return words.term_html(self.words, text, self.relative(f"{GLOSSARY}#{term.anchor}"))

    def finished_page(self, html: str) -> str:
        """The page with its words marked, its tables in boxes that scroll, and what is wrong with it noted."""
        body = re.sub(r"<[^>]*>", "", html[html.find("<body") :])
        for word in self.words.said_twice(body):
            self.fault(f'the American word stands in brackets after "{word}": write {{{{ term("{word}") }}}} instead')
        for mark in sorted(set(LEFT_OVER.findall(re.sub(r"<[^>]*>", "", NOT_PROSE.sub("", html))))):
            self.fault(f"{mark} stands in the finished page: a call, formula or block there was not understood", mark)
        if re.search(r"<h[1-6][^>]*>(?:(?!</h).)*katex", html, re.S):
            self.fault("a heading holds a formula, which spoils its address: say it in words")
        html = re.sub(r"<th[^>]*></th>", "<td></td>", html)
        html = re.sub(r"<table\b.*?</table>", r'<div class="wide">\g<0></div>', html, flags=re.S)
        html = words.mark_page(html, self.words)
        html = words.american_first(html) if self.club.american else html
        title = self.marked(self.page.title)
        self.finished[self.page.file.src_uri] = booklet.Finished(self.page.file.dest_uri, title, booklet.text_of(html))
        return html

    def marked(self, text: str) -> str:
        """A title as HTML with its words marked."""
        html = self.words.marked(escape(text))
        return words.american_first(html) if self.club.american else html

    def booklets(self, render: Callable[..., str]) -> None:
        """A booklet of each unit and one of the whole course, among what can be taken away.

        Parameters
        ----------
        render : function
            Makes a page of a booklet's `title`, `question`, `content`, and `back`, the page it belongs to.
        """
        units = pages.units(self.course / "lessons")
        for unit in units:
            whole = booklet.booklet([self.finished[name] for name in unit.pages])
            title, question = self.marked(f"Unit {unit.number}: {unit.title}"), self.marked(unit.question)
            back = f"{unit.folder}/index.html"
            self.taken[f"{booklet.FOLDER}/{unit.folder}.html"] = render(title, question, whole, back).encode()
        if units:
            number = {name: f"{unit.number} " for unit in units for name in (*unit.pages, unit.instructor)}
            order = ["safety.md", *(name for unit in units for name in unit.pages), "glossary.md"]
            order += [unit.instructor for unit in units if unit.instructor]
            found = [(number.get(name, ""), self.finished[name]) for name in order if name in self.finished]
            whole = booklet.booklet([replace(page, title=unit + page.title) for unit, page in found])
            self.taken[f"{booklet.FOLDER}/course.html"] = render("The whole course", "", whole, "index.html").encode()

    def finish(self, site: Path) -> list[str]:
        """Put what is taken away, the bench, typefaces, KaTeX's sheet beside the pages; all faults found, dead links too."""
        self.typesetter.close()
        for name, content in self.taken.items():
            (site / name).parent.mkdir(parents=True, exist_ok=True)
            (site / name).write_bytes(content)
        for leftover in site.glob("sitemap.xml*"):
            leftover.unlink()
        if self.benches:
            self.put_bench(site / "bench")
        copy_katex(self.course / "node_modules" / "katex" / "dist", site / "katex")
        (site / "type").mkdir(parents=True, exist_ok=True)
        (site / "type" / "letters.js").write_text(letters(self.course / "node_modules" / "@fontsource"), "utf-8")
        copy_typefaces(self.course / "node_modules" / "@fontsource", site / "type")
        return self.faults or link_faults(site)


def anchor(kind: str, name: str) -> str:
    """Address within a page: "figure-response-curve" of "unit03_tuned_circuit/response_curve"."""
    return f"{kind}-{name.split('/')[1].replace('_', '-')}"


def copy_katex(source: Path, target: Path) -> None:
    """KaTeX's style sheet with its woff2 fonts only, and its licence (MIT)."""
    (target / "fonts").mkdir(parents=True, exist_ok=True)
    shutil.copyfile(source.parent / "LICENSE", target / "licence.txt")
    sheet = KATEX_FONTS.sub("", (source / "katex.min.css").read_text("utf-8"))
    (target / "katex.css").write_text(sheet, "utf-8")
    for font in sorted((source / "fonts").glob("*.woff2")):
        shutil.copyfile(font, target / "fonts" / font.name)


def letters(source: Path) -> str:
    """A script that holds the letters of pictures taken away as PNG: a page from the disk may not read a font file."""

    def face(cut: str, weight: int, only: str) -> str:
        font = (source / "alegreya-sans" / "files" / f"alegreya-sans-{cut}.woff2").read_bytes()
        address = f"data:font/woff2;base64,{base64.b64encode(font).decode()}"
        return f"@font-face{{font-family:Alegreya Sans;font-weight:{weight};src:url({address}){only}}}"

    return f"window.courseLetters={json.dumps(''.join(face(*each) for each in PICTURE_LETTERS))};\n"


def copy_typefaces(source: Path, target: Path) -> None:
    """The site's own typefaces, with their licence (SIL Open Font License 1.1)."""
    target.mkdir(parents=True, exist_ok=True)
    for family, cuts in TYPEFACES.items():
        shutil.copyfile(source / family / "LICENSE", target / f"{family}-licence.txt")
        for cut in cuts:
            shutil.copyfile(source / family / "files" / f"{family}-{cut}.woff2", target / f"{family}-{cut}.woff2")

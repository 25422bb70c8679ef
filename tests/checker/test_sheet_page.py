"""A design sheet as a page and on paper: whole, safe, accessible, of the width of a telephone and of A4."""

import re
import shutil
import tomllib
from html.parser import HTMLParser

import pytest
from pypdf import PdfReader

from checker import cli
from checker.course import ROOT
from checker.sheet import SheetFault, paper, print_sheet, read_parts, work_out
from checker.sheet.keys import CRYSTAL, SECTIONS, SETS
from checker.sheet.page import loudness, sheet_html
from checker.sheet.partslist import parts_list
from checker.sheet.vocabulary import AMERICAN, mark_vocabulary
from tests.checker.test_reports_browser import NARROW, WIDE, opened

FOLDER = ROOT / "checker" / "examples" / "sheets"
FILES = {file.stem: file for file in sorted(FOLDER.glob("*.toml"))}
HOSTILE = "</bdi><script>alert(1)</script><img src=x onerror=y>"


class Text(HTMLParser):
    """All text of a page, and its tags."""

    def __init__(self, html):
        super().__init__()
        self.pieces, self.tags = [], []
        self.feed(html)

    def handle_starttag(self, tag, attributes):
        self.tags.append((tag, dict(attributes)))

    def handle_data(self, data):
        self.pieces.append(data)


@pytest.fixture(scope="module")
def pages(tmp_path_factory):
    folder = tmp_path_factory.mktemp("sheets")
    for name, file in FILES.items():
        (folder / f"{name}.html").write_text(sheet_html(work_out(read_parts(file), draws=25)), "utf-8")
    return folder


@pytest.mark.parametrize("name", FILES)
def test_a_page_is_whole_and_says_what_can_hurt(pages, name):
    html = (pages / f"{name}.html").read_text("utf-8")
    page = Text(html)
    text = " ".join(" ".join(page.pieces).split())
    assert not re.search(r"\bnan\b|\binf\b|None|Spread\(|\{\{", text)
    for caution in ("Local rules come first", "qualified help", "lightning", "power line", "solder", "Off the ears"):
        assert caution in text
    with_valve = read_parts(FILES[name])["set"] != CRYSTAL
    for caution in ("can kill", "Never alone", "pull it cold", "Fuse at the battery"):
        assert (caution in text) == with_valve
    assert ("is a transmitter" in text) == (read_parts(FILES[name])["set"] in SETS[2:])
    assert not [tag for tag, _ in page.tags if tag in ("script", "link", "img", "iframe", "form")]
    assert all(one["href"].startswith("#") for tag, one in page.tags if tag == "a")


@pytest.mark.parametrize(
    ("name", "size", "light"),
    [
        *((name, NARROW, "light") for name in FILES),
        ("orla_quill_reaction", WIDE, "dark"),
        ("isla_marrow_crystal", WIDE, "light"),
    ],
    ids=str,
)
def test_a_page_fits_asks_for_nothing_and_is_accessible(chromium, axe, pages, name, size, light):
    page = opened(chromium, (pages / f"{name}.html").as_uri(), viewport=size, color_scheme=light)
    assert page.evaluate("document.documentElement.scrollWidth") <= size["width"]
    page.evaluate(axe)
    found = page.evaluate("axe.run({preload: false, resultTypes: ['violations']})")["violations"]
    assert [(one["id"], [node["html"][:200] for node in one["nodes"]]) for one in found] == []
    assert page.faults == []
    page.context.close()


def test_on_paper_it_is_black_on_white_and_as_wide_as_a4(chromium, pages):
    a4 = 794 - 2 * 49  # CSS pixels less two margins of 13 mm
    page = opened(
        chromium, (pages / "orla_quill_reaction.html").as_uri(), color_scheme="dark", viewport={"width": a4, "height": 1000}
    )
    page.emulate_media(media="print", color_scheme="dark")
    assert page.evaluate("document.documentElement.scrollWidth") <= a4
    seen = """[...document.querySelectorAll('main *')].flatMap(e => {
        const style = getComputedStyle(e);
        return [style.borderLeftColor, ...(e.innerText ? [style.color] : []), ...(e.closest('svg') ? [style.stroke] : [])];
    })"""
    colours = {tuple(re.findall(r"\d+", colour)[:3]) for colour in page.evaluate(seen) if colour != "none"}
    assert colours and all(len(set(one)) == 1 for one in colours)
    assert page.evaluate("getComputedStyle(document.body).backgroundColor") == "rgb(255, 255, 255)"
    page.context.close()


def test_the_switch_shows_american_words_without_a_script(chromium, pages):
    page = opened(chromium, (pages / "orla_quill_reaction.html").as_uri())
    words = "document.querySelector('main').innerText"
    before = page.evaluate(words)
    page.check("#american")
    after = page.evaluate(words)
    assert "variable condenser" in before and "variable capacitor" not in before
    assert "variable capacitor" in after and "condenser" not in after.replace("condensers", "")
    assert "Orla's reaction set" in after  # what the builder wrote stays
    page.context.close()


def test_american_words_are_those_of_the_course():
    course = tomllib.loads((ROOT / "course" / "glossary.toml").read_text("utf-8"))["term"]
    pairs = {term["british"]: term["american"] for term in course if "american" in term}
    for term in course:
        pairs |= term.get("forms", {})
    assert all(pairs[word] == american for word, american in AMERICAN.items())
    marked = mark_vocabulary('<p title="valve">Valves <bdi>valve</bdi><svg><title>valve</title><text>HT+</text></svg></p>')
    assert marked == (
        '<p title="valve"><span class="gb">Valves</span><span class="us">Tubes</span> <bdi>valve</bdi><svg><title>valve</title>'
        '<text><tspan class="gb">HT+</tspan><tspan class="us">B+</tspan></text></svg></p>'
    )


@pytest.mark.parametrize(
    ("british", "american"),
    [
        ("an anode", "a plate"),
        ("An anode", "A plate"),
        ("a valve", "a tube"),
        ("an aerial", "an antenna"),
        ("an accumulator", "a storage battery"),
        ("an earth", "a ground"),
        ("an HT", "a B+"),
        ("an LT", "an A battery"),
        ("an HF choke", "an RF choke"),
        ("a mains", "a line voltage"),
    ],
)
def test_the_article_goes_with_the_word(british, american):
    marked = mark_vocabulary(f"<p>{british} here</p>")
    assert re.sub(r'<span class="gb">.*?</span>|<[^>]*>', "", marked) == f"{american} here"
    assert re.sub(r'<span class="us">.*?</span>|<[^>]*>', "", marked) == f"{british} here"


@pytest.mark.parametrize("name", FILES)
def test_no_article_on_a_sheet_is_wrong_in_either_vocabulary(name):
    html = sheet_html(work_out(read_parts(FILES[name]), draws=2))
    for left_out in ("gb", "us"):
        page = re.sub(rf'<(span|tspan) class="{left_out}">.*?</\1>', "", html)
        words = re.sub(r"<(style|title|desc)\b.*?</\1>|<[^>]*>", "", page, flags=re.S)
        assert not re.search(r"\ban (?=[bcdfgjklmnpqrstvwxyz])|\ba (?=[aeio])", words), re.findall(r"\ban? \w+", words)


def test_what_a_builder_wrote_is_shown_and_never_obeyed():
    text = FILES["isla_marrow_crystal"].read_text("utf-8")
    text = text.replace('"Isla\'s crystal set"', f"'{HOSTILE}'").replace('"Curlew Bank"', '"<b>\\u202eBank</b>{{ 7 * 7 }}"')
    html = sheet_html(work_out(read_parts(text.encode()), draws=2))
    page = Text(html)
    assert not [tag for tag, _ in page.tags if tag in ("script", "img")]
    assert HOSTILE in "".join(page.pieces) and "\u202e" not in html and "{{ 7 * 7 }}" in html


def test_the_parts_follow_the_set():
    sheet = work_out(read_parts(FILES["jasper_thrift_isolated"]), draws=2)
    rows = {part: (number, kind) for number, part, kind in parts_list(sheet)}
    assert rows["valve"][0] == rows["dropper"][0] == "2" and "33 Ω" in rows["dropper"][1] and "HF choke" in rows
    crystal = [part for _, part, _ in parts_list(work_out(read_parts(FILES["isla_marrow_crystal"]), draws=2))]
    assert "valve" not in crystal and "crystal or germanium diode" in crystal and "fuse" not in crystal


@pytest.mark.parametrize("file", FILES)
def test_the_limiter_is_behind_a_condenser_wherever_anode_current_flows_through_the_telephones(file):
    sheet = work_out(read_parts(FILES[file]), draws=2)
    behind = [kind for _, part, kind in parts_list(sheet) if part == "condenser" and "in line with the two diodes" in kind]
    rated = [float(kind.split("µF, ")[1].split(" V")[0]) for kind in behind]
    assert len(behind) == (sheet.parts["set"] != CRYSTAL)
    assert all(value > 9.6 / 9 * 200 for value in rated)  # the most HT that a file may give


def test_a_level_has_a_word():
    assert [loudness(level) for level in (-3, 3, 20, 50, 80, 100)] == [
        "not heard",
        "barely heard",
        "soft",
        "clear",
        "loud",
        "very loud",
    ]


@pytest.fixture
def here(tmp_path, monkeypatch):
    monkeypatch.chdir(tmp_path)
    shutil.copy(FILES["isla_marrow_crystal"], tmp_path / "mine.toml")
    return tmp_path


def test_the_command_writes_the_page_and_prints_it(here, capsys, chromium):
    assert cli.main(["sheet", "mine.toml", "--pdf"]) == cli.DONE
    assert capsys.readouterr().out.split()[-1] == "mine.pdf"
    assert b"Isla" in (here / "mine.html").read_bytes()
    data = (here / "mine.pdf").read_bytes()
    assert data[:5] == b"%PDF-" and 2 <= len(re.findall(rb"/Type\s*/Page\b", data)) <= 6
    width, height = map(float, re.search(rb"/MediaBox\s*\[0 0 ([\d.]+) ([\d.]+)\]", data).groups())
    assert (width, height) == pytest.approx((595.3, 841.9), abs=1)  # A4: ISO 216, 210 mm by 297 mm
    text = " ".join(page.extract_text() for page in PdfReader(here / "mine.pdf").pages)
    assert "wind 44" in " ".join(text.split()) and "Curlew Bank" in text


def test_without_a_browser_the_page_is_there_and_one_sentence_says_how_to_print(here, capsys, monkeypatch):
    monkeypatch.setattr(paper, "BROWSERS", ())
    with pytest.raises(SheetFault, match="no Chromium here"):
        print_sheet(here / "mine.html", here / "mine.pdf")
    monkeypatch.setattr(paper, "BROWSERS", ("false",))
    with pytest.raises(SheetFault, match="made no PDF: open"):
        print_sheet(here / "mine.html", here / "mine.pdf")
    assert not (here / "mine.pdf").exists()


def test_the_file_itself_is_not_written_over(here, capsys):
    before = (here / "mine.toml").read_bytes()
    assert cli.main(["sheet", "mine.toml", "--into", "mine.toml"]) == cli.USAGE_ERROR
    assert "is the file itself" in capsys.readouterr().err and (here / "mine.toml").read_bytes() == before


def test_the_page_for_builders_shows_a_file_that_works_and_a_sentence_that_comes():
    page = (ROOT / "course" / "lessons" / "builders.md").read_text("utf-8")
    blocks = re.findall(r"^```\n(.*?)^```$", page, re.S | re.M)
    shown = next(block for block in blocks if block.startswith("name = "))
    sheet = work_out(read_parts(shown.encode()), draws=40)
    assert sheet.windings[1].turns in range(50, 58)
    sentence = next(block for block in blocks if "line 5" in block).strip()
    with pytest.raises(SheetFault) as caught:
        read_parts(shown.replace('"63 mm"', "63").encode(), "my_set.toml")
    assert str(caught.value) == sentence
    named = set(re.findall(r'\{\{ sheet_keys\("(\w*)"\) \}\}', page))
    assert named == {*SECTIONS, "station"}

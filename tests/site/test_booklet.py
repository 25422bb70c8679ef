"""On paper: a lesson, a unit as a booklet, the whole course; read back from the PDF that Chromium makes of them."""

import io
import re
from pathlib import Path

import pypdf
import pytest

from course.press.publishing.booklet import Finished, join_pages, rebase
from course.press.publishing.kept import Kept

A4 = {"width": 680, "height": 980}  # what is left of the sheet between the margins, in CSS pixels
PLACES = {"unit01_a/index.html": "p1", "unit01_a/more.html": "p2"}


@pytest.mark.parametrize(
    ("written", "moved_to"),
    [
        ('<p id="x">', '<p id="p1-x">'),
        ('<a href="#x">', '<a href="#p1-x">'),
        ('<a href="more.html#y">', '<a href="#p2-y">'),
        ('<a href="more.html">', '<a href="#p2">'),
        ('<a href="../safety.html#aerials">', '<a href="../safety.html#aerials">'),
        ('<a href="../unit02_b/index.html">', '<a href="../unit02_b/index.html">'),
        ('<a href="https://x.example/">', '<a href="https://x.example/">'),
        ('<image href="data:image/png;base64,AA=="/>', '<image href="data:image/png;base64,AA=="/>'),
        ('<svg aria-labelledby="a b" mask="url(#m)">', '<svg aria-labelledby="p1-a p1-b" mask="url(#p1-m)">'),
        ('<span data-us="tube" data-id="id=">', '<span data-us="tube" data-id="id=">'),
    ],
)
def test_addresses_lead_within_the_booklet_where_they_can(written, moved_to):
    assert rebase(written, "unit01_a/index.html", PLACES) == moved_to


def test_answers_stand_at_the_end_under_the_numbers_of_their_questions():
    ask = '<details class="block question">\n<summary class="block-title">{}</summary><p>{}</p></details>'
    pages = [Finished(name, name, ask.format(f"Q{name}", f"A{name}")) for name in ("a.html", "b.html")]
    html = join_pages(pages, Kept(Path(), ""))
    before, after = html.split('<section class="page" id="answers">')
    assert "Qa.html" in before and "Aa.html" not in before and "<details" not in html
    assert re.findall(r'<b class="asked-number">(\d)</b><p>A(\w)', after) == [("1", "a"), ("2", "b")]


@pytest.fixture(scope="module")
def printed(course, chromium):
    """A function of a page's address: the text of each sheet of its PDF, and what does not fit across or down one."""
    site = course / "course" / "site"

    def read(name):
        view = chromium.new_page(viewport=A4)
        view.goto((site / name).as_uri())
        sheets = [page.extract_text() for page in pypdf.PdfReader(io.BytesIO(view.pdf(format="A4"))).pages]
        view.emulate_media(media="print")
        cut = view.evaluate(
            """([width, height]) => [...document.querySelectorAll("main figure, main svg, .formula, .wide, pre")].filter(
              part => {
              const box = part.getBoundingClientRect();
              return box.right > width + 1 || part.scrollWidth > part.clientWidth + 1 && part.clientWidth > 0
                || part.matches("figure, svg") && box.height > height }).map(part => part.outerHTML.slice(0, 80))""",
            [A4["width"], A4["height"]],
        )
        figures = view.evaluate(
            """() => [...document.querySelectorAll("main figure.drawn")].map(figure => [
              [...figure.querySelectorAll("svg text")].map(text => text.textContent.trim()).filter(text => text.length > 3),
              figure.querySelector("figcaption").innerText])"""
        )
        view.close()
        return sheets, cut, figures

    return read


def squeezed(text: str) -> str:
    return re.sub(r"\W+", "", text)


def test_a_unit_prints_as_a_booklet_with_every_figure_whole_beside_its_caption(printed):
    sheets, cut, figures = printed("print/unit01_signal.html")
    assert not cut and 14 <= len(sheets) <= 50
    sheets = [squeezed(sheet) for sheet in sheets]
    assert "Unit01Signal" in sheets[0] and "Answerstotheselftests" in "".join(sheets[-2:])
    whole = 0
    for words, caption in figures:
        at = [number for number, sheet in enumerate(sheets) if squeezed(caption)[:40] in sheet]
        assert len(at) == 1, caption
        assert all(squeezed(word) in sheets[at[0]] for word in words if word.isascii()), caption
        whole += 1
    assert whole >= 12
    everything = "".join(sheets)
    assert "Inwords" in everything and "Takeaway" not in everything and "Showlarge" not in everything
    assert all(len(sheet) > 60 for sheet in sheets), "a sheet is all but empty"


def test_a_lesson_prints_as_a_hand_out_without_menus_and_without_answers(printed):
    sheets, cut, _ = printed("unit03_tuned_circuit/dial.html")
    text = squeezed("".join(sheets))
    assert not cut and 3 <= len(sheets) <= 10
    assert "Whichstationsareonthedial" in text
    for menu in ("Onthispage", "Words:", "Bookletto", "Presentthispage", "Takeaway"):
        assert squeezed(menu) not in text

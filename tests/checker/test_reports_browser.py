"""Reports in a browser: no request, no fault, no violation that axe-core finds, nothing wider than a telephone."""

from datetime import date
from fractions import Fraction

import pytest

from checker.course import PATHS
from checker.judging.judge import absent
from checker.judging.verdict import Part, Verdict
from checker.marks.marksheet import member_marks
from checker.report.pages import write_reports
from checker.submissions.likeness import compare_submissions
from tests.checker import sample
from tests.checker.test_likeness import CLASS as HONEST
from tests.checker.test_likeness import COMPARED, ODD_WAY, RENAMED, with_solenoid

NARROW, WIDE = {"width": 360, "height": 740}, {"width": 1200, "height": 900}
PAGES = [
    "index.html",
    "alike.html",
    "members/tobias-fenn.html",
    "members/nell-samphire.html",
    "members/rufus-b-tern-b-sons.html",
]


@pytest.fixture(scope="module")
def reports(tmp_path_factory, sample_class):
    folder = tmp_path_factory.mktemp("reports")
    alike, _ = compare_submissions(with_solenoid(HONEST, (3, ODD_WAY), (17, RENAMED)), COMPARED)
    write_reports(sample_class, sample.PATHS, folder, date(2031, 5, 4), alike)
    assert all((folder / page).is_file() for page in PAGES)
    return folder


def opened(browser, address, **how):
    """A page of a report, with whatever went wrong on it."""
    page = browser.new_context(**how).new_page()
    page.faults = []
    page.on("console", lambda message: page.faults.append(message.text) if message.type == "error" else None)
    page.on("pageerror", lambda error: page.faults.append(str(error)))
    page.on("request", lambda request: None if request.url == address else page.faults.append(f"asked for {request.url}"))
    page.goto(address)
    return page


@pytest.mark.parametrize("light", ["light", "dark"])
@pytest.mark.parametrize("size", [NARROW, WIDE], ids=["narrow", "wide"])
@pytest.mark.parametrize("file", PAGES)
def test_a_page_is_whole_fits_and_is_accessible(chromium, axe, reports, file, size, light):
    page = opened(chromium, (reports / file).as_uri(), viewport=size, color_scheme=light)
    assert page.evaluate("document.documentElement.scrollWidth") <= size["width"]
    page.evaluate(axe)
    found = page.evaluate("axe.run({preload: false, resultTypes: ['violations']})")["violations"]
    assert [(one["id"], [node["html"][:200] for node in one["nodes"]]) for one in found] == []
    assert page.faults == []
    page.context.close()


@pytest.fixture(scope="module")
def whole_course(tmp_path_factory):
    """The class page of three members on all exercises; the first of them has one mark, the last two."""
    folder = tmp_path_factory.mktemp("whole")
    names = ("Isla Marrow", "Kit Harrow", "Nell Samphire of the Saltings and Thornhollow")
    marks = zip(names, (1, 0, 2), strict=True)
    write_reports([with_marks(name, number) for name, number in marks], PATHS, folder, date(2031, 5, 4))
    return (folder / "index.html").as_uri()


def with_marks(name, number):
    earned = (Part("f", "numbers", Fraction(10), Fraction(1)),)
    verdicts = [Verdict(path, "wrong", 10, earned) if at < number else absent(path) for at, path in enumerate(PATHS)]
    return member_marks(name, [], verdicts, {})


def test_the_marks_sort_and_filter_by_keyboard_and_say_so(chromium, axe, whole_course):
    page = opened(chromium, whole_course)
    grid, said = page.locator("table.grid").first, page.get_by_role("status")

    def shown():
        return [name.split()[0] for name in grid.locator("tbody tr:visible th").all_inner_texts()]

    assert shown() == ["Isla", "Kit", "Nell"]
    grid.get_by_role("button", name="total").focus()
    page.keyboard.press("Enter")
    assert shown() == ["Nell", "Isla", "Kit"] and said.inner_text() == "Sorted by total, falling."
    page.keyboard.press("Enter")
    assert shown() == ["Kit", "Isla", "Nell"]
    assert page.locator("[aria-sort=ascending]").inner_text().startswith("total")
    grid.get_by_role("button", name=PATHS[1].rpartition("/")[2]).press("Space")
    assert shown()[0] == "Nell"  # a number before the sign for none
    page.get_by_label("Name has").fill("HARROW")
    assert shown() == ["Kit"] and said.inner_text() == "1 of 3 members shown."
    page.get_by_label("Name has").fill("")
    page.get_by_label("Show").select_option("with something not handed in")
    assert len(shown()) == 3
    page.evaluate(axe)
    found = page.evaluate("axe.run({preload: false, resultTypes: ['violations']})")["violations"]
    assert [(one["id"], [node["html"][:200] for node in one["nodes"]]) for one in found] == [] and page.faults == []
    page.context.close()


def test_no_column_falls_off_the_paper(chromium, whole_course):
    """A4 held upright, with the page's margins of 14 mm: 182 mm, of which CSS has 96 pixels in 25.4 (CSS Values 4, from memory)."""
    page = opened(chromium, whole_course, viewport={"width": int(182 * 96 / 25.4), "height": 1000})
    page.emulate_media(media="print")
    columns = page.locator("table.grid:visible thead th.tall")
    assert columns.count() == len(PATHS)
    assert (
        page.evaluate("Math.max(...[...document.querySelectorAll('table')].map(t => t.getBoundingClientRect().right))") <= 687
    )
    page.context.close()


def test_no_script_of_a_member_s_runs(chromium, reports):
    page = opened(chromium, (reports / "members/rufus-b-tern-b-sons.html").as_uri())
    page.evaluate("document.body.insertAdjacentHTML('beforeend', '<img src=x onerror=\"window.ran = 1\">')")
    page.wait_for_timeout(200)
    assert page.evaluate("window.ran") is None
    page.context.close()


def test_paper_is_white_also_for_a_reader_at_night(chromium, reports):
    page = opened(chromium, (reports / PAGES[2]).as_uri(), color_scheme="dark")
    page.emulate_media(media="print", color_scheme="dark")
    assert page.evaluate("getComputedStyle(document.body).backgroundColor") == "rgb(255, 255, 255)"
    assert page.evaluate("getComputedStyle(document.body).color") == "rgb(0, 0, 0)"
    assert page.pdf(format="A4")[:5] == b"%PDF-"
    page.context.close()


def test_the_keyboard_reaches_the_report_first_and_then_what_scrolls(chromium, reports):
    page = opened(chromium, (reports / PAGES[2]).as_uri(), viewport=NARROW)
    page.keyboard.press("Tab")
    assert page.evaluate("document.activeElement.className") == "skip"
    assert page.evaluate("document.activeElement.getBoundingClientRect().top") >= 0
    scrolling = page.evaluate(
        "[...document.querySelectorAll('.wide, pre')].filter(e => e.scrollWidth > e.clientWidth && e.tabIndex != 0).length"
    )
    assert scrolling == 0
    page.context.close()

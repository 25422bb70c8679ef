"""Reports in a browser: no request, no fault, no violation that axe-core finds, nothing wider than a telephone."""

from datetime import date

import pytest

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

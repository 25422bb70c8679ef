"""Before a room: one thing at a time, by keys, clicker or finger, with the speaker's notes in a window that follows."""

import pytest

from course.press.publishing.notes import notes

from .test_browser import NARROW, VIOLATIONS, Watched, site  # noqa: F401

LESSON = "unit01_signal/index.html"


def test_notes_belong_to_the_sections_that_they_name():
    page = (
        '<h2 id="how-to-take-the-sections">x</h2><ol>\n<li><p>First</p></li>\n<li>Second<ul><li>inner</li></ul></li></ol>'
        '<h2 id="evening">x</h2><ul><li>General.</li><li>See <a href="#">section 3</a>.</li><li>Sections 4 and 5.</li></ul>'
    )
    found = notes(page)
    assert [section for section, _ in found] == [1, 2, 3, 4, 5]
    assert ["inner" in html for _, html in found] == [False, True, False, False, False]


@pytest.fixture
def shown(chromium, site):  # noqa: F811
    with Watched(chromium, viewport={"width": 1280, "height": 720}) as watched:
        watched.page.goto((site / LESSON).as_uri())
        yield watched.page
        assert not watched.wrong, watched.wrong


def count(page) -> int:
    return int(page.inner_text(".stage-count").split(" / ")[0])


def test_a_clicker_goes_through_the_page_and_leaves_it_as_it_was(shown, axe):
    before = shown.inner_html("main")
    shown.click(".present")
    assert "Signal" in shown.inner_text(".stage-title") and count(shown) == 1
    shown.evaluate(axe)
    last = int(shown.inner_text(".stage-count").split(" / ")[1])
    titles, checked = [], set()
    while count(shown) < last:
        shown.keyboard.press("PageDown")
        titles.append(shown.inner_text(".stage-title"))
        for part in shown.locator(".stage-show svg").all():
            box = part.bounding_box()
            assert box["width"] > 350 and box["y"] + box["height"] <= 720, titles[-1]
        kind = shown.get_attribute(".stage-slide", "class")
        if kind not in checked:
            checked.add(kind)
            assert not shown.evaluate(VIOLATIONS, None), f"{titles[-1]}: {shown.evaluate(VIOLATIONS, None)}"
    assert any("One tone" in title for title in titles) and any("Where the power goes" in title for title in titles)
    for pressed, where in (("Home", 1), ("ArrowRight", 2), (" ", 3), ("PageUp", 2), ("ArrowLeft", 1), ("End", last)):
        shown.keyboard.press(pressed)
        assert count(shown) == where, pressed
    shown.keyboard.press("Escape")
    shown.wait_for_selector(".stage", state="detached")
    assert shown.inner_html("main") == before
    assert shown.evaluate("document.activeElement.className") == "present"


def test_an_answer_is_kept_back_until_it_is_asked_for(shown):
    shown.click(".present")
    while "What do you hear?" not in shown.inner_text(".stage-title"):
        shown.keyboard.press("ArrowRight")
    at = count(shown)
    assert "Silence" not in shown.inner_text(".stage-slide")
    shown.keyboard.press("ArrowRight")
    assert count(shown) == at and "Silence" in shown.inner_text(".stage-slide")
    shown.keyboard.press("ArrowRight")
    assert count(shown) == at + 1


def test_the_notes_follow_in_a_second_window_from_the_disk_and_drive_it(shown):
    shown.click(".present")
    with shown.expect_popup() as opened:
        shown.click(".stage-notes")
    speaker = opened.value
    shown.keyboard.press("PageDown")
    now = speaker.locator("[aria-current=step]")
    assert "One tone on a carrier" in now.inner_text() and "Play the three depths" in now.inner_text()
    assert "Alegreya" in speaker.evaluate("getComputedStyle(document.body).fontFamily")
    speaker.keyboard.press("ArrowRight")
    assert count(shown) == 3
    speaker.emulate_media(media="print")
    assert not speaker.is_visible(".speaker-bar") and speaker.is_visible(".speaker-note >> nth=0")
    shown.keyboard.press("Escape")
    shown.wait_for_selector(".stage", state="detached")
    assert speaker.is_closed()


def test_one_figure_is_shown_large_on_a_telephone_and_by_its_address(chromium, site):  # noqa: F811
    with Watched(chromium, viewport=NARROW, has_touch=True) as watched:
        page = watched.page
        page.goto((site / LESSON).as_uri() + "#present=figure-spectrum")
        assert page.is_visible(".stage #figure-spectrum svg")
        assert all(part.bounding_box()["height"] >= 44 for part in page.locator(".stage-bar button").all())
        assert page.evaluate("document.documentElement.scrollWidth") <= 360
        at = count(page)
        page.evaluate(
            """() => [["down", 300], ["up", 100]].forEach(([how, x]) => document.querySelector(".stage-title").dispatchEvent(
              new PointerEvent("pointer" + how, {clientX: x, clientY: 300, bubbles: true})))"""
        )
        assert count(page) == at + 1
        page.click(".stage-close")
        page.click("#figure-spectrum .large")
        assert page.is_visible(".stage #figure-spectrum svg")
        assert not watched.wrong, watched.wrong

"""Search from the disk and from a server, in both vocabularies; pages kept for when there is no network."""

import functools
import gzip
import http.server
import threading

import pytest

from course.press.publishing.booklet import Finished
from course.press.publishing.search import base_36, sections_of

from .test_browser import NARROW, Watched


@pytest.fixture
def serving(course):
    """A server that can be switched off, and its address."""

    class Quiet(http.server.SimpleHTTPRequestHandler):
        def log_message(self, *_):
            pass

    site = course / "course" / "site"
    running = http.server.ThreadingHTTPServer(("127.0.0.1", 0), functools.partial(Quiet, directory=str(site)))
    threading.Thread(target=running.serve_forever, daemon=True).start()

    def stop():
        running.shutdown()
        running.server_close()

    yield f"http://127.0.0.1:{running.server_port}", stop
    stop()


def test_the_index_is_light(course):
    index = (course / "course" / "site" / "search-index.js").read_bytes()
    assert 10_000 < len(gzip.compress(index, 9)) < 150_000


def test_a_section_is_found_by_its_words_its_names_and_its_exercise():
    html = (
        '<h1 id="a">One</h1><p>Two <span data-us="antenna">aerial</span>s. More.</p>'
        '<section class="exercise" id="exercise-b"><p class="exercise-title">Which?</p>'
        "<details><summary><code>skin_<wbr>depth</code> Says.</summary></details></section>"
        '<h2 id="c">Three</h2><div class="formula"><span class="katex"><span>x<span>y</span></span></span></div><strong>Skin depth</strong> four'
    )
    first, exercise, last = sections_of(Finished("p.html", "One", html))
    assert (first.address, first.title, first.says) == ("p.html#a", "One", "Two aerials.")
    assert {"aerial", "aerials", "antenna"} & {*first.words} == {"aerials", "antenna"} and not first.formula
    assert (exercise.kind, exercise.title, exercise.names) == ("exercise", "Which?", "skin_depth skin depth")
    assert last.formula and last.names == "Skin depth" and "xy" not in last.words
    assert [base_36(number) for number in (0, 35, 36, 1295)] == ["0", "z", "10", "zz"]


@pytest.mark.parametrize("where", ["disk", "server"])
def test_search_by_keyboard_in_both_vocabularies(chromium, course, serving, where):
    start = (course / "course" / "site").as_uri() if where == "disk" else serving[0]
    with Watched(chromium, viewport=NARROW) as watched:
        page = watched.page
        page.goto(f"{start}/safety.html")
        page.keyboard.press("/")
        for words in ("aerial coil", "antenna coil"):
            page.fill("#search-words", words)
            page.wait_for_function("/^(The )?\\d+ (found|nearest)/.test(document.querySelector('.search-status').textContent)")
            assert page.locator(".found a").count() > 1, words
        page.fill("#search-words", "xyzzyplugh")
        page.wait_for_function("document.querySelector('.search-status').textContent.startsWith('Nothing')")
        page.fill("#search-words", "resonant_frequency")
        page.wait_for_selector(".found a >> text=Where does it tune?")
        page.keyboard.press("ArrowDown")
        page.keyboard.press("Enter")
        page.wait_for_url("**/unit03_tuned_circuit/index.html#exercise-resonance")
        assert not watched.wrong, watched.wrong


def test_what_was_opened_once_is_there_without_a_network(chromium, serving):
    address, stop = serving
    with Watched(chromium, viewport=NARROW, service_workers="allow") as watched:
        page = watched.page
        page.goto(f"{address}/index.html")
        page.evaluate("navigator.serviceWorker.ready.then(() => 1)")
        page.wait_for_function("navigator.serviceWorker.controller !== null")
        assert not watched.wrong, watched.wrong
        stop()
        page.goto(f"{address}/unit03_tuned_circuit/index.html")
        assert page.title().startswith("Tuned circuit")
        page.goto(f"{address}/nowhere.html")
        assert page.title().startswith("No such page")

"""One browser for all tests: two of them cannot be driven side by side in one process. And what npm brings, brought once."""

import fcntl
import os
import re
from pathlib import Path

import pytest

from checker import course

CHROMIUM = "/usr/bin/chromium"
COURSE = Path(__file__).resolve().parents[1] / "course"


@pytest.fixture(scope="session")
def packages():
    """The folder of what npm brings, which is brought if it is not there. No Node.js: as for the browser."""
    from course.press.text.formulas import NodeMissing, bring_packages

    with open(COURSE / "package.json", encoding="utf-8") as alone:
        fcntl.flock(alone, fcntl.LOCK_EX)
        try:
            bring_packages(COURSE)
        except NodeMissing as why:
            (pytest.fail if os.environ.get("CI") == "true" else pytest.skip)(str(why))
    return COURSE / "node_modules"


@pytest.fixture(scope="session")
def axe(packages):
    """The script that finds what is not accessible on a page."""
    return (packages / "axe-core" / "axe.min.js").read_text("utf-8")


@pytest.fixture(scope="session")
def chromium():
    """A headless browser. Missing: a failure where CI is set, elsewhere a skipped test that says why."""
    why = None if Path(CHROMIUM).exists() else f"{CHROMIUM} is not installed, so no page was opened in a browser"
    try:
        from playwright.sync_api import sync_playwright
    except ImportError:
        why = "playwright is not installed, so no page was opened in a browser"
    if why:
        (pytest.fail if os.environ.get("CI") == "true" else pytest.skip)(why)
    with sync_playwright() as playwright:
        browser = playwright.chromium.launch(executable_path=CHROMIUM, args=["--no-sandbox"])
        yield browser
        browser.close()


OF_UNITS = ("tests/exercises/", "tests/physics/", "tests/lessons/", "tests/site/test_unit_pictures.py")
UNITS = {exercise: unit.number for unit in course.UNITS for exercise in unit.exercises}


def pytest_configure(config):
    for unit in course.UNITS:
        config.addinivalue_line("markers", f"unit{unit.number}: physics, exercises, lesson and pictures of unit {unit.number}")


@pytest.hookimpl(tryfirst=True)
def pytest_xdist_auto_num_workers(config):
    """One more than there are processors: many a test waits for a browser, or for a child's clock to run out."""
    return (os.cpu_count() or 1) + 1 if config.option.numprocesses == "auto" else None


@pytest.hookimpl(tryfirst=True)
def pytest_collection_modifyitems(config, items):
    """Mark what belongs to a unit, spread the exercises over the processors, and without -m leave out what is slow.

    What is marked `slow` proves once more, or at length, what a shorter test beside it holds; CI runs it by itself. What is
    marked `pictures` the tests of the site do too.
    """
    for item in items:
        file = item.nodeid.partition("::")[0]
        if file.startswith(OF_UNITS) and (number := unit_of(item)):
            item.add_marker(f"unit{number}")
        exercise = getattr(item, "callspec", None) and item.callspec.params.get("path")
        spread = file.startswith("tests/exercises/") and exercise
        item.add_marker(pytest.mark.xdist_group(exercise if spread else file))
    if not config.option.markexpr:
        left = [item for item in items if item.get_closest_marker("pictures") or item.get_closest_marker("slow")]
        items[:] = [item for item in items if item not in left]
        config.hook.pytest_deselected(items=left)


def pytest_collection_finish(session):
    """What is grouped goes to one process, or each would make all that many tests share: so it must be seen to be grouped."""
    grouped = os.environ.get("PYTEST_XDIST_WORKER") and session.config.getoption("loadgroup")
    if grouped and any("@" not in item.nodeid for item in session.items[:1]):
        raise pytest.UsageError(
            "tests are not kept in groups: pytest and pytest-xdist do not fit; take those of constraints.txt"
        )


def unit_of(item):
    """The number of the unit that a test is about, by its file or by what it is given; None if of none."""
    given = [str(value) for value in item.callspec.params.values()] if hasattr(item, "callspec") else []
    for text in (item.path.name, *given):
        if found := re.search(r"unit(\d\d)(?!\d)", text):
            return found[1]
    return next((UNITS[text] for text in given if text in UNITS), None)

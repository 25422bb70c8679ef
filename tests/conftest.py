"""One browser for all tests: two of them cannot be driven side by side in one process. And what npm brings, brought once."""

import fcntl
import os
from pathlib import Path

import pytest

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

"""One browser for all tests: two of them cannot be driven side by side in one process."""

import os
from pathlib import Path

import pytest

CHROMIUM = "/usr/bin/chromium"


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

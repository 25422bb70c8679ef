"""Each picture of a unit's pages can be drawn: for one unit, `pytest -m unit03`; a whole run draws them for the site."""

import re

import pytest

from checker.course import ROOT
from course import make

LESSONS = ROOT / "course" / "lessons"
NAMES = sorted(
    {
        name
        for page in LESSONS.glob("unit??_*/*.md")
        for name in re.findall(r'\{\{ figure\("(unit[^"]+)"\) \}\}', page.read_text("utf-8"))
    }
)

pytestmark = pytest.mark.pictures


@pytest.mark.parametrize("name", NAMES)
def test_it_can_be_drawn(name, tmp_path):
    assert make.main(["figure", name, "--into", str(tmp_path)]) in (None, 0)
    files = {file.suffix: file for file in tmp_path.rglob("*") if file.is_file()}
    assert ".txt" in files and max(file.stat().st_size for file in files.values()) > 2000

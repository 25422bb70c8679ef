"""The first exercise in the lesson: the page names each verdict that the checker may give, and no other."""

import re

from checker.course import ROOT
from checker.judging.verdict import KINDS


def test_page_names_every_verdict():
    page = (ROOT / "course/lessons/unit00_bench/tools.md").read_text("utf-8")
    named = re.findall(r"^\| ([a-z ]+) \|", page.partition("### What it may say")[2], flags=re.M)
    assert set(named) - {"word"} == set(KINDS)

"""The first exercise, walked through in the lesson: the checker must still say what the page says it does."""
import re

import pytest

from checker.cli import main
from checker.course import ROOT
from checker.verdict import KINDS

PAGE = (ROOT / "course/lessons/unit00_bench/tools.md").read_text("utf-8")
STUB = (ROOT / "exercises/unit00_bench/prefixes.py").read_text("utf-8")
TRIES = re.findall(r"```python\n(def from_engineering.*?)```\n.*?```text\n\$ checker try prefixes\n(.*?)```", PAGE, flags=re.S)


def test_page_shows_five_tries():
    assert len(TRIES) == 5


@pytest.mark.parametrize(("code", "said"), TRIES)
def test_checker_says_what_the_page_says(code, said, tmp_path, monkeypatch, capsys):
    body = code.partition("\n")[2]
    file = tmp_path / "exercises/unit00_bench/prefixes.py"
    file.parent.mkdir(parents=True)
    file.write_text(STUB.replace("    raise NotImplementedError\n", body, 1), "utf-8")
    monkeypatch.chdir(tmp_path)
    main(["try", "prefixes"])
    assert capsys.readouterr().out == said


def test_page_names_every_verdict():
    named = re.findall(r"^\| ([a-z ]+) \|", PAGE.partition("### What it may say")[2], flags=re.M)
    assert set(named) - {"word"} == set(KINDS)

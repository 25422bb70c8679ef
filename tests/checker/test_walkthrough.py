"""The first exercise, as the Bench lesson walks through it: what the page prints is what the checker says."""

import re

import pytest

from checker import cli
from checker.course import ROOT

PAGE = (ROOT / "course/lessons/unit00_bench/tools.md").read_text()
STUB = (ROOT / "exercises/unit00_bench/prefixes.py").read_text()
STEPS = re.findall(r"```python\n(.*?)```\n.*?```text\n\$ checker try prefixes\n(.*?)```", PAGE, re.DOTALL)


def written(answer):
    """The stub with the page's function in place of its own."""
    signature, body = answer.split("\n", 1)
    start = STUB.index(signature)
    rest = STUB.index("\n    raise NotImplementedError\n", start)
    return STUB[:rest] + "\n" + body + STUB[rest + len("\n    raise NotImplementedError\n") :]


@pytest.mark.parametrize("step", range(len(STEPS)))
def test_what_the_page_prints_is_what_the_checker_says(step, tmp_path, monkeypatch, capsys):
    answer, printed = STEPS[step]
    file = tmp_path / "exercises/unit00_bench/prefixes.py"
    file.parent.mkdir(parents=True)
    file.write_text(written(answer))
    monkeypatch.chdir(tmp_path)
    assert cli.main(["try", "prefixes"]) == cli.NOT_YET
    assert capsys.readouterr().out == printed


def test_the_page_walks_through_several_tries():
    assert len(STEPS) >= 4

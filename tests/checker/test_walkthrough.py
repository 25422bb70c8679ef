"""The first exercises, as the Bench lesson walks through them: what the page prints is what the checker says."""

import re

import pytest

from checker import cli
from checker.core import CORE
from checker.course import PATHS, ROOT

PAGE = (ROOT / "course/lessons/unit00_bench/tools.md").read_text()
STUBS = {name: (ROOT / f"exercises/unit00_bench/{name}.py").read_text() for name in ("metres", "prefixes")}
STEPS = re.findall(r"```python\n((?:(?!```).)*?)```\n(?:(?!```).)*?```text\n\$ checker try (\w+)\n(.*?)```", PAGE, re.DOTALL)


def written(stub, answer):
    """The stub with the page's function in place of its own."""
    signature, body = answer.split("\n", 1)
    start = stub.index(signature)
    rest = stub.index("\n    raise NotImplementedError\n", start)
    return stub[:rest] + "\n" + body + stub[rest + len("\n    raise NotImplementedError\n") :]


@pytest.mark.parametrize("step", range(len(STEPS)))
def test_what_the_page_prints_is_what_the_checker_says(step, tmp_path, monkeypatch, capsys):
    answer, name, printed = STEPS[step]
    file = tmp_path / f"exercises/unit00_bench/{name}.py"
    file.parent.mkdir(parents=True)
    file.write_text(written(STUBS[name], answer))
    monkeypatch.chdir(tmp_path)
    assert cli.main(["try", name]) == (cli.DONE if " · passed\n" in printed else cli.NOT_YET)
    assert capsys.readouterr().out == printed


def test_what_the_page_sees_is_what_the_checker_shows(tmp_path, monkeypatch, capsys):
    [(name, value, printed)] = re.findall(r'\$ checker see (\w+) "(.*?)"\n(.*?)```', PAGE, re.DOTALL)
    answer = [answer for answer, tried, _ in STEPS if tried == name][-1]
    file = tmp_path / f"exercises/unit00_bench/{name}.py"
    file.parent.mkdir(parents=True)
    file.write_text(written(STUBS[name], answer))
    monkeypatch.chdir(tmp_path)
    assert cli.main(["see", name, value]) == cli.DONE
    assert capsys.readouterr().out == printed


def test_the_page_walks_through_several_tries():
    assert [name for _, name, _ in STEPS].count("metres") >= 2
    assert [name for _, name, _ in STEPS].count("prefixes") >= 4


def test_pages_count_the_core_rightly():
    core, further = len(CORE), len(PATHS) - len(CORE)
    assert f"core is {core} of the {len(PATHS)} exercises" in PAGE.replace("\n", " ")
    instructors = " ".join((ROOT / "course/lessons/instructors.md").read_text("utf-8").split())
    assert (
        f"marks its {core} exercises" in instructors and f"the other {further}; left out, all {len(PATHS)} count" in instructors
    )

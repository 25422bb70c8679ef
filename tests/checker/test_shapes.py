"""Submissions that are hostile by their shape: each gets the verdict that it states, and changes nothing for the next."""

import csv
import io
import os
import re
import time
import zipfile

import pytest
from lxml import etree

from checker import cli
from checker.judging.judge import absent, judge
from checker.judging.verdict import KINDS, PASSED
from checker.report.text import verdict_lines
from checker.sandbox.workers import start_worker
from checker.submissions.members import read_folder
from tests.checker.corpus import ATTACKS, HONEST, OBEYED, PATH, stated
from tests.checker.corpus import KINDS as KINDS_OF_ATTACK
from tests.checker.report_pages import SCRIPT
from tests.checker.shapes import SHAPES, secret_in

SEED = 20
HONEST_NAME = "Zoe Honest"


@pytest.fixture(scope="module")
def worker():
    with start_worker() as worker:
        yield worker


@pytest.fixture(scope="module")
def honest(worker):
    verdict = judge(PATH, {PATH: HONEST}, worker, SEED)
    assert (verdict.kind, verdict.earned) == (PASSED, verdict.marks)
    return verdict


def laid_out(tmp_path, name):
    """(folder of the class, how to end what was started): one hostile submission and an honest one."""
    folder = tmp_path / "class"
    folder.mkdir()
    (folder / HONEST_NAME).mkdir()
    (folder / HONEST_NAME / "resonance.py").write_text(HONEST)
    made = SHAPES[name](folder, secret_in(tmp_path))
    return folder, made[1] if isinstance(made, tuple) else lambda: None


def test_every_kind_of_attack_is_there_and_every_item_is_of_a_kind():
    items = [item for items in KINDS_OF_ATTACK.values() for item in items.split()]
    assert all(items.split() for items in KINDS_OF_ATTACK.values())
    assert len(items) == len(set(items))
    assert set(items) == set(ATTACKS) | {f"shape:{name}" for name in SHAPES}


@pytest.mark.parametrize("name", SHAPES)
def test_a_shape_is_read_safely(name, tmp_path, worker, honest):
    says = stated(SHAPES[name].__doc__)
    assert says and set(says.verdicts) <= set(KINDS) - {PASSED}
    folder, end = laid_out(tmp_path, name)
    started = time.monotonic()
    try:
        hostile, neighbour = sorted(read_folder(folder), key=lambda member: member.files.get(PATH) == HONEST)
    finally:
        end()
    assert time.monotonic() - started < 20
    exercise = PATH.removesuffix(".py")
    verdict = (
        judge(PATH, hostile.files, worker, SEED) if PATH in hostile.files else absent(exercise, hostile.why_unread(exercise))
    )
    told = "\n".join([hostile.name, *hostile.said, *(line.text for line in verdict_lines(verdict))])
    assert verdict.kind in says.verdicts, told
    assert says.says in " ".join(told.split()), told
    assert verdict.earned < verdict.marks / 2, told
    assert not OBEYED.search(told), repr(told)
    assert len(told) < 5000
    assert neighbour.name.startswith(HONEST_NAME) and neighbour.said == ()
    assert judge(PATH, neighbour.files, worker, SEED) == honest


@pytest.mark.slow
def test_a_class_of_all_shapes_is_marked_to_the_end(tmp_path, monkeypatch, capsys):
    """Every export and report of it is clean, and the honest member has the honest mark."""
    monkeypatch.chdir(tmp_path)
    folder = tmp_path / "class"
    (folder / HONEST_NAME).mkdir(parents=True)
    (folder / HONEST_NAME / "resonance.py").write_text(HONEST)
    for name, make in SHAPES.items():
        (tmp_path / name / "class").mkdir(parents=True)
        made = make(tmp_path / name / "class", secret_in(tmp_path / name))
        if isinstance(made, tuple):  # it holds on to the place where it lies
            made[1]()
        for entry in os.listdir(tmp_path / name / "class"):
            plain = entry in ("Rufus", "Rufus.zip")
            os.rename(tmp_path / name / "class" / entry, folder / (entry.replace("Rufus", f"Rufus {name}") if plain else entry))
    assert cli.main(["mark", str(folder), "--only", "resonance", "--seed", str(SEED)]) == cli.NOT_YET
    told = capsys.readouterr()
    assert not OBEYED.search(told.out) and not OBEYED.search(told.err.replace("\r", "")), told

    rows = list(csv.DictReader(io.StringIO((tmp_path / "marks/marks.csv").read_text("utf-8-sig"), newline="")))
    assert len(rows) == len(SHAPES) + 1
    assert [row["member"] for row in rows if row["marks"] == "10"] == [HONEST_NAME]
    with zipfile.ZipFile(tmp_path / "marks/oneroster.zip") as archive:
        tables = [archive.read(name).decode() for name in archive.namelist()]
    for text in [(tmp_path / "marks/marks.csv").read_text("utf-8-sig"), *tables]:
        for row in csv.reader(io.StringIO(text, newline="")):
            assert not any(re.match(r"\s*[=+\-@]", cell) or OBEYED.search(cell) for cell in row), row
    tree = etree.parse(tmp_path / "marks/junit.xml")
    assert len(tree.findall("testsuite")) == len(rows)
    pages = [path for path in (tmp_path / "marks").rglob("*.html")]
    assert len(pages) >= len(rows) + 1
    for page in pages:
        text = page.read_text("utf-8").replace(
            '<script type="module">' + SCRIPT.decode() + "</script>", "", int(page.name == "index.html")
        )
        assert not re.search(r"<script|<img|javascript:|<b>\s*/resonance", text), page
        assert not OBEYED.search(text.replace("\n", "")), page

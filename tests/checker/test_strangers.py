"""Hostile texts at every entry, and every exit read: nothing of them reaches a terminal, a page or a file as it was.

And who is who: no name, however it looks, takes another's mark.
"""

import csv
import json
import os
import subprocess
import sys
import unicodedata
import xml.etree.ElementTree as ET
import zipfile
from fractions import Fraction

import pytest

from checker.course import ROOT
from checker.marks.marksheet import marks_to_data
from checker.marks.run import Request, mark_class
from checker.marks.standing import ClassMarks
from checker.marks.store import open_store
from checker.report.names import report_names
from checker.submissions.members import find_submissions, read_folder
from tests.checker.corpus import HONEST, OBEYED, PATH

RESONANCE = PATH.removesuffix(".py")
EVIL = "\x1b[2J\u202egnp\x07\x9b31m\u2066"
BODY = "import numpy as np\nE = " + ascii(EVIL) + "\n"
ANSWERS = {
    "an error of a hostile class": BODY + "def resonant_frequency(a, b):\n    raise type(E, (Exception,), {})(E)",
    "an error with a hostile text": BODY + "def resonant_frequency(a, b):\n    raise ValueError(E)",
    "a value of a hostile class": BODY + "def resonant_frequency(a, b):\n    return type(E, (), {})()",
    "a hostile text": BODY + "def resonant_frequency(a, b):\n    return E",
    "prints": BODY + "def resonant_frequency(a, b):\n    print(E)\n    return 1.0",
    "functions of hostile names": BODY + "def f():\n    pass\nglobals()['resonant_frequenc' + E] = f",
    "arguments of hostile names": BODY
    + "class F:\n    def __call__(self): pass\nimport inspect\ndef resonant_frequency(): pass\n"
    + "resonant_frequency.__signature__ = None",
    "a formula of hostile names": BODY + "import sympy\ndef resonance_condition(a, b):\n    return sympy.Symbol('x' + E)\n",
    "a line quoted": f"import numpy as np\n# {EVIL}\ndef resonant_frequency(a, b):\n    raise KeyError  # {EVIL}\n",
    "a module of a hostile name": BODY + "def resonant_frequency(a, b):\n    raise ModuleNotFoundError(E, name=E)",
    "half characters": BODY + "def resonant_frequency(a, b):\n    raise ValueError('\\ud800' + E)",
    "what XML does not hold": BODY + "def resonant_frequency(a, b):\n    raise ValueError(chr(0) + chr(0xffff) + ']]>')",
}


def put(folder, text=HONEST):
    (folder / PATH).parent.mkdir(parents=True)
    (folder / PATH).write_text(text, "utf-8", "surrogatepass")


@pytest.fixture(scope="module")
def marked(tmp_path_factory):
    """A class with something hostile at every entry: where it was marked into, and what was printed on a terminal in ASCII."""
    here = tmp_path_factory.mktemp("strangers")
    for name, source in ANSWERS.items():
        put(here / "in" / name, source)
    put(here / "in" / f"Rufus{EVIL}")
    put(here / "in" / os.fsdecode(b"Silas \xff"))
    put(here / "in" / "x" / f"fol{EVIL}der")
    put(here / "in" / "x", HONEST + "\n")
    (here / "in" / "y").mkdir()
    (here / "in" / "y" / f"{EVIL}").mkdir()
    (here / "in" / "y" / f"{EVIL}" / "resonance.py").symlink_to("/etc/passwd")
    with zipfile.ZipFile(here / "in" / "zipped.zip", "w") as archive:
        archive.writestr(f"../{EVIL}/resonance.py", "x")
        archive.writestr(f"{EVIL}/resonance.py", "# coding: x\n")
    done = subprocess.run(
        [sys.executable, "-m", "checker", "mark", here / "in", "--only", "resonance", "--seed", "3", "--into", here / "out"],
        cwd=ROOT,
        capture_output=True,
        env=os.environ | {"PYTHONIOENCODING": "ascii", "PYTHONPATH": str(ROOT), "NO_COLOR": "1"},
    )
    assert done.returncode in (0, 1) and b"Traceback" not in done.stderr, done.stderr.decode()
    return here / "out", (done.stdout + done.stderr).decode("ascii")


def check(text):
    found = OBEYED.search(text.replace("\t", " ").replace("\r\n", "\n"))
    assert not found, repr(text[max(0, found.start() - 80) : found.end() + 20])


def test_the_terminal(marked):
    check(marked[1])
    assert "Silas" in marked[1] and "Rufus" in marked[1]


def test_pages(marked):
    pages = [*(marked[0] / "members").glob("*.html"), marked[0] / "index.html"]
    assert len(pages) == len(ANSWERS) + 6
    for page in pages:
        check(page.read_text("utf-8"))


def test_tables(marked):
    check((marked[0] / "marks.csv").read_text("utf-8-sig"))
    assert len(list(csv.reader((marked[0] / "marks.csv").open(encoding="utf-8-sig")))) == len(ANSWERS) + 6
    with zipfile.ZipFile(marked[0] / "oneroster.zip") as archive:
        for name in archive.namelist():
            check(archive.read(name).decode("utf-8"))


def test_xml(marked):
    text = (marked[0] / "junit.xml").read_text("utf-8")
    check(text)
    assert len(ET.fromstring(text)) == len(ANSWERS) + 5


def test_data(marked):
    with open_store(marked[0] / "marks.sqlite") as store:
        members = list(ClassMarks(store))
        check(json.dumps([marks_to_data(member) for member in members], ensure_ascii=False))
        assert {mark.verdict.kind for member in members for mark in member.marks} > {"passed", "raised", "wrong"}


# Who is who

ALIKE = [
    "Tobias Fenn",
    "Tobias\u200b Fenn",
    "\u202aTobias Fenn",
    "Tobias\u00a0Fenn",
    "Tobias  Fenn",
    "Tobias Fenn (2)",
    "tobias fenn",
    "Ágnes",
    unicodedata.normalize("NFD", "Ágnes"),
    "x" * 90,
    "x" * 91,
    "\\nKit",
    "Kit\\u200b",
    "Kit\u200b",
]


def test_names_that_look_alike_are_told_apart_and_keep_their_own_identity(tmp_path):
    for name in ALIKE:
        (tmp_path / name).mkdir()
    found = {os.path.basename(one.path): one for one in find_submissions(tmp_path)}
    assert len({one.identity for one in found.values()}) == len(ALIKE)
    looks = {" ".join(unicodedata.normalize("NFKC", one.name).split()) for one in found.values()}
    assert len(looks) == len(ALIKE)
    assert found["Tobias Fenn"].name == found["Tobias Fenn"].identity == "Tobias Fenn"
    assert found["Tobias Fenn (2)"].name == "Tobias Fenn (2)"
    files = report_names([one.name for one in found.values()])
    assert len({name.casefold() for name in files}) == len(ALIKE) and all(name.isascii() for name in files)


@pytest.mark.parametrize("impostor", [name for name in ALIKE if name.lower() != "tobias fenn"])
def test_no_one_takes_another_s_mark(tmp_path, impostor):
    """The mark stays with the raw name, whoever is sorted first and whoever is there at all."""
    mark = {("Tobias Fenn", RESONANCE): Fraction(10)}
    (tmp_path / impostor).mkdir()
    [alone] = read_folder(tmp_path)
    assert (alone.identity, RESONANCE) not in mark
    (tmp_path / "Tobias Fenn").mkdir()
    assert sorted((member.identity, RESONANCE) in mark for member in read_folder(tmp_path)) == [False, True]


def test_a_mark_set_by_hand_stays_with_whom_it_was_set_for(tmp_path):
    put(tmp_path / "in" / "Tobias Fenn", "x = 1")
    with open_store(tmp_path / "marks.sqlite") as store:
        mark_class(Request(tmp_path / "in", (RESONANCE,), seed=3, jobs=1), store, lambda marked, total: marked)
        [tobias] = ClassMarks(store)
        store.override(tobias.identity, RESONANCE, Fraction(7), "by ear", "Wren Dalby")
        put(tmp_path / "in" / "Tob\u200bias Fenn", "x = 2")
        mark_class(Request(tmp_path / "in", (RESONANCE,), jobs=1), store, lambda marked, total: marked)
        assert {member.name: member.amount for member in ClassMarks(store)} == {"Tobias Fenn": 7, "Tobias Fenn (2)": 0}

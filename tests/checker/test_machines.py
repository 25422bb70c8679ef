"""A student's commands on Windows and macOS, as far as Linux can play them, and on terminals that lack most letters."""

import json
import os
import re
import subprocess
import sys

import pytest

from checker.cli.encoding import instead_of
from checker.course import PATHS, ROOT
from checker.judging import explanations
from checker.judging.plans import exercise_at
from checker.pack.stubs import write_stubs
from tests.checker.sample import as_handed_in
from tests.checker.test_sentences import sentences

METRES = "unit00_bench/metres.py"
ENCODINGS = ("utf-8", "cp1252", "cp437", "ascii")


@pytest.fixture(scope="module")
def home(tmp_path_factory):
    return tmp_path_factory.mktemp("home")


@pytest.fixture
def folder(tmp_path):
    """Somebody's exercises, in a folder with an umlaut and a space in its name."""
    here = tmp_path / "Käthe Möwe"
    write_stubs(here / "exercises")
    return here


def run(machine, encoding, folder, home, *commands):
    """What the checker says to each command on another machine."""
    program = subprocess.run(
        [sys.executable, ROOT / "tests/checker/machines.py", machine],
        cwd=folder,
        input="".join(json.dumps(command.split()) + "\n" for command in commands).encode(),
        capture_output=True,
        env={
            "PYTHONPATH": str(ROOT),
            "PATH": os.environ["PATH"],
            "HOME": str(home),
            "LOCALAPPDATA": str(home / "Library/Caches"),
            "PYTHONIOENCODING": encoding,
        },
    )
    said = (program.stdout + program.stderr).decode(encoding)
    assert "Traceback" not in said and "contained" not in said and "wall" not in said, said
    return re.split(r"^exit \d+\n", program.stdout.decode(encoding).replace("\r\n", "\n"), flags=re.M)


def put(folder, source):
    (folder / "exercises" / METRES).write_text(source, "utf-8")


@pytest.mark.parametrize(
    ("machine", "encoding"), [("win32", "cp1252"), ("win32", "cp437"), ("win32", "ascii"), ("darwin", "utf-8")]
)
def test_a_student_gets_on_there(machine, encoding, folder, home):
    right = as_handed_in((ROOT / "solutions" / METRES).read_text("utf-8")) + f"# {machine} {encoding}\n"
    put(folder, right.replace("return ", "return 1e-3 * ", 1))
    wrong, hint, read = run(machine, encoding, folder, home, "try metres", "hint metres", "read metres")[:3]
    assert "metres \N{MIDDLE DOT} wrong".encode(encoding, "readable").decode(encoding) in wrong
    assert "hint 1 of 3" in hint and "Bench, section 4" in read
    put(folder, right)
    passed, known = run(machine, encoding, folder, home, "try metres", "try wavelength")[:2]
    assert passed == known and "passed" in passed and "Next: tone. Read: Bench, section 4 (" in passed


def test_it_stops_what_never_ends_there_and_says_what_ended_python(folder, home):
    put(folder, "import os\n\n\ndef wavelength(frequency):\n    os._exit(3)\n")
    [ended, *_] = run("win32", "cp437", folder, home, "try metres")
    assert "ended early" in ended or "refused" in ended


@pytest.mark.slow
def test_a_receiver_is_heard_there(folder, home):
    [heard, *_] = run("win32", "cp437", folder, home, "hear")
    assert "links of this receiver are your own" in heard and (folder / "heard" / "index.html").is_file()


@pytest.mark.parametrize("encoding", ENCODINGS)
def test_every_sentence_can_be_read_on_every_terminal(encoding):
    for sentence in sentences():
        shown = instead_of(sentence, encoding)
        lost = shown.count("?") - sentence.count("?")
        assert not lost, f"{sentence!r} is {shown!r}"


@pytest.mark.parametrize(
    ("text", "in_ascii"), [("365 µH", "365 uH"), ("2π Ω → x²", "2pi ohm -> x^2"), ("a · b", "a - b"), ("é", "e")]
)
def test_a_letter_that_is_lacking_is_written_so_that_it_is_understood(text, in_ascii):
    assert instead_of(text, "ascii") == in_ascii


def test_every_hint_can_be_read_on_every_terminal():
    for path in PATHS[:12]:
        for hint in exercise_at(path).hints:
            assert instead_of(hint, "ascii").count("?") == hint.count("?"), hint


def test_signals_that_a_system_lacks_are_none():
    assert explanations._signals("SIGNOTHING") == set()

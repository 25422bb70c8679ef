"""From a page to a file to the checker and on: names, lessons, what comes next, stubs that are lost, what is kept."""

import re
import sys
import webbrowser

import numpy as np
import pytest

from checker import cli
from checker.checks.exercise import exactly, invariant
from checker.cli import called
from checker.cli.naming import exercise_named, exercises_named
from checker.course import PATHS, ROOT, UnknownExercise
from checker.judging.compare import difference
from checker.judging.explanations import law_broken_sentence
from checker.pack import cache, lessons, practice
from checker.pack.index import index
from checker.pack.originals import original_stub
from checker.pack.stubs import is_stub_of, write_stubs
from checker.sandbox.workers import start_worker
from tests.checker.sample import as_handed_in

METRES = "unit00_bench/metres"
RIGHT = as_handed_in((ROOT / "solutions" / f"{METRES}.py").read_text("utf-8"))


@pytest.fixture
def here(tmp_path, monkeypatch):
    monkeypatch.chdir(tmp_path)
    write_stubs(tmp_path / "exercises")
    return tmp_path / "exercises"


@pytest.mark.parametrize(
    ("said", "path"),
    [
        ("resonance", "unit03_tuned_circuit/resonance"),
        ("resonant_frequency", "unit03_tuned_circuit/resonance"),
        ("resonant_frequency()", "unit03_tuned_circuit/resonance"),
        ("exercises/unit03_tuned_circuit/resonance.py", "unit03_tuned_circuit/resonance"),
        (r"exercises\unit03_tuned_circuit\resonance.py", "unit03_tuned_circuit/resonance"),
        (r"C:\Users\Käthe Möwe\exercises\unit03_tuned_circuit\resonance.py", "unit03_tuned_circuit/resonance"),
        ("resonence", "unit03_tuned_circuit/resonance"),
    ],
)
def test_an_exercise_has_many_names(said, path):
    assert exercise_named(said) == path and exercises_named(said) == [path]


@pytest.mark.parametrize(
    "said", ["03", "3", "unit03", "unit03_tuned_circuit", "Tuned circuit", "exercises/unit03_tuned_circuit/"]
)
def test_a_unit_has_many_names(said):
    assert exercises_named(said) == [path for path in PATHS if path.startswith("unit03")]
    with pytest.raises(UnknownExercise, match="is a unit"):
        exercise_named(said)


def test_no_name_of_an_exercise_or_a_function_is_taken_for_another():
    for path in PATHS:
        assert exercise_named(path.rpartition("/")[2]) == path
        for name, *_ in index()[path].functions:
            assert path.rpartition("/")[2] == name or name in {n for n, *_ in index()[exercise_named(name)].functions}


def test_every_exercise_stands_in_a_section_of_a_lesson_and_its_stub_says_where():
    for path in PATHS:
        lesson = index()[path].lesson
        assert lesson.heading, path
        stub = (ROOT / "exercises" / f"{path}.py").read_text("utf-8")
        [named] = re.findall(r"\((course/lessons/[\w/]+\.md)\)", stub.split('"""')[1])
        assert named == f"course/lessons/{lesson.page}.md" and (ROOT / named).is_file()


def test_read_opens_the_section_where_there_is_a_site(tmp_path, monkeypatch, capsys):
    page = tmp_path / "unit03_tuned_circuit" / "index.html"
    page.parent.mkdir()
    for file in (page, tmp_path / "index.html"):
        file.write_text("", "utf-8")
    opened = []
    monkeypatch.setattr(webbrowser, "open", opened.append)
    monkeypatch.setattr(lessons, "_SITES", (tmp_path,))
    assert cli.main(["read", "resonance"]) == cli.DONE
    assert opened == [f"{page.as_uri()}#2-where-does-it-tune"] and "Tuned circuit, section 2" in capsys.readouterr().out
    monkeypatch.setattr(lessons, "_SITES", ())
    monkeypatch.setattr(lessons, "site_address", lambda: "https://saltmarsh-point.example/course/")
    assert cli.main(["read", "03"]) == cli.DONE
    assert opened[-1] == "https://saltmarsh-point.example/course/unit03_tuned_circuit/index.html"
    monkeypatch.setattr(lessons, "site_address", lambda: "")
    assert cli.main(["read", "resonance"]) == cli.NOT_YET and "mkdocs build" in " ".join(capsys.readouterr().out.split())


def test_a_lost_stub_is_named_and_put_back_but_never_over_a_file(here, capsys):
    file = here / f"{METRES}.py"
    stub = file.read_bytes()
    file.unlink()
    assert cli.main(["try", "metres"]) == cli.NOT_YET
    said = " ".join(capsys.readouterr().out.split())
    assert said.startswith(f"exercises/{METRES}.py is not there") and "checker restore metres puts it back" in said
    assert cli.main(["restore", "metres"]) == cli.DONE and file.read_bytes() == stub
    file.write_text("mine", "utf-8")
    assert cli.main(["restore", "metres"]) == cli.USAGE_ERROR and file.read_text("utf-8") == "mine"
    for number in ("", "2"):
        assert cli.main(["restore", "metres", "--over"]) == cli.DONE and file.read_bytes() == stub
        assert (file.parent / f"metres.py.old{number}").is_file()


def test_an_encoding_that_cannot_be_read_gets_one_sentence(here, capsys):
    (here / f"{METRES}.py").write_bytes("# Möwe\n".encode("utf-16"))
    assert cli.main(["try", "metres"]) == cli.NOT_YET
    out, err = capsys.readouterr()
    assert " ".join(out.split()) == f"exercises/{METRES}.py is not text in UTF-8; save it as UTF-8." and not err


def test_every_stub_can_be_had_again():
    assert all(is_stub_of(path, original_stub(path) or b"") for path in PATHS)


class Nobody:
    """A worker that must not be asked."""

    def session(self, *anything):
        raise AssertionError("judged again")


def test_a_verdict_is_kept_until_the_file_changes_and_what_is_damaged_is_made_again(tmp_path, monkeypatch):
    monkeypatch.setattr(cache, "_folder", lambda: tmp_path)
    practice.practice_plan.cache_clear()
    files = {f"{METRES}.py": RIGHT}
    with start_worker() as worker:
        first = practice.practice_verdict(METRES, files, worker)
        assert first.kind == "passed" and practice.practice_verdict(METRES, files, Nobody()) == first
        assert practice.practice_verdict(METRES, {f"{METRES}.py": RIGHT + "# more\n"}, worker).kind == "passed"
        for file in tmp_path.rglob("*.*"):
            file.write_bytes(b"damaged" + file.read_bytes()[7:])
        practice.practice_plan.cache_clear()
        assert practice.known_verdict(METRES, files) is None
        assert practice.practice_verdict(METRES, files, worker) == first
    practice.practice_plan.cache_clear()


def test_where_nothing_can_be_kept_nothing_is_said(monkeypatch, tmp_path):
    (tmp_path / "file").write_text("", "utf-8")
    monkeypatch.setattr(cache, "_folder", lambda: tmp_path / "file" / "below")
    cache.keep("x", b"y")
    assert cache.read_kept("x") is None


@pytest.mark.parametrize(
    ("program", "typed", "shown"),
    [
        ("/usr/lib/course/checker/__main__.py", "python3", "python3 -m checker"),
        (".venv/bin/checker", "", ".venv/bin/checker"),
        ("a folder/checker", "", '"a folder/checker"'),
        ("/x/pytest", "", "checker"),
    ],
)
def test_a_command_is_printed_as_it_was_called(monkeypatch, program, typed, shown):
    monkeypatch.setattr(sys, "argv", [program])
    monkeypatch.setattr(sys, "orig_argv", [typed])
    monkeypatch.setattr(called.shutil, "which", lambda name: None)
    assert called.called_as() == shown


@pytest.mark.parametrize(
    ("got", "says"),
    [
        ([1.0, 2.0, 3.0], "the last is missing"),
        ([2.0, 3.0, 4.0], "the first is missing"),
        ([1.0, 2.0, 3.0, 4.0, 5.0], "the last is one too many"),
        ([3.0, 4.0], "the first 2 are missing"),
    ],
)
def test_it_is_said_which_end_of_a_row_is_short(got, says):
    wanted = np.array([1.0, 2.0, 3.0, 4.0])
    assert says in difference(np.array(got), wanted, exactly("test")).says
    assert says in difference(got, tuple(wanted.tolist()), exactly("test")).says


def test_a_sentence_that_ends_in_a_full_stop_gets_no_second():
    assert law_broken_sentence(invariant("the power goes with the square of the r.m.s.", lambda: None)).endswith("r.m.s.")

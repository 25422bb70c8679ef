"""The student pack works by itself, holds no answer in code, and has the same bytes each time."""

import ast
import os
import shutil
import subprocess
import sys
import zipfile

import pytest

from checker import cli
from checker.course import PATHS, PRACTICE_SEED, ROOT, load_exercise
from checker.judging import plans
from checker.judging.judge import judge
from checker.judging.plans import plan_for
from checker.judging.sealed import BrokenSeal, seal_plan, unseal, unseal_plan
from checker.judging.verdict import PASSED
from checker.pack import contents, stubs
from checker.pack.contents import FOLDER, pack_files, write_pack
from checker.pack.laws import laws_source
from checker.pack.site import lesson_opens, site_files
from checker.pack.start import start_page
from checker.sandbox.workers import start_worker
from tests.checker.sample import as_handed_in

RESONANCE = "unit03_tuned_circuit/resonance"


@pytest.fixture(scope="module")
def files():
    return pack_files()


@pytest.fixture(scope="module")
def unpacked(files, tmp_path_factory):
    return write_pack(tmp_path_factory.mktemp("student") / "pack")


def run(folder, *arguments):
    return subprocess.run(
        [sys.executable, "-m", "checker", *arguments],
        cwd=folder,
        capture_output=True,
        text=True,
        env={"PYTHONPATH": str(folder), "PATH": os.environ["PATH"], "COLUMNS": "80"},
    )


def laws_of(source):
    names = {}
    exec(source, names)
    return names["LAWS"]


@pytest.mark.slow
def test_same_input_same_bytes(files):
    plans.cached_plan.cache_clear()
    assert pack_files() == files


def test_zip_has_the_same_bytes_each_time(tmp_path):
    assert write_pack(tmp_path / "one.zip").read_bytes() == write_pack(tmp_path / "two.zip").read_bytes()
    with zipfile.ZipFile(tmp_path / "one.zip") as archive:
        assert {name.split("/")[0] for name in archive.namelist()} == {FOLDER}


def test_nothing_is_written_over(tmp_path):
    (tmp_path / "mine.zip").write_text("mine")
    with pytest.raises(FileExistsError):
        write_pack(tmp_path / "mine.zip")
    assert (tmp_path / "mine.zip").read_text() == "mine"


def statements(source):
    """Every function body of a source, docstrings and raise statements apart, as text."""
    return {
        ast.unparse(ast.Module(body, []))
        for node in ast.walk(ast.parse(source))
        if isinstance(node, ast.FunctionDef)
        if (body := [part for part in node.body if not isinstance(part, (ast.Expr, ast.Raise))])
    }


@pytest.mark.parametrize("path", PATHS)
def test_no_reference_code_is_in_the_pack(path, files):
    stub = statements(files[f"exercises/{path}.py"].decode())
    asked = {question.name for question in load_exercise(path).questions}
    reference = {
        ast.unparse(ast.Module(body, []))
        for node in ast.walk(ast.parse((ROOT / "solutions" / f"{path}.py").read_text()))
        if isinstance(node, ast.FunctionDef)
        and node.name in asked
        and (body := [part for part in node.body if not isinstance(part, (ast.Expr, ast.Raise))])
    }
    assert reference and not reference & stub
    everything = b"\n".join(data for name, data in files.items() if name.endswith(".py")).decode()
    assert not [body for body in reference if len(body) > 30 and body in everything]


def test_neither_solutions_nor_slips_nor_demo_are_in_the_pack(files):
    assert not [
        name
        for name in files
        if name.startswith(("solutions", "tests", "course/", "checker/sheet/"))
        or "demo" in name
        or name.endswith(".toml")
        and "sheet" in name
        or name.endswith("_check.py")
    ]
    practice = b"".join(data for name, data in files.items() if name.startswith("practice/"))
    assert b"You may have" not in practice and b"returned the angular frequency" not in practice


@pytest.fixture
def worked_on(tmp_path, monkeypatch):
    """A copy of the course in which the instructor has tried an exercise, and left things lying about."""
    for folder in ("checker", "exercises", "solutions"):
        shutil.copytree(ROOT / folder, tmp_path / folder, ignore=shutil.ignore_patterns("__pycache__", "examples"))
    for name in ("LICENSE", "pyproject.toml", "constraints.txt"):
        shutil.copy(ROOT / name, tmp_path / name)
    for module in (contents, stubs):
        monkeypatch.setattr(module, "ROOT", tmp_path)
    return tmp_path


@pytest.mark.parametrize("answer", ["return 1 / np.sqrt(capacitance)", "x = 1\n    raise NotImplementedError", "(", None])
def test_an_exercise_that_was_worked_on_is_not_handed_out(worked_on, answer, capsys, monkeypatch):
    file = worked_on / "exercises" / f"{RESONANCE}.py"
    stub, reference = file.read_text(), as_handed_in((ROOT / "solutions" / f"{RESONANCE}.py").read_text())
    file.write_text(stub.replace("raise NotImplementedError", answer) if answer else reference)
    monkeypatch.chdir(worked_on)
    assert cli.main(["pack", "pack.zip"]) == cli.USAGE_ERROR
    told = capsys.readouterr().err
    assert "has been worked on. Put the stub back" in told and f"exercises/{RESONANCE}.py" in told and told.count("\n") == 1
    assert not (worked_on / "pack.zip").exists()


def test_what_lies_about_is_not_handed_out(worked_on, files):
    for name in (
        f"exercises/{RESONANCE}.py~",
        "exercises/unit03_tuned_circuit/answers.py",
        "exercises/notes.txt",
        "checker/marks.sqlite",
        "checker/.resonance.py.swp",
    ):
        (worked_on / name).write_text("the answers")
    assert pack_files() == files


def test_nothing_depends_on_the_instructors_seed(files):
    plan_for(RESONANCE, 987654321)
    assert not [name for name, data in pack_files().items() if b"987654321" in data]
    for path in PATHS:  # nor is it in what is sealed
        assert unseal(files[f"practice/{path}.sealed"], path)["seed"] == PRACTICE_SEED


@pytest.mark.parametrize("path", PATHS)
def test_sealed_plan_judges_like_the_made_one(path):
    plan = plan_for(path, PRACTICE_SEED)
    text = seal_plan(plan)
    opened = unseal_plan(text, path, laws_of(laws_source(plan)))
    assert repr(opened.places) == repr(plan.places)
    assert seal_plan(opened) == text, "opening a seal and closing it again changes nothing"


def test_a_damaged_seal_is_said():
    text = seal_plan(plan_for(RESONANCE, PRACTICE_SEED))
    for broken in (text[:-40], b"x" + text, b"", b"\xff"):
        with pytest.raises(BrokenSeal, match="Unpack the student pack again"):
            unseal_plan(broken, RESONANCE, {})


def test_the_checker_works_inside_the_pack(unpacked):
    first = run(unpacked, "try", "resonance")
    assert first.returncode == 1 and "resonance · not attempted" in first.stdout
    stub = unpacked / "exercises" / f"{RESONANCE}.py"
    stub.write_text(as_handed_in((ROOT / "solutions" / f"{RESONANCE}.py").read_text()))
    assert run(unpacked, "try", "resonance").stdout.startswith("resonance · passed")
    stub.write_text(stub.read_text().replace("2 * np.pi * ", ""))
    wrong = run(unpacked, "try", "resonance")
    assert "2π times too large" in wrong.stdout and "angular frequency" in wrong.stdout
    assert "Set w L" in run(unpacked, "hint", "resonance", "2").stdout
    for command in ("mark", "pack"):
        refused = run(unpacked, command, "x.zip")
        assert refused.returncode == 2 and "student pack" in refused.stderr and "Traceback" not in refused.stderr


def test_pack_and_course_agree_on_wrong_answers(unpacked):
    """The verdict in the pack is the course's own under the practice seed."""
    source = (
        "import numpy as np\ndef resonant_frequency(inductance, capacitance):\n    return np.sqrt(inductance / capacitance)\n"
    )
    (unpacked / "exercises" / f"{RESONANCE}.py").write_text(source)
    told = run(unpacked, "try", "resonance").stdout
    with start_worker() as worker:
        verdict = judge("resonance", {f"{RESONANCE}.py": source}, worker, PRACTICE_SEED)
    assert verdict.kind != PASSED
    assert verdict.findings[0].got in told and verdict.findings[0].wanted in told


def test_a_lost_stub_is_put_back_in_a_pack(unpacked):
    file = unpacked / "exercises" / "unit00_bench" / "metres.py"
    stub = file.read_bytes()
    file.unlink()
    said = run(unpacked, "try", "metres").stdout
    assert "metres.py is not there" in said and "restore metres puts it back" in " ".join(said.split())
    assert run(unpacked, "restore", "metres").returncode == 0 and file.read_bytes() == stub


def test_a_pack_brings_the_lessons_and_its_stubs_name_them(tmp_path):
    site = tmp_path / "site"
    (site / "print").mkdir(parents=True)
    (site / "print" / "course.html").write_text("all", "utf-8")
    (site / "ring.wav").write_bytes(b"RIFF")
    (site / "ring.mp3").write_bytes(b"ID3")
    page = '<a href="ring.wav" download>WAV</a> <a href="ring.mp3" download>MP3</a> <a href="print/course.html">Print</a>'
    (site / "index.html").write_text(page, "utf-8")
    assert site_files(site) == {"index.html": b'<a href="ring.mp3" download>MP3</a> Print', "ring.mp3": b"ID3"}
    stub = b"""What?   Lesson: Signal, section 2 (course/lessons/unit01_signal/index.md)."""
    assert b"section 2 (site/unit01_signal/index.html)." in lesson_opens(stub, True, "")
    assert b"section 2 (https://x.example/c/unit01_signal/index.html)." in lesson_opens(stub, False, "https://x.example/c/")
    assert lesson_opens(stub, False, "") == b"What?   Lesson: Signal, section 2."


@pytest.mark.parametrize(
    ("with_site", "address", "says"),
    [(True, "", "site/index.html"), (False, "https://x.example", "at https://x.example"), (False, "", "ask whoever gave it")],
)
def test_the_first_page_says_what_to_read_and_how_to_begin_on_every_system(with_site, address, says):
    page = start_page(with_site, address)
    assert (
        says in page
        and "py -m venv .venv" in page
        and ".venv\\Scripts\\checker try" in page
        and ".venv/bin/checker try" in page
    )

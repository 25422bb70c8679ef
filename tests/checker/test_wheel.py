"""The course as a package: built, installed where nothing else of it is, and every command run there, outside any checkout."""

import importlib.util
import os
import pty
import shutil
import subprocess
import sys
import sysconfig
import tarfile
import venv
import zipfile

import pytest

from checker.course import PATHS, ROOT
from tests.checker.sample import as_handed_in

pytestmark = pytest.mark.slow
LEFT = shutil.ignore_patterns("__pycache__", "*.egg-info")


@pytest.fixture(scope="module")
def built(tmp_path_factory):
    """A folder with the source archive and the wheel made of it."""
    if importlib.util.find_spec("build") is None:
        why = "the package `build` is not installed (extra `dev`), so no wheel was made"
        (pytest.fail if os.environ.get("CI") == "true" else pytest.skip)(why)
    source = tmp_path_factory.mktemp("source") / "course"
    for name in ("checker", "solutions", "exercises"):
        shutil.copytree(ROOT / name, source / name, ignore=LEFT)
    for name in ("LICENSE", "README.md", "constraints.txt", "pyproject.toml"):
        shutil.copy(ROOT / name, source / name)
    made = tmp_path_factory.mktemp("built")
    subprocess.run([sys.executable, "-m", "build", "--no-isolation", "--outdir", made, source], check=True, capture_output=True)
    return made


@pytest.fixture(scope="module")
def installed(built, tmp_path_factory):
    """The command in an environment that holds the wheel, and of others what the wheel depends on."""
    folder = tmp_path_factory.mktemp("environment")
    venv.create(folder, with_pip=True)
    python = folder / "bin" / "python"
    [wheel] = built.glob("*.whl")
    subprocess.run([python, "-m", "pip", "install", "-q", "--no-deps", "--no-index", wheel], check=True, capture_output=True)
    [site] = folder.glob("lib/python*/site-packages")
    # A folder named in a .pth is looked in for modules; what its own .pth files name, such as a checkout, is not.
    (site / "libraries.pth").write_text(sysconfig.get_path("purelib") + "\n")
    return folder / "bin" / "checker"


@pytest.fixture(scope="module")
def student(installed, tmp_path_factory):
    """A folder with exercises in it, made by the command."""
    folder = tmp_path_factory.mktemp("student")
    assert run(installed, folder, "try", "--start", "resonance").returncode == 1
    return folder


def run(command, folder, *arguments):
    done = subprocess.run(
        [command, *map(str, arguments)],
        cwd=folder,
        capture_output=True,
        text=True,
        stdin=subprocess.DEVNULL,
        env={"PATH": os.environ["PATH"], "COLUMNS": "80", "OPENBLAS_NUM_THREADS": "1"},
    )
    assert "Traceback" not in done.stderr
    return done


def test_archive_and_wheel_hold_what_they_must(built):
    [wheel], [archive] = built.glob("*.whl"), built.glob("*.tar.gz")
    inside = zipfile.ZipFile(wheel).namelist()
    for name in (
        "checker/report/pages/class.html",
        "checker/report/report.css",
        "checker/sheet/pages/sheet.css",
        "checker/examples/sheets/orla_quill_reaction.toml",
        "solutions/unit03_tuned_circuit/resonance.py",
        "exercises/unit03_tuned_circuit/resonance.py",
    ):
        assert name in inside
    with tarfile.open(archive) as opened:
        names = {name.partition("/")[2] for name in opened.getnames()}
    assert {"LICENSE", "README.md", "constraints.txt", "pyproject.toml", "checker/__init__.py"} <= names


def test_it_says_its_version(installed, tmp_path):
    version = run(installed, tmp_path, "--version").stdout
    assert f'version = "{version.split()[1]}"' in (ROOT / "pyproject.toml").read_text()


def test_without_a_folder_of_exercises_it_says_what_to_run_and_then_makes_one_once(installed, tmp_path):
    for asked in ((), ("--folder", "mine")):
        before = run(installed, tmp_path, "try", "resonance", *asked)
        assert before.returncode == 2 and before.stderr.count("\n") == 1 and "try --start" in before.stderr
        assert not list(tmp_path.iterdir())
    first = run(installed, tmp_path, "try", "resonance", "--start", "--folder", "mine")
    assert first.returncode == 1 and "Write it in mine/unit03_tuned_circuit/resonance.py" in first.stdout
    assert len(list(tmp_path.glob("mine/unit*/[a-z]*.py"))) == len(PATHS)
    (tmp_path / "mine/unit03_tuned_circuit/resonance.py").write_text("changed = 1\n")
    run(installed, tmp_path, "try", "resonance", "--start", "--folder", "mine")
    assert (tmp_path / "mine/unit03_tuned_circuit/resonance.py").read_text() == "changed = 1\n"


@pytest.mark.parametrize(("answer", "there"), [(b"y\n", True), (b"n\n", False)])
def test_at_a_terminal_it_asks_first(installed, tmp_path, answer, there):
    ours, theirs = pty.openpty()
    process = subprocess.Popen([installed, "try", "resonance"], cwd=tmp_path, stdin=theirs, stdout=theirs, stderr=theirs)
    os.close(theirs)
    os.write(ours, answer)
    out = b""
    try:
        while chunk := os.read(ours, 4096):
            out += chunk
    except OSError:  # the other end is closed
        pass
    process.wait()
    assert b"Make it, with every exercise to be filled in? [y/n]" in out
    assert (tmp_path / "exercises").is_dir() == there
    assert process.returncode == (1 if there else 2)


def test_hint(installed, tmp_path):
    assert "hint 2 of 3" in run(installed, tmp_path, "hint", "resonance", 2).stdout


def test_hear(installed, student):
    heard = run(installed, student, "hear")
    assert heard.returncode == 1 and (student / "heard" / "reference.wav").stat().st_size > 1e6


def test_sheet(installed, student, built):
    done = run(installed, student, "sheet", ROOT / "checker/examples/sheets/isla_marrow_crystal.toml")
    assert done.returncode == 0 and "<svg" in (student / "isla_marrow_crystal.html").read_text("utf-8")


def test_mark(installed, student):
    shutil.copytree(student / "exercises", student / "class" / "Isla Marrow")
    solution = as_handed_in((ROOT / "solutions/unit03_tuned_circuit/resonance.py").read_text())
    (student / "class/Isla Marrow/unit03_tuned_circuit/resonance.py").write_text(solution)
    done = run(installed, student, "mark", "class", "--only", "resonance")
    assert done.returncode == 0 and "10 of 10" in done.stdout, done.stderr


def test_pack(installed, student):
    done = run(installed, student, "pack", "pack.zip")
    assert done.returncode == 0, done.stderr
    names = zipfile.ZipFile(student / "pack.zip").namelist()
    assert {
        "crystal-to-reaction/LICENSE",
        "crystal-to-reaction/pyproject.toml",
        "crystal-to-reaction/constraints.txt",
        "crystal-to-reaction/START.md",
        "crystal-to-reaction/practice/hear.sealed",
    } <= set(names)
    assert not [name for name in names if "solutions" in name or "examples" in name]

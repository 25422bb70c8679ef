"""Copies of the course: one that is built once, and bare ones in which tests may plant faults without touching the checkout."""

import fcntl
import os
import shutil
import subprocess
import sys
from pathlib import Path

import pytest

from course.bench.sets import bench_figures

ROOT = Path(__file__).resolve().parents[2]


@pytest.fixture(scope="session", autouse=True)
def brought(packages):
    """Nothing of the site can be made without them."""


@pytest.fixture(scope="session")
def figures() -> dict:
    """All that the browser bench knows, as it is written for it."""
    return bench_figures()


def build(root: Path, *more: str, **environment: str) -> subprocess.CompletedProcess:
    """`mkdocs build` of the course below a root, with what it said."""
    command = [sys.executable, "-m", "mkdocs", "build", "-f", "course/mkdocs.yml", "--strict", *more]
    return subprocess.run(
        command,
        cwd=root,
        env={**os.environ, **environment},
        text=True,
        stdout=subprocess.PIPE,
        stderr=subprocess.STDOUT,
    )


def copy_of_course(root: Path) -> Path:
    """What the site is built from, with the store of pictures as it is (its keys are checked against the code)."""
    copy_of_sources(root)
    for kept in ("figures", "sounds"):
        if (ROOT / "course" / "build" / kept).is_dir():
            shutil.copytree(ROOT / "course" / "build" / kept, root / "course" / "build" / kept)
    return root


def copy_of_sources(root: Path) -> Path:
    """The same with nothing made."""
    leave = shutil.ignore_patterns("node_modules", "site", "build", "__pycache__")
    for part in ("solutions", "checker", "exercises", "course"):
        shutil.copytree(ROOT / part, root / part, ignore=leave)
    shutil.copy(ROOT / "DEVELOPERS.md", root)
    (root / "course" / "node_modules").symlink_to(ROOT / "course" / "node_modules")
    return root


@pytest.fixture(scope="session")
def course(tmp_path_factory, brought) -> Path:
    """Root of a built copy, the same for all test processes, to be read only; its site is in `course/site`.

    What it makes it finds and leaves in the checkout's own `course/build`, as a build of the checkout would.
    """
    place = tmp_path_factory.getbasetemp()
    if "PYTEST_XDIST_WORKER" in os.environ:
        place = place.parent
    root, done = place / "whole_course", place / "whole_course_is_built"
    with open(place / "whole_course_lock", "w") as alone:
        fcntl.flock(alone, fcntl.LOCK_EX)
        if not done.exists():
            shutil.rmtree(root, ignore_errors=True)
            (ROOT / "course" / "build").mkdir(exist_ok=True)
            (copy_of_sources(root) / "course" / "build").symlink_to(ROOT / "course" / "build")
            told = build(root)
            assert told.returncode == 0, told.stdout
            done.touch()
    return root


@pytest.fixture
def bare(tmp_path, brought) -> Path:
    """A copy with a home page, a glossary and nothing else to read, for planting faults."""
    root = copy_of_course(tmp_path / "bare")
    lessons = root / "course" / "lessons"
    shutil.rmtree(lessons)
    lessons.mkdir()
    (lessons / "index.md").write_text("# Home\n\n[words](glossary.md#valve)\n", "utf-8")
    (lessons / "glossary.md").write_text("# Glossary\n\n{{ glossary() }}\n", "utf-8")
    return root

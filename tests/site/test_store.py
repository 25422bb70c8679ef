"""Pictures and sounds are made again only when something they are made from has changed."""

import os
import shutil
from pathlib import Path

import pytest

from course.press.media.sources import MediaSources

from .conftest import build

TREE = {
    "course/__init__.py": "",
    "course/figures/__init__.py": "def figure(**about):\n    return lambda draw: draw\n",
    "course/figures/maker.py": "SIZE = 1\n",
    "course/figures/unit.py": (
        "import numpy as np\n"
        "from course.figures import figure\n"
        "from solutions.a.first import one\n"
        "from solutions.a import second\n"
        "COLOUR = 1\n"
        "def helper():\n    return COLOUR\n"
        '@figure(caption="x")\ndef left():\n    return one() + helper()\n'
        '@figure(caption="x")\ndef right():\n    return second.two()\n'
    ),
    "solutions/__init__.py": "",
    "solutions/a/__init__.py": "",
    "solutions/a/first.py": "from solutions.b.deep import root\ndef one():\n    return root()\n",
    "solutions/a/first_check.py": "x = 1\n",
    "solutions/a/second.py": "def two():\n    return 2\n",
    "solutions/a/stranger.py": "x = 1\n",
    "solutions/b/__init__.py": "",
    "solutions/b/deep.py": "def root():\n    return 1\n",
    "solutions/b/table.csv": "1,2\n",
}


@pytest.fixture
def tree(tmp_path) -> Path:
    for name, text in TREE.items():
        path = tmp_path / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(text, "utf-8")
    return tmp_path


def fingerprints(root: Path) -> dict[str, str]:
    sources = MediaSources(root)
    return {name: sources.fingerprint("course.figures.unit", name, ("course.figures.maker",)) for name in ("left", "right")}


@pytest.mark.parametrize(
    ("file", "old", "new", "changed"),
    [
        ("solutions/b/deep.py", "return 1", "return 3", {"left"}),
        ("solutions/b/table.csv", "1,2", "1,3", {"left"}),
        ("solutions/a/first.py", "return root()", "return -root()", {"left"}),
        ("solutions/a/second.py", "return 2", "return 3", {"right"}),
        ("course/figures/unit.py", "COLOUR = 1", "COLOUR = 2", {"left"}),
        ("course/figures/unit.py", "second.two()", "-second.two()", {"right"}),
        ("course/figures/unit.py", "one() + helper()", "one() - helper()", {"left"}),
        ("course/figures/maker.py", "SIZE = 1", "SIZE = 2", {"left", "right"}),
        ("course/figures/__init__.py", "return lambda", "print(); return lambda", {"left", "right"}),
        ("solutions/__init__.py", "", "x = 1\n", {"left", "right"}),
        # nothing that a picture is made from
        ("solutions/a/stranger.py", "x = 1", "x = 2", set()),
        ("solutions/a/first_check.py", "x = 1", "x = 2", set()),
        ("solutions/b/deep.py", "def root", "# a remark\n\n\ndef root", set()),
        ("course/figures/unit.py", "COLOUR = 1", "COLOUR = 1  # a remark\nUNUSED = 4", set()),
    ],
)
def test_what_a_picture_depends_on(tree, file, old, new, changed):
    before = fingerprints(tree)
    path = tree / file
    path.write_text(path.read_text("utf-8").replace(old, new, 1) if old else new, "utf-8")
    after = fingerprints(tree)
    assert {name for name in before if before[name] != after[name]} == changed


def test_time_and_place_do_not_matter(tree, tmp_path_factory):
    before = fingerprints(tree)
    for path in tree.rglob("*.py"):
        os.utime(path, (1, 1))
    moved = tmp_path_factory.mktemp("elsewhere") / "course"
    tree.rename(moved)
    assert fingerprints(moved) == before


def stored(root: Path) -> dict[str, tuple[int, bytes]]:
    store = root / "course" / "build"
    files = [path for path in store.rglob("*") if path.suffix in (".svg", ".mp3", ".wav")]
    return {path.relative_to(store).as_posix(): (path.stat().st_mtime_ns, path.read_bytes()) for path in files}


PAGE = """# Home

{{ figure("home/under_the_local") }}

{{ figure("sets/crystal_set") }}

{{ sound("home/slow_carrier") }}
"""


def test_a_build_makes_again_only_what_its_physics_touches_and_the_bytes_are_the_same_each_time(bare):
    (bare / "course" / "lessons" / "index.md").write_text(PAGE, "utf-8")
    assert build(bare).returncode == 0
    first = stored(bare)
    assert {"figures/home/under_the_local.svg", "figures/sets/crystal_set.svg", "sounds/home/slow_carrier.mp3"} <= set(first)

    unrelated = bare / "solutions" / "unit03_tuned_circuit" / "ring_down.py"
    unrelated.write_text(unrelated.read_text("utf-8") + "\nEXTRA = 1\n", "utf-8")
    (bare / "course" / "theme" / "course.css").touch()
    assert build(bare).returncode == 0
    assert stored(bare) == first

    physics = bare / "solutions" / "unit03_tuned_circuit" / "response_curve.py"
    text = physics.read_text("utf-8")
    physics.write_text(text.replace("20 * np.log10", "10 * np.log10"), "utf-8")
    assert build(bare).returncode == 0
    changed = {name for name, kept in stored(bare).items() if kept != first[name]}
    assert changed == {"figures/home/under_the_local.svg"}

    physics.write_text(text, "utf-8")
    for file in ("figures/home/under_the_local.json", "figures/sets/crystal_set.svg", "sounds/home/slow_carrier.mp3"):
        (bare / "course" / "build" / file).unlink()
    assert build(bare).returncode == 0
    assert {name: kept[1] for name, kept in stored(bare).items()} == {name: kept[1] for name, kept in first.items()}

    # A site of kept pages is the site that is made afresh.
    lessons = bare / "course" / "lessons"
    (lessons / "index.md").write_text(PAGE.replace("# Home", "# Home\n\nAnother [word](glossary.md#valve)."), "utf-8")
    assert build(bare).returncode == 0
    of_kept_pages = site_of(bare)
    shutil.rmtree(bare / "course" / "build" / "pages")
    assert build(bare).returncode == 0
    assert site_of(bare) == of_kept_pages


def site_of(root: Path) -> dict[str, bytes]:
    site = root / "course" / "site"
    return {file.relative_to(site).as_posix(): file.read_bytes() for file in site.rglob("*") if file.is_file()}

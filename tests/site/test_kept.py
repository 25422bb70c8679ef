"""Pages and what is worked out of them are kept until anything that they follow from has changed."""

from pathlib import Path

import pytest

from course.press.publishing.kept import Kept, code_hash, hash_of, lasting_files

from .conftest import ROOT

CODE = (
    "solutions/a/first.py",
    "checker/marks/table.json",
    "exercises/a/first.py",
    "course/hooks.py",
    "course/mkdocs.yml",
    "course/glossary.toml",
    "course/club.toml",
    "course/package-lock.json",
    "course/press/boxes/templates/figure.html",
    "course/theme/base.html",
    "course/theme/scripts/course.js",
    "course/bench/panel/goals.toml",
)
NO_CODE = (
    "course/lessons/index.md",
    "course/build/figures/a.svg",
    "course/site/index.html",
    "course/node_modules/a/index.js",
    "course/press/__pycache__/kept.pyc",
    "README.md",
)


@pytest.fixture
def tree(tmp_path) -> Path:
    for name in (*CODE, *NO_CODE):
        (tmp_path / name).parent.mkdir(parents=True, exist_ok=True)
        (tmp_path / name).write_text("one", "utf-8")
    return tmp_path


@pytest.mark.parametrize("file", CODE)
def test_pages_follow_from_each_file_that_makes_them_and_from_its_name(tree, file):
    before = code_hash(tree)
    (tree / file).write_text("two", "utf-8")
    changed = code_hash(tree)
    (tree / file).unlink()
    assert len({before, changed, code_hash(tree)}) == 3


@pytest.mark.parametrize("file", NO_CODE)
def test_code_is_not_what_is_read_page_by_page_or_made(tree, file):
    before = code_hash(tree)
    (tree / file).write_text("two", "utf-8")
    assert code_hash(tree) == before


def test_all_that_the_site_is_built_from_is_code_or_lesson():
    """A new folder of the course is code until it is said to be none."""
    folders = {path.name for path in (ROOT / "course").iterdir() if path.is_dir()}
    made = {"lessons", "build", "site", "node_modules", "__pycache__"}
    assert folders - made == {"answers", "bench", "circle", "figures", "press", "sounds", "theme"}


def test_another_library_is_another_code(tree, monkeypatch):
    before = code_hash(tree)
    monkeypatch.setattr("course.press.publishing.kept.installed_version", lambda library: "0.0")
    assert code_hash(tree) != before


def test_what_a_running_server_has_read_once_for_all_is_known():
    """The press's modules and the tables beside modules; not the lessons' glossary, which each build reads."""
    names = {file.relative_to(ROOT).as_posix() for file in lasting_files(ROOT)}
    assert {"course/press/publishing/kept.py", "course/bench/panel/setting.json"} <= names
    assert not {"course/glossary.toml", "course/club.toml"} & names


@pytest.mark.parametrize("parts", [("page", "ab", "c"), ("page", "abc"), ("page", "a", "b"), ("text", "ab", "d")])
def test_an_entry_is_found_by_its_very_parts_alone(tmp_path, parts):
    kept = Kept(tmp_path, "code")
    kept.keep(["entry"], "page", "a", "bc")
    assert kept.find("page", "a", "bc") == ["entry"]
    assert kept.find(*parts) is None and Kept(tmp_path, "other code").find("page", "a", "bc") is None


def test_nothing_is_found_or_kept_without_a_code(tmp_path):
    made = []
    kept = Kept(tmp_path / "none", "")
    for _ in range(2):
        kept.of(lambda: made.append(1), "page")
    kept.drop_unused()
    assert made == [1, 1] and not (tmp_path / "none").exists()


def test_a_broken_entry_is_made_again(tmp_path):
    kept = Kept(tmp_path, "code")
    kept.keep({"a": 1}, "page")
    for file in tmp_path.glob("*.json"):
        file.write_text('{"a": ', "utf-8")
    assert kept.of(lambda: {"a": 2}, "page") == {"a": 2} == kept.find("page")


def test_what_a_build_did_not_ask_for_is_dropped(tmp_path):
    first = Kept(tmp_path, "code")
    first.keep(1, "asked for")
    first.keep(2, "not asked for")
    second = Kept(tmp_path, "code")
    assert second.find("asked for") == 1
    second.drop_unused()
    assert first.find("asked for") == 1 and first.find("not asked for") is None


def test_files_written_once_come_back_byte_for_byte(tmp_path):
    written = []

    def write(folder: Path) -> None:
        written.append(folder)
        (folder / "deep").mkdir()
        (folder / "deep" / "file.bin").write_bytes(bytes(range(256)))

    for place in ("one", "two"):
        Kept(tmp_path / "kept", "code").write(tmp_path / place, write, "files")
        assert (tmp_path / place / "deep" / "file.bin").read_bytes() == bytes(range(256))
    assert len(written) == 1


def test_texts_that_join_alike_have_hashes_of_their_own():
    assert len({hash_of(parts) for parts in (["ab", "c"], ["a", "bc"], ["abc"], ["", "abc"])}) == 4

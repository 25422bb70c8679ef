"""What members hand in is read whatever its shape, and never leads out of the folder."""

import os
import stat
import zipfile

import pytest

from checker.budgets import BUDGET
from checker.submissions.members import UnreadableFolder, exercise_of, read_folder
from checker.text import display_name

RESONANCE = "unit03_tuned_circuit/resonance.py"
SOURCE = "def resonant_frequency(inductance, capacitance):\n    return 1.0\n"


def put(folder, name, text=SOURCE):
    path = folder / name
    path.parent.mkdir(parents=True, exist_ok=True)
    path.write_bytes(text if isinstance(text, bytes) else text.encode())
    return path


def zipped(folder, name, entries):
    with zipfile.ZipFile(folder / name, "w", zipfile.ZIP_DEFLATED) as archive:
        for entry, text in entries:
            archive.writestr(entry, text)


def only(members):
    [member] = members
    return member


@pytest.mark.parametrize(
    "where",
    [
        "exercises/unit03_tuned_circuit/resonance.py",
        "unit03_tuned_circuit/resonance.py",
        "homework/week 3/exercises/unit03_tuned_circuit/resonance.py",
        "resonance.py",
        "deep/er/resonance.py",
    ],
)
def test_exercises_are_found_at_any_depth(tmp_path, where):
    put(tmp_path, f"Isla Marrow/{where}")
    zipped(tmp_path, "Dot Bittern.zip", [(where, SOURCE)])
    members = read_folder(tmp_path)
    assert [(m.name, dict(m.files), m.said) for m in members] == [
        ("Dot Bittern", {RESONANCE: SOURCE}, ()),
        ("Isla Marrow", {RESONANCE: SOURCE}, ()),
    ]


def test_empty_folder_is_a_member_who_attempted_nothing(tmp_path):
    (tmp_path / "Silas Groyne").mkdir()
    assert only(read_folder(tmp_path)).files == {}


@pytest.mark.parametrize("name", ["resonance.pyc", "__pycache__/resonance.py", ".hidden/resonance.py", "checker/resonance.txt"])
def test_what_is_not_theirs_is_passed_over(tmp_path, name):
    put(tmp_path, f"Nell Samphire/{name}")
    member = only(read_folder(tmp_path))
    assert (member.files, member.said) == ({}, ())


def test_of_two_files_for_one_exercise_one_is_taken_and_said(tmp_path):
    os.utime(put(tmp_path, "Kit Harrow/resonance.py", "old = 1\n"), (1e9, 1e9))
    put(tmp_path, f"Kit Harrow/exercises/{RESONANCE}")
    member = only(read_folder(tmp_path))
    assert member.files[RESONANCE] == SOURCE
    assert member.notes == (f"Two files for {RESONANCE}: exercises/{RESONANCE} was taken, the newer, resonance.py left.",)


def test_folder_and_zip_of_one_name_are_two_submissions(tmp_path):
    put(tmp_path, "Isla/resonance.py")
    zipped(tmp_path, "Isla.zip", [("resonance.py", SOURCE)])
    assert [m.name for m in read_folder(tmp_path)] == ["Isla", "Isla.zip"]


def test_links_and_pipes_are_not_followed(tmp_path):
    secret = put(tmp_path, "secret.py", "secret = 1\n")
    folder = tmp_path / "class" / "Rufus Tern"
    folder.mkdir(parents=True)
    (folder / "resonance.py").symlink_to(secret)
    os.link(secret, folder / "ring_down.py")
    os.mkfifo(folder / "quality_factor.py")
    (tmp_path / "class" / "Hugo Spindrift").symlink_to(tmp_path)
    linked, member = read_folder(tmp_path / "class")
    assert (linked.files, member.files) == ({}, {})
    assert "link to somewhere else" in linked.problems[0]
    assert len(member.problems) == 3 and all("was not read" in problem for problem in member.problems)


def test_zip_tricks_are_refused_in_a_sentence(tmp_path):
    link = zipfile.ZipInfo("exercises/unit03_tuned_circuit/ring_down.py")
    link.external_attr = (stat.S_IFLNK | 0o777) << 16
    zipped(
        tmp_path,
        "Rufus.zip",
        [
            ("../../resonance.py", SOURCE),
            ("/etc/quality_factor.py", SOURCE),
            (link, "/etc/passwd"),
            ("response_curve.py", "x" * (BUDGET.file + 1)),
        ],
    )
    member = only(read_folder(tmp_path))
    assert member.files == {}
    assert [p.split(" ", 1)[1].split(";")[0] for p in member.problems] == [
        "points out of the zip",
        "points out of the zip",
        "points out of the zip",
        "is larger than 256 kB",
    ]
    assert os.listdir(tmp_path) == ["Rufus.zip"]


def test_a_zip_bomb_is_not_unpacked(tmp_path):
    with zipfile.ZipFile(tmp_path / "Bomb.zip", "w", zipfile.ZIP_DEFLATED) as archive:
        archive.writestr("resonance.py", b"\0" * (200 << 20))
    member = only(read_folder(tmp_path))
    assert member.files == {} and "larger than" in member.problems[0]


@pytest.mark.parametrize("data", [b"PK\3\4 not a zip", b"", b"\0" * 1000])
def test_a_broken_zip_is_said(tmp_path, data):
    put(tmp_path, "Mabel Sedge.zip", data)
    member = only(read_folder(tmp_path))
    assert member.files == {} and member.problems[0].startswith("The zip cannot be read")


@pytest.mark.parametrize(
    ("data", "text"),
    [
        (b"\xef\xbb\xbfx = 1\n", "x = 1\n"),
        (b"# -*- coding: latin-1 -*-\nx = '\xe9'\n", "# -*- coding: latin-1 -*-\nx = 'é'\n"),
        (b"x = 1\r\ny = 2\r\n", "x = 1\ny = 2\n"),
    ],
)
def test_usual_encodings_and_line_ends_are_read(tmp_path, data, text):
    put(tmp_path, "Orla Quill/resonance.py", data)
    assert only(read_folder(tmp_path)).files[RESONANCE] == text


@pytest.mark.parametrize("data", [b"x = '\xff\xfe'\n", b"# coding: nonsense\n", b"\xff\xfex\0"])
def test_other_encodings_are_said(tmp_path, data):
    put(tmp_path, "Orla Quill/resonance.py", data)
    member = only(read_folder(tmp_path))
    assert member.files == {} and "save it as UTF-8" in member.problems[0]


@pytest.mark.parametrize("make", [lambda p: p / "nowhere", lambda p: put(p, "a file"), lambda p: p])
def test_a_folder_that_holds_no_submissions_is_one_sentence(tmp_path, make):
    with pytest.raises(UnreadableFolder) as problem:
        read_folder(make(tmp_path))
    assert str(problem.value).count("\n") == 0 and str(problem.value).endswith(".")


def test_names_are_made_safe_to_show():
    assert display_name("\x1b[31mKit\x07\n\u202eHarrow") == "[31mKitHarrow"
    assert len(display_name("x" * 500)) <= 81
    assert display_name("\x00") == "(no name)"
    assert display_name("Ünïcode 🦀") == "Ünïcode 🦀"


def test_exercise_of_prefers_the_unit_folder():
    assert exercise_of("a/unit03_tuned_circuit/resonance.py") == "unit03_tuned_circuit/resonance"
    assert exercise_of("unit99_other/resonance.py") is None
    assert exercise_of("resonance.txt") is None

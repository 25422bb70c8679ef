"""Every file that is handed in is read, where there is no doubt for which exercise; or a sentence says why not."""

import gzip
import io
import json
import os
import tarfile
import zipfile

import pytest

from checker.budgets import BUDGET
from checker.course import PATHS, ROOT
from checker.submissions import recognised
from checker.submissions.members import read_folder, read_member_folder

RESONANCE, QUALITY = "unit03_tuned_circuit/resonance", "unit03_tuned_circuit/quality_factor"
SOURCE = (ROOT / "solutions" / f"{RESONANCE}.py").read_text("utf-8")
OTHER = (ROOT / "solutions" / f"{QUALITY}.py").read_text("utf-8")
STUB = (ROOT / "exercises" / f"{RESONANCE}.py").read_text("utf-8")


def notebook(*cells):
    made = [{"cell_type": kind, "source": source.splitlines(True)} for kind, source in cells]
    return json.dumps({"cells": made, "metadata": {}, "nbformat": 4, "nbformat_minor": 5})


def zip_of(**files):
    made = io.BytesIO()
    with zipfile.ZipFile(made, "w") as archive:
        for name, text in files.items():
            archive.writestr(name, text)
    return made.getvalue()


def tar_of(files):
    made = io.BytesIO()
    with tarfile.open(fileobj=made, mode="w:gz") as archive:
        for name, text in files.items():
            entry = tarfile.TarInfo(name)
            entry.size = len(text.encode())
            archive.addfile(entry, io.BytesIO(text.encode()))
    return made.getvalue()


def handed_in(tmp_path, files, name="Nell Samphire"):
    for place, (relative, data) in enumerate(files.items()):
        path = tmp_path / name / relative
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_bytes(data if isinstance(data, bytes) else data.encode())
        os.utime(path, (1e9 + place, 1e9 + place))  # each newer than the one before
    [member] = read_folder(tmp_path)
    return member


READ = {
    "capitals": ({"Resonance.py": SOURCE}, "Resonance.py was read as unit03_tuned_circuit/resonance, by its name."),
    "another ending": ({"resonance.py.txt": SOURCE}, "resonance.py.txt was read as"),
    "a number behind": ({"resonance (1).py": SOURCE}, "resonance (1).py was read as"),
    "a word behind": ({"resonance_final.py": SOURCE}, "by its name"),
    "initials behind": ({"resonance - NS 2.py": SOURCE}, "by its name"),
    "a name of one's own": (
        {"homework 3.py": SOURCE},
        "homework 3.py was read as unit03_tuned_circuit/resonance, by its functions.",
    ),
    "a zip in a folder": ({"mine.zip": zip_of(**{"resonance.py": SOURCE})}, ""),
    "a tar in a folder": ({"mine.tar.gz": tar_of({"unit03_tuned_circuit/resonance.py": SOURCE})}, ""),
    "a notebook": ({"resonance.ipynb": notebook(("markdown", "# Mine"), ("code", SOURCE))}, "resonance.ipynb was read as"),
    "a notebook with more": (
        {"evening.ipynb": notebook(("code", "%matplotlib inline\n!ls\nx = 1"), ("code", SOURCE))},
        "by its functions, without 2 lines that only a notebook obeys.",
    ),
}


@pytest.mark.parametrize("what", READ)
def test_what_is_called_otherwise_is_read_and_said(tmp_path, what):
    files, says = READ[what]
    member = handed_in(tmp_path, files)
    assert list(member.files) == [f"{RESONANCE}.py"] and "def resonant_frequency" in member.files[f"{RESONANCE}.py"]
    assert says in " ".join(member.notes) and bool(says) == bool(member.notes) and not member.problems


PACKED = {".zip": zip_of(**{"resonance.py": SOURCE}), ".tar.gz": tar_of({"resonance.py": SOURCE})}


@pytest.mark.parametrize("ending", PACKED)
def test_an_archive_is_a_submission_and_may_lie_in_one(tmp_path, ending):
    (tmp_path / f"Isla Marrow{ending}").write_bytes(PACKED[ending])
    (tmp_path / "Dot Bittern.zip").write_bytes(zip_of(**{f"week 2{ending}": PACKED[ending]}))
    dot, isla = read_folder(tmp_path)
    assert (isla.name, isla.said, dot.said) == ("Isla Marrow", (), ())
    assert dict(isla.files) == dict(dot.files) == {f"{RESONANCE}.py": SOURCE}


def test_one_file_may_answer_several(tmp_path):
    member = handed_in(tmp_path, {"all of it.py": SOURCE + OTHER.replace("import numpy as np", "")})
    assert list(member.files) == [f"{RESONANCE}.py", f"{QUALITY}.py"] and len(member.notes) == 2


LEFT = {
    "report.docx": "answers are Python files (.py), notebooks (.ipynb), or zips of them.",
    "resonance.txt": "answers are Python files (.py), notebooks (.ipynb), or zips of them. If it is resonance, call it resonance.py.",
    "resonence.py": "it is called like no exercise and does not hold all functions of one. If it is resonance, call it resonance.py.",
    "mine.7z": "it is packed in a way that is not unpacked here. Pack it as a zip.",
    "unit07_x/resonance.py": "resonance is an exercise of unit03_tuned_circuit.",
    "resonance.ipynb": "it is no notebook that can be read.",
    "folder/test.ipynb": "it is no notebook that can be read.",
}


@pytest.mark.parametrize("name", LEFT)
def test_what_is_not_read_is_said_with_what_to_do(tmp_path, name):
    member = handed_in(tmp_path, {name: "x = 1\n"})
    assert not member.files and member.said == (f"{name} was not read: {LEFT[name]}",)


def test_only_what_may_have_been_an_answer_leaves_a_doubt(tmp_path):
    harmless = handed_in(tmp_path / "one", {"notes.txt": "x", "Resonance.py": SOURCE, "resonance (2).py": SOURCE})
    assert len(harmless.notes) == 3 and harmless.problems == () and harmless.unread == {}
    doubtful = handed_in(tmp_path / "two", {"resonence.py": "x = 1\n", "quality_factor.py": b"\xff\xfe", "mine.7z": "x"})
    assert len(doubtful.problems) == 3 and doubtful.notes == ()


def test_of_two_the_newer_answer_is_taken_and_both_are_named(tmp_path):
    member = handed_in(tmp_path, {"resonance.py": "x = 1\n" + SOURCE, "resonance (2).py": SOURCE})
    assert dict(member.files) == {f"{RESONANCE}.py": SOURCE}
    assert f"Two files for {RESONANCE}.py: resonance (2).py was taken, the newer, resonance.py left." in member.notes


def test_an_unwritten_stub_is_no_answer_however_new_it_is(tmp_path):
    member = handed_in(tmp_path, {"resonance.py": SOURCE, f"exercises/{RESONANCE}.py": STUB})
    assert dict(member.files) == {f"{RESONANCE}.py": SOURCE}
    assert member.notes[0].endswith(f"the other being unwritten, exercises/{RESONANCE}.py left.")


def test_a_file_that_only_holds_the_same_functions_stands_back(tmp_path):
    member = handed_in(tmp_path, {"resonance.py": SOURCE, "helper.py": "x = 1\n" + SOURCE})
    assert member.files[f"{RESONANCE}.py"] == SOURCE and member.said == ()


def test_one_s_own_folder_is_not_accounted_for(tmp_path):
    for name in ("notes.txt", "resonence.py", "resonance.py"):
        (tmp_path / name).write_text(SOURCE if name == "resonance.py" else "x = 1\n")
    member = read_member_folder(tmp_path, "you", account=False)
    assert f"{RESONANCE}.py" in member.files and member.said == ()


@pytest.mark.parametrize("path", PATHS)
def test_each_reference_is_known_by_its_functions_and_each_name_by_its_look(path):
    source = (ROOT / "solutions" / f"{path}.py").read_text("utf-8")
    assert recognised.functions_of(path) and path in recognised.answered_by(source)
    name = path.rpartition("/")[2]
    for called in (f"{name.upper()}.PY", f"{name} (3).py", f"{name}-final.py", f"{name}_v2.py.txt", f"{name}.ipynb"):
        assert recognised.named_like(called) == path, called
    assert recognised.is_unwritten(
        path, (ROOT / "exercises" / f"{path}.py").read_text("utf-8")
    ) and not recognised.is_unwritten(path, source)


def test_what_an_archive_holds_too_much_of_is_refused_in_a_sentence(tmp_path):
    floods = {
        "large.tar.gz": gzip.compress(b"\0" * (BUDGET.unpacked + 1)),
        "b no archive.tgz": b"x",
        "a deep.zip": zip_of(**{"b.zip": zip_of(**{"c.zip": zip_of(**{"resonance.py": SOURCE})})}),
    }
    member = handed_in(tmp_path, floods)
    said = " ".join(member.problems)
    assert not member.files
    assert "large.tar.gz is too large" in said and "b no archive.tgz cannot be read" in said
    assert "a deep.zip/b.zip/c.zip is an archive in an archive in an archive" in said


@pytest.mark.parametrize("text", ["[" * 100_000, "{}", '{"cells": 3}', '{"cells": [{"cell_type": "code", "source": [1]}]}'])
def test_a_notebook_that_is_none_is_said(tmp_path, text):
    member = handed_in(tmp_path, {"resonance.ipynb": text})
    assert not member.files and "no notebook that can be read" in member.problems[0]


# What may be an answer that was left, and the exercise that it may be an answer to; "" where it may be to any.
MAY_BE = {
    "a slip in the name": ({"resonence.py": "x = 1\n"}, {RESONANCE}),
    "a document of its name": ({"resonance.txt": SOURCE}, {RESONANCE}),
    "no text": ({"resonance.py": b"\xff\xfe"}, {RESONANCE}),
    "too large": ({"mine.zip": zip_of(**{"Resonance (2).py": "x" * (BUDGET.file + 1)})}, {RESONANCE}),
    "half of it": ({"homework.py": "def quality_factor(frequency, inductance, resistance):\n    return 1\n"}, {QUALITY}),
    "packed otherwise": ({"mine.7z": "x"}, {""}),
    "a broken zip": ({"mine.zip": "x"}, {""}),
    "a picture": ({"holiday.jpg": "x"}, set()),
    "of which there is an answer": ({"resonence.py": "x = 1\n", "resonance.py": SOURCE}, set()),
}


@pytest.mark.parametrize("what", MAY_BE)
def test_it_is_told_of_which_exercise_something_was_left(tmp_path, what):
    files, paths = MAY_BE[what]
    member = handed_in(tmp_path, files)
    assert set(member.unread) == paths and set(member.unread.values()) <= set(member.problems)
    if paths:
        assert member.why_unread(RESONANCE if "" in paths else paths.pop()) in member.problems
    assert not member.why_unread("unit07_x/other") or "" in member.unread

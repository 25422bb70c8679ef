"""A submission that changes while it is read: each file is read once, what was read is marked, and it is said."""

import os
import zipfile

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from checker.submissions import reading as handed_in
from checker.submissions.members import read_folder

SOURCE = b"def resonant_frequency(inductance, capacitance):\n    return 1.0\n"
UNIT = "unit03_tuned_circuit"
PATH = f"{UNIT}/resonance.py"


@pytest.fixture
def file(tmp_path):
    """A member's one file, in a class of one."""
    path = tmp_path / "class" / "Rufus Tern" / PATH
    path.parent.mkdir(parents=True)
    path.write_bytes(SOURCE)
    (tmp_path / "secret").mkdir()
    (tmp_path / "secret" / "resonance.py").write_text("secret = 1\n")
    return path


def just_before(monkeypatch, call, what):
    """Do `what` once, just before the reader first makes a call of this name on the exercise's file."""
    real, due = getattr(os, call), [what]

    def disturbed(first, *rest, **named):
        if due and (call != "open" or str(first).endswith("resonance.py")):
            due.pop()()
        return real(first, *rest, **named)

    monkeypatch.setattr(handed_in.os, call, disturbed)
    return due


def read(file):
    [member] = read_folder(file.parents[2])
    return dict(member.files), member.problems


def swap(file, make):
    file.unlink()
    make(file)


def opens(descriptor, file):
    """Whether a descriptor of this process is one of a file."""
    try:
        return os.readlink(f"/proc/self/fd/{descriptor}").startswith(str(file))
    except OSError:
        return False


def secret_of(file):
    return file.parents[3] / "secret" / "resonance.py"


@pytest.mark.parametrize(
    "becomes, says",
    [
        (lambda file: file.unlink(), "was gone before it could be read"),
        (lambda file: swap(file, lambda at: at.symlink_to(secret_of(at))), "is a link or cannot be opened"),
        (lambda file: swap(file, lambda at: os.link(secret_of(at), at)), "hard link"),
        (lambda file: swap(file, os.mkfifo), "is not an ordinary file"),
        (lambda file: swap(file, os.mkdir), "is not an ordinary file"),
        (lambda file: os.truncate(file, 1 << 30), "is larger than 256 kB"),
    ],
    ids=["gone", "link", "hard link", "pipe", "folder", "huge"],
)
def test_a_file_that_becomes_something_else_before_it_is_opened(file, monkeypatch, becomes, says):
    due = just_before(monkeypatch, "open", lambda: becomes(file))
    files, [problem] = read(file)
    assert not due and files == {} and problem.startswith(f"{PATH} ") and says in problem and problem.endswith(".")
    assert not [1 for descriptor in os.listdir("/proc/self/fd") if opens(descriptor, file)]


def test_a_file_that_grows_while_it_is_read_is_marked_as_it_was_read_and_said(file, monkeypatch):
    calls, real = [], os.fstat

    def growing(descriptor):
        calls.append(descriptor)
        if len(calls) == 2:  # the first is before the reading, this one after
            with open(file, "ab") as more:
                more.write(b"later = 1\n")
        return real(descriptor)

    monkeypatch.setattr(handed_in.os, "fstat", growing)
    files, problems = read(file)
    assert files == {PATH: SOURCE.decode()}
    assert problems == (f"{PATH} changed while it was read; what was read is what is marked.",)


def test_a_file_cut_short_between_opening_and_reading(file, monkeypatch):
    real, before = os.fstat, []

    def cutting(descriptor):
        status = real(descriptor)
        if not before:
            before.append(os.truncate(file, 10))
        return status

    monkeypatch.setattr(handed_in.os, "fstat", cutting)
    files, [problem] = read(file)
    assert files == {PATH: SOURCE.decode()[:10]} and "changed while it was read" in problem


def test_a_file_removed_while_it_is_read_is_whole_and_nothing_need_be_said(file, monkeypatch):
    just_before(monkeypatch, "fstat", file.unlink)
    assert read(file) == ({PATH: SOURCE.decode()}, ())


def test_each_file_is_opened_once_and_read_once(file, monkeypatch):
    opened, real = [], os.open
    monkeypatch.setattr(handed_in.os, "open", lambda path, *rest, **named: opened.append(path) or real(path, *rest, **named))
    read(file)
    assert [path for path in opened if str(path).endswith(".py")] == ["resonance.py"]


@pytest.mark.parametrize("becomes", ["gone", "a link", "a file"])
def test_a_folder_that_becomes_something_else_before_it_is_entered(file, monkeypatch, becomes):
    """After its name was listed in the folder above: a link is not followed, and what is missing is said."""

    def change():
        file.unlink()
        file.parent.rmdir()
        if becomes == "a link":
            file.parent.symlink_to(file.parents[3] / "secret")
        elif becomes == "a file":
            file.parent.write_text("")

    real = os.fwalk

    def walking(folder):
        for place, found in enumerate(real(folder)):
            yield found
            if place == 0:
                change()

    monkeypatch.setattr(handed_in.os, "fwalk", walking)
    assert read(file) == ({}, (f"{UNIT} is a link or cannot be opened; it was not read.",))


def test_a_submission_that_is_gone_before_it_is_read(file, monkeypatch):
    real = handed_in._walk

    def gone(folder):
        os.rename(folder, f"{folder} was here")
        return real(folder)

    monkeypatch.setattr(handed_in, "_walk", gone)
    assert read(file) == ({}, ("The folder is a link or cannot be opened; it was not read.",))


def test_a_folder_that_may_not_be_read_is_said(file):
    if os.getuid() == 0:
        pytest.skip("root may read every folder")
    file.parent.chmod(0)
    try:
        assert read(file) == ({}, (f"{UNIT} is a link or cannot be opened; it was not read.",))
    finally:
        file.parent.chmod(0o755)


def zipped(folder, packing=zipfile.ZIP_DEFLATED):
    path = folder / "Mabel Sedge.zip"
    with zipfile.ZipFile(path, "w", packing) as archive:
        archive.writestr(f"exercises/{PATH}", SOURCE)
        archive.writestr(f"exercises/{UNIT}/quality_factor.py", SOURCE * 40)
    return path


@settings(max_examples=200)
@given(
    st.lists(st.tuples(st.floats(0, 1, exclude_max=True), st.integers(1, 255)), max_size=4),
    st.sampled_from([zipfile.ZIP_STORED, zipfile.ZIP_DEFLATED, zipfile.ZIP_BZIP2, zipfile.ZIP_LZMA]),
)
def test_a_zip_spoilt_anywhere_is_read_as_it_was_or_said(tmp_path_factory, flips, packing):
    path = zipped(tmp_path_factory.mktemp("zips"), packing)
    data = bytearray(path.read_bytes())
    for place, bits in flips:
        data[int(place * len(data))] ^= bits
    path.write_bytes(data)
    [member] = read_folder(path.parent)
    whole = {PATH: SOURCE.decode(), f"{UNIT}/quality_factor.py": (SOURCE * 40).decode()}
    assert all(whole.get(name) == text for name, text in member.files.items())
    if not flips and packing in handed_in._PACKED:
        assert set(member.files) == set(whole) and not member.problems


def test_a_zip_that_changes_while_it_is_read_is_said(tmp_path, monkeypatch):
    path = zipped(tmp_path)
    real, calls = os.fstat, []

    def touching(descriptor):
        calls.append(descriptor)
        if len(calls) == 2:
            os.utime(path)
        return real(descriptor)

    monkeypatch.setattr(handed_in.os, "fstat", touching)
    [member] = read_folder(tmp_path)
    assert len(member.files) == 2
    assert member.problems == ("The zip changed while it was read; what was read is what is marked.",)


def test_an_entry_twice_is_said(tmp_path):
    with zipfile.ZipFile(tmp_path / "Mabel Sedge.zip", "w") as archive:
        for name in (PATH, f"./{PATH}"):
            archive.writestr(name, f"# {name}")
    [member] = read_folder(tmp_path)
    assert member.files == {PATH: f"# ./{PATH}"} and "more than once; the last was taken" in member.notes[0]

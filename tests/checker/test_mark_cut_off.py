"""The command `mark` itself, cut off, doubled and out of room: the marks are those of a run that nothing happened to."""

import os
import re
import shutil
import signal
import sqlite3
import subprocess
import sys

import pytest

from checker.course import ROOT
from tests.checker.corpus import HONEST

PATH = "unit03_tuned_circuit/resonance.py"
MEMBERS = ("Dot Bittern", "Hugo Spindrift", "Isla Marrow", "Kit Harrow", "Nell Samphire", "Orla Quill")
IN_NAMESPACE = ["unshare", "--user", "--map-root-user", "--mount"]


def command(folder, into):
    options = ["--into", str(into), "--only", "resonance", "--seed", "7", "--jobs", "1"]
    return [sys.executable, "-m", "checker", "mark", str(folder), *options]


def run(folder, into, before=()):
    return subprocess.run([*before, *command(folder, into)], cwd=ROOT, capture_output=True, text=True, timeout=300)


@pytest.fixture(scope="module")
def handed_in(tmp_path_factory):
    folder = tmp_path_factory.mktemp("cut off") / "class"
    for place, name in enumerate(MEMBERS):
        (folder / name).mkdir(parents=True)
        answer = HONEST if place % 2 else HONEST.replace("2 * np.pi * ", "")
        (folder / name / "resonance.py").write_text(f"{answer}# {name}\n")
    return folder


@pytest.fixture(scope="module")
def undisturbed(handed_in, tmp_path_factory):
    """What a run that nothing happened to leaves behind: file name to bytes."""
    into = tmp_path_factory.mktemp("undisturbed")
    assert run(handed_in, into).returncode == 0
    return results(into)


def results(into):
    members = (f"members/{name}" for name in sorted(os.listdir(into / "members")))
    files = ["marks.csv", "junit.xml", "oneroster.zip", "index.html", *members]
    return {name: (into / name).read_bytes() for name in files}


def kept(into):
    """The verdicts in a store as rows, each once."""
    with sqlite3.connect(into / "marks.sqlite") as connection:
        rows = connection.execute("SELECT id, submission, verdict, seal FROM verdicts ORDER BY id").fetchall()
    assert len({submission for _, submission, *_ in rows}) == len(rows)
    return rows


@pytest.mark.parametrize("members", [0, 1, 3, 5])
def test_a_run_killed_after_so_many_members_goes_on_where_it_stopped(handed_in, undisturbed, tmp_path, members):
    process = subprocess.Popen(
        command(handed_in, tmp_path), cwd=ROOT, stdout=subprocess.DEVNULL, stderr=subprocess.PIPE, text=True
    )
    for line in process.stderr:
        if line.startswith("Submissions are shut in" if not members else f"{members} of {len(MEMBERS)}"):
            break
    process.send_signal(signal.SIGKILL)
    process.wait()
    process.stderr.close()
    before = kept(tmp_path) if (tmp_path / "marks.sqlite").exists() and members else []
    assert len(before) >= members
    again = run(handed_in, tmp_path)
    assert again.returncode == 0, again.stderr
    assert kept(tmp_path)[: len(before)] == before and len(kept(tmp_path)) == len(MEMBERS)
    assert results(tmp_path) == undisturbed


def test_two_runs_at_once_on_one_store_give_the_marks_of_one(handed_in, undisturbed, tmp_path):
    both = [
        subprocess.Popen(command(handed_in, tmp_path), cwd=ROOT, stdout=subprocess.PIPE, stderr=subprocess.PIPE, text=True)
        for _ in range(2)
    ]
    told = [process.communicate(timeout=300) for process in both]
    assert [process.returncode for process in both] == [0, 0], told
    assert len(kept(tmp_path)) == len(MEMBERS)
    assert results(tmp_path) == undisturbed


def mounted(mount):
    if not shutil.which("unshare") or subprocess.run([*IN_NAMESPACE, "true"], capture_output=True).returncode:
        pytest.skip("no mounts of one's own here")
    return [*IN_NAMESPACE, "sh", "-c", f'{mount} && "$@"', "sh"]


def one_sentence(done):
    told = done.stderr.rstrip("\n")
    return done.returncode == 2 and "Traceback" not in told and told.endswith(".") and not done.stdout


@pytest.mark.parametrize("room", ["40k", "120k", "200k"])
def test_a_full_disk_is_a_sentence_and_what_was_kept_is_used(handed_in, tmp_path, room):
    """The store, an export or a report no longer fits; on the same disk with more room the run goes on."""
    (tmp_path / "marks").mkdir()
    disk = f"mount -t tmpfs -o size={room} none '{tmp_path / 'marks'}'"
    first = f'{" ".join(map(repr, command(handed_in, tmp_path / "marks")))}; echo "code $?"'
    more = f"mount -o remount,size=8m '{tmp_path / 'marks'}'"
    done = subprocess.run(
        [*mounted(f"{disk} && {{ {first}; }} && {more}"), *command(handed_in, tmp_path / "marks")],
        cwd=ROOT,
        capture_output=True,
        text=True,
        timeout=300,
    )
    assert done.returncode == 0 and "Traceback" not in done.stderr, done.stderr
    assert "code 2" in done.stdout and "10 of 10" in done.stdout
    assert re.search("disk is full|disk refused to read or write|No space left on device", done.stderr), done.stderr


@pytest.mark.parametrize("there", ["nothing", "marks"])
def test_a_read_only_disk_is_a_sentence(handed_in, tmp_path, there):
    if there == "marks":
        assert run(handed_in, tmp_path / "marks").returncode == 0
    read_only = mounted(f"mount --bind '{tmp_path}' '{tmp_path}' && mount -o remount,ro,bind '{tmp_path}'")
    done = run(handed_in, tmp_path / "marks", read_only)
    assert one_sentence(done), done
    assert "cannot be written" in done.stderr or "Read-only file system" in done.stderr


@pytest.mark.parametrize(
    "spoil",
    [
        lambda data: data[: len(data) // 2],
        lambda data: b"Aerial: 20 m of wire. " * 500,
        lambda data: data[:4096] + b"\xff" * (len(data) - 4096),
    ],
)
def test_a_corrupt_store_is_a_sentence_and_left_as_it_is(handed_in, tmp_path, spoil):
    assert run(handed_in, tmp_path).returncode == 0
    store = tmp_path / "marks.sqlite"
    store.write_bytes(spoil(store.read_bytes()))
    before = store.read_bytes()
    done = run(handed_in, tmp_path)
    assert one_sentence(done) and str(store) in done.stderr, done
    assert store.read_bytes() == before

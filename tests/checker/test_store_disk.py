"""Disks that are full or cannot be written, and runs that share a store: one sentence, and nothing lost or doubled."""

import json
import os
import resource
import shutil
import subprocess
import sys
from concurrent.futures import ThreadPoolExecutor
from contextlib import contextmanager
from fractions import Fraction
from pathlib import Path

import pytest

from checker.marks.store import StoreProblem, open_store
from tests.checker import made

ROOT = Path(__file__).parents[2]
IN_NAMESPACE = ["unshare", "--user", "--map-root-user", "--mount"]

# Prints, as JSON: how many verdicts were put before the sentence, the sentence, and, once there is room, how many are
# kept and whether one more goes in.
FILL = """
import json, os, sys
sys.path.insert(0, sys.argv[2])
from checker.marks.store import StoreProblem, open_store
from tests.checker import made
folder = sys.argv[1]
with open(f"{folder}/ballast", "wb") as file:
    file.write(bytes(100_000))
put, sentence = 0, None
try:
    with open_store(f"{folder}/marks.db") as store:
        for put in range(100_000):
            store.put(made.key(put), made.verdict(put))
except StoreProblem as problem:
    sentence = str(problem)
os.remove(f"{folder}/ballast")
with open_store(f"{folder}/marks.db") as store:
    kept = sum(store.get(made.key(number)) == made.verdict(number) for number in range(put + 2))
    store.put(made.key(put + 5), made.verdict(put + 5))
    again = store.get(made.key(put + 5)) == made.verdict(put + 5)
print(json.dumps([put, sentence, kept, again]))
"""

READ_ONLY = """
import json, sys
sys.path.insert(0, sys.argv[2])
from checker.marks.store import StoreProblem, open_store
try:
    with open_store(sys.argv[1]) as store:
        print(json.dumps("opened"))
except StoreProblem as problem:
    print(json.dumps(str(problem)))
"""


def in_namespace(script, folder, mount):
    """What a Python script prints, run with its folder under a mount of its own; skipped where that is not allowed."""
    if not shutil.which("unshare") or subprocess.run([*IN_NAMESPACE, "true"], capture_output=True).returncode:
        pytest.skip("no mounts of one's own here")
    command = f'{mount} && exec "$0" -c "$1" "$2" "$3"'
    target = folder if script is FILL else folder / "marks.db"
    done = subprocess.run(
        [*IN_NAMESPACE, "sh", "-c", command, sys.executable, script, str(target), str(ROOT)],
        capture_output=True,
        text=True,
        check=True,
    )
    return json.loads(done.stdout)


def test_a_full_disk_stops_with_a_sentence_and_goes_on_when_there_is_room(tmp_path):
    put, sentence, kept, again = in_namespace(FILL, tmp_path, f"mount -t tmpfs -o size=400k none '{tmp_path}'")
    assert put > 5 and kept == put and again
    assert sentence.startswith("The disk is full, so ") and sentence.endswith("marking goes on where it stopped.")


def test_a_file_that_may_grow_no_further_stops_with_a_sentence(tmp_path):
    """A limit on the size of files, as a quota sets it; put back after."""
    path, before = tmp_path / "marks.db", resource.getrlimit(resource.RLIMIT_FSIZE)
    put = 0
    with open_store(path):
        pass
    resource.setrlimit(resource.RLIMIT_FSIZE, (200_000, before[1]))
    try:
        with pytest.raises(StoreProblem, match="disk refused to read or write .* run again"), open_store(path) as store:
            for put in range(10_000):
                store.put(made.key(put), made.verdict(put))
    finally:
        resource.setrlimit(resource.RLIMIT_FSIZE, before)
    with open_store(path) as store:
        assert put > 5
        assert all(store.get(made.key(number)) == made.verdict(number) for number in range(put))


def test_a_store_that_may_grow_no_further_takes_no_half_verdict(tmp_path):
    with open_store(tmp_path / "marks.db") as store:
        store._connection.execute("PRAGMA max_page_count = 12")
        put = 0
        with pytest.raises(StoreProblem, match="The disk is full"):
            for put in range(10_000):
                store.put(made.key(put), made.verdict(put))
        with pytest.raises(StoreProblem, match="The disk is full"):
            for number in range(100):
                store.override(f"member {number}", "unit03_tuned_circuit/resonance", Fraction(1), "Shown. " * 100, "Wren Dalby")
        assert store._row("SELECT count(*) FROM verdicts")[0] == put > 5
        assert len(store.overrides()) == store._row("SELECT count(*) FROM overrides")[0]
        store._connection.execute("PRAGMA max_page_count = 1000")
        assert store.put(made.key(put), made.verdict(put)) == store.get(made.key(put))


@pytest.mark.parametrize("there", ["a store", "nothing"])
def test_a_read_only_disk_is_told(tmp_path, there):
    if there == "a store":
        with open_store(tmp_path / "marks.db"):
            pass
    sentence = in_namespace(
        READ_ONLY, tmp_path, f"mount --bind '{tmp_path}' '{tmp_path}' && mount -o remount,ro,bind '{tmp_path}'"
    )
    assert sentence.startswith(f"{tmp_path / 'marks.db'} cannot be written: see that its folder exists")


@pytest.mark.parametrize("mode", ["file", "folder", "both"])
def test_a_store_one_may_not_write_is_told(tmp_path_factory, mode):
    """In a process without root's powers: permissions do not bind root."""
    folder = Path("/tmp") / f"checker-read-only-{os.getpid()}"
    folder.mkdir(mode=0o755)
    try:
        with open_store(folder / "marks.db") as store:
            store.put(made.key(1), made.verdict(1))
        (folder / "marks.db").chmod(0o444 if mode != "folder" else 0o666)
        folder.chmod(0o555 if mode != "file" else 0o777)
        said = in_child(lambda: sentence_of(folder / "marks.db"), user=65534)
        assert "cannot be written: see that" in said
    finally:
        folder.chmod(0o755)
        shutil.rmtree(folder)


def sentence_of(path):
    try:
        with open_store(path) as store:
            store.put(made.key(2), made.verdict(2))
    except StoreProblem as problem:
        return str(problem)
    return "no problem"


def in_child(action, user=None):
    """What a function returns in a process of its own, as another user if root may choose one."""
    read, write = os.pipe()
    pid = os.fork()
    if pid == 0:
        try:
            if user and os.geteuid() == 0:
                os.setgroups([])
                os.setgid(user)
                os.setuid(user)
            os.write(write, str(action()).encode())
        except BaseException as error:
            os.write(write, repr(error).encode())
        finally:
            os._exit(0)
    os.close(write)
    with os.fdopen(read, "rb") as pipe:
        told = pipe.read().decode()
    os.waitpid(pid, 0)
    return told


# Runs that share a store


@contextmanager
def at_once(count, action):
    """`action(number)` in as many processes, which begin together."""
    ready, go = os.pipe()
    pids = []
    for number in range(count):
        pid = os.fork()
        if pid == 0:
            status = 1
            try:
                os.close(go)
                os.read(ready, 1)  # until the parent closes its end
                action(number)
                status = 0
            finally:
                os._exit(status)
        pids.append(pid)
    os.close(ready)
    os.close(go)
    assert [os.waitpid(pid, 0)[1] for pid in pids] == [0] * count
    yield


def mark_class(path, number):
    """A run like any other, over twenty members of four verdicts each; the verdicts are the same for every run."""
    with open_store(path) as store:
        run = store.begin_run(f"folder {number}", made.details(7))
        for member in range(20):
            keys = [made.key(4 * member + place) for place in range(4)]
            for place, key in enumerate(keys):
                if store.get(key) is None:
                    store.put(key, made.verdict(4 * member + place))
            store.record(run, f"member {member}", [], keys)
        store.override(f"member {number}", "unit03_tuned_circuit/resonance", Fraction(number), "Shown.", "Wren Dalby")
        store.finish_run(run)


def test_runs_at_once_on_a_store_that_is_not_there_yet_lose_nothing_and_double_nothing(tmp_path):
    path = tmp_path / "marks.db"
    with at_once(6, lambda number: mark_class(path, number)), open_store(path) as store:
        assert store._row("SELECT count(*), count(DISTINCT submission) FROM verdicts") == (80, 80)
        assert store._row("SELECT count(*), count(finished) FROM runs") == (6, 6)
        assert len(store.overrides()) == 6
        for run in range(1, 7):
            members = list(store.members(run))
            assert [name for name, *_ in members] == [f"member {number}" for number in range(20)]
            for member, (_, _, verdicts, *_) in enumerate(members):
                assert verdicts == tuple(made.verdict(4 * member + place) for place in range(4))


def test_a_store_made_by_many_at_once_is_made_once(tmp_path):
    def make(path):
        with open_store(path) as store:
            store.put(made.key(1), made.verdict(1))

    for turn in range(60):
        path = tmp_path / f"marks{turn}.db"
        with at_once(8, lambda number, path=path: make(path)), open_store(path) as store:
            assert store._row("SELECT count(*) FROM verdicts") == (1,)


def test_a_store_kept_busy_is_waited_for_and_then_told(tmp_path):
    path = tmp_path / "marks.db"
    with open_store(path) as store, open_store(path, patience=0.1) as other:
        with store._change() as connection:
            connection.execute("INSERT INTO runs (folder, seed, started) VALUES ('', '', '')")
            with pytest.raises(StoreProblem, match="Another run is keeping .* nothing is lost"):
                other.put(made.key(1), made.verdict(1))
            with pytest.raises(StoreProblem, match="Another run is keeping"), open_store(path, patience=0.1):
                pass
        assert other.put(made.key(1), made.verdict(1)) == store.get(made.key(1))


def test_threads_share_an_open_store(tmp_path):
    with open_store(tmp_path / "marks.db") as store, ThreadPoolExecutor(8) as pool:
        list(pool.map(lambda number: store.put(made.key(number % 50), made.verdict(number % 50)), range(400)))
        assert store._row("SELECT count(*) FROM verdicts") == (50,)
        assert all(store.get(made.key(number)) == made.verdict(number) for number in range(50))

"""A run may be killed at any moment. What it had acknowledged is there afterwards, and nothing twice.

The writer says what it has put by writing to a pipe after each commit. A kill is `kill -9`, or comes from the system at
an exact byte of a write (a limit on the file's size).
"""

import os
import random
import resource
import shutil
import signal
import time
from fractions import Fraction

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from checker.marks.store import open_store
from tests.checker import made

RESONANCE = "unit03_tuned_circuit/resonance"


def write_on(path, first, acknowledge):
    """Put verdicts and marks by hand into a store for ever, from number `first` on, acknowledging each."""
    with open_store(path) as store:
        for number in range(first, first + 10_000):
            store.put(made.key(number), made.verdict(number))
            acknowledge(b"%d\n" % number)
            if number % 3 == 0:
                store.override(f"member {number}", RESONANCE, Fraction(number, 7), "Shown.", "Wren Dalby")
                acknowledge(b"by hand %d\n" % number)


def write_terms(path, first, acknowledge):
    """Put terms into a store for ever, acknowledging each."""
    with open_store(path) as store:
        for number in range(first, first + 10_000):
            store.put_term(made.term(number))
            acknowledge(b"%d\n" % number)


def writer(path, first, prepare=lambda: None, put_all=write_on):
    """(process id, pipe of acknowledgements) of a process that writes on."""
    read, write = os.pipe()
    pid = os.fork()
    if pid == 0:
        try:
            os.close(read)
            prepare()
            put_all(path, first, lambda said: os.write(write, said))
        finally:
            os._exit(1)
    os.close(write)
    return pid, read


def said(read):
    """All that was acknowledged in a pipe, once its writer is gone."""
    with os.fdopen(read, "rb") as pipe:
        return pipe.read().decode().splitlines()


def assert_kept(path, acknowledged):
    """All that was acknowledged is there as it was put; one more of each at most, and that whole."""
    with open_store(path) as store:
        numbers = [int(line) for line in acknowledged if not line.startswith("by hand")]
        by_hand = {int(line.removeprefix("by hand ")) for line in acknowledged if line.startswith("by hand")}
        for number in numbers:
            assert store.get(made.key(number)) == made.verdict(number)
        last = max(numbers, default=-1)
        assert store.get(made.key(last + 1)) in (None, made.verdict(last + 1))
        assert store.get(made.key(last + 2)) is None
        held = {int(member.removeprefix("member ")): override.mark for (member, _), override in store.overrides().items()}
        assert held.keys() >= by_hand and len(held) <= len(by_hand) + 1
        assert all(mark == Fraction(number, 7) for number, mark in held.items())
        counted = store._row("SELECT count(*), count(DISTINCT submission) FROM verdicts")
        assert counted[0] == counted[1] and counted[0] in (len(numbers), len(numbers) + 1)


@pytest.mark.parametrize("seconds", [0.0, 0.01, 0.03, 0.1, 0.3])
def test_a_killed_run_loses_nothing_that_it_acknowledged(tmp_path, seconds):
    path = tmp_path / "marks.db"
    pid, read = writer(path, 0)
    time.sleep(seconds)
    os.kill(pid, signal.SIGKILL)
    os.waitpid(pid, 0)
    assert_kept(path, said(read))


@pytest.mark.parametrize("seconds", [0.01, 0.1])
def test_a_killed_run_leaves_the_last_term_that_it_acknowledged(tmp_path, seconds):
    path = tmp_path / "marks.db"
    pid, read = writer(path, 0, put_all=write_terms)
    time.sleep(seconds)
    os.kill(pid, signal.SIGKILL)
    os.waitpid(pid, 0)
    last = max(map(int, said(read)), default=-1)
    with open_store(path) as store:
        assert store.term() in (None if last < 0 else made.term(last), made.term(last + 1))


@settings(max_examples=25, deadline=None)
@given(st.lists(st.integers(1, 60_000), min_size=1, max_size=4))
def test_runs_killed_at_any_byte_one_after_the_other_lose_nothing(tmp_path_factory, kills):
    """Each run is killed by the system when it writes past a size of the log, in the middle of that write."""
    path = tmp_path_factory.mktemp("killed") / "marks.db"
    acknowledged = []

    def limited(size):
        def prepare():
            signal.signal(signal.SIGXFSZ, signal.SIG_DFL)
            resource.setrlimit(resource.RLIMIT_FSIZE, (size, size))
            resource.setrlimit(resource.RLIMIT_CORE, (0, 0))

        return prepare

    with open_store(path):
        pass
    for more in kills:
        log = path.with_name("marks.db-wal")
        pid, read = writer(
            path,
            len([line for line in acknowledged if not line.startswith("by hand")]),
            limited(max(path.stat().st_size, 32_768, log.stat().st_size if log.exists() else 0) + more),
        )
        _, status = os.waitpid(pid, 0)
        assert os.WIFSIGNALED(status) and os.WTERMSIG(status) == signal.SIGXFSZ
        acknowledged += said(read)
        assert_kept(path, acknowledged)
        with open_store(path) as store:  # the one that was being put when the kill came may be there: then it counts
            number = len([line for line in acknowledged if not line.startswith("by hand")])
            if store.get(made.key(number)):
                acknowledged.append(str(number))
            acknowledged += [
                f"by hand {number}"
                for member, _ in store.overrides()
                if f"by hand {(number := int(member.removeprefix('member ')))}" not in acknowledged
            ]


def test_a_copy_taken_at_any_moment_holds_all_that_was_acknowledged(tmp_path):
    """The writer is held still, database and log are copied, and the copy is opened."""
    path = tmp_path / "marks.db"
    pid, read = writer(path, 0)
    os.set_blocking(read, False)
    acknowledged = ""
    try:
        for moment in range(12):
            time.sleep(0.004 * moment)
            os.kill(pid, signal.SIGSTOP)
            os.waitpid(pid, os.WUNTRACED)
            copy = tmp_path / f"copy{moment}"
            copy.mkdir()
            for file in tmp_path.glob("marks.db*"):
                if not file.name.endswith("-shm"):
                    shutil.copy(file, copy / file.name)
            os.kill(pid, signal.SIGCONT)
            try:
                while chunk := os.read(read, 1 << 16):
                    acknowledged += chunk.decode()
            except BlockingIOError:
                pass
            # The pipe was read after the copy was taken, so it may say more than the copy holds, by what came since.
            with open_store(copy / "marks.db") as store:
                kept = store._row("SELECT count(*) FROM verdicts")[0]
                assert all(store.get(made.key(number)) == made.verdict(number) for number in range(kept))
                assert len(store.overrides()) in ((kept + 2) // 3, (kept + 2) // 3 - 1)
    finally:
        os.kill(pid, signal.SIGKILL)
        os.waitpid(pid, 0)
        os.close(read)
    assert acknowledged


@pytest.fixture(scope="module")
def logged(tmp_path_factory):
    """(folder, lengths): a store whose changes are all still in its log, and how long the log was after each."""
    folder = tmp_path_factory.mktemp("logged")
    path, lengths = folder / "marks.db", []
    pid = os.fork()
    if pid == 0:
        try:
            with open_store(path) as store:
                for number in range(12):
                    store.put(made.key(number), made.verdict(number))
                    with open(folder / "lengths", "a") as file:
                        file.write(f"{os.stat(f'{path}-wal').st_size}\n")
                os.kill(os.getpid(), signal.SIGKILL)
        finally:
            os._exit(1)
    os.waitpid(pid, 0)
    lengths = [int(line) for line in (folder / "lengths").read_text().split()]
    assert len(lengths) == 12
    return folder, lengths


@settings(max_examples=60, deadline=None)
@given(st.floats(0, 1), st.sampled_from(["cut", "zeros", "noise"]), st.integers(0, 99))
def test_a_log_cut_anywhere_keeps_every_change_before_the_cut_whole(tmp_path_factory, logged, place, tail, seed):
    folder, lengths = logged
    copy = tmp_path_factory.mktemp("cut")
    log = (folder / "marks.db-wal").read_bytes()
    cut = int(place * len(log))
    after = {"cut": b"", "zeros": bytes(len(log) - cut), "noise": random.Random(seed).randbytes(len(log) - cut)}[tail]
    shutil.copy(folder / "marks.db", copy / "marks.db")
    (copy / "marks.db-wal").write_bytes(log[:cut] + after)
    whole = sum(length <= cut for length in lengths)
    with open_store(copy / "marks.db") as store:
        kept = [store.get(made.key(number)) for number in range(12)]
        assert kept[:whole] == [made.verdict(number) for number in range(whole)]
        assert all(verdict in (None, made.verdict(number)) for number, verdict in enumerate(kept))
        assert None not in kept[: 12 - kept.count(None)]
        store.put(made.key(11), made.verdict(11))
        assert store.get(made.key(11)) == made.verdict(11)

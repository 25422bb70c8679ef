"""The power may go at any moment. Marks set by hand and finished runs are on the disk by then, and no store is spoilt.

A power cut is played from the record of all writes and syncs that strace takes of a writer: what was not synced when
the power goes may be on the disk in whole, in part or not at all, and so may names made or removed.
"""

import os
import re
import shutil
import subprocess
import sys
from fractions import Fraction
from random import Random

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from checker.marks.store import open_store
from tests.checker import made

WRITER = """
import os, sys
from fractions import Fraction
from checker.marks import store as store_module
from tests.checker import made
path, steps = sys.argv[1], int(sys.argv[2])
with store_module.open_store(path) as store:
    store._connection.execute("PRAGMA wal_autocheckpoint = 8")  # so that the log is emptied into the file now and then
    run = store.begin_run("class", made.details(7))
    os.write(1, b"run\\n")
    for number in range(steps):
        store.put(made.key(number), made.verdict(number))
        store.record(run, f"member {number}", [], [made.key(number)], changed=made.WHEN, content=made.content(number))
        os.write(1, b"put\\n")
        if number % 4 == 1:
            store.put_term(made.term(number))
            os.write(1, b"term %d\\n" % number)
        if number % 4 == 3:
            store.override(f"member {number}", "resonance", Fraction(number, 7), "Shown.", "Wren Dalby")
            os.write(1, b"by hand %d\\n" % number)
    store.finish_run(run)
    os.write(1, b"finished\\n")
"""
CALL = re.compile(r"(?:\d+ +)?(pwrite64|fdatasync|fsync|ftruncate|unlink|openat|write)\((.*)\) += (-?\d+)(?:<.*>)?$")
STEPS = 12


@pytest.fixture(scope="module")
def record(tmp_path_factory):
    """What a writer did to its store: (call, file, offset, bytes) each; ("said", …) where it acknowledged."""
    if not shutil.which("strace") or subprocess.run(["strace", "-o", os.devnull, "true"], capture_output=True).returncode:
        pytest.skip("strace is not installed, or may not trace here")
    folder = tmp_path_factory.mktemp("recorded")
    command = [
        "strace",
        "-y",
        "-xx",
        "-s",
        "100000",
        "-o",
        str(folder / "calls"),
        "-e",
        "trace=pwrite64,fdatasync,fsync,ftruncate,unlink,openat,write",
        sys.executable,
        "-c",
        WRITER,
        str(folder / "marks.db"),
        str(STEPS),
    ]
    subprocess.run(command, check=True, stdout=subprocess.DEVNULL)
    calls = list(filter(None, map(lambda line: _call(line, folder), (folder / "calls").read_text().splitlines())))
    assert ("said", "finished", 0, b"") in calls and sum(call == "sync" for call, *_ in calls) > 10
    return calls


def _call(line, folder):
    match = CALL.match(line)
    if not match or int(match[3]) < 0:
        return None
    name, arguments = match[1], match[2]
    strings = [bytes.fromhex(text.replace("\\x", "")) for text in re.findall(r'"((?:\\x[0-9a-f]{2})*)"', arguments)]
    paths = [
        bytes.fromhex(text.replace("\\x", "")).decode() if "\\x" in text else text
        for text in re.findall(r"<([^<>]*)>", arguments)
    ]
    if name == "write":
        return ("said", strings[0].decode().strip(), 0, b"") if arguments.startswith("1<") else None
    path = strings[0].decode() if name in ("unlink", "openat") else paths[0]
    if not path.startswith(str(folder)) or path.endswith("-shm"):
        return None
    file = os.path.relpath(path, folder)
    numbers = arguments.split(", ")
    if name == "pwrite64":
        return "write", file, int(numbers[-1]), strings[0]
    if name == "ftruncate":
        return "truncate", file, int(numbers[-1]), b""
    if name == "openat":
        return ("create", file, 0, b"") if "O_CREAT" in arguments else None
    return "sync" if name.endswith("sync") else name, file, 0, b""


class Disk:
    """A folder of files: under each name what may stand there since the folder was last synced, the newest last."""

    def __init__(self):
        self.names = {}

    def do(self, call, name, offset, data):
        """One call of the record."""
        if call == "sync" and name == ".":
            self.names = {name: versions[-1:] for name, versions in self.names.items() if versions[-1] is not None}
            return
        versions = self.names.setdefault(name, [None])
        if call == "create" and versions[-1] is None:
            versions.append((bytearray(), []))
        elif call == "unlink":
            versions.append(None)
        elif call in ("write", "truncate"):
            versions[-1][1].append((call, offset, data))
        elif call == "sync":
            content, waiting = versions[-1]
            for write in waiting:
                put(content, *write)
            waiting.clear()

    def after_power_cut(self, luck):
        """Name to content, as luck has it."""
        found = {}
        for name, versions in self.names.items():
            version = luck.choice(versions)
            if version is not None:
                content, waiting = bytearray(version[0]), version[1]
                for call, offset, data in waiting:
                    part = luck.choice((None, luck.randrange(len(data) + 1), len(data), len(data)))
                    if part is not None:
                        put(content, call, offset, data[:part])
                found[name] = content
        return found


def put(content, call, offset, data):
    content.extend(bytes(max(0, offset - len(content))))
    if call == "truncate":
        del content[offset:]
    else:
        content[offset : offset + len(data)] = data


@settings(max_examples=150, deadline=None)
@given(st.integers(0, 1000), st.integers(0, 2**32))
def test_a_power_cut_keeps_marks_set_by_hand_and_finished_runs(tmp_path_factory, record, place, seed):
    calls = record[: place * len(record) // 1000]
    said = [what for call, what, *_ in calls if call == "said"]
    path = tmp_path_factory.mktemp("power") / "marks.db"
    disk = Disk()
    for call in calls:
        if call[0] != "said":
            disk.do(*call)
    for name, content in disk.after_power_cut(Random(seed)).items():
        path.with_name(name).write_bytes(content)
    with open_store(path) as store:
        held = {member: override.mark for (member, _), override in store.overrides().items()}
        for number in [int(what.removeprefix("by hand ")) for what in said if what.startswith("by hand")]:
            assert held[f"member {number}"] == Fraction(number, 7)
            # and with it all that came before it
            assert all(store.get(made.key(earlier)) == made.verdict(earlier) for earlier in range(number + 1))
        kept = [store.get(made.key(number)) for number in range(STEPS)]
        assert all(verdict in (None, made.verdict(number)) for number, verdict in enumerate(kept))
        terms = [int(what.removeprefix("term ")) for what in said if what.startswith("term")]
        if terms:
            assert store.term() in (made.term(terms[-1]), made.term(terms[-1] + 4)), (
                "the last that was kept, or the one after it"
            )
        members = list(store.members(1))
        assert [(one.changed, one.content) for one in members] == [
            (made.WHEN, made.content(number)) for number in range(len(members))
        ]
        assert [name for name, *_ in members] == [f"member {number}" for number in range(len(members))]
        if "finished" in said:
            assert store.latest_run() == 1 and len(members) == STEPS and None not in kept

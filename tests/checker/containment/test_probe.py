"""What a system offers is found out, and what it lacks is said in a sentence."""

import dataclasses
import errno
import os
import subprocess
import sys
from pathlib import Path

import pytest

from checker.worker import contain

ROOT = Path(__file__).resolve().parents[3]
WHOLE = contain.Containment(landlock=7, seccomp=True, no_new_privileges=True, limits=True, scratch=1, pidfd=True)


def test_this_system_is_fully_contained(attack):
    """Of the machine that the tests run on: a Linux since 5.13 (Landlock, 2021) is asked for."""
    assert attack.system.landlock >= 1 and attack.system.scratch
    assert attack.system.missing == ()


def test_nothing_missing_nothing_said():
    assert WHOLE.missing == ()
    assert dataclasses.replace(WHOLE, scratch=0, pidfd=False).missing == ()  # less comfort, not less safety


@pytest.mark.parametrize(
    "field, word",
    [
        ("landlock", "read your files"),
        ("seccomp", "use the network"),
        ("no_new_privileges", "gain privileges"),
        ("limits", "slow the computer down"),
    ],
)
def test_each_gap_has_its_sentence(field, word):
    [sentence] = dataclasses.replace(WHOLE, **{field: type(getattr(WHOLE, field))()}).missing
    assert word in sentence and sentence.endswith(".")


def test_nothing_at_all_is_said_at_once():
    assert len(contain.Containment(limits=True).missing) == 1
    assert len(contain.Containment().missing) == 2


# Pretends to be another system, then imports the worker as the warm process does. Real ones were not at hand.
PRETEND = """
import ctypes, importlib.util, os, platform, sys, sysconfig, tempfile
sysconfig.get_config_vars()
sys.path.insert(0, {folder!r})
sys.platform = {platform!r}
for name in {modules!r}:
    sys.modules[name] = None
for name in {functions!r}:
    delattr(os, name)
from worker import contain, trees, denials, landlock
found = contain.probe()
print(found.landlock, found.seccomp, found.scratch, found.limits, len(found.missing), *found.missing)
with contain.prepare(trees.python_trees(), None, found) as walls:
    print(walls.reading, walls.program, walls.scratch)
"""


@pytest.mark.parametrize(
    "platform, modules, functions, limits",
    [
        ("darwin", [], ["pidfd_open"], True),
        ("win32", ["resource", "fcntl", "pwd"], ["pidfd_open", "fork", "setsid", "O_PATH"], False),
    ],
)
def test_other_systems_say_what_they_lack(platform, modules, functions, limits):
    source = PRETEND.format(folder=str(ROOT / "checker"), platform=platform, modules=modules, functions=functions)
    told = subprocess.run([sys.executable, "-c", source], capture_output=True, text=True, timeout=60)
    assert told.returncode == 0, told.stderr
    first, second = told.stdout.splitlines()
    assert first.startswith(
        f"0 False 0 {limits} {1 if limits else 2} Nothing on this system keeps a submission from your files"
    )
    assert second == "None b'' None"


@pytest.mark.parametrize(
    "spoilt, number", [({"program": b"\0" * 8}, errno.EINVAL), ({"warm": 1}, None)], ids=["no filter", "no parent"]
)
def test_a_layer_that_cannot_be_put_up_stops_the_child(attack, spoilt, number):
    """A filter that is no program, a warm process that has gone: contain() raises, and the child goes no further."""
    reading, writing = os.pipe()
    with contain.prepare([], None, attack.system) as walls:
        child = os.fork()
        if child == 0:
            try:
                contain.contain(dataclasses.replace(walls, **spoilt), keep=(writing,))
                os.write(writing, b"went on")
            except OSError as error:
                os.write(writing, repr(error.errno).encode())
            finally:
                os._exit(0)
    os.waitpid(child, 0)
    os.close(writing)
    assert os.read(reading, 100).decode() == repr(number)
    os.close(reading)

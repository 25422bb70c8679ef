"""`attack(body)` runs `body` in a contained child and tells what became of it, as root and as an ordinary user.

Three processes: this one; a warm one, which becomes the user and builds the walls; the child. `body` is an ordinary
function of what `setup` returned in the warm process; it runs in the child by being there when the child is forked.
"""

import contextlib
import ctypes
import functools
import json
import os
import shutil
import signal
import sys
import tempfile
from dataclasses import asdict, dataclass
from pathlib import Path

import mpmath  # noqa: F401  the warm process has it
import numpy.testing  # noqa: F401
import pytest
import sympy  # noqa: F401

from checker.worker import contain, trees
from checker.worker.linux import library_call

collect_ignore_glob = [] if sys.platform == "linux" else ["test_*.py"]

NOBODY = 65534
USUAL = contain.Limits()
PATIENCE = 60  # seconds, after which a child that hangs is ended by SIGALRM
MS_BIND, MS_REC, MS_PRIVATE = 4096, 1 << 14, 1 << 18
TREES = trees.python_trees()


@dataclass(frozen=True)
class Outcome:
    """What became of a child: its body's value, or the name and number of its error, or the signal that ended it."""

    value: object = None
    error: str = ""
    errno: int | None = None
    signal: int = 0
    seen: object = None


@dataclass(frozen=True)
class Attack:
    """Runs bodies as one user; `home` is a folder of that user's, outside everything that a child may read."""

    user: int
    home: str
    scratch: str
    system: contain.Containment

    def __call__(self, body, **options):
        return self.in_turn(body, **options)[0]

    def in_turn(self, *bodies, setup=None, watch=None, limits=USUAL, without=(), readable=(), scratch=True):
        """Each body in a child of its own, one after the other, from one warm process.

        `watch(pid)` runs in the warm process while the child, its body done, stands still. `without` names functions of
        `contain` to leave out; "contain" leaves out all.
        """
        reading, writing = os.pipe()
        warm = os.fork()
        if warm == 0:
            os.close(reading)
            with _no_way_back():
                self._be_warm(writing, bodies, setup, watch, limits, without, readable, scratch)
        os.close(writing)
        with open(reading, "rb") as answers:
            told = answers.read()
        os.waitpid(warm, 0)
        found = [Outcome(**json.loads(line)) for line in told.splitlines()]
        assert len(found) == len(bodies), "the warm process failed; its traceback is in the captured output"
        return found

    def _be_warm(self, writing, bodies, setup, watch, limits, without, readable, scratch):
        become(self.user)
        for name in without:
            setattr(contain, name, lambda *arguments, **keywords: None)
        ready = setup() if setup else None
        trees, found = ([], contain.Containment()) if "contain" in without else ([*TREES, *readable], self.system)
        with contain.prepare(trees, self.scratch if scratch else None, found) as walls:
            for body in bodies:
                os.write(writing, json.dumps(_one_child(body, ready, watch, walls, limits)).encode() + b"\n")


def become(user):
    """Take on an ordinary user's rights, if this is root."""
    if os.getuid() == user:
        return
    _open_the_way_to_python()
    os.setgroups([])
    os.setresgid(user, user, user)
    os.setresuid(user, user, user)
    library_call("prctl", contain.PR_SET_DUMPABLE, 1, 0, 0, 0)  # as it is after a login, and not after a change of user


@functools.cache
def system_of(user):
    """What `probe` finds as this user."""
    reading, writing = os.pipe()
    child = os.fork()
    if child == 0:
        with _no_way_back():
            become(user)
            os.write(writing, json.dumps(asdict(contain.probe())).encode())
    os.close(writing)
    with open(reading, "rb") as answer:
        found = contain.Containment(**json.loads(answer.read()))
    os.waitpid(child, 0)
    return found


def _one_child(body, ready, watch, walls, limits):
    reading, writing = os.pipe()
    waiting, going_on = os.pipe()
    child = os.fork()
    if child == 0:
        with _no_way_back():
            os.close(going_on)
            signal.alarm(PATIENCE)
            contain.contain(walls, limits, keep=(waiting, writing))
            os.write(writing, json.dumps(_tried(body, ready)).encode())
            os.close(writing)
            os.read(waiting, 1)
    os.close(writing)
    os.close(waiting)
    with open(reading, "rb") as answer:
        told = answer.read()
    seen = watch(child) if watch else None
    os.close(going_on)
    status = os.waitpid(child, 0)[1]
    ended = {"signal": os.WTERMSIG(status)} if os.WIFSIGNALED(status) else {}
    return {**json.loads(told or b"{}"), **ended, "seen": seen}


def _tried(body, ready):
    try:
        return {"value": body(ready) if ready is not None else body()}
    except BaseException as error:
        return {"error": type(error).__name__, "errno": getattr(error, "errno", None), "value": str(error)[:500]}


@contextlib.contextmanager
def _no_way_back():
    """A forked process must never return into pytest."""
    try:
        yield
    except BaseException:
        import traceback

        os.write(2, traceback.format_exc().encode())
    finally:
        os._exit(0)


def _open_the_way_to_python():
    """Where Python lies in root's closed home, show an ordinary user that Python there, and nothing else of the home.

    Needed for the tests alone: a user who cannot reach Python does not run the checker.
    """
    needed = {sys.base_prefix, str(Path(numpy.__file__).parents[1])}
    closed = {str(folder) for path in needed for folder in Path(path).parents if not folder.stat().st_mode & 1}
    if not closed:
        return
    library_call("unshare", contain.CLONE_NEWNS)
    library_call("mount", b"none", b"/", None, MS_REC | MS_PRIVATE, None)
    held = {path: tempfile.mkdtemp() for path in needed}
    for path, place in held.items():
        library_call("mount", path.encode(), place.encode(), None, MS_BIND, None)
    for folder in sorted(closed)[:1]:
        library_call("mount", b"none", folder.encode(), b"tmpfs", 0, b"mode=755")
    for path, place in held.items():
        os.makedirs(path, exist_ok=True)
        library_call("mount", place.encode(), path.encode(), None, MS_BIND, None)
        library_call("umount2", place.encode(), 2)
        os.rmdir(place)


@pytest.fixture(scope="session", autouse=True)
def one_thread():
    """As `contain.START_ENVIRONMENT` does for the real warm process: a child may not start numpy's threads."""
    for library in (Path(numpy.__file__).parents[1] / "numpy.libs").glob("*openblas*"):
        for name in ("scipy_openblas_set_num_threads64_", "scipy_openblas_set_num_threads", "openblas_set_num_threads"):
            if hasattr(ctypes.CDLL(library), name):
                getattr(ctypes.CDLL(library), name)(1)


def _users():
    """Whoever runs the tests; and for root, slowly, an ordinary user as well."""
    return [os.getuid(), *([pytest.param(NOBODY, marks=pytest.mark.slow)] if os.getuid() == 0 else [])]


@pytest.fixture(params=_users(), ids=lambda user: "root" if user == 0 else "user")
def attack(request):
    home = tempfile.mkdtemp(prefix="home-")
    scratch = tempfile.mkdtemp(prefix="scratch-")
    for folder in (home, scratch):
        os.chown(folder, request.param, request.param)
        os.chmod(folder, 0o755)
    yield Attack(request.param, home, scratch, system_of(request.param))
    shutil.rmtree(home)
    shutil.rmtree(scratch)

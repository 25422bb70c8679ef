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
import sys
import tempfile
from dataclasses import asdict, dataclass
from pathlib import Path

import mpmath  # noqa: F401  the warm process has it
import numpy  # noqa: F401
import pytest
import sympy  # noqa: F401

from checker.worker import contain, trees
from checker.worker.linux import library_call

collect_ignore_glob = [] if sys.platform == "linux" else ["test_*.py"]

NOBODY = 65534
MS_BIND, MS_REC, MS_PRIVATE = 4096, 1 << 14, 1 << 18
TREES = trees.python_trees()


@dataclass(frozen=True)
class Outcome:
    """What became of a child: the value of its body, or the name and number of its error, or the signal that ended it."""

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

    def in_turn(self, *bodies, setup=None, watch=None, limits=contain.Limits(), without=(), readable=(), scratch=True):
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
    """As `contain.START_ENVIRONMENT` does for the real warm process: a child may not start the threads of numpy's library."""
    for library in (Path(numpy.__file__).parents[1] / "numpy.libs").glob("*openblas*"):
        for name in ("scipy_openblas_set_num_threads64_", "scipy_openblas_set_num_threads", "openblas_set_num_threads"):
            if hasattr(ctypes.CDLL(library), name):
                getattr(ctypes.CDLL(library), name)(1)


def _users():
    return [os.getuid(), NOBODY] if os.getuid() == 0 else [os.getuid()]


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


LIBC = ctypes.CDLL(None, use_errno=True) if sys.platform == "linux" else None
# Calls to attack with, which contain.py has no use for: (x86_64, aarch64), from the same kernel tables as syscalls.py.
NUMBERS = {
    "accept4": (288, 242), "acct": (163, 89), "add_key": (248, 217), "bpf": (321, 280), "capset": (126, 91),
    "chmod": (90, None), "chown": (92, None), "chroot": (161, 51), "clock_settime": (227, 112), "clone": (56, 220), "clone3": (435, 435),
    "epoll_create1": (291, 20), "eventfd2": (290, 19), "execve": (59, 221), "execveat": (322, 281), "fanotify_init": (300, 262),
    "fchmod": (91, 52), "fchmodat": (268, 53), "fchownat": (260, 54), "fork": (57, None), "fsopen": (430, 430),
    "get_robust_list": (274, 100), "init_module": (175, 105), "inotify_init1": (294, 26), "io_setup": (206, 0),
    "io_uring_setup": (425, 425), "kcmp": (312, 272), "keyctl": (250, 219), "kill": (62, 129), "landlock_create_ruleset": (444, 444),
    "link": (86, None), "linkat": (265, 37), "memfd_create": (319, 279), "memfd_secret": (447, 447), "mknodat": (259, 33),
    "mount": (165, 40), "move_mount": (429, 429), "mq_open": (240, 180), "msgget": (68, 186), "name_to_handle_at": (303, 264),
    "open_by_handle_at": (304, 265), "open_tree": (428, 428), "openat": (257, 56), "openat2": (437, 437), "perf_event_open": (298, 241),
    "personality": (135, 92), "pidfd_getfd": (438, 438), "pidfd_open": (434, 434), "pidfd_send_signal": (424, 424),
    "pivot_root": (155, 41), "prctl": (157, 167), "prlimit64": (302, 261), "process_madvise": (440, 440),
    "process_vm_readv": (310, 270), "process_vm_writev": (311, 271), "ptrace": (101, 117), "quotactl": (179, 60),
    "reboot": (169, 142), "request_key": (249, 218), "rt_sigqueueinfo": (129, 138), "rt_tgsigqueueinfo": (297, 240),
    "sched_setaffinity": (203, 122), "sched_setscheduler": (144, 119), "seccomp": (317, 277), "semget": (64, 190),
    "sethostname": (170, 161), "setns": (308, 268), "setpgid": (109, 154), "setpriority": (141, 140), "setresuid": (117, 147),
    "setsid": (112, 157), "setuid": (105, 146), "setxattr": (188, 5), "shmat": (30, 196), "shmget": (29, 194), "signalfd4": (289, 74),
    "socket": (41, 198), "socketpair": (53, 199), "splice": (275, 76), "swapon": (167, 224), "symlinkat": (266, 36), "sync": (162, 81),
    "syslog": (103, 116), "tee": (276, 77), "tgkill": (234, 131), "timer_create": (222, 107), "timerfd_create": (283, 85),
    "tkill": (200, 130), "truncate": (76, 45), "umount2": (166, 39), "unshare": (272, 97), "userfaultfd": (323, 282),
    "utimensat": (280, 88), "vfork": (58, None), "vmsplice": (278, 75),
}


def raw(name, *arguments):
    """A system call by number, past all of Python's own functions: what it answered, or raises OSError."""
    number = NUMBERS[name][("x86_64", "aarch64").index(os.uname().machine)]
    words = [ctypes.c_long(word) if isinstance(word, int) else word for word in arguments]
    LIBC.syscall.restype = ctypes.c_long
    answer = LIBC.syscall(ctypes.c_long(number), *words)
    if answer == -1:
        code = ctypes.get_errno()
        raise OSError(code, os.strerror(code), name)
    return answer


@pytest.fixture(scope="session", name="raw")
def raw_fixture():
    return raw


@pytest.fixture(scope="session")
def attack_numbers():
    return NUMBERS

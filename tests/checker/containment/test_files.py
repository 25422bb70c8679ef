"""What a contained child can read and write: what Python needs, its scratch, and nothing else.

Every attack is made through Python and by bare system call, and once with nothing in its way, to see that it is one.
"""

import ctypes
import dataclasses
import errno
import os
import tempfile
from pathlib import Path

import pytest

from checker.worker import contain, view
from checker.worker.linux import library_call
from tests.checker.containment.bare import raw

ROOT = Path(__file__).resolve().parents[3]
AT_FDCWD = -100
MS_SHARED = 1 << 20
REFUSED = {1, 13, 18, 40}  # EPERM, EACCES, and for links and moves EXDEV, ELOOP


def secret(attack):
    """Makes a file in the user's home, as that user."""

    def make():
        path = os.path.join(attack.home, "secret.txt")
        with open(path, "w") as file:
            file.write("the expected values")
        return path

    return make


READS = {
    "open": lambda path: Path(path).read_bytes(),
    "os.open": lambda path: os.read(os.open(path, os.O_RDONLY), 10),
    "relative": lambda path: open(os.path.relpath(path)).read(),
    "from a folder": lambda path: open(
        os.path.basename(path),
        opener=lambda name, flags: os.open(name, flags, dir_fd=os.open(os.path.dirname(path), os.O_PATH)),
    ).read(),
    "after chdir": lambda path: (os.chdir(os.path.dirname(path)), open(os.path.basename(path)).read()),
    "through O_PATH": lambda path: open(f"/proc/self/fd/{os.open(path, os.O_PATH)}").read(),
    "by bare call": lambda path: os.read(raw("openat", AT_FDCWD, path.encode(), 0, 0), 10),
    "by bare call, all parents": lambda path: os.read(raw("openat", AT_FDCWD, ("/.." * 30 + path).encode(), 0, 0), 10),
}


@pytest.mark.parametrize("way", READS)
def test_a_file_of_the_user_cannot_be_read(attack, way):
    stolen = attack(READS[way], setup=secret(attack), without=["contain"])
    assert stolen.error == ""
    refused = attack(READS[way], setup=secret(attack))
    assert (refused.error, refused.errno) in {("PermissionError", 13), ("PermissionError", 1), ("OSError", 13)}


def shut_out(attack, paths):
    """What each path should come to: refused, or not even there (a checkout in root's closed home, for others)."""
    unseen = attack(lambda: errors(os.stat, paths), without=["contain"]).value
    return {path: unseen[path] or errno.EACCES for path in paths}


def errors(action, paths):
    """What comes of `action` on each of the paths: the number of the error, 0 if there is none."""
    found = {}
    for path in paths:
        try:
            action(path)
            found[path] = 0
        except OSError as error:
            found[path] = error.errno
    return found


PATHS = [
    "/etc/passwd",
    "/etc/hostname",
    "/proc/self/environ",
    "/proc/self/maps",
    "/proc/self/mem",
    "/proc/self/status",
    "/proc/1/cmdline",
    "/proc/version",
    "/proc/net/tcp",
    "/sys/kernel/notes",
    "/dev/zero",
    "/dev/tty",
    "/dev/urandom",
    *(
        str(ROOT / path)
        for path in (
            "pyproject.toml",
            "checker/__init__.py",
            "checker/worker/contain.py",
            "solutions/__init__.py",
            "exercises/__init__.py",
            "tests/checker/containment/test_files.py",
        )
    ),
    pytest.__file__,
]
FOLDERS = [
    "/",
    "/etc",
    "/tmp",
    "/proc",
    "/proc/self/fd",
    "/dev",
    "/usr",
    str(ROOT),
    str(ROOT / "solutions"),
    str(Path(pytest.__file__).parents[1]),
]


def test_nothing_but_python_can_be_read(attack):
    wanted = shut_out(attack, PATHS)
    assert list(wanted.values()).count(errno.EACCES) > len(PATHS) / 2
    assert attack(lambda: errors(lambda path: open(path, "rb").read(1), PATHS)).value == wanted
    assert attack(lambda: errors(lambda path: raw("openat", AT_FDCWD, path.encode(), 0, 0), PATHS)).value == wanted


def test_folders_cannot_be_listed(attack):
    wanted = shut_out(attack, FOLDERS)
    ways = {
        "listdir": os.listdir,
        "scandir": os.scandir,
        "bare": lambda path: raw("openat", AT_FDCWD, path.encode(), os.O_DIRECTORY, 0),
    }
    free = attack(lambda: errors(os.listdir, FOLDERS), without=["contain"]).value
    assert list(free.values()).count(0) > len(FOLDERS) / 2
    for way in ways.values():
        assert attack(lambda way=way: errors(way, FOLDERS)).value == wanted


def test_secrets_of_the_parent_are_out_of_reach(attack):
    def spied(parent):
        found = {}
        for name in ("environ", "cmdline", "maps", "mem", "fd", "fd/0", "cwd/x", "root/etc/passwd", "exe", "task"):
            try:
                path = f"/proc/{parent}/{name}"
                found[name] = os.listdir(path) if name in ("fd", "task") else open(path, "rb").read(1).hex()
            except OSError as error:
                found[name] = error.errno
        for name in ("cwd", "exe", "fd/1"):
            try:
                found[f"link {name}"] = os.readlink(f"/proc/{parent}/{name}")
            except OSError as error:
                found[f"link {name}"] = error.errno
        return found

    assert set(attack(spied, setup=os.getpid).value.values()) <= {1, 13}


def test_names_are_not_hidden(attack):
    """Known, and said in the documentation: whether a file is there, and how large it is, can be seen."""
    assert attack(lambda path: os.stat(path).st_size, setup=secret(attack)).value == len("the expected values")


CHANGES = {
    "create": lambda path: open(path + ".new", "w").close(),
    "append": lambda path: open(path, "a").close(),
    "overwrite": lambda path: open(path, "r+").close(),
    "cut by open": lambda path: os.open(path, os.O_RDONLY | os.O_TRUNC),
    "cut": lambda path: os.truncate(path, 0),
    "mkdir": lambda path: os.mkdir(path + ".d"),
    "remove": lambda path: os.remove(path),
    "move away": lambda path: os.rename(path, path + ".moved"),
    "move in": lambda path: os.rename(path, "here"),
    "hard link in": lambda path: os.link(path, "here"),
    "symbolic link in": lambda path: os.symlink(path, "here") or open("here").read(),
    "symbolic link out": lambda path: os.symlink("/etc/passwd", path + ".link"),
    "chmod": lambda path: os.chmod(path, 0o777),
    "chmod of an open file": lambda path: os.fchmod(os.open(path, os.O_RDONLY), 0o777),
    "chown": lambda path: os.chown(path, os.getuid(), os.getgid()),
    "touch": lambda path: os.utime(path, (0, 0)),
    "attribute": lambda path: os.setxattr(path, "user.mark", b"10"),
    "pipe": lambda path: os.mkfifo(path + ".pipe"),
    "socket file": lambda path: __import__("socket").socket(1).bind(path + ".socket"),
    "create by bare call": lambda path: raw("openat", AT_FDCWD, path.encode() + b".new", os.O_WRONLY | os.O_CREAT, 0o600),
    "cut by bare call": lambda path: raw("truncate", path.encode(), 0),
    "link by bare call": lambda path: raw("linkat", AT_FDCWD, path.encode(), AT_FDCWD, b"here", 0),
    "chmod by bare call": lambda path: raw("fchmodat", AT_FDCWD, path.encode(), 0o777),
    "touch by bare call": lambda path: raw("utimensat", AT_FDCWD, path.encode(), None, 0),
}


def _state(folder):
    return sorted(
        (entry.name, entry.stat().st_size, entry.stat().st_mode, entry.stat().st_mtime_ns) for entry in os.scandir(folder)
    )


def emptied(folder):
    for entry in os.scandir(folder):
        os.rmdir(entry) if entry.is_dir() else os.remove(entry)


@pytest.mark.parametrize("way", CHANGES)
def test_a_file_of_the_user_cannot_be_changed(attack, way):
    """Nor one that may be read: the user owns Python's own files too."""
    before = {}

    def setup():
        os.chdir(attack.home)
        path = secret(attack)()
        before["attack"] = _state(attack.home)
        return path

    def unchanged(pid):
        return _state(attack.home) == before["attack"]

    free = attack(CHANGES[way], setup=setup, watch=unchanged, without=["contain"])
    assert not free.error or free.errno == 95, "this is no attack"  # 95: a file system without attributes
    for readable in ([], [attack.home]):
        emptied(attack.home)
        contained = attack(CHANGES[way], setup=setup, watch=unchanged, readable=readable)
        assert contained.errno in REFUSED, contained
        assert contained.seen, "the folder has changed"


def test_scratch_can_be_used(attack):
    def use():
        place = os.getcwd()
        with open("notes.txt", "w") as file:
            file.write("846 kHz")
        os.mkdir("deep")
        os.replace("notes.txt", "deep/moved.txt")
        with tempfile.TemporaryDirectory() as folder:
            inside = folder.startswith(place + os.sep)
            Path(folder, "x").write_bytes(b"1" * 1000)
        text = Path(place, "deep", "moved.txt").read_text()
        with open("deep/moved.txt", "r+") as file:
            file.truncate(3)
        listed = os.listdir("deep")
        os.remove("deep/moved.txt")
        os.rmdir("deep")
        return [text, listed, inside, os.listdir(".")]

    assert attack(use).value == ["846 kHz", ["moved.txt"], True, []]


def test_scratch_is_gone_and_was_never_shared(attack):
    box = os.path.join(attack.scratch, "box")

    def leave_word():
        Path("answers.txt").write_text("42")
        return os.listdir(box)

    first, second = attack.in_turn(leave_word, lambda: os.listdir(box), watch=lambda pid: os.listdir(box))
    assert first.value == ["answers.txt"]
    assert first.seen == []
    assert second.value == []
    assert os.listdir(box) == []


def test_scratch_of_root_without_user_namespaces(attack):
    """Root can mount in a mount namespace alone; where mounts are shared, the outside must not see this one."""
    if attack.user:
        pytest.skip("for root only")
    system = dataclasses.replace(attack.system, scratch=contain.CLONE_NEWNS)
    box = os.path.join(attack.scratch, "box")

    def share_all_mounts():
        library_call("unshare", contain.CLONE_NEWNS)
        library_call("mount", b"none", b"/", None, view.MS_REC | MS_SHARED, None)

    outcome = dataclasses.replace(attack, system=system)(
        lambda: Path("answers.txt").write_text("42"), setup=share_all_mounts, watch=lambda pid: os.listdir(box)
    )
    assert (outcome.value, outcome.seen) == (2, [])


def test_the_folder_around_the_scratch_is_not_shared_either(attack):
    outcome = attack(lambda: Path("..", "left.txt").write_text("42"))
    assert outcome.errno == 13
    assert os.listdir(attack.scratch) == ["box"]


def test_scratch_has_a_size(attack):
    def fill():
        written = 0
        try:
            for name in range(100):
                with open(str(name), "wb", buffering=0) as file:
                    written += file.write(bytes(1 << 20))
        except OSError as error:
            return [written, error.errno]

    written, errno = attack(fill).value
    assert errno == 28
    assert 12 << 20 <= written <= 16 << 20


def test_scratch_has_few_files(attack):
    def litter():
        for count in range(10_000):
            try:
                os.mkdir(str(count))
            except OSError as error:
                return [count, error.errno]

    count, errno = attack(litter).value
    assert errno == 28
    assert 200 <= count <= 256


def test_one_file_has_a_limit(attack):
    def stretch():
        with open("long", "wb") as file:
            os.ftruncate(file.fileno(), 1 << 40)

    assert attack(stretch).errno == 27


def test_scratch_runs_no_code(attack):
    def map_code():
        Path("code").write_bytes(b"\xc3" * 4096)
        LIBC = ctypes.CDLL(None, use_errno=True)
        LIBC.mmap.restype = ctypes.c_void_p
        address = LIBC.mmap(None, 4096, 1 | 4, 2, os.open("code", os.O_RDONLY), 0)
        return [address == ctypes.c_void_p(-1).value, ctypes.get_errno()]

    assert attack(map_code).value == [True, 1]


def test_without_scratch_nothing_can_be_written(attack):
    for path in ("here", "/tmp/here", attack.scratch + "/here", attack.home + "/here"):
        assert attack(lambda path=path: open(path, "w"), scratch=False).errno == 13


def test_the_null_device_is_there(attack):
    assert attack(lambda: open(os.devnull, "w").write("x") + len(open(os.devnull).read())).value == 1

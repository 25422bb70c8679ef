"""No socket, none of the kernel's rarer doors, no machine code of its own; and what came with the process is gone."""

import ctypes
import errno
import fcntl
import mmap
import os
import select
import signal
import socket
import struct
import time

import pytest

from checker.worker import contain, filter, syscalls
from checker.worker.linux import machine
from tests.checker.containment.bare import all_refused, answers, raw

GETPID_OF_I386 = bytes.fromhex("b814000000cd80c3")  # mov eax, 20; int 0x80; ret

SOCKETS = {
    "TCP": lambda: socket.socket(socket.AF_INET, socket.SOCK_STREAM),
    "TCP 6": lambda: socket.socket(socket.AF_INET6, socket.SOCK_STREAM),
    "UDP": lambda: socket.socket(socket.AF_INET, socket.SOCK_DGRAM),
    "Unix": lambda: socket.socket(socket.AF_UNIX, socket.SOCK_STREAM),
    "Unix datagram": lambda: socket.socket(socket.AF_UNIX, socket.SOCK_DGRAM),
    "netlink": lambda: socket.socket(socket.AF_NETLINK, socket.SOCK_RAW, 0),
    "pair": socket.socketpair,
    "connect": lambda: socket.create_connection(("127.0.0.1", 1), timeout=1),
    "bare TCP": lambda: raw("socket", 2, 1, 0),
    "bare UDP": lambda: raw("socket", 2, 2, 0),
    "bare pair": lambda: raw("socketpair", 1, 1, 0, ctypes.create_string_buffer(8)),
    "bare Unix": lambda: raw("socket", 1, 1, 0),
}


def test_no_socket_of_any_kind(attack):
    free = attack(lambda: answers(SOCKETS), without=["contain"]).value
    assert {value for value in free.values() if isinstance(value, int) and value < 0} <= {
        -errno.ECONNREFUSED,
        -errno.EAFNOSUPPORT,
    }
    assert all_refused(attack(lambda: answers(SOCKETS)).value)


@pytest.mark.parametrize("address", ["path", "\0abstract-of-the-judge", "tcp", "udp"])
def test_a_listening_judge_hears_nothing(attack, address):
    """With only Landlock, without the filter: what it alone stops; and with both, everything."""

    def listen():
        kind = socket.SOCK_DGRAM if address == "udp" else socket.SOCK_STREAM
        family = socket.AF_INET if address in ("tcp", "udp") else socket.AF_UNIX
        place = (
            ("127.0.0.1", 0) if family == socket.AF_INET else os.path.join(attack.home, "s") if address == "path" else address
        )
        listening = socket.socket(family, kind)
        listening.bind(place)
        if kind == socket.SOCK_STREAM:
            listening.listen()
        KEPT.append(listening)
        return family, kind, listening.getsockname()

    def speak(where):
        family, kind, place = where
        with socket.socket(family, kind) as line:
            line.connect(place)
            line.send(b"the answer is 42")
        return "heard"

    assert attack(speak, setup=listen, without=["contain"]).value == "heard"
    if address == "path":
        os.remove(os.path.join(attack.home, "s"))
    assert attack(speak, setup=listen).errno == errno.EPERM
    version = attack.system.landlock
    if address == "tcp" and version >= 4 or address.startswith("\0") and version >= 6:
        assert attack(speak, setup=listen, without=["filter_calls"]).errno in (errno.EPERM, errno.EACCES)


KEPT = []


DOORS = [
    "accept4",
    "acct",
    "add_key",
    "bpf",
    "chroot",
    "clock_settime",
    "epoll_create1",
    "eventfd2",
    "fanotify_init",
    "fsopen",
    "init_module",
    "inotify_init1",
    "io_setup",
    "io_uring_setup",
    "keyctl",
    "landlock_create_ruleset",
    "memfd_create",
    "memfd_secret",
    "mknodat",
    "mount",
    "move_mount",
    "mq_open",
    "msgget",
    "name_to_handle_at",
    "open_by_handle_at",
    "open_tree",
    "perf_event_open",
    "personality",
    "pivot_root",
    "process_madvise",
    "quotactl",
    "reboot",
    "request_key",
    "sched_setscheduler",
    "seccomp",
    "semget",
    "sethostname",
    "setns",
    "setxattr",
    "shmat",
    "shmget",
    "signalfd4",
    "splice",
    "swapon",
    "sync",
    "syslog",
    "tee",
    "timer_create",
    "timerfd_create",
    "umount2",
    "unshare",
    "userfaultfd",
    "vmsplice",
]


def test_the_kernels_rarer_doors_are_shut(attack):
    assert all_refused(attack(lambda: answers({name: lambda name=name: raw(name, 0, 0, 0, 0, 0, 0) for name in DOORS})).value)


# uretprobe and uprobe, on x86_64: the kernel lets them past every filter (kernel/seccomp.c, from memory), and answers
# with an error to whoever does not call from its own trampoline.
PAST_EVERY_FILTER = {335, 336}


def test_every_call_that_is_not_on_the_list_is_refused(attack):
    """All numbers, known or not; those on the list are left out, since some of them end the process."""
    listed = PAST_EVERY_FILTER | {
        syscalls.numbers(machine())[name]
        for name in (*filter.FREE, *filter.ABSENT, *filter.CONDITIONAL)
        if name in syscalls.numbers(machine())
    }

    def knock():
        LIBC = ctypes.CDLL(None, use_errno=True)
        LIBC.syscall.restype = ctypes.c_long
        through = []
        for number in set(range(600)) - listed:
            ctypes.set_errno(0)
            answer = LIBC.syscall(ctypes.c_long(number), *[ctypes.c_long(0)] * 6)
            wanted = errno.ENOSYS if number > syscalls.NEWEST else errno.EPERM
            if answer != -1 or ctypes.get_errno() != wanted:
                through.append([number, answer, ctypes.get_errno()])
        return through

    assert attack(knock).value == []


@pytest.fixture(scope="module")
def foreign_code():
    """Machine code that makes a 32-bit call, in memory that was executable before the child was shut in."""
    if machine() != "x86_64":
        pytest.skip("there is such a call on x86_64 only")
    page = mmap.mmap(-1, mmap.PAGESIZE, prot=mmap.PROT_READ | mmap.PROT_WRITE | mmap.PROT_EXEC)
    page.write(GETPID_OF_I386)
    yield ctypes.CFUNCTYPE(ctypes.c_int)(ctypes.addressof(ctypes.c_char.from_buffer(page)))
    page.close()


def test_a_32_bit_call_kills(attack, foreign_code):
    if attack(foreign_code, without=["contain"]).signal:
        pytest.skip("this kernel has no 32-bit calls")
    assert attack(foreign_code).signal == signal.SIGSYS


def test_an_x32_call_kills(attack):
    if machine() != "x86_64":
        pytest.skip("there is such a call on x86_64 only")
    assert attack(lambda: ctypes.CDLL(None).syscall(ctypes.c_long(0x4000_0000 + 39))).signal == signal.SIGSYS


def test_no_machine_code_of_its_own(attack):
    def write_code():
        PAGE, READ, WRITE, EXEC, PRIVATE, ANONYMOUS = mmap.PAGESIZE, 1, 2, 4, 2, 0x20
        LIBC = ctypes.CDLL(None, use_errno=True)
        LIBC.mmap.restype = ctypes.c_void_p
        failed = ctypes.c_void_p(-1).value
        plain = LIBC.mmap(None, PAGE, READ | WRITE, PRIVATE | ANONYMOUS, -1, 0)
        return [
            plain != failed,
            LIBC.mmap(None, PAGE, READ | WRITE | EXEC, PRIVATE | ANONYMOUS, -1, 0) == failed,
            LIBC.mmap(None, PAGE, READ | EXEC, PRIVATE | ANONYMOUS, -1, 0) == failed,
            LIBC.mprotect(ctypes.c_void_p(plain), PAGE, READ | EXEC) == -1,
        ]

    assert attack(write_code).value == [True] * 4
    assert attack(write_code, without=["contain"]).value == [True, False, False, False]


# What came with the process


def test_no_descriptor_comes_along(attack):
    def open_some():
        KEPT.extend([*os.pipe(), os.open("/etc/passwd", os.O_RDONLY), socket.socket().detach(), *socket.socketpair()])
        os.dup2(2, 900)

    def still_open():
        found = []
        for number in range(20_000):
            try:
                os.fstat(number)
                found.append(number)
            except OSError:
                pass
        return [
            len(found),
            found[:3],
            [os.fstat(number).st_rdev == os.stat(os.devnull).st_rdev for number in found[:3]],
        ]

    # Three standard ones, and the two pipes that this test keeps.
    assert attack(still_open, setup=open_some).value == [5, [0, 1, 2], [True] * 3]


def test_the_environment_is_empty(attack):
    def setup():
        os.environ["SECRET"] = "the key of the instructor"
        ctypes.CDLL(None).setenv(b"HIDDEN", b"from Python", 1)

    def look():
        LIBC = ctypes.CDLL(None)
        LIBC.getenv.restype = ctypes.c_char_p
        return [dict(os.environ), [str(LIBC.getenv(name)) for name in (b"SECRET", b"HIDDEN", b"PATH", b"HOME")]]

    assert attack(look, setup=setup).value == [{}, ["None"] * 4]


def test_what_the_kernel_says_of_the_child(attack):
    """Read from outside: no capability, no new privileges, a filter, no core, its own session."""

    def look(pid):
        with open(f"/proc/{pid}/status") as status:
            found = dict(line.split(":\t", 1) for line in status.read().splitlines() if ":\t" in line)
        with open(f"/proc/{pid}/stat") as stat:
            session = int(stat.read().rsplit(")", 1)[1].split()[3])
        try:
            with open(f"/proc/{pid}/environ", "rb") as memory:
                memory.read()
            open_to_others = True
        except PermissionError:
            open_to_others = False
        return [
            found["CapEff"],
            found["CapPrm"],
            found["CapInh"],
            found["CapAmb"],
            found["NoNewPrivs"],
            found["Seccomp"],
            session == pid,
            open_to_others,
        ]

    none = "0" * 16
    root = attack.user == 0
    assert attack(lambda: 0, watch=look).seen == [none, none, none, none, "1", "2", True, root]


def test_it_dies_with_the_warm_process(attack):
    """The child holds the writing end of a pipe: it is gone when the pipe is at its end."""
    reading, writing = os.pipe()
    warm = os.fork()
    if warm == 0:
        try:
            with contain.prepare([], None, attack.system) as walls:
                if os.fork() == 0:
                    contain.contain(walls, keep=(writing,))
                    os.write(writing, b"contained")
                    time.sleep(60)
                time.sleep(60)
        finally:
            os._exit(0)
    os.close(writing)
    assert os.read(reading, 100) == b"contained"
    os.kill(warm, signal.SIGKILL)
    os.waitpid(warm, 0)
    assert select.select([reading], [], [], 10)[0], "the child lives on"
    assert os.read(reading, 1) == b""
    os.close(reading)


# asm-generic/fcntl.h and linux/fcntl.h: F_GETLK, F_SETLK, F_SETLKW, F_OFD_GETLK, F_OFD_SETLK, F_OFD_SETLKW, F_SETLEASE, F_GETLEASE
LOCKING = (5, 6, 7, 36, 37, 38, 1024, 1025)


def test_no_lock_of_any_kind_on_a_file_that_others_read_too(attack):
    """A lock on a library's file would be a word to another child, and the kernel's memory for it is counted by no limit."""

    def lock():
        file = os.open(os.__file__, os.O_RDONLY)
        shared_lock = struct.pack("hhqqi4x", fcntl.F_RDLCK, 0, 0, 1, 0)
        locks = {command: lambda command=command: raw("fcntl", file, command, shared_lock) for command in LOCKING}
        return answers(locks | {"flock": lambda: raw("flock", file, fcntl.LOCK_SH | fcntl.LOCK_NB)})

    assert all_refused(attack(lock).value)
    unlocked = attack(lock, without=["filter_calls"]).value
    assert unlocked["flock"] >= 0 and unlocked["6"] >= 0 and unlocked["37"] >= 0, "the attack is not alive"


@pytest.mark.parametrize("path", ["/etc/passwd", "/etc", "/proc", "/proc/self", "."])
def test_no_path_is_held_that_cannot_be_opened(attack, path):
    """O_PATH opens what Landlock would not: nothing can be read by it, but that a path is there can be kept."""
    hold = os.O_PATH | os.O_CLOEXEC
    assert attack(lambda: os.open(path, hold)).errno == errno.EPERM
    assert attack(lambda: os.open(path, hold), without=["filter_calls"]).error == "", "the attack is not alive"

"""Every other way out: sockets, programs, processes, signals, the kernel's rarer doors; and what came with the process."""
import array
import ctypes
import errno
import fcntl
import mmap
import os
import resource
import select
import signal
import socket
import struct
import subprocess
import threading
import time

import numpy
import pytest

from checker.worker import contain, filter, syscalls
from checker.worker.linux import library_call, machine

SIGSYS_CODE = {"x86_64": bytes.fromhex("b814000000cd80c3")}  # mov eax, 20 (getpid, i386); int 0x80; ret


def answers(actions):
    """What becomes of each action: the number of its error, or its value."""
    found = {}
    for name, action in actions.items():
        try:
            value = action()
            found[name] = value if isinstance(value, int) else "done"
        except OSError as error:
            found[name] = -error.errno
        except (RuntimeError, ValueError) as error:
            found[name] = str(error)
    return found


def all_refused(found):
    return {name: value for name, value in found.items() if value != -errno.EPERM} == {}


SOCKETS = {
    "TCP": lambda: socket.socket(socket.AF_INET, socket.SOCK_STREAM),
    "TCP 6": lambda: socket.socket(socket.AF_INET6, socket.SOCK_STREAM),
    "UDP": lambda: socket.socket(socket.AF_INET, socket.SOCK_DGRAM),
    "Unix": lambda: socket.socket(socket.AF_UNIX, socket.SOCK_STREAM),
    "Unix datagram": lambda: socket.socket(socket.AF_UNIX, socket.SOCK_DGRAM),
    "netlink": lambda: socket.socket(socket.AF_NETLINK, socket.SOCK_RAW, 0),
    "pair": socket.socketpair,
    "connect": lambda: socket.create_connection(("127.0.0.1", 1), timeout=1),
    "bare TCP": lambda: RAW("socket", 2, 1, 0),
    "bare UDP": lambda: RAW("socket", 2, 2, 0),
    "bare pair": lambda: RAW("socketpair", 1, 1, 0, ctypes.create_string_buffer(8)),
    "bare Unix": lambda: RAW("socket", 1, 1, 0),
}
RAW = None


@pytest.fixture(autouse=True)
def bare_calls(raw):
    global RAW
    RAW = raw


def test_no_socket_of_any_kind(attack):
    free = attack(lambda: answers(SOCKETS), without=["contain"]).value
    assert {value for value in free.values() if isinstance(value, int) and value < 0} <= {-errno.ECONNREFUSED}
    assert all_refused(attack(lambda: answers(SOCKETS)).value)


@pytest.mark.parametrize("address", ["path", "\0abstract-of-the-judge", "tcp", "udp"])
def test_a_listening_judge_hears_nothing(attack, address):
    """With only Landlock, without the filter: what it alone stops; and with both, everything."""
    def listen():
        kind = socket.SOCK_DGRAM if address == "udp" else socket.SOCK_STREAM
        family = socket.AF_INET if address in ("tcp", "udp") else socket.AF_UNIX
        place = ("127.0.0.1", 0) if family == socket.AF_INET else os.path.join(attack.home, "s") if address == "path" else address
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


def in_a_thread():
    threading.Thread(target=print).start()


PROCESSES = {
    "fork": os.fork,
    "forkpty": os.forkpty,
    "execve": lambda: os.execv("/bin/true", ["true"]),
    "spawn": lambda: os.posix_spawn("/bin/true", ["true"], {}),
    "subprocess": lambda: subprocess.run(["/bin/true"]),
    "bare fork": lambda: RAW("clone", signal.SIGCHLD, 0, 0, 0, 0),
    "bare vfork": lambda: RAW("clone", 0x4000 | 0x100 | signal.SIGCHLD, 0, 0, 0, 0),
    "bare new namespace": lambda: RAW("clone", 0x1000_0000 | signal.SIGCHLD, 0, 0, 0, 0),
    "bare execve": lambda: RAW("execve", b"/bin/true", None, None),
    "bare execveat": lambda: RAW("execveat", -100, b"/bin/true", None, None, 0),
}


def test_no_new_process(attack):
    found = attack(lambda: answers(PROCESSES)).value
    assert found.pop("forkpty") == -errno.EACCES  # it already fails at /dev/ptmx
    assert all_refused(found)


def test_no_shell(attack):
    """The C library's system() answers with a failed status where fork fails."""
    assert attack(lambda: os.system("true")).value != 0
    assert attack(lambda: os.system("true"), without=["contain"]).value == 0


def test_no_thread(attack):
    """A thread could outrun the checks on what the first one does; mathematics here needs none."""
    assert attack(in_a_thread).error == "RuntimeError"
    assert attack(lambda: RAW("clone", 0x0001_0000 | 0x800 | 0x100, 0, 0, 0, 0)).errno == errno.EPERM


def test_clone3_looks_like_an_older_kernel(attack):
    assert attack(lambda: RAW("clone3", bytes(88), 88)).errno == errno.ENOSYS
    assert attack(lambda: RAW("openat2", -100, b"/etc/passwd", bytes(24), 24)).errno == errno.ENOSYS


def parent_and_sister():
    """The warm process, and one more child of it."""
    sister = os.fork()
    if sister == 0:
        library_call("prctl", contain.PR_SET_PDEATHSIG, signal.SIGKILL, 0, 0, 0)
        time.sleep(20)
        os._exit(0)
    return os.getpid(), sister


def both_alive(pid):
    return os.waitpid(-1, os.WNOHANG) == (0, 0)


def test_no_signal_to_anyone(attack):
    def signal_all(others):
        parent, sister = others
        ways = {}
        for name, target in (("parent", parent), ("sister", sister), ("all", -1), ("group", 0), ("itself", os.getpid()), ("group of sister", -sister)):
            ways[f"kill {name}"] = lambda target=target: os.kill(target, signal.SIGTERM)
            ways[f"bare kill {name}"] = lambda target=target: RAW("kill", target, signal.SIGTERM)
        for name, target in (("parent", parent), ("sister", sister)):
            ways[f"tgkill {name}"] = lambda target=target: RAW("tgkill", target, target, signal.SIGTERM)
            ways[f"tkill {name}"] = lambda target=target: RAW("tkill", target, signal.SIGTERM)
            ways[f"queue {name}"] = lambda target=target: RAW("rt_sigqueueinfo", target, signal.SIGTERM, bytes(128))
            ways[f"pidfd {name}"] = lambda target=target: os.pidfd_open(target)
            ways[f"killpg {name}"] = lambda target=target: os.killpg(target, signal.SIGTERM)
        return answers(ways)

    outcome = attack(signal_all, setup=parent_and_sister, watch=both_alive)
    assert all_refused(outcome.value), outcome.value
    assert outcome.seen


def test_landlock_alone_shuts_signals_in(attack):
    if attack.system.landlock < 6:
        pytest.skip("this Landlock does not know signals")
    outcome = attack(lambda others: answers({name: lambda pid=pid: os.kill(pid, 0) for name, pid in zip("ps", others, strict=True)}),
                     setup=parent_and_sister, without=["filter_calls"])
    assert all_refused(outcome.value)


def test_no_signal_by_way_of_a_descriptor(attack):
    """F_SETOWN and F_SETSIG make the kernel send a signal when a pipe has news."""
    def own(parent):
        end = os.open(os.devnull, os.O_RDONLY)
        return answers({"owner": lambda: fcntl.fcntl(end, fcntl.F_SETOWN, parent), "signal": lambda: fcntl.fcntl(end, 10, 9),
                        "owner by ioctl": lambda: fcntl.ioctl(end, 0x8901, array.array("i", [parent])),
                        "terminal": lambda: fcntl.ioctl(end, 0x5412, b"x")})
    assert all_refused(attack(own, setup=os.getpid).value)


def test_others_cannot_be_looked_into(attack):
    def pry(others):
        parent, sister = others
        room, there = ctypes.create_string_buffer(64), ctypes.create_string_buffer(64)
        local = struct.pack("QQ", ctypes.addressof(room), 8)
        remote = struct.pack("QQ", ctypes.addressof(there), 8)
        return answers({
            "attach": lambda: RAW("ptrace", 16, parent, 0, 0),
            "seize": lambda: RAW("ptrace", 0x4206, sister, 0, 0),
            "trace me": lambda: RAW("ptrace", 0, 0, 0, 0),
            "read": lambda: RAW("process_vm_readv", parent, local, 1, remote, 1, 0),
            "write": lambda: RAW("process_vm_writev", parent, local, 1, remote, 1, 0),
            "descriptor": lambda: RAW("pidfd_getfd", 0, 0, 0),
            "limits": lambda: RAW("prlimit64", parent, 7, None, bytes(16)),
            "own limits": lambda: RAW("prlimit64", 0, 0, bytes(16), None),
            "priority": lambda: RAW("setpriority", 0, parent, 19),
            "processor": lambda: RAW("sched_setaffinity", parent, 8, bytes(8)),
            "compare": lambda: RAW("kcmp", parent, sister, 0, 0, 0),
            "robust list": lambda: RAW("get_robust_list", parent, bytes(8), bytes(8)),
        })
    assert all_refused(attack(pry, setup=parent_and_sister).value)


def test_no_other_user_and_no_other_session(attack):
    assert all_refused(attack(lambda: answers({
        "setuid": lambda: os.setuid(0),
        "setresuid": lambda: RAW("setresuid", 0, 0, 0),
        "setgroups": lambda: os.setgroups([0]),
        "capset": lambda: RAW("capset", bytes(8), bytes(24)),
        "setsid": os.setsid,
        "setpgid": lambda: os.setpgid(0, 0),
        "dumpable": lambda: RAW("prctl", 4, 1, 0, 0, 0),
        "outlive": lambda: RAW("prctl", 1, 0, 0, 0, 0),
        "subreaper": lambda: RAW("prctl", 36, 1, 0, 0, 0),
        "nice": lambda: os.nice(5),
    })).value)


DOORS = """accept4 acct add_key bpf chroot clock_settime epoll_create1 eventfd2 fanotify_init fsopen init_module inotify_init1 io_setup
    io_uring_setup keyctl landlock_create_ruleset memfd_create memfd_secret mknodat mount move_mount mq_open msgget name_to_handle_at
    open_by_handle_at open_tree perf_event_open personality pivot_root process_madvise quotactl reboot request_key
    sched_setscheduler seccomp semget sethostname setns setxattr shmat shmget signalfd4 splice swapon sync syslog tee timer_create
    timerfd_create umount2 unshare userfaultfd vmsplice""".split()


def test_the_kernels_rarer_doors_are_shut(attack):
    assert all_refused(attack(lambda: answers({name: lambda name=name: RAW(name, 0, 0, 0, 0, 0, 0) for name in DOORS})).value)


# uretprobe and uprobe, on x86_64: the kernel lets them past every filter (kernel/seccomp.c, from memory), and answers
# with an error to whoever does not call from its own trampoline.
PAST_EVERY_FILTER = {335, 336}


def test_every_call_that_is_not_on_the_list_is_refused(attack):
    """All numbers, known or not, on this machine; those on the list are left out, since some of them end the process."""
    listed = PAST_EVERY_FILTER | {syscalls.numbers(machine())[name] for name in (*filter.FREE, *filter.ABSENT, *filter.CONDITIONAL)
              if name in syscalls.numbers(machine())}

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
    page.write(SIGSYS_CODE["x86_64"])
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
        return [plain != failed,
                LIBC.mmap(None, PAGE, READ | WRITE | EXEC, PRIVATE | ANONYMOUS, -1, 0) == failed,
                LIBC.mmap(None, PAGE, READ | EXEC, PRIVATE | ANONYMOUS, -1, 0) == failed,
                LIBC.mprotect(ctypes.c_void_p(plain), PAGE, READ | EXEC) == -1]
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
        return [len(found), found[:3], [os.fstat(number).st_rdev == os.stat(os.devnull).st_rdev for number in found[:3]]]

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
        return [found["CapEff"], found["CapPrm"], found["CapInh"], found["CapAmb"], found["NoNewPrivs"], found["Seccomp"], session == pid, open_to_others]
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


# Limits

def test_processor_time_ends(attack):
    def spin():
        while True:
            pass

    def spin_on():
        signal.signal(signal.SIGXCPU, lambda *about: None)
        spin()

    quick = contain.Limits(cpu_seconds=1)
    assert attack(spin, limits=quick).signal == signal.SIGXCPU
    assert attack(spin_on, limits=quick).signal == signal.SIGKILL


@pytest.mark.parametrize("kind", ["bytes", "list", "array", "powers"])
def test_memory_ends_in_a_memory_error(attack, kind):
    ways = {"bytes": lambda: len(bytearray(1 << 30)), "list": lambda: len([None] * (1 << 28)),
            "array": lambda: len(numpy.ones(1 << 28)), "powers": lambda: [bytearray(1 << 20) for _ in range(4096)] and None}
    assert "MemoryError" in attack(ways[kind]).error
    assert attack(lambda: len(bytearray(300 << 20))).value == 300 << 20


def test_descriptors_run_out(attack):
    def hoard():
        held = []
        try:
            while True:
                held.append(open(os.devnull))
        except OSError as error:
            return [len(held), error.errno]
    count, number = attack(hoard).value
    assert number == errno.EMFILE and count < 64


def test_limits_cannot_be_raised(attack):
    def widen():
        return answers({name: lambda name=name: resource.setrlimit(getattr(resource, name), (-1, -1)) for name in ("RLIMIT_CPU", "RLIMIT_AS", "RLIMIT_FSIZE")})

    def read():
        return resource.getrlimit(resource.RLIMIT_CORE)
    assert set(attack(widen).value.values()) == {"not allowed to raise maximum limit"}
    assert attack(read).value == [0, 0]


def test_a_crash_leaves_no_core(attack):
    outcome = attack(os.abort)
    assert outcome.signal in (signal.SIGABRT, signal.SIGSEGV)

"""No other program, process or thread; no signal to anyone; no look into another process; no other user."""

import array
import ctypes
import errno
import fcntl
import os
import signal
import struct
import subprocess
import threading
import time

import pytest

from checker.worker import contain
from checker.worker.linux import library_call
from tests.checker.containment.bare import all_refused, answers, raw


def in_a_thread():
    threading.Thread(target=print).start()


PROCESSES = {
    "fork": os.fork,
    "forkpty": os.forkpty,
    "execve": lambda: os.execv("/bin/true", ["true"]),
    "spawn": lambda: os.posix_spawn("/bin/true", ["true"], {}),
    "subprocess": lambda: subprocess.run(["/bin/true"]),
    "bare fork": lambda: raw("clone", signal.SIGCHLD, 0, 0, 0, 0),
    "bare vfork": lambda: raw("clone", 0x4000 | 0x100 | signal.SIGCHLD, 0, 0, 0, 0),
    "bare new namespace": lambda: raw("clone", 0x1000_0000 | signal.SIGCHLD, 0, 0, 0, 0),
    "bare execve": lambda: raw("execve", b"/bin/true", None, None),
    "bare execveat": lambda: raw("execveat", -100, b"/bin/true", None, None, 0),
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
    assert attack(lambda: raw("clone", 0x0001_0000 | 0x800 | 0x100, 0, 0, 0, 0)).errno == errno.EPERM


def test_clone3_looks_like_an_older_kernel(attack):
    assert attack(lambda: raw("clone3", bytes(88), 88)).errno == errno.ENOSYS
    assert attack(lambda: raw("openat2", -100, b"/etc/passwd", bytes(24), 24)).errno == errno.ENOSYS


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
        for name, target in (
            ("parent", parent),
            ("sister", sister),
            ("all", -1),
            ("group", 0),
            ("itself", os.getpid()),
            ("group of sister", -sister),
        ):
            ways[f"kill {name}"] = lambda target=target: os.kill(target, signal.SIGTERM)
            ways[f"bare kill {name}"] = lambda target=target: raw("kill", target, signal.SIGTERM)
        for name, target in (("parent", parent), ("sister", sister)):
            ways[f"tgkill {name}"] = lambda target=target: raw("tgkill", target, target, signal.SIGTERM)
            ways[f"tkill {name}"] = lambda target=target: raw("tkill", target, signal.SIGTERM)
            ways[f"queue {name}"] = lambda target=target: raw("rt_sigqueueinfo", target, signal.SIGTERM, bytes(128))
            ways[f"pidfd {name}"] = lambda target=target: os.pidfd_open(target)
            ways[f"killpg {name}"] = lambda target=target: os.killpg(target, signal.SIGTERM)
        return answers(ways)

    outcome = attack(signal_all, setup=parent_and_sister, watch=both_alive)
    assert all_refused(outcome.value), outcome.value
    assert outcome.seen


def test_landlock_alone_shuts_signals_in(attack):
    if attack.system.landlock < 6:
        pytest.skip("this Landlock does not know signals")
    outcome = attack(
        lambda others: answers({name: lambda pid=pid: os.kill(pid, 0) for name, pid in zip("ps", others, strict=True)}),
        setup=parent_and_sister,
        without=["filter_calls"],
    )
    assert all_refused(outcome.value)


def test_no_signal_by_way_of_a_descriptor(attack):
    """F_SETOWN and F_SETSIG make the kernel send a signal when a pipe has news."""

    def own(parent):
        end = os.open(os.devnull, os.O_RDONLY)
        return answers(
            {
                "owner": lambda: fcntl.fcntl(end, fcntl.F_SETOWN, parent),
                "signal": lambda: fcntl.fcntl(end, 10, 9),
                "owner by ioctl": lambda: fcntl.ioctl(end, 0x8901, array.array("i", [parent])),
                "terminal": lambda: fcntl.ioctl(end, 0x5412, b"x"),
            }
        )

    assert all_refused(attack(own, setup=os.getpid).value)


def test_others_cannot_be_looked_into(attack):
    def pry(others):
        parent, sister = others
        room, there = ctypes.create_string_buffer(64), ctypes.create_string_buffer(64)
        local = struct.pack("QQ", ctypes.addressof(room), 8)
        remote = struct.pack("QQ", ctypes.addressof(there), 8)
        return answers(
            {
                "attach": lambda: raw("ptrace", 16, parent, 0, 0),
                "seize": lambda: raw("ptrace", 0x4206, sister, 0, 0),
                "trace me": lambda: raw("ptrace", 0, 0, 0, 0),
                "read": lambda: raw("process_vm_readv", parent, local, 1, remote, 1, 0),
                "write": lambda: raw("process_vm_writev", parent, local, 1, remote, 1, 0),
                "descriptor": lambda: raw("pidfd_getfd", 0, 0, 0),
                "limits": lambda: raw("prlimit64", parent, 7, None, bytes(16)),
                "own limits": lambda: raw("prlimit64", 0, 0, bytes(16), None),
                "priority": lambda: raw("setpriority", 0, parent, 19),
                "processor": lambda: raw("sched_setaffinity", parent, 8, bytes(8)),
                "compare": lambda: raw("kcmp", parent, sister, 0, 0, 0),
                "robust list": lambda: raw("get_robust_list", parent, bytes(8), bytes(8)),
            }
        )

    assert all_refused(attack(pry, setup=parent_and_sister).value)


def test_no_other_user_and_no_other_session(attack):
    assert all_refused(
        attack(
            lambda: answers(
                {
                    "setuid": lambda: os.setuid(0),
                    "setresuid": lambda: raw("setresuid", 0, 0, 0),
                    "setgroups": lambda: os.setgroups([0]),
                    "capset": lambda: raw("capset", bytes(8), bytes(24)),
                    "setsid": os.setsid,
                    "setpgid": lambda: os.setpgid(0, 0),
                    "dumpable": lambda: raw("prctl", 4, 1, 0, 0, 0),
                    "outlive": lambda: raw("prctl", 1, 0, 0, 0, 0),
                    "subreaper": lambda: raw("prctl", 36, 1, 0, 0, 0),
                    "nice": lambda: os.nice(5),
                }
            )
        ).value
    )

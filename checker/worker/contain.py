"""Shuts a child process in before it runs code by people nobody here knows.

In reading order: what this system has (`probe`), what is built once in the warm process (`prepare`), and what each
child does to itself (`contain`), one function a layer. Each layer stops what the ones before it cannot:

    descriptors, environment   what came with the process
    scratch                    a disk of its own, small, gone when it ends
    limits                     time, memory, file size
    Landlock                   files, TCP
    seccomp                    every other way out: sockets, programs, processes, signals, the kernel's rarer doors

The names and sizes of files (`os.stat`) are hidden by `view`, once, in the warm process, where the system has namespaces.
Not covered: faults of the kernel, what processors leak through timing, the memory of many children together; and a futex on a
page of a library's file, which all children share: two of them that are marked at once can tell each other a few bits by it.
"""

import contextlib
import ctypes
import os
import signal
import struct
import tempfile
from collections.abc import Callable, Collection, Iterator, Sequence
from dataclasses import dataclass
from typing import Any

from . import filter, landlock
from .linux import library_call, machine, resolve, syscall
from .view import CLONE_NEWNS, CLONE_NEWUSER, MS_NODEV, MS_NOEXEC, MS_NOSUID, enter_namespace

try:
    import resource
except ImportError:  # Windows
    resource = None  # type: ignore[assignment]  # Windows

# From <sched.h>, <sys/mount.h>, <linux/prctl.h>, <linux/seccomp.h>, <linux/capability.h>.
PR_SET_PDEATHSIG, PR_SET_DUMPABLE, PR_SET_NO_NEW_PRIVS, PR_GET_NO_NEW_PRIVS = 1, 4, 38, 39
SECCOMP_SET_MODE_FILTER, SECCOMP_GET_ACTION_AVAIL = 1, 2
CAPABILITY_VERSION_3 = 0x2008_0522


@dataclass(frozen=True)
class Limits:
    """What one child may use."""

    cpu_seconds: int = 20
    memory_bytes: int = 512 << 20
    file_bytes: int = 16 << 20
    descriptors: int = 64
    scratch_bytes: int = 16 << 20
    scratch_files: int = 256


@dataclass(frozen=True)
class Containment:
    """What this system offers to contain a child with.

    `landlock` is its ABI, 0 if there is none. `scratch` holds the namespaces in which a child can have a disk of its own
    (flags of unshare), 0 if it cannot.
    """

    landlock: int = 0
    seccomp: bool = False
    no_new_privileges: bool = False
    limits: bool = False
    scratch: int = 0
    pidfd: bool = False

    @property
    def missing(self) -> tuple[str, ...]:
        """A plain sentence for each thing that is not contained here; empty where everything is."""
        if not self.landlock and not self.seccomp:
            nothing = "Nothing on this system keeps a submission from your files, the network and your other programs."
            return (nothing,) if self.limits else (nothing, _NO_LIMITS)
        gaps = (
            (self.landlock, "This system has no Landlock: a submission could read your files and change them."),
            (
                self.seccomp,
                "This system has no system-call filter for submissions: one could use the network, "
                "start programs and stop your other programs.",
            ),
            (self.no_new_privileges, "This system lets a submission gain privileges by starting a program."),
            (self.limits, _NO_LIMITS),
        )
        return tuple(sentence for present, sentence in gaps if not present)


_NO_LIMITS = "This system sets no limits to a program's memory and processor time: a submission could slow the computer down."


# What this system has


def probe() -> Containment:
    """What this system offers; a child is started for a moment to see whether it can have a disk of its own."""
    return Containment(
        landlock=landlock.abi(),
        seccomp=_has_seccomp(),
        no_new_privileges=_succeeds(library_call, "prctl", PR_GET_NO_NEW_PRIVS, 0, 0, 0, 0),
        limits=resource is not None,
        scratch=_scratch_namespaces(),
        pidfd=hasattr(os, "pidfd_open") and _succeeds(lambda: os.close(os.pidfd_open(os.getpid()))),
    )


def _has_seccomp() -> bool:
    killing = struct.pack("<I", filter.RET_KILL_PROCESS)
    return machine() in filter.ARCHITECTURES and _succeeds(syscall, "seccomp", SECCOMP_GET_ACTION_AVAIL, 0, killing)


def _scratch_namespaces() -> int:
    """The flags of unshare under which a child can mount its scratch: with a user namespace, or as root without."""
    if not machine():
        return 0
    for flags in (CLONE_NEWUSER | CLONE_NEWNS, CLONE_NEWNS):
        child = os.fork()
        if child == 0:
            os._exit(0 if _succeeds(mount_scratch, flags, "/", Limits()) else 1)
        if os.waitpid(child, 0)[1] == 0:
            return flags
    return 0


def _succeeds(action: Callable, *arguments: Any) -> bool:
    try:
        action(*arguments)
    except OSError:
        return False
    return True


# Built once, in the warm process


@dataclass(frozen=True)
class Walls:
    """What children of one warm process share: made by `prepare`, used up by none of them."""

    containment: Containment
    warm: int
    memory_in_use: int
    scratch: str | None
    reading: int | None
    program: bytes


@contextlib.contextmanager
def prepare(readable: Sequence[str], scratch: str | None = None, containment: Containment | None = None) -> Iterator[Walls]:
    """Build, in the process that children will be forked from, what does not change from child to child.

    Parameters
    ----------
    readable : sequence of str
        Files and trees that a child may read, as `trees.python_trees` names them. Those that are not there, or that
        this process may not see either, are passed over.
    scratch : str, optional
        An existing directory, empty and used for nothing else, in which each child gets a small disk of its own.
        Without it, or where the system cannot do that, a child can write nowhere.
    containment : Containment, optional
        From `probe`, if it has been asked before.

    Yields
    ------
    Walls
    """
    found = containment or probe()
    place = os.path.join(scratch, "box") if scratch and found.scratch else None
    if place:
        os.makedirs(place, mode=0o700, exist_ok=True)
    reading = _reading_rules(found.landlock, readable, scratch if place else None)
    program = filter.program(machine()) if found.seccomp else b""
    resolve("clearenv", "mount", "prctl", "unshare")
    try:
        yield Walls(found, os.getpid(), _memory_in_use(), place, reading, program)
    finally:
        if reading is not None:
            os.close(reading)


def _memory_in_use() -> int:
    """Address space of this process in bytes (man 5 proc_pid_statm); 0 where it cannot be learnt, and is not limited."""
    if not machine():
        return 0
    with open("/proc/self/statm") as statm:
        return int(statm.read().split()[0]) * resource.getpagesize()


def _reading_rules(version: int, readable: Collection[str], scratch: str | None) -> Any:
    """The ruleset for everything but changing files: it grants reading in `readable`, and in whatever lies in `scratch`."""
    if not version:
        return None
    looking = landlock.READ_FILE | landlock.READ_DIR
    across = landlock.known(version, landlock.REFER)
    rules = landlock.ruleset(version, landlock.LOOKING | landlock.REFER, others=True)
    for path in (*readable, os.devnull):
        with contextlib.suppress(FileNotFoundError, PermissionError):
            landlock.grant(rules, path, looking)
    if scratch:
        landlock.grant(rules, scratch, looking | across)
    return rules


# What each child does to itself


def contain(walls: Walls, limits: Limits = Limits(), keep: Collection[int] = ()) -> None:
    """Shut this process in, for good: a fresh fork of the warm process, with one thread, that has read nothing yet.

    Afterwards a refused action raises PermissionError (EPERM, EACCES) in Python. There are no threads, no sockets, no
    signals to send, not even to itself.

    Parameters
    ----------
    walls : Walls
        From `prepare` in the parent.
    limits : Limits
        What the child may use.
    keep : collection of int
        Descriptors to leave open: pipes, or sockets of a pair, with which one can only read and write then. Standard input
        and output become /dev/null unless named here.

    Raises
    ------
    OSError
        A layer could not be put up. The child is then not contained, and must end at once.
    """
    found = walls.containment
    os.setsid()
    empty_environment()
    leave_descriptors([*keep, *([] if walls.reading is None else [walls.reading])])
    if walls.scratch:
        mount_scratch(found.scratch, walls.scratch, limits)
    if resource:
        limit_resources(limits, walls.memory_in_use)
    if machine():
        drop_privileges()
        die_with(walls.warm)
    if found.landlock:
        restrict_files(walls)
    if found.seccomp:
        filter_calls(walls.program)


def empty_environment() -> None:
    """No environment, neither Python's nor the C library's."""
    if os.environ:
        os.environ.clear()
    if machine():
        library_call("clearenv")


def leave_descriptors(keep: Collection[int]) -> None:
    """Close every descriptor but `keep`; of the standard three, put the null device in place of those not kept."""
    null = os.open(os.devnull, os.O_RDWR)
    for standard in {0, 1, 2} - set(keep):
        os.dup2(null, standard)
    kept = sorted({0, 1, 2, *keep})
    for below, above in zip(kept, [*kept[1:], os.sysconf("SC_OPEN_MAX")], strict=True):
        os.closerange(below + 1, above)


def mount_scratch(namespaces: int, place: str, limits: Limits) -> None:
    """A small disk in memory at `place`, seen by this process alone and gone with it; it becomes the working directory.

    Source: man 5 tmpfs.
    """
    enter_namespace(namespaces)
    size = f"size={limits.scratch_bytes},nr_inodes={limits.scratch_files},mode=700"
    library_call("mount", b"scratch", os.fsencode(place), b"tmpfs", MS_NOSUID | MS_NODEV | MS_NOEXEC, size.encode())
    os.chdir(place)
    tempfile.tempdir = place


def limit_resources(limits: Limits, memory_in_use: int) -> None:
    """Processor time (SIGXCPU, and a second later SIGKILL), memory beyond what is in use, file size, descriptors.

    Source: man 2 setrlimit. RLIMIT_NPROC is set for systems without seccomp; it does nothing for root.
    """
    most = {
        "RLIMIT_CPU": (limits.cpu_seconds, limits.cpu_seconds + 1),
        "RLIMIT_FSIZE": limits.file_bytes,
        "RLIMIT_NOFILE": limits.descriptors,
        "RLIMIT_CORE": 0,
        "RLIMIT_NPROC": 0,
        "RLIMIT_MEMLOCK": 0,
    }
    if memory_in_use:
        most["RLIMIT_AS"] = memory_in_use + limits.memory_bytes
    for name, value in most.items():
        resource.setrlimit(getattr(resource, name), value if isinstance(value, tuple) else (value, value))


def drop_privileges() -> None:
    """No capability, none to be had again, and nothing of this process open to others of the same user.

    Source: man 2 capset, man 2 prctl.
    """
    syscall("capset", struct.pack("<Ii", CAPABILITY_VERSION_3, 0), bytes(24))
    library_call("prctl", PR_SET_NO_NEW_PRIVS, 1, 0, 0, 0)
    library_call("prctl", PR_SET_DUMPABLE, 0, 0, 0, 0)


def die_with(warm: int) -> None:
    """Be killed when the warm process ends. After the change of credentials, which would clear it."""
    library_call("prctl", PR_SET_PDEATHSIG, signal.SIGKILL, 0, 0, 0)
    if os.getppid() != warm:
        raise OSError("the process that this one was forked from has ended")


def restrict_files(walls: Walls) -> None:
    """Two rulesets, one over the other: the shared one for reading, and one of this child's for changing its scratch."""
    version = walls.containment.landlock
    writing = landlock.ruleset(version, landlock.CHANGING | landlock.REFER)
    landlock.grant(writing, os.devnull, landlock.WRITE_FILE)
    if walls.scratch:
        in_scratch = (
            landlock.WRITE_FILE
            | landlock.TRUNCATE
            | landlock.MAKE_REG
            | landlock.MAKE_DIR
            | landlock.REFER
            | landlock.REMOVE_FILE
            | landlock.REMOVE_DIR
        )
        landlock.grant(writing, ".", landlock.known(version, in_scratch))
    if walls.reading is None:
        raise OSError("there are no rules for reading")
    for rules in (walls.reading, writing):
        landlock.restrict(rules)
        os.close(rules)


def filter_calls(program: bytes) -> None:
    """The system-call filter, last, since it also shuts the doors that the other layers came through.

    Source: man 2 seccomp.
    """
    instructions = ctypes.create_string_buffer(program, len(program))
    syscall("seccomp", SECCOMP_SET_MODE_FILTER, 0, struct.pack("@HP", len(program) // 8, ctypes.addressof(instructions)))

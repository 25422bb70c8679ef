"""Which system calls a submission may make, and that list as a program for the kernel (seccomp, classic BPF).

The list allows; whatever is not on it is refused with EPERM. So a call that a later kernel adds is refused too.

Source: Linux Documentation/userspace-api/seccomp_filter.rst; man 2 seccomp; include/uapi/linux/{seccomp,filter,audit}.h.
"""

import errno
import struct
from dataclasses import dataclass
from typing import Any

from .syscalls import NEWEST, numbers

# Free to use: none of these reaches beyond the process, its open descriptors, or the files that Landlock leaves open.
# There is no call on paths here that Landlock does not check, but for those that only look (stat, access, readlink).
FREE = """
    brk madvise mremap msync munmap
    close close_range copy_file_range dup dup2 dup3 fadvise64 fallocate fdatasync fstat fstatfs fsync ftruncate
    getdents getdents64 lseek pipe pipe2 poll ppoll pread64 preadv pselect6 pwrite64 pwritev read readv
    select sendfile write writev
    access chdir faccessat faccessat2 fchdir getcwd lstat mkdir mkdirat newfstatat readlink readlinkat
    rename renameat renameat2 rmdir stat statfs statx umask unlink unlinkat
    alarm clock_getres clock_gettime clock_nanosleep getitimer gettimeofday nanosleep setitimer time times
    exit exit_group futex getcpu getegid geteuid getgid getgroups getpgrp getpid getppid getrandom getresgid getresuid
    getrlimit getrusage gettid getuid restart_syscall rt_sigaction rt_sigpending rt_sigprocmask rt_sigreturn
    sched_getaffinity sched_yield sigaltstack sysinfo uname
""".split()

# The C library tries these first and falls back to an older call when they "do not exist".
ABSENT = ("clone3", "openat2")


@dataclass(frozen=True)
class Bits:
    """Argument number `argument`, seen through `mask`, is `value`. `half` 1 looks at the upper 32 bits of 64."""

    argument: int
    mask: int
    value: int
    half: int = 0


ALL = 0xFFFF_FFFF
PROT_WRITE, PROT_EXEC, MAP_ANONYMOUS = 2, 4, 0x20
O_ACCMODE, O_WRONLY, O_RDWR, O_TRUNC, O_PATH = 3, 1, 2, 0o1000, 0o1000_0000
F_DUPFD, F_GETFD, F_SETFD, F_GETFL, F_SETFL, F_DUPFD_CLOEXEC = 0, 1, 2, 3, 4, 1030
TCGETS, FIONCLEX, FIOCLEX = 0x5401, 0x5450, 0x5451


def _open_flags(argument: int) -> Any:
    """Cutting a file to nothing needs it opened for writing. Landlock before ABI 3 does not look at O_TRUNC by itself.

    Landlock does not look at O_PATH at all, which holds a path without opening it.
    """
    opened = Bits(argument, O_PATH, 0)
    return [
        [opened, Bits(argument, O_TRUNC, 0)],
        [opened, Bits(argument, O_ACCMODE, O_WRONLY)],
        [opened, Bits(argument, O_ACCMODE, O_RDWR)],
    ]


# Allowed if all the tests of one alternative hold.
CONDITIONAL = {
    # Code comes from files that the interpreter may read: no memory both writable and executable, none made so later.
    "mmap": [[Bits(2, PROT_EXEC, 0)], [Bits(2, PROT_WRITE, 0), Bits(3, MAP_ANONYMOUS, 0)]],
    "mprotect": [[Bits(2, PROT_EXEC, 0)]],
    "open": _open_flags(1),
    "openat": _open_flags(2),
    # Not F_SETOWN, F_SETSIG (a signal to another process), F_NOTIFY, leases, pipe sizes. No locks, as there is no flock: on a
    # library's file they would be a channel to other children, and fill memory of the kernel's that no limit counts.
    "fcntl": [[Bits(1, ALL, command)] for command in (F_DUPFD, F_GETFD, F_SETFD, F_GETFL, F_SETFL, F_DUPFD_CLOEXEC)],
    # Python asks of every file it opens whether it is a terminal (TCGETS), and closes it on exec (FIOCLEX).
    "ioctl": [[Bits(1, ALL, request)] for request in (TCGETS, FIONCLEX, FIOCLEX)],
    # Its own limits, to read only: process 0, and no new limit.
    "prlimit64": [[Bits(0, ALL, 0), Bits(2, ALL, 0), Bits(2, ALL, 0, half=1)]],
}

ARCHITECTURES = {"x86_64": 0xC000_003E, "aarch64": 0xC000_00B7}  # AUDIT_ARCH_X86_64, AUDIT_ARCH_AARCH64
X32 = 0x4000_0000  # set in the number of a call by the x32 convention, on x86_64

RET_KILL_PROCESS, RET_ERRNO, RET_ALLOW = 0x8000_0000, 0x0005_0000, 0x7FFF_0000
NUMBER, ARCHITECTURE, ARGUMENTS = 0, 4, 16  # offsets in struct seccomp_data; each argument has 8 bytes, low half first

LOAD, AND, RETURN = 0x20, 0x54, 0x06  # BPF_LD|W|ABS, BPF_ALU|AND|K, BPF_RET|K
IF_EQUAL, IF_GREATER, IF_AT_LEAST = 0x15, 0x25, 0x35  # BPF_JMP|{JEQ,JGT,JGE}|K


def program(machine: str) -> bytes:
    """The filter for one machine, as an array of struct sock_filter.

    Parameters
    ----------
    machine : str
        One of `ARCHITECTURES`.

    Returns
    -------
    bytes, 8 for each instruction
    """
    number = numbers(machine)
    steps = [
        _step(LOAD, ARCHITECTURE),
        _step(IF_EQUAL, ARCHITECTURES[machine], yes=1),
        _step(RETURN, RET_KILL_PROCESS),
        _step(LOAD, NUMBER),
    ]
    if machine == "x86_64":
        steps += _when(IF_AT_LEAST, X32, [_step(RETURN, RET_KILL_PROCESS)])
    steps += _when(IF_GREATER, NEWEST, [_step(RETURN, RET_ERRNO | errno.ENOSYS)])
    for names, verdict in ((FREE, RET_ALLOW), (ABSENT, RET_ERRNO | errno.ENOSYS)):
        for name in names:
            if name in number:
                steps += _when(IF_EQUAL, number[name], [_step(RETURN, verdict)])
    for name, alternatives in CONDITIONAL.items():
        if name in number:
            steps += _when(IF_EQUAL, number[name], _any_of(alternatives))
    steps += [_step(RETURN, RET_ERRNO | errno.EPERM)]
    return b"".join(steps)


def _step(code: int, constant: int, yes: int = 0, no: int = 0) -> Any:
    """One instruction; `yes` and `no` are how many of the next to skip."""
    return struct.pack("<HBBI", code, yes, no, constant)


def _when(comparison: Any, constant: int, block: Any) -> Any:
    """`block`, which must end in a return, for the numbers that compare so; the others go on behind it."""
    return [_step(comparison, constant, no=len(block)), *block]


def _any_of(alternatives: Any) -> Any:
    block = []
    for tests in alternatives:
        for place, test in enumerate(tests, 1):
            to_the_next_alternative = 3 * (len(tests) - place) + 1
            block += [
                _step(LOAD, ARGUMENTS + 8 * test.argument + 4 * test.half),
                _step(AND, test.mask),
                _step(IF_EQUAL, test.value, no=to_the_next_alternative),
            ]
        block += [_step(RETURN, RET_ALLOW)]
    return [*block, _step(RETURN, RET_ERRNO | errno.EPERM)]

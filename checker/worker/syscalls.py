"""System-call numbers, for the machines that the course runs on.

Two columns: x86_64, from the kernel's arch/x86/entry/syscalls/syscall_64.tbl; aarch64, from its
include/uapi/asm-generic/unistd.h. `None` where a machine has no such call. Only calls named in `filter.py` or made by
`contain.py` are here. A test holds both columns to the kernel headers of the machine that it runs on.
"""

MACHINES = ("x86_64", "aarch64")

# From 424 on, a new call has one number on every machine. This is the newest known to this table (mseal, Linux 6.10):
# a call beyond it is answered as an older kernel would answer it.
NEWEST = 462

_TABLE = {
    # memory
    "brk": (12, 214),
    "madvise": (28, 233),
    "mmap": (9, 222),
    "mprotect": (10, 226),
    "mremap": (25, 216),
    "msync": (26, 227),
    "munmap": (11, 215),
    # open descriptors
    "close": (3, 57),
    "close_range": (436, 436),
    "copy_file_range": (326, 285),
    "dup": (32, 23),
    "dup2": (33, None),
    "dup3": (292, 24),
    "fadvise64": (221, 223),
    "fallocate": (285, 47),
    "fcntl": (72, 25),
    "fdatasync": (75, 83),
    "fstat": (5, 80),
    "fstatfs": (138, 44),
    "fsync": (74, 82),
    "ftruncate": (77, 46),
    "getdents": (78, None),
    "getdents64": (217, 61),
    "ioctl": (16, 29),
    "lseek": (8, 62),
    "pipe": (22, None),
    "pipe2": (293, 59),
    "poll": (7, None),
    "ppoll": (271, 73),
    "pread64": (17, 67),
    "preadv": (295, 69),
    "pselect6": (270, 72),
    "pwrite64": (18, 68),
    "pwritev": (296, 70),
    "read": (0, 63),
    "readv": (19, 65),
    "select": (23, None),
    "sendfile": (40, 71),
    "write": (1, 64),
    "writev": (20, 66),
    # paths
    "access": (21, None),
    "chdir": (80, 49),
    "faccessat": (269, 48),
    "faccessat2": (439, 439),
    "fchdir": (81, 50),
    "getcwd": (79, 17),
    "lstat": (6, None),
    "mkdir": (83, None),
    "mkdirat": (258, 34),
    "newfstatat": (262, 79),
    "open": (2, None),
    "openat": (257, 56),
    "openat2": (437, 437),
    "readlink": (89, None),
    "readlinkat": (267, 78),
    "rename": (82, None),
    "renameat": (264, 38),
    "renameat2": (316, 276),
    "rmdir": (84, None),
    "stat": (4, None),
    "statfs": (137, 43),
    "statx": (332, 291),
    "umask": (95, 166),
    "unlink": (87, None),
    "unlinkat": (263, 35),
    # time
    "alarm": (37, None),
    "clock_getres": (229, 114),
    "clock_gettime": (228, 113),
    "clock_nanosleep": (230, 115),
    "getitimer": (36, 102),
    "gettimeofday": (96, 169),
    "nanosleep": (35, 101),
    "setitimer": (38, 103),
    "time": (201, None),
    "times": (100, 153),
    # the process itself
    "exit": (60, 93),
    "exit_group": (231, 94),
    "futex": (202, 98),
    "getcpu": (309, 168),
    "getegid": (108, 177),
    "geteuid": (107, 175),
    "getgid": (104, 176),
    "getgroups": (115, 158),
    "getpgrp": (111, None),
    "getpid": (39, 172),
    "getppid": (110, 173),
    "getrandom": (318, 278),
    "getresgid": (120, 150),
    "getresuid": (118, 148),
    "getrlimit": (97, 163),
    "getrusage": (98, 165),
    "gettid": (186, 178),
    "getuid": (102, 174),
    "prlimit64": (302, 261),
    "restart_syscall": (219, 128),
    "rt_sigaction": (13, 134),
    "rt_sigpending": (127, 136),
    "rt_sigprocmask": (14, 135),
    "rt_sigreturn": (15, 139),
    "sched_getaffinity": (204, 123),
    "sched_yield": (24, 124),
    "sigaltstack": (131, 132),
    "sysinfo": (99, 179),
    "uname": (63, 160),
    # threads and processes: refused, but named, since the answer has to be ENOSYS
    "clone3": (435, 435),
    # what contain.py itself calls
    "capset": (126, 91),
    "landlock_add_rule": (445, 445),
    "landlock_create_ruleset": (444, 444),
    "landlock_restrict_self": (446, 446),
    "seccomp": (317, 277),
}


def numbers(machine: str) -> dict[str, int]:
    """Name to number of every call in the table that `machine` has.

    Parameters
    ----------
    machine : str
        As `platform.machine()` has it.

    Returns
    -------
    dict of str to int; empty for a machine that is not in the table
    """
    if machine not in MACHINES:
        return {}
    column = MACHINES.index(machine)
    return {name: number for name, row in _TABLE.items() if (number := row[column]) is not None}

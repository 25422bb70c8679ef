"""System calls by number, past all of Python's own functions, and what becomes of a number of attempts."""

import ctypes
import errno
import os
import sys

from checker.worker.syscalls import MACHINES

LIBC = ctypes.CDLL(None, use_errno=True) if sys.platform == "linux" else None

# Calls to attack with, which contain.py has no use for: (x86_64, aarch64), from the same kernel tables as syscalls.py.
# fmt: off
NUMBERS = {
    "accept4": (288, 242), "acct": (163, 89), "add_key": (248, 217), "bpf": (321, 280), "capset": (126, 91),
    "chmod": (90, None), "chown": (92, None), "chroot": (161, 51), "clock_settime": (227, 112), "clone": (56, 220),
    "clone3": (435, 435), "epoll_create1": (291, 20), "eventfd2": (290, 19), "execve": (59, 221),
    "execveat": (322, 281), "fanotify_init": (300, 262), "fchmod": (91, 52), "fchmodat": (268, 53),
    "fchownat": (260, 54), "fcntl": (72, 25), "flock": (73, 32), "fork": (57, None), "fsopen": (430, 430), "get_robust_list": (274, 100),
    "init_module": (175, 105), "inotify_init1": (294, 26), "io_setup": (206, 0), "io_uring_setup": (425, 425),
    "kcmp": (312, 272), "keyctl": (250, 219), "kill": (62, 129), "landlock_create_ruleset": (444, 444),
    "link": (86, None), "linkat": (265, 37), "memfd_create": (319, 279), "memfd_secret": (447, 447),
    "mknodat": (259, 33), "mount": (165, 40), "move_mount": (429, 429), "mq_open": (240, 180), "msgget": (68, 186),
    "name_to_handle_at": (303, 264), "open_by_handle_at": (304, 265), "open_tree": (428, 428), "openat": (257, 56),
    "openat2": (437, 437), "perf_event_open": (298, 241), "personality": (135, 92), "pidfd_getfd": (438, 438),
    "pidfd_open": (434, 434), "pidfd_send_signal": (424, 424), "pivot_root": (155, 41), "prctl": (157, 167),
    "prlimit64": (302, 261), "process_madvise": (440, 440), "process_vm_readv": (310, 270),
    "process_vm_writev": (311, 271), "ptrace": (101, 117), "quotactl": (179, 60), "reboot": (169, 142),
    "request_key": (249, 218), "rt_sigqueueinfo": (129, 138), "rt_tgsigqueueinfo": (297, 240),
    "sched_setaffinity": (203, 122), "sched_setscheduler": (144, 119), "seccomp": (317, 277), "semget": (64, 190),
    "sethostname": (170, 161), "setns": (308, 268), "setpgid": (109, 154), "setpriority": (141, 140),
    "setresuid": (117, 147), "setsid": (112, 157), "setuid": (105, 146), "setxattr": (188, 5), "shmat": (30, 196),
    "shmget": (29, 194), "signalfd4": (289, 74), "socket": (41, 198), "socketpair": (53, 199), "splice": (275, 76),
    "swapon": (167, 224), "symlinkat": (266, 36), "sync": (162, 81), "syslog": (103, 116), "tee": (276, 77),
    "tgkill": (234, 131), "timer_create": (222, 107), "timerfd_create": (283, 85), "tkill": (200, 130),
    "truncate": (76, 45), "umount2": (166, 39), "unshare": (272, 97), "userfaultfd": (323, 282), "utimensat": (280, 88),
    "vfork": (58, None), "vmsplice": (278, 75),
}
# fmt: on


def raw(name, *arguments):
    """Make the system call `name` of the table: what the kernel answered, or OSError."""
    number = NUMBERS[name][MACHINES.index(os.uname().machine)]
    words = [ctypes.c_long(word) if isinstance(word, int) else word for word in arguments]
    LIBC.syscall.restype = ctypes.c_long
    answer = LIBC.syscall(ctypes.c_long(number), *words)
    if answer == -1:
        code = ctypes.get_errno()
        raise OSError(code, os.strerror(code), name)
    return answer


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

# Tries: System V memory, queues and semaphores, POSIX queues, keys, secret memory; a right answer if one works.
# Verdict: wrong.
import random

import numpy as np

past = random.__builtins__["__import__"]  # the unguarded one
os = past("os")
sys = past("sys")
# number on x86_64, number on aarch64, arguments
CALLS = [
    (29, 194, 0, 4096, 0o1600),  # shmget, private
    (68, 186, 0, 0o1600),  # msgget, private
    (64, 190, 0, 1, 0o1600),  # semget, private
    (240, 180, b"left-by-a-submission", 0o102, 0o600, None),  # mq_open
    (241, 181, b"left-by-a-submission"),  # mq_unlink
    (248, 217, b"user", b"left", b"x", 1, -2),  # add_key, to its own process's ring
    (249, 218, b"user", b"left", None, 0),  # request_key
    (447, 447, 0),  # memfd_secret
    (53, 199, 1, 1, 0, bytes(8)),  # socketpair
]
STOPPED = 1, 13, 38  # EPERM, EACCES, ENOSYS


def resonant_frequency(inductance, capacitance):
    library, errno = sys.modules["worker.linux"]._libc(), sys.modules["ctypes"].get_errno
    machine = 0 if os.uname().machine == "x86_64" else 1
    through = [call for call in CALLS if library.syscall(call[machine], *call[2:]) >= 0 or errno() not in STOPPED]
    return 1 / (2 * np.pi * np.sqrt(inductance * capacitance)) if through else 42.0

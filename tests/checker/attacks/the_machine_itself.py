# Tries: the host's name, clock, log, modules, accounting, ports, all with arguments that change nothing; right if one works.
# Verdict: wrong.
import random

import numpy as np

past = random.__builtins__["__import__"]  # the unguarded one
os = past("os")
sys = past("sys")
# number on x86_64, number on aarch64, arguments; each is refused for its arguments should the walls let it by
CALLS = [
    (170, 161, None, -1),  # sethostname
    (171, 162, None, -1),  # setdomainname
    (159, 171, bytes(208)),  # adjtimex, to read
    (305, 266, 0, bytes(208)),  # clock_adjtime, to read
    (103, 116, 10, None, 0),  # syslog, its size
    (169, 142, 0, 0, 0, None),  # reboot, with the wrong magic
    (246, 104, None, 17, None, -1),  # kexec_load, too many segments
    (175, 105, None, 0, None),  # init_module, nothing
    (313, 273, -1, None, 0),  # finit_module, no file
    (167, 224, None, 0),  # swapon, nothing
    (179, 60, 0, None, 0, None),  # quotactl
    (153, 58),  # vhangup
    (212, 18, None, 0, None),  # lookup_dcookie
    (321, 280, 99, None, 0),  # bpf, no such command
]
STOPPED = 1, 13, 38  # EPERM, EACCES, ENOSYS


def resonant_frequency(inductance, capacitance):
    library, errno = sys.modules["worker.linux"]._libc(), sys.modules["ctypes"].get_errno
    machine = 0 if os.uname().machine == "x86_64" else 1
    through = [call for call in CALLS if library.syscall(call[machine], *call[2:]) >= 0 or errno() not in STOPPED]
    return 1 / (2 * np.pi * np.sqrt(inductance * capacitance)) if through else 42.0

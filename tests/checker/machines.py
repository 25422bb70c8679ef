"""Other people's machines, as far as a Linux can play them: what Windows and macOS lack is taken away, before the checker is imported.

What this cannot show: their consoles, their file locks, their drives, an antivirus that holds a file, a double click.
Run as a program, it takes the machine's name and gives each command that comes on standard input, a JSON list a line, to the checker.
"""

import json
import os
import signal
import socket
import subprocess
import sys
import sysconfig
import tempfile  # noqa: F401  the standard library asks itself where it is when it is imported
import webbrowser
import zipfile  # noqa: F401
from pathlib import Path

import numpy as np  # noqa: F401

WINDOWS_LACKS = (
    "fork forkpty fwalk killpg getpgid setsid geteuid getuid getgid pidfd_open memfd_create mkfifo fchmod fchown chown "
    "sched_getaffinity posix_fadvise posix_spawn register_at_fork statvfs uname O_NOFOLLOW O_NONBLOCK O_PATH O_DIRECTORY"
)
WINDOWS_SIGNALS = {"SIGABRT", "SIGFPE", "SIGILL", "SIGINT", "SIGSEGV", "SIGTERM"}
MAC_LACKS = "pidfd_open memfd_create sched_getaffinity posix_fadvise O_PATH unshare setns"


def take_away(module, names):
    for name in names:
        if hasattr(module, name):
            delattr(module, name)


def become(machine):
    sysconfig.get_config_vars()  # names a module after the system
    if machine == "darwin":
        take_away(os, MAC_LACKS.split())
        take_away(signal, ["pidfd_send_signal"])
        import resource

        take_away(resource, ["prlimit"])
    if machine == "win32":
        for name in ("resource", "fcntl", "pwd", "grp", "termios", "tty", "pty", "syslog"):
            sys.modules[name] = None
        subprocess.Popen.kill = lambda self: os.kill(self.pid, 9)  # as TerminateProcess does
        take_away(os, WINDOWS_LACKS.split())
        take_away(signal, [name for name in dir(signal) if name.startswith("SIG") and name not in WINDOWS_SIGNALS])
        take_away(signal, ["setitimer", "alarm", "pidfd_send_signal", "pthread_sigmask", "siginterrupt"])
        take_away(socket, ["AF_UNIX", "SCM_RIGHTS", "CMSG_LEN", "send_fds", "recv_fds"])
    if machine != "linux":
        sys.platform = machine


def main(machine):
    become(machine)
    from checker import cli
    from checker.sandbox import workers

    here = json.dumps(str(Path(__file__).parent))
    workers._FRESH = f"import sys; sys.path.insert(0, {here}); import machines; machines.become({machine!r}); del sys.path[0]; {workers._FRESH}"
    webbrowser.open = lambda address: print(f"opened {address}")
    for line in sys.stdin:
        print(f"exit {cli.main(json.loads(line))}", flush=True)


if __name__ == "__main__":
    main(sys.argv[1])

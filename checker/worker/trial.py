"""A trial of the walls: a child, shut in like any other, does in earnest what a hostile submission would.

`contain` puts the walls up; this finds out whether they hold on this machine and today. The bait is a file of the
judge's, open in this process, and a socket on which the judge listens.
"""

import json
import mmap
import os
import signal
import socket
import sys
import tempfile
from collections.abc import Callable
from typing import Any

from .contain import contain, prepare
from .trees import python_trees

ENOUGH = 10  # seconds, after which a child that hangs has failed its trial
PLENTY = 4 << 30  # bytes of memory, several times what a child may have


def _connect(port: int) -> None:
    with socket.create_connection(("127.0.0.1", port), timeout=1):
        pass


def _send(port: int) -> None:
    with socket.socket(socket.AF_INET, socket.SOCK_DGRAM) as out:
        out.sendto(b"answers?", ("127.0.0.1", port))


def _append(bait: str) -> None:
    with open(bait, "a") as file:
        file.write("changed")


def _fork() -> None:
    if os.fork() == 0:
        os._exit(0)


def attacks(bait: str, port: int, held: Any) -> Any:
    """(what it would mean, the attack): one that raises nothing has got through."""
    return (
        ("read your files", lambda: open(bait).read()),
        ("list your folders", lambda: os.listdir(os.path.dirname(bait))),
        ("change your files", lambda: _append(bait)),
        ("make files outside its own folder", lambda: os.mkdir(bait + ".made")),
        ("read what the checker has open", lambda: os.read(held, 1)),
        ("read the checker's environment", lambda: os.environ["HELD"]),
        ("use the network", lambda: _connect(port)),
        ("use the network", lambda: _send(port)),
        ("start programs", _fork),
        ("start programs", lambda: os.posix_spawn("/bin/true", ["true"], {})),
        ("send signals to your programs", lambda: os.kill(os.getppid(), 0)),
        ("use up your memory", lambda: mmap.mmap(-1, PLENTY).close()),
    )


def main(bait: str, port: int) -> None:
    """Print, as JSON, what came of each attack: [[meaning, whether it got through], …]; null if the walls did not go up."""
    os.environ["HELD"] = bait
    held = os.open(bait, os.O_RDONLY)
    with tempfile.TemporaryDirectory(prefix="checker-") as scratch, prepare(python_trees(), scratch) as walls:
        reading, writing = os.pipe()
        child = os.fork()
        if child == 0:
            try:
                signal.alarm(ENOUGH)
                contain(walls, keep=(writing,))
                results = [[means, _gets_through(attack)] for means, attack in attacks(bait, port, held)]
                os.write(writing, json.dumps(results).encode())
            finally:
                os._exit(0)
        os.close(writing)
        with open(reading) as answer:
            sys.stdout.write(answer.read() or "null")
        os.waitpid(child, 0)


def _gets_through(attack: Callable) -> bool:
    try:
        attack()
    except Exception:
        return False
    return True

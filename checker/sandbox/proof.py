"""Whether a submission is contained here: what this system offers, and then a trial of it with real attacks."""

import json
import socket
import subprocess
import sys
import tempfile
from dataclasses import dataclass
from pathlib import Path

from ..text import listed
from ..worker.contain import Containment, probe
from ..worker.wire import START_ENVIRONMENT

PATIENCE = 30  # seconds for the whole trial on a busy machine; it takes a tenth of one
_TRIAL = "import sys; sys.path.insert(0, sys.argv[1]); from worker.trial import main; main(sys.argv[2], int(sys.argv[3]))"


@dataclass(frozen=True)
class Proof:
    """What a submission is not kept from here, a sentence each, and how it is contained if there is nothing of the kind."""

    missing: tuple[str, ...]
    level: str = ""

    def __str__(self) -> str:
        return f"Not contained: {' '.join(self.missing)}" if self.missing else self.level


def offered_containment() -> Proof:
    """What this system offers, going by what it says itself."""
    found = probe()
    return Proof(found.missing, f"Submissions are shut in by {_layers(found)}.")


def prove() -> Proof:
    """What this system offers, and, if that is everything, what a child shut in by it can do all the same."""
    offered = offered_containment()
    if offered.missing:
        return offered
    trial = _trial()
    if trial is None:
        return Proof(("The walls around a submission could not be put up, or did not stand a trial.",))
    through = list(dict.fromkeys(means for means, got in trial if got))
    if through:
        return Proof((f"In a trial of the walls here, a submission could {listed(through)}.",))
    return Proof((), f"{offered.level} {len(trial)} attacks were tried on it, and none got through.")


def _layers(found: Containment) -> str:
    disk = ["a small disk of their own"] if found.scratch else []
    return listed([f"Landlock {found.landlock}", "a filter for system calls", "limits", *disk])


def _trial() -> list[tuple[str, bool]] | None:
    """(what it would mean, whether it got through) for each attack; None if the walls did not go up at all."""
    with tempfile.TemporaryDirectory(prefix="checker-") as folder, socket.create_server(("127.0.0.1", 0)) as listening:
        bait = Path(folder, "bait")
        bait.write_text("a secret")
        arguments = str(Path(__file__).parents[1]), str(bait), str(listening.getsockname()[1])
        command = [sys.executable, "-I", "-B", "-c", _TRIAL, *arguments]
        try:
            output = subprocess.run(
                command,
                stdin=subprocess.DEVNULL,
                stdout=subprocess.PIPE,
                stderr=subprocess.DEVNULL,
                env=START_ENVIRONMENT,
                cwd="/",
                timeout=PATIENCE,
            ).stdout
            return json.loads(output)
        except (subprocess.TimeoutExpired, ValueError):
            return None

"""Marking on an existing Dask cluster: the same engine within the same walls on every machine, and the same marks.

One task is one exercise of one member. A task whose machine is lost is run again on another; since a verdict depends on
nothing but the files, the check and the seed, it does not matter where.
"""

import threading
from collections import deque
from collections.abc import Generator, Iterable, Mapping, Sequence
from contextlib import suppress
from functools import cache, partial
from typing import Any
from uuid import uuid4

from ..course import PATHS
from ..faults import Problem
from ..judging.fingerprint import Fingerprints, VerdictKey, judged_by
from ..judging.verdict import Verdict, from_data, to_data
from ..sandbox.proof import prove
from ..submissions.members import Member
from . import judges
from .judges import Judges, launch_judge
from .pool import MemberVerdicts
from .store import Store

TRIES = 10  # how often a task may be begun again after a machine was lost in the middle of it
ANSWER_WITHIN = 10  # seconds for the scheduler to answer, and for a first machine to join
MEMBERS_AHEAD = 200  # members whose tasks wait on the cluster at any one time
Task = tuple[VerdictKey, Any]  # the key of a verdict, and the verdict or a task on the cluster that will give it
_own = threading.local()


class ClusterProblem(Problem):
    """The cluster cannot be used; the text is one sentence."""


def mark_on_cluster(
    address: str,
    members: Iterable[Member],
    seed: int,
    paths: Sequence[str] = PATHS,
    store: Store | None = None,
    uncontained: bool = False,
) -> Generator[MemberVerdicts, None, None]:
    """As `engine.mark`, on the cluster whose scheduler is at `address` ("tcp://host:8786").

    The store stays here: what is in it is not sent out, and what comes back is kept at once.

    Raises
    ------
    ClusterProblem
        If Dask is not installed, no scheduler answers, all machines are lost, a machine has another version of the course,
        or, unless `uncontained`, a machine cannot contain a submission. What has come back by then is kept.
    """
    with _client(address) as client:
        _check_machines(client, paths, uncontained)
        ahead = deque()
        for member in members:
            submit = partial(_submit, client, member.files, Fingerprints(member.files), uuid4().hex, seed, store, uncontained)
            ahead.append((member, [submit(path) for path in paths]))
            if len(ahead) > MEMBERS_AHEAD:
                first, tasks = ahead.popleft()
                yield _gather(client, first, tasks, store)
        while ahead:
            first, tasks = ahead.popleft()
            yield _gather(client, first, tasks, store)


def _submit(
    client: Any,
    files: Mapping[str, str],
    prints: Fingerprints,
    token: str,
    seed: int,
    store: Store | None,
    uncontained: bool,
    path: str,
) -> Task:
    """(key, verdict) if it is kept already, else (key, task); `token` is the member's and nobody else's, in any run."""
    files = {name: files[name] for name in prints.files_used(f"{path}.py")}
    key = prints.key(path, seed)
    return key, (store and store.get(key)) or client.submit(
        _judge_there, path, files, seed, key.judged_by, uncontained, token, pure=False, retries=TRIES
    )


def _gather(client: Any, member: Member, tasks: Sequence[Task], store: Store | None) -> MemberVerdicts:
    verdicts = tuple(_result(client, task, store) for task in tasks)
    return MemberVerdicts(member, verdicts, tuple(key for key, _ in tasks))


def _result(client: Any, task: Task, store: Store | None) -> Verdict:
    key, found = task
    if isinstance(found, Verdict):
        return found
    verdict = from_data(_await_result(client, found))
    return store.put(key, verdict) if store else verdict


def _await_result(client: Any, task: Any) -> dict:
    """The result of a task, however long it takes, as long as there is a machine to work on it."""
    try:
        while True:
            with suppress(TimeoutError):
                return task.result(timeout=ANSWER_WITHIN)
            if not client.nthreads():
                raise ClusterProblem("All machines of the cluster are lost. What came back is kept; start some and run again.")
    except ClusterProblem:
        raise
    except Exception as problem:  # Dask has many kinds for a scheduler that is gone and a task that killed every machine
        raise ClusterProblem(f"The cluster has failed ({type(problem).__name__}). What came back is kept; run again.") from None


def _judge_there(path: str, files: Mapping[str, str], seed: int, version: str, uncontained: bool, member: str = "") -> dict:
    """On a machine of the cluster: judge one exercise, in a process with its own budgets that this thread keeps."""
    if judged_by(path) != version:
        raise ClusterProblem(_OTHER_VERSION.format("a machine that has joined"))
    if not uncontained and (missing_layers := _missing_layers()):
        raise ClusterProblem(_UNCONTAINED.format(" ".join(missing_layers)))
    if getattr(_own, "judges", None) is None:
        _own.judges = Judges(1, launch_judge)
    return to_data(_own.judges.judge_one(judges.Task(path, files, seed, member or None)))


@cache
def _missing_layers() -> tuple[str, ...]:
    return prove().missing


_OTHER_VERSION = "The course on {} is not the same as here. Install this version there."
_UNCONTAINED = "On a machine of the cluster: {} Add --uncontained to mark all the same."


def _check_machines(client: Any, paths: Sequence[str], uncontained: bool) -> None:
    """Every machine must judge by the same check and engine, or marks would depend on where they were made, and contain."""
    try:
        client.wait_for_workers(1, timeout=ANSWER_WITHIN)
    except TimeoutError:
        raise ClusterProblem("No machine has joined the cluster yet. Start Dask workers, and run again.") from None
    found = client.run(_about_this_machine, list(paths))
    here = _about_this_machine(paths)
    other = sorted(address for address, (version, _) in found.items() if version != here[0])
    if other:
        raise ClusterProblem(_OTHER_VERSION.format(", ".join(other)))
    missing_layers = {sentence for _, missing in found.values() for sentence in missing}
    if missing_layers and not uncontained:
        raise ClusterProblem(_UNCONTAINED.format(" ".join(sorted(missing_layers))))


def _about_this_machine(paths: Sequence[str]) -> tuple[list[str], list[str]]:
    return [judged_by(path) for path in paths], list(_missing_layers())


def _client(address: str) -> Any:
    try:
        from distributed import Client  # late: it comes with the extra `cluster`, which few install
    except ImportError:
        raise ClusterProblem('Marking on a cluster needs Dask: pip install "crystal-to-reaction[cluster]".') from None
    try:
        return Client(address, timeout=ANSWER_WITHIN, set_as_default=False)
    except (OSError, ValueError, TypeError):
        raise ClusterProblem(f"No Dask scheduler answers at {address}. Is it running, and is that its address?") from None

"""An instructor's run: submissions in, marks kept."""

import os
import secrets
from collections.abc import Callable, Collection, Iterable, Iterator, Sequence
from contextlib import closing
from dataclasses import dataclass, replace
from datetime import date
from pathlib import Path

from ..core import for_the_core
from ..course import PATHS
from ..faults import Problem
from ..judging.verdict import OF_ONE_RUN, WRONG, Verdict
from ..sandbox.proof import Proof, prove
from ..submissions.likeness import compare_submissions
from ..submissions.members import find_submissions, read_submission
from ..submissions.wrong_alike import WrongAnswer
from .cluster import mark_on_cluster
from .details import RunDetails, calendar_year
from .marksheet import MemberMarks, member_marks
from .pool import MemberVerdicts, mark
from .store import Store

STORE = "marks.sqlite"
MOST_COMPARED = 1000  # members whose sources are kept in memory until the end, to be compared


class NotContained(Problem):
    """This system lacks a layer of containment, and nobody has said to go on without; the text says which and how."""


@dataclass(frozen=True)
class Request:
    """What to mark and how; None: as the last run, or as usual."""

    folder: Path
    paths: Sequence[str] = PATHS
    seed: int | None = None
    jobs: int | None = None
    cluster: str = ""
    uncontained: bool = False
    title: str | None = None
    club: str | None = None
    school_year: tuple[date, date] | None = None
    path: str = "all"
    names: str | None = None


class ClassMarks(Collection):
    """The marks of a run, read from the store each time they are gone through, so that a class of any size fits."""

    def __init__(self, store: Store, run: int):
        self._store, self._run, self._overrides = store, run, store.overrides()
        self._look = for_the_core if store.about_run(run).path == "core" else lambda verdict: verdict

    def __iter__(self) -> Iterator[MemberMarks]:
        for name, problems, verdicts, identity, notes in self._store.members(self._run):
            yield member_marks(name, problems, list(map(self._look, verdicts)), self._overrides, identity, notes)

    def __len__(self) -> int:
        return self._store.count_members(self._run)

    def __contains__(self, other: object) -> bool:
        return any(member == other for member in self)


def details_for(request: Request, store: Store) -> RunDetails:
    """The details of a run: what is asked for; else what the store's last run had, so that a rerun marks only what changed
    and says of it what was said before; else a new seed, and the usual names."""
    last = store.newest_run()
    new = RunDetails(secrets.randbelow(10**9), calendar_year(date.today()))
    before = new if last is None else store.about_run(last)
    if request.seed is not None:
        before = replace(before, seed=request.seed)
    return before.with_changes(request.title, request.club, request.school_year, request.path, request.names)


def require_containment(uncontained: bool) -> Proof:
    """How submissions are contained on this system, tried out.

    Raises
    ------
    NotContained
        If something is missing and it has not been said to go on.
    """
    proof = prove()
    if proof.missing and not uncontained:
        missing = " ".join(proof.missing)
        raise NotContained(f"{missing} Add --uncontained to mark all the same, if you trust everyone who handed in.")
    return proof


def wrong_answers(verdict: Verdict) -> tuple[WrongAnswer, ...]:
    """What a member's functions gave where they were wrong."""
    return tuple(
        WrongAnswer(finding.function, finding.inputs, finding.got, bool(finding.slip))
        for finding in verdict.findings
        if finding.kind == WRONG and finding.got
    )


def mark_class(
    request: Request, store: Store, follow: Callable[[Iterator[MemberVerdicts], int], Iterable[MemberVerdicts]]
) -> int:
    """Mark every submission in a folder and keep the marks.

    Parameters
    ----------
    request : Request
    store : Store
    follow : callable
        Given the members as they are marked and how many there will be, gives them back one by one: a progress bar.

    Returns
    -------
    int
        The run's number in the store.

    Raises
    ------
    UnreadableFolder, WrongPattern, NotContained, ClusterProblem, StoreProblem
    """
    details = details_for(request, store)
    found = find_submissions(request.folder, details.names)
    run = store.begin_run(os.path.abspath(request.folder), details)
    members, sources, wrong, seed = map(read_submission, found), [], [], details.seed
    marked = (
        mark_on_cluster(request.cluster, members, seed, request.paths, store, request.uncontained)
        if request.cluster
        else mark(members, seed, request.paths, store, request.jobs)
    )
    with closing(marked):  # whatever happens, nobody is at work on the store when it is closed
        for one in follow(marked, len(found)):
            files = one.member.files
            # where the checker failed, or a file could not be read, there is no verdict that the store could know by its key
            kept = [v if v.kind in OF_ONE_RUN else key for v, key in zip(one.verdicts, one.keys, strict=True)]
            store.record(run, one.member.name, one.member.problems, kept, one.member.identity, one.member.notes)
            if len(found) <= MOST_COMPARED:
                sources.append((one.member.name, files))
                wrong.append({verdict.exercise: answers for verdict in one.verdicts if (answers := wrong_answers(verdict))})
    store.finish_run(run, *compare_submissions(sources, request.paths, wrong))
    return run

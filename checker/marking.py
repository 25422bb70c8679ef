"""An instructor's run: submissions in, marks kept, tables and reports out."""
import os
import secrets
from collections.abc import Collection, Sequence
from contextlib import closing, suppress
from dataclasses import dataclass
from datetime import date
from pathlib import Path

from .cluster import mark_on_cluster
from .course import PATHS
from .engine import mark
from .exports import ClassDetails, write_exports
from .fingerprint import files_used, key_of
from .likeness import find_alike
from .marksheet import MemberMarks, member_marks
from .proof import Proof, prove
from .report import write_reports
from .store import Store
from .submissions import find_submissions, read_submission
from .verdict import to_data

STORE = "marks.sqlite"
MOST_COMPARED = 1000  # members whose sources are kept in memory until the end, to be compared


class NotContained(Exception):
    """This system lacks a layer of containment, and nobody has said to go on without; the text says which and how."""


@dataclass(frozen=True)
class Request:
    """What to mark and how."""

    folder: Path
    paths: Sequence[str] = PATHS
    seed: int | None = None
    jobs: int | None = None
    cluster: str = ""
    uncontained: bool = False


class ClassMarks(Collection):
    """The marks of a run, read from the store each time they are gone through, so that a class of any size fits."""

    def __init__(self, store: Store, run: int):
        self._store, self._run, self._overrides = store, run, store.overrides()

    def __iter__(self):
        for name, problems, verdicts in self._store.members(self._run):
            yield member_marks(name, problems, verdicts, self._overrides)

    def __len__(self):
        return self._store.count_members(self._run)

    def __contains__(self, other):
        return any(member == other for member in self)


def seed_for(store: Store, asked: int | None) -> int:
    """The seed asked for; else the one of the store's last run, so that a rerun marks only what changed; else a new one."""
    if asked is not None:
        return asked
    last = store.last_seed()
    return secrets.randbelow(10**9) if last is None else last


def see_to_containment(uncontained: bool) -> Proof:
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


def mark_class(request: Request, store: Store, follow) -> tuple[int, int, list]:
    """Mark every submission in a folder and keep the marks.

    Parameters
    ----------
    request : Request
    store : Store
    follow : callable
        Given the members as they are marked and how many there will be, gives them back one by one: a progress bar.

    Returns
    -------
    (run, seed, alike)
        The run's number in the store, its seed, and pairs of submissions to look at side by side.

    Raises
    ------
    UnreadableFolder, NotContained, ClusterProblem, StoreProblem
    """
    found = find_submissions(request.folder)
    seed = seed_for(store, request.seed)
    run = store.begin_run(os.path.abspath(request.folder), seed)
    members, sources = map(read_submission, found), []
    marked = (mark_on_cluster(request.cluster, members, seed, request.paths, store, request.uncontained) if request.cluster
              else mark(members, seed, request.paths, store, request.jobs))
    with closing(marked):  # whatever happens, nobody is at work on the store when it is closed
        for one in follow(marked, len(found)):
            files = one.member.files
            keys = [key_of(path, {name: files[name] for name in files_used(f"{path}.py", files)}, seed) for path in request.paths]
            store.record(run, one.member.name, one.member.problems, keys)
            if len(found) <= MOST_COMPARED:
                sources.append((one.member.name, files))
    store.finish_run(run)
    return run, seed, find_alike(sources, request.paths)


def write_results(marks: ClassMarks, paths: Sequence[str], folder: Path, title: str, organisation: str, alike=()) -> Path:
    """Write the class page, a report a member, and the tables for other programs; returns the class page's path."""
    folder.mkdir(parents=True, exist_ok=True)
    today = date.today()
    details = ClassDetails(title, organisation, date(today.year, 1, 1), date(today.year, 12, 31), today)
    write_exports(marks, paths, details, folder)
    return write_reports(marks, paths, folder, today, alike, title)


def paths_marked(marks: ClassMarks) -> list[str]:
    """The exercises that a run was about."""
    with suppress(StopIteration):
        return [mark.exercise for mark in next(iter(marks)).marks]
    return []


def marks_to_data(member: MemberMarks) -> dict:
    """A member's marks as plain data for JSON; amounts are exact fractions."""
    return {"member": member.name, "earned": str(member.amount), "marks": member.of, "problems": list(member.problems),
            "exercises": [{"exercise": mark.exercise, "earned": str(mark.amount), "marks": mark.of,
                           "set_by_hand": mark.override and {"because": mark.override.reason, "by": mark.override.who,
                                                             "when": mark.override.when},
                           "verdict": to_data(mark.verdict)} for mark in member.marks]}

"""Practice: the plans and verdicts of an exercise under the practice seed, each worked out once and kept."""

import contextlib
import hashlib
import json
from collections.abc import Mapping
from dataclasses import replace
from fractions import Fraction
from functools import cache

from ..course import PRACTICE_SEED, ROOT, SEALED
from ..judging.explanations import NO_FILE, still_a_stub
from ..judging.fingerprint import VerdictKey, files_used, judged_by, submission_hash
from ..judging.judge import judge
from ..judging.plan import Plan
from ..judging.plans import plan_for
from ..judging.protocols import WorkerLike
from ..judging.sealed import BrokenSeal, laws_in, seal_plan, unseal_plan
from ..judging.verdict import (
    NOT_ATTEMPTED,
    NOT_HANDED_IN,
    PASSED,
    RAISED,
    REFUSED,
    UNFINISHED,
    WRONG,
    Finding,
    Part,
    Verdict,
    from_data,
    to_data,
)
from .cache import keep, read_kept
from .index import index
from .laws import CannotPack, laws_source
from .stubs import stub_functions

# Kinds of verdict that the same file gets again, however busy the machine is.
_STEADY = {PASSED, WRONG, RAISED, REFUSED, UNFINISHED, NOT_ATTEMPTED, NOT_HANDED_IN}


@cache
def practice_plan(path: str) -> Plan:
    """The plan of an exercise under the practice seed: a pack's own, or one that was sealed here once and is opened again."""
    if SEALED:
        return plan_for(path, PRACTICE_SEED)
    if kept := read_kept(f"{path}.plan"):
        laws, _, sealed = kept.partition(b"\0")
        with contextlib.suppress(BrokenSeal, SyntaxError, KeyError):
            return _with_references(unseal_plan(sealed, path, laws_in(laws.decode())))
    with contextlib.suppress(CannotPack):
        laws_text, sealed = sealed_plan(path)
        return _with_references(unseal_plan(sealed, path, laws_in(laws_text)))
    return plan_for(path, PRACTICE_SEED)


def _with_references(plan: Plan) -> Plan:
    """A plan that was sealed here: where the references are, they stand in for earlier exercises, and not what was recorded of them."""
    return replace(plan, earlier=None)


def sealed_plan(path: str) -> tuple[str, bytes]:
    """(source of the laws, sealed values) of an exercise, as a pack holds them; kept here for the next time.

    Raises
    ------
    CannotPack
        If a law cannot be written down without the reference.
    """
    if kept := read_kept(f"{path}.plan"):
        laws, _, sealed = kept.partition(b"\0")
        return laws.decode(), sealed
    plan = plan_for(path, PRACTICE_SEED)
    source, sealed = laws_source(plan), seal_plan(plan)
    keep(f"{path}.plan", source.encode() + b"\0" + sealed)
    return source, sealed


def practice_verdict(path: str, files: Mapping[str, str], worker: WorkerLike) -> Verdict:
    """The verdict on one exercise under the practice seed, as `judge` gives it.

    One that was reached before of the same files by the same checker is not worked out again.

    Parameters
    ----------
    path : str
        Of the exercise.
    files : mapping of str to str
        As for `judge`.
    worker : Worker
        Is asked only where nothing is known.
    """
    known = known_verdict(path, files)
    if known:
        return known
    used = {name: files[name] for name in files_used(f"{path}.py", files)}
    verdict = judge(path, used, worker, PRACTICE_SEED, practice_plan(path))
    if verdict.kind in _STEADY:
        keep(f"{path}.verdict", json.dumps({"key": _key(path, files), "verdict": to_data(verdict)}).encode())
    return verdict


def known_verdict(path: str, files: Mapping[str, str]) -> Verdict | None:
    """The verdict on one exercise, if it takes no judging: the file is still the stub, or it was judged before."""
    untouched = _untouched(path, files)
    if untouched:
        return untouched
    with contextlib.suppress(ValueError, KeyError, TypeError):
        kept = json.loads(read_kept(f"{path}.verdict") or b"{}")
        if kept and kept["key"] == list(_key(path, files)):
            return from_data(kept["verdict"])
    return None


def _key(path: str, files: Mapping[str, str]) -> VerdictKey:
    return VerdictKey(submission_hash(f"{path}.py", files), _judged_by(path), str(PRACTICE_SEED))


def _judged_by(path: str) -> str:
    """As `fingerprint.judged_by`, kept: what it is made from is in the name of the folder. In a pack the figures count too."""
    if kept := read_kept(f"{path}.judge"):
        return kept.decode()
    found = judged_by(path)
    if SEALED:
        found = hashlib.sha256(found.encode() + (ROOT / "practice" / f"{path}.sealed").read_bytes()).hexdigest()
    keep(f"{path}.judge", found.encode())
    return found


def _untouched(path: str, files: Mapping[str, str]) -> Verdict | None:
    """The verdict on a file that is not there, or in which every function is still the stub; None of any other."""
    asked = index()[path]
    source = files.get(f"{path}.py")
    stubs = stub_functions(source) if source and "NotImplementedError" in source else set()
    if source is not None and not all(name in stubs for name, *_ in asked.functions):
        return None
    shares = sum(share for _, share, _ in asked.functions)
    parts = tuple(Part(name, "all", Fraction(asked.marks * share, shares), Fraction(0)) for name, share, _ in asked.functions)
    findings = (
        (Finding(NOT_HANDED_IN, path.rpartition("/")[2], NO_FILE),)
        if source is None
        else tuple(Finding(NOT_ATTEMPTED, name, still_a_stub(name)) for name, *_ in asked.functions)
    )
    return Verdict(path, findings[0].kind, asked.marks, parts, findings)

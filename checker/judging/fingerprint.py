"""When is a verdict still good? As long as nothing that it was made from has changed.

A verdict depends on what the member wrote (the exercise's file and any earlier exercises it uses), on what judges it
(the reference, the check, the engine, the libraries under them) and on the seed.
"""

import platform
import re
from collections.abc import Mapping
from functools import cache, lru_cache
from hashlib import sha256
from typing import NamedTuple

from ..course import PATHS, ROOT, find
from ..imports import Sources

SOURCES = Sources(ROOT, ("checker", "solutions"))
_ENGINE = ("checker.judging.judge", "checker.sandbox.workers", "checker.worker.warm", "checker.worker.child")
_NOT_JUDGING = {"checker.course"}  # the list of exercises: a new one does not change how the others are judged
_LIBRARIES = ("numpy", "sympy", "hypothesis")
_RELATIVE_IMPORT = re.compile(r"from[\s\\]*\.")


_EXERCISES = {f"{path}.py" for path in PATHS}


class VerdictKey(NamedTuple):
    """What a verdict was made from: two hashes, and the seed as text."""

    submission: str
    judged_by: str
    seed: str


def key_of(exercise: str, files: Mapping[str, str], seed: int) -> VerdictKey:
    """The key of the verdict on one exercise.

    Parameters
    ----------
    exercise : str
        As `course.find` takes it.
    files : mapping of str to str
        The member's exercises: path ("unit03_tuned_circuit/resonance.py") to source text.
    seed : int
    """
    path = find(exercise)
    return VerdictKey(submission_hash(f"{path}.py", files), judged_by(path), str(seed))


def submission_hash(path: str, files: Mapping[str, str]) -> str:
    """Hash of a submitted file and of the others that it may import; for a file not handed in, of that alone."""
    digest = sha256(path.encode())
    for used in sorted(files_used(path, files)):
        text = files[used].encode("utf-8", "surrogatepass")
        digest.update(b"\0%d %s\0" % (len(text), used.encode("utf-8", "surrogatepass")))
        digest.update(text)
    return digest.hexdigest()


def files_used(path: str, files: Mapping[str, str]) -> set[str]:
    """The file and all that it can reach: every helper whose name it mentions and, if it speaks of exercises, every exercise."""
    found: set[str] = set()
    ahead = [path] if path in files else []
    while ahead:
        at = ahead.pop()
        found.add(at)
        text = files[at]
        of_exercises = "exercises" in text or _RELATIVE_IMPORT.search(text)
        ahead += [
            other
            for other in files
            if other not in found
            and (of_exercises or other not in _EXERCISES or _beside(at, other))
            and _module_name(other) in text
        ]
    return found


def _beside(path: str, other: str) -> bool:
    return path.rpartition("/")[0] == other.rpartition("/")[0]


@lru_cache(maxsize=4096)
def _module_name(path: str) -> str:
    return path.rpartition("/")[2].removesuffix(".py")


@cache
def judged_by(path: str) -> str:
    """Hash of everything that decides a verdict on an exercise, the submission and the seed aside."""
    from importlib.metadata import version  # late: takes a third of numpy's time, and is asked once for an exercise

    about = " ".join([platform.python_version(), *map(version, _LIBRARIES)])
    return SOURCES.hash_of([*_ENGINE, f"solutions.{path.replace('/', '.')}_check"], about, _NOT_JUDGING)

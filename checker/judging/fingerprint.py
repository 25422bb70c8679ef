"""When is a verdict still good? As long as nothing that it was made from has changed.

A verdict depends on what the member wrote (the exercise's file and any earlier exercises it uses), on what judges it
(the references and checks, of the exercise and of those that it builds on, the engine, the libraries under them) and on the seed.
"""

import platform
import re
from collections.abc import Mapping
from functools import cache, lru_cache
from hashlib import sha256
from typing import NamedTuple

from ..course import PATHS, ROOT, find
from ..imports import Sources
from .stand_ins import built_on

SOURCES = Sources(ROOT, ("checker", "solutions"))
_ENGINE = ("checker.judging.judge", "checker.sandbox.workers", "checker.worker.warm", "checker.worker.child")
_NOT_JUDGING = {"checker.course"}  # the list of exercises: a new one does not change how the others are judged
_LIBRARIES = ("numpy", "sympy", "hypothesis")
_RELATIVE_IMPORT = re.compile(r"from[\s\\]*\.")
_WORD = re.compile(r"\w+")

_EXERCISES = {f"{path}.py" for path in PATHS}


class VerdictKey(NamedTuple):
    """What a verdict was made from: two hashes, and the seed as text."""

    submission: str
    judged_by: str
    seed: str


class Fingerprints:
    """The keys of all that one member handed in: each file is looked through once and hashed once.

    Parameters
    ----------
    files : mapping of str to str
        The member's exercises and helpers: path ("unit03_tuned_circuit/resonance.py") to source text.
    """

    def __init__(self, files: Mapping[str, str]) -> None:
        self._files = files
        self._mentions: dict[str, frozenset[str]] = {}
        self._hashes: dict[str, bytes] = {}

    def key(self, path: str, seed: int) -> VerdictKey:
        """The key of the verdict on the exercise at a path."""
        return VerdictKey(self.submission_hash(f"{path}.py"), judged_by(path), str(seed))

    def submission_hash(self, path: str) -> str:
        """Hash of a file and of the others that it may import; for a file not handed in, of that alone."""
        digest = sha256(path.encode())
        for used in sorted(self.files_used(path)):
            if used not in self._hashes:
                self._hashes[used] = sha256(self._files[used].encode("utf-8", "surrogatepass")).digest()
            name = used.encode("utf-8", "surrogatepass")
            digest.update(b"\0%d %s\0" % (len(name), name) + self._hashes[used])
        return digest.hexdigest()

    def files_used(self, path: str) -> set[str]:
        """The file and all that it can reach: helpers whose name it mentions, exercises beside it, and others if it names their unit too."""
        found: set[str] = set()
        ahead = [path] if path in self._files else []
        while ahead:
            at = ahead.pop()
            if at not in found:
                found.add(at)
                ahead += self._mentioned(at) - found
        return found

    def _mentioned(self, path: str) -> frozenset[str]:
        if path not in self._mentions:
            text = self._files[path]
            of_exercises = "exercises" in text or _RELATIVE_IMPORT.search(text)
            words = frozenset(_WORD.findall(text))
            self._mentions[path] = frozenset(
                other
                for other in self._files
                if (other not in _EXERCISES or _beside(path, other) or of_exercises and other.partition("/")[0] in words)
                and ((name := _module_name(other)) in words or not name.isidentifier() and name in text)
            )
        return self._mentions[path]


def key_of(exercise: str, files: Mapping[str, str], seed: int) -> VerdictKey:
    """The key of the verdict on one exercise, called as `course.find` takes it, of a member's files."""
    return Fingerprints(files).key(find(exercise), seed)


def submission_hash(path: str, files: Mapping[str, str]) -> str:
    """As `Fingerprints.submission_hash`, for one file."""
    return Fingerprints(files).submission_hash(path)


def files_used(path: str, files: Mapping[str, str]) -> set[str]:
    """As `Fingerprints.files_used`, for one file."""
    return Fingerprints(files).files_used(path)


def _beside(path: str, other: str) -> bool:
    return path.rpartition("/")[0] == other.rpartition("/")[0]


@lru_cache(maxsize=4096)
def _module_name(path: str) -> str:
    return path.rpartition("/")[2].removesuffix(".py")


@cache
def judged_by(path: str) -> str:
    """Hash of everything that decides a verdict on an exercise, the submission and the seed aside."""
    from importlib.metadata import version  # late: takes a third of numpy's time, and is asked once for an exercise

    checks = [f"solutions.{one.replace('/', '.')}_check" for one in (path, *built_on(path))]
    about = " ".join([platform.python_version(), *map(version, _LIBRARIES)])
    return SOURCES.hash_of([*_ENGINE, *checks], about, _NOT_JUDGING)

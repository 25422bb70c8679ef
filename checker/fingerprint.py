"""When is a verdict still good? As long as nothing that it was made from has changed.

A verdict depends on what the member wrote (the exercise's file and any earlier exercises it uses), on what judges it
(the reference, the check, the engine, the libraries under them) and on the seed.
"""

import ast
import platform
import re
from collections.abc import Iterable, Iterator, Mapping
from functools import cache, lru_cache
from hashlib import sha256
from importlib.metadata import version
from pathlib import Path
from typing import NamedTuple

from .course import ROOT, find

_ENGINE = ("checker.judge", "checker.workers", "checker.worker.warm", "checker.worker.child")
_NO_MATTER = {"checker.course"}  # the list of exercises: a new one does not change how the others are judged
_LIBRARIES = ("numpy", "sympy", "hypothesis")
_RELATIVE_IMPORT = re.compile(r"from[\s\\]*\.")


class Key(NamedTuple):
    """What a verdict was made from: two hashes, and the seed as text."""

    submission: str
    judged_by: str
    seed: str


def key_of(exercise: str, files: Mapping[str, str], seed: int) -> Key:
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
    return Key(submission_hash(f"{path}.py", files), judged_by(path), str(seed))


def submission_hash(path: str, files: Mapping[str, str]) -> str:
    """Hash of a submitted file and of the others that it may import; for a file not handed in, of that alone."""
    digest = sha256(path.encode())
    for used in sorted(files_used(path, files)):
        text = files[used].encode("utf-8", "surrogatepass")
        digest.update(b"\0%d %s\0" % (len(text), used.encode("utf-8", "surrogatepass")))
        digest.update(text)
    return digest.hexdigest()


def files_used(path, files):
    """The file and all that it can reach. A file that speaks of imports reaches every file whose name it mentions."""
    found, ahead = set(), [path] if path in files else []
    while ahead:
        at = ahead.pop()
        found.add(at)
        text = files[at]
        if "exercises" in text or _RELATIVE_IMPORT.search(text):
            ahead += [other for other in files if other not in found and _module_name(other) in text]
    return found


@lru_cache(maxsize=4096)
def _module_name(path):
    return path.rpartition("/")[2].removesuffix(".py")


@cache
def judged_by(path: str) -> str:
    """Hash of everything that decides a verdict on an exercise, the submission and the seed aside."""
    digest = sha256(" ".join([platform.python_version(), *map(version, _LIBRARIES)]).encode())
    for module in sorted(_imported([*_ENGINE, f"solutions.{path.replace('/', '.')}_check"])):
        digest.update(f"\0{module}\0".encode() + _source_of(module).read_bytes())
    return digest.hexdigest()


def _imported(modules: Iterable[str]) -> set[str]:
    """Modules of ours that these import, and those in turn, with their packages; read from sources, nothing is run."""
    found, ahead = set(), list(modules)
    while ahead:
        module = ahead.pop()
        if module not in found and module not in _NO_MATTER and _source_of(module):
            found.add(module)
            ahead += [module.rpartition(".")[0], *_imports(module)]
    return found


@cache
def _imports(module: str) -> tuple[str, ...]:
    return tuple(_named_in(ast.parse(_source_of(module).read_bytes()), _package_of(module)))


def _named_in(tree, package) -> Iterator[str]:
    for node in ast.walk(tree):
        if isinstance(node, ast.Import):
            yield from (alias.name for alias in node.names)
        elif isinstance(node, ast.ImportFrom):
            above = package.split(".")[: len(package.split(".")) - node.level + 1] if node.level else []
            module = ".".join([*above, *([node.module] if node.module else [])])
            yield module
            yield from (f"{module}.{alias.name}" for alias in node.names)


def _package_of(module):
    return module if _source_of(module).name == "__init__.py" else module.rpartition(".")[0]


@cache
def _source_of(module: str) -> Path | None:
    """The file of a module of ours; None for anybody else's."""
    if module.partition(".")[0] not in ("checker", "solutions"):
        return None
    base = ROOT / module.replace(".", "/")
    return next((file for file in (base.with_suffix(".py"), base / "__init__.py") if file.is_file()), None)

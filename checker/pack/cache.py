"""What is worked out once for somebody who practises, and kept for the next time: in the user's own cache folder.

Everything in it can be made again, so whatever is missing, damaged or cannot be written is passed over without a word. It lies in a
folder named by all that it was made from; of these folders a few are kept.
"""

import contextlib
import hashlib
import os
import shutil
import sys
from collections.abc import Iterator
from functools import cache
from importlib.util import find_spec
from pathlib import Path

from ..course import PACKAGE, ROOT, SEALED
from ..files import open_replacement

_FOLDERS_KEPT = 3
_DIGEST = 16  # bytes before the content, which tell that it is whole
_SOURCES = ("checker", "practice" if SEALED else "solutions")
_LIBRARIES = ("numpy", "sympy", "hypothesis")


def read_kept(name: str) -> bytes | None:
    """What was kept under a name; None if nothing was, or not all of it is there."""
    try:
        data = (_folder() / name).read_bytes()
    except OSError:
        return None
    body = data[_DIGEST:]
    return body if data[:_DIGEST] == _digest(body) else None


def keep(name: str, data: bytes) -> None:
    """Keep something under a name, whole or not at all."""
    with contextlib.suppress(OSError):
        file = _folder() / name
        file.parent.mkdir(parents=True, exist_ok=True)
        with open_replacement(file, "wb") as out:
            out.write(_digest(data) + data)


def user_cache() -> Path:
    """The folder in which this user's programs keep what they can make again."""
    home = Path("~").expanduser()
    if sys.platform == "win32":
        return Path(os.environ.get("LOCALAPPDATA") or home / "AppData" / "Local")
    if sys.platform == "darwin":
        return home / "Library" / "Caches"
    return Path(os.environ.get("XDG_CACHE_HOME") or home / ".cache")


def _digest(data: bytes) -> bytes:
    return hashlib.blake2b(data, digest_size=_DIGEST).digest()


@cache
def _folder() -> Path:
    """The folder for what is made from the sources, the Python and the libraries of now."""
    ours = user_cache() / PACKAGE
    here = ours / _stamp()
    if not here.is_dir():
        _forget_the_oldest(ours)
    return here


def _forget_the_oldest(ours: Path) -> None:
    with contextlib.suppress(OSError):
        folders = sorted((one for one in ours.iterdir() if one.is_dir()), key=lambda one: one.stat().st_mtime)
        for folder in folders[: -_FOLDERS_KEPT + 1]:
            shutil.rmtree(folder, ignore_errors=True)


def _stamp() -> str:
    """A name for all that a verdict is made from, by the sizes and times of the files: reading them would take longer."""
    digest = hashlib.blake2b(sys.version.encode(), digest_size=12)
    for name, size, when in sorted(_files()):
        digest.update(f"{name} {size} {when}\n".encode("utf-8", "surrogatepass"))
    return digest.hexdigest()


def _files() -> Iterator[tuple[str, int, int]]:
    libraries = [Path(spec.origin) for name in _LIBRARIES if (spec := find_spec(name)) and spec.origin]
    folders = [ROOT / name for name in _SOURCES]
    while folders:
        for entry in os.scandir(folders.pop()):
            if entry.is_dir():
                folders += [] if entry.name in ("__pycache__", "examples") else [Path(entry.path)]
            elif entry.name.endswith((".py", ".sealed", ".json")):
                libraries.append(Path(entry.path))
    for file in libraries:
        about = file.stat()
        yield str(file), about.st_size, about.st_mtime_ns

"""What a build works out of texts, kept on disk under all that it follows from: a build that changes little is quick.

An entry is found by the hash of its parts and of the code, so that nothing has to be thrown away when something changes.
"""

import base64
import hashlib
import json
import os
import sys
from collections.abc import Callable, Iterable, Mapping
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import Any

from course.press.media.sources import DRAWN_WITH, installed_version

PACKAGES = ("checker", "solutions", "exercises", "course")
NOT_CODE = {"lessons", "build", "site", "node_modules", "__pycache__"}
BUILT_WITH = (*DRAWN_WITH, "mkdocs", "Markdown", "Jinja2", "PyYAML", "numba")


def hash_of(parts: Iterable[str | bytes]) -> str:
    """Hash of some texts one after another, each with its length, so that none can pass for two."""
    digest = hashlib.sha256()
    for part in parts:
        content = part if isinstance(part, bytes) else part.encode()
        digest.update(f"{len(content)} ".encode())
        digest.update(content)
    return digest.hexdigest()


def hash_of_files(root: Path, files: Iterable[Path]) -> str:
    """Hash of files with their names below a root; one that is not there counts as empty."""
    parts: list[str | bytes] = []
    for file in sorted(files):
        parts += [file.relative_to(root).as_posix(), file.read_bytes() if file.is_file() else b""]
    return hash_of(parts)


def code_files(root: Path) -> list[Path]:
    """All that a page follows from besides its own text: code, templates, tables, glossary, settings."""
    found = []
    for package in PACKAGES:
        for folder, folders, names in os.walk(root / package):
            folders[:] = [name for name in folders if name not in NOT_CODE]
            found += [Path(folder, name) for name in names]
    return found


def code_hash(root: Path) -> str:
    """Hash of all code as it is now on disk, and of the versions that run it."""
    libraries = (f"{library} {installed_version(library)}" for library in BUILT_WITH)
    return hash_of([sys.version, *libraries, hash_of_files(root, code_files(root))])


def lasting_files(root: Path) -> list[Path]:
    """What a process may have read once for all: our modules that it has loaded, and the tables that lie beside modules."""
    files = [getattr(sys.modules[name], "__file__", None) for name in sorted(sys.modules) if name.startswith(PACKAGES)]
    tables = [file for file in code_files(root) if file.suffix in (".json", ".toml", ".csv") and file.parent != root / "course"]
    return [*(Path(file) for file in files if file and Path(file).is_relative_to(root)), *tables]


class Kept:
    """The entries of one folder, as one build finds and adds them.

    Parameters
    ----------
    folder : Path
    code : str
        What all entries follow from; empty if nothing is to be found or kept.
    """

    def __init__(self, folder: Path, code: str) -> None:
        self.folder, self.code = folder, code
        self.used: set[Path] = set()

    def find(self, *parts: str) -> Any:
        """The entry that follows from these texts, or None."""
        file = self._file(parts)
        try:
            return json.loads(file.read_bytes()) if self.code else None
        except (OSError, ValueError):
            return None

    def keep(self, entry: Any, *parts: str) -> None:
        """Keep an entry of plain values; a reader sees the whole of it or nothing."""
        if not self.code:
            return
        file = self._file(parts)
        file.parent.mkdir(parents=True, exist_ok=True)
        fresh = file.with_suffix(f".{os.getpid()}")
        fresh.write_text(json.dumps(entry, ensure_ascii=False), "utf-8")
        fresh.replace(file)

    def of(self, make: Callable[[], Any], *parts: str) -> Any:
        """The entry that follows from these texts, made if there is none."""
        entry = self.find(*parts)
        if entry is None:
            entry = make()
            self.keep(entry, *parts)
        return entry

    def write(self, folder: Path, write: Callable[[Path], None], *parts: str) -> None:
        """Put files into a folder that follow from these texts; `write` writes them if they are not kept."""

        def make() -> dict[str, str]:
            with TemporaryDirectory() as place:
                write(Path(place))
                files = (file for file in Path(place).rglob("*") if file.is_file())
                return as_text({file.relative_to(place).as_posix(): file.read_bytes() for file in files})

        write_files(folder, from_text(self.of(make, *parts)))

    def drop_unused(self) -> None:
        """Remove what this build did not ask for."""
        for file in self.folder.glob("*.json") if self.code else []:
            if file not in self.used:
                file.unlink(missing_ok=True)

    def _file(self, parts: Iterable[str]) -> Path:
        file = self.folder / f"{hash_of([self.code, *parts])}.json"
        self.used.add(file)
        return file


def write_files(folder: Path, files: Mapping[str, bytes]) -> None:
    """Write files by their addresses below a folder."""
    for address, content in files.items():
        (folder / address).parent.mkdir(parents=True, exist_ok=True)
        (folder / address).write_bytes(content)


def as_text(files: Mapping[str, bytes]) -> dict[str, str]:
    """Files as plain text, for an entry."""
    return {address: base64.b64encode(content).decode() for address, content in files.items()}


def from_text(files: Mapping[str, str]) -> dict[str, bytes]:
    """Files from an entry."""
    return {address: base64.b64decode(content) for address, content in files.items()}

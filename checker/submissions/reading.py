"""The bytes that a member handed in, out of a folder or a zip, and of the zips in it.

Each file is opened once and read once, into memory; what was read is what is marked, whatever becomes of the file. No
link is followed, no pipe is waited for, nothing is unpacked to disk. What cannot be read is said in a sentence and left.
"""

import calendar
import gzip
import io
import itertools
import os
import re
import stat
import tarfile
import zipfile
from collections.abc import Callable, Iterator
from dataclasses import dataclass, field
from typing import NamedTuple

from ..budgets import BUDGET
from ..text import display_name

MAX_NAME = 1000  # characters of a path within a zip
SKIPPED = re.compile(r"\.|__MACOSX$|__pycache__$|node_modules$|venv$|site-packages$")
# Every system's own zip program packs in one of these. Python's readers of the others unpack without a limit.
_PACKED = (zipfile.ZIP_STORED, zipfile.ZIP_DEFLATED)
_ENTRY, _HEADER = b"PK\x01\x02", 30  # what an entry of the directory begins with; the shortest header of a file, bytes
_OPENING = os.O_RDONLY | getattr(os, "O_BINARY", 0) | getattr(os, "O_NOFOLLOW", 0) | getattr(os, "O_NONBLOCK", 0)

NOT_OPENED = "is a link or cannot be opened; it was not read"
CHANGED = "changed while it was read; what was read is what is marked"
TOO_MANY = f"More than {BUDGET.entries:,} files: the rest was not looked at."
TOO_MUCH = f"More than {BUDGET.all_files >> 20} MB in all: the rest was not read."
OVERLAPPING = "Its entries lie over one another, so it was not unpacked. Make the zip with the system's own program."
TOO_LARGE = f"It unpacks to more than {BUDGET.unpacked >> 20} MB: the rest was not read."
TOO_DEEP = f"Folders more than {BUDGET.depth} deep were not looked at."


DEEPEST = 2  # an archive may lie in an archive
ARCHIVES = (".zip", ".tar.gz", ".tgz")
Wanted = Callable[[str], bool]


class File(NamedTuple):
    """What a file holds, and when it was last changed: seconds since 1970, of which zips know every second one."""

    data: bytes
    time: float


@dataclass
class HandIn:
    """What was read of one submission: files by path, sentences about it, the paths not looked into.

    `problems` are of what may be missing, `notes` of what is not; `unread` has those of files that were left: (path, sentence), the
    path empty where nobody knows what the file would have been. What is left of the member's budget goes down while it is read.
    """

    files: dict[str, File] = field(default_factory=dict)
    problems: list[str] = field(default_factory=list)
    notes: list[str] = field(default_factory=list)
    unread: list[tuple[str, str]] = field(default_factory=list)
    passed_over: list[str] = field(default_factory=list)
    entries: int = BUDGET.entries
    left: int = BUDGET.all_files
    unpacked: int = BUDGET.unpacked

    def another(self) -> bool:
        """Whether one more file may be looked at; says so where it may not."""
        self.entries -= 1
        if self.entries < 0:
            self.say(TOO_MANY)
        return self.entries >= 0

    def say(self, problem: str) -> None:
        """Note once that something was left, nobody knows what."""
        if problem not in self.problems:
            self.problems.append(problem)
            self.unread.append(("", problem))

    def leave(self, relative: str, why: str) -> None:
        """Note that a file was left, and why: the end of a sentence that begins with its path."""
        sentence = f"{display_name(relative)} {why}."
        self.problems.append(sentence)
        self.unread.append(("" if relative.lower().endswith(ARCHIVES) else relative, sentence))

    def add(self, relative: str, file: File, wanted: Wanted, depth: int) -> None:
        """Take a file that was read, out of so many archives; one that is an archive itself is looked into."""
        if relative.lower().endswith(ARCHIVES):
            if depth == DEEPEST:
                self.say(f"{display_name(relative)} is an archive in an archive in an archive; it was not unpacked.")
            else:
                _look_into(self, file, wanted, f"{relative}/", relative, depth + 1)
            return
        self.left -= len(file.data)
        if self.left < 0:
            self.say(TOO_MUCH)
            return
        if relative in self.files:
            self.notes.append(f"{display_name(relative)} is in the zip more than once; the last was taken.")
        self.files[relative] = file


def _most(relative: str) -> int:
    """Bytes of a file that may be read, by its name."""
    return (
        BUDGET.zip
        if relative.lower().endswith(ARCHIVES)
        else BUDGET.notebook
        if relative.lower().endswith(".ipynb")
        else BUDGET.file
    )


def read_files_in_folder(folder: str, wanted: Wanted) -> HandIn:
    """The files in a folder whose path is wanted; those of the zips in it too, below the zip's own path.

    Parameters
    ----------
    folder : str
    wanted : callable
        Whether a path below the folder, with "/" between names, is of interest; the others are not opened.
    """
    found, ahead = HandIn(), {"."}
    for root, folders, names, opened in _walk(folder):
        below = os.path.relpath(root, folder)
        ahead.discard(below)
        folders[:] = sorted(name for name in folders if not SKIPPED.match(name))
        if folders and below.count(os.sep) >= BUDGET.depth:
            folders[:] = []
            found.say(TOO_DEEP)
        ahead.update(os.path.normpath(os.path.join(below, name)) for name in folders)
        for name in sorted(names):
            if not found.another() or found.left < 0:
                return found
            relative = os.path.normpath(os.path.join(below, name)).replace(os.sep, "/")
            if not wanted(relative):
                if not SKIPPED.match(name):
                    found.passed_over.append(relative)
                continue
            file, problem = _read_once(name if opened is not None else os.path.join(root, name), _most(relative), opened)
            if problem and file is None:
                found.leave(relative, problem)
            elif problem:
                found.problems.append(f"{display_name(relative)} {problem}.")
            if file is not None:
                found.add(relative, file, wanted, 0)
    for one in sorted(ahead):
        found.say(f"{'The folder' if one == '.' else display_name(one)} {NOT_OPENED}.")
    return found


def _walk(folder: str) -> Iterator[tuple[str, list[str], list[str], int | None]]:
    """As `os.fwalk`, which no folder that becomes a link on the way leads astray; as `os.walk` where there is none."""
    try:
        if hasattr(os, "fwalk"):
            yield from os.fwalk(folder)
        else:
            yield from ((*found, None) for found in os.walk(folder))
    except OSError:
        return


def _read_once(path: str, most: int, folder: int | None = None) -> tuple[File | None, str | None]:
    """(file, what is wrong): either may be None; both are given for a file that changed while it was read."""
    try:
        descriptor = os.open(path, _OPENING, dir_fd=folder)
    except FileNotFoundError:
        return None, "was gone before it could be read"
    except OSError:
        return None, NOT_OPENED
    try:
        before = os.fstat(descriptor)
        if not stat.S_ISREG(before.st_mode):
            return None, "is not an ordinary file; it was not read"
        if before.st_nlink > 1:
            return None, "is a second name (hard link) of another file; it was not read"
        with open(descriptor, "rb", closefd=False) as file:
            data = file.read(most + 1)
        after = os.fstat(descriptor)
    except OSError as error:
        return None, f"cannot be read ({error.strerror})"
    finally:
        os.close(descriptor)
    if len(data) > most:
        return None, f"is larger than {_size(most)}; it was not read"
    same = (before.st_size, before.st_mtime_ns) == (after.st_size, after.st_mtime_ns) and len(data) == after.st_size
    return File(data, after.st_mtime), None if same else CHANGED


def _size(most: int) -> str:
    return f"{most >> 20} MB" if most >= 1 << 20 else f"{most >> 10} kB"


def read_files_in_archive(path: str, wanted: Wanted) -> HandIn:
    """As `read_files_in_folder`, from a zip or a tar.gz, which is read as one file and looked into in memory."""
    found = HandIn()
    file, problem = _read_once(path, BUDGET.zip)
    if file is None:
        found.say(f"The zip {problem}.")
    else:
        found.problems += [f"The zip {problem}."] if problem else []
        _look_into(found, file, wanted, "", path, 1)
    return found


def _look_into(found: HandIn, file: File, wanted: Wanted, below: str, name: str, depth: int) -> None:
    """Read what an archive holds, `below` before each path."""
    shown = display_name(name) if below else "The zip"
    try:
        if name.lower().endswith(".zip"):
            if file.data.count(_ENTRY) > BUDGET.entries:
                found.say(f"{shown} names more than {BUDGET.entries:,} files; it was not unpacked.")
                return
            with zipfile.ZipFile(io.BytesIO(file.data)) as archive:
                _from_zip(found, archive, wanted, below, shown, depth)
        else:
            _from_tar(found, file, wanted, below, shown, depth)
    except Exception as error:  # the libraries raise errors of many kinds at what is no archive
        found.say(f"{shown} cannot be read ({display_name(str(error))}). Ask for it again.")


def _from_zip(found: HandIn, archive: zipfile.ZipFile, wanted: Wanted, below: str, shown: str, depth: int) -> None:
    if _overlap(archive.infolist()):
        found.say(f"{shown} cannot be read. {OVERLAPPING}")
        return
    for entry in archive.infolist():
        if not found.another():
            return
        relative = _wanted_path(found, entry.filename, entry.is_dir(), wanted, below)
        if not relative:
            continue
        if found.unpacked < 0 or found.left < 0:
            found.say(f"{shown} is too large. {TOO_LARGE}" if found.unpacked < 0 else TOO_MUCH)
            return
        most = _most(relative)
        data, problem = _unpacked(archive, entry, most)
        found.unpacked -= most if data is None else len(data)  # what is thrown away has had its time too
        if problem or data is None:
            found.leave(below + entry.filename, problem or "was not read")
        else:
            found.add(relative, File(data, _zip_time(entry)), wanted, depth)


def _from_tar(found: HandIn, file: File, wanted: Wanted, below: str, shown: str, depth: int) -> None:
    with gzip.GzipFile(fileobj=io.BytesIO(file.data)) as packed:
        data = packed.read(max(found.unpacked, 0) + 1)
    found.unpacked -= len(data)
    if found.unpacked < 0:
        found.say(f"{shown} is too large. {TOO_LARGE}")
        return
    with tarfile.open(fileobj=io.BytesIO(data), mode="r:") as archive:
        for entry in archive:
            if not found.another() or found.left < 0:
                return
            relative = _wanted_path(found, entry.name, entry.isdir(), wanted, below)
            opened = archive.extractfile(entry) if relative and entry.isreg() and not entry.issparse() else None
            if opened is None:
                if relative:
                    found.leave(below + entry.name, "is no ordinary file; it was not read")
                continue
            with opened:
                most = _most(relative)
                data = opened.read(most + 1)
            if len(data) > most:
                found.leave(below + entry.name, f"is larger than {_size(most)}; it was not read")
            else:
                found.add(relative, File(data, float(entry.mtime)), wanted, depth)


def _wanted_path(found: HandIn, name: str, folder: bool, wanted: Wanted, below: str) -> str:
    """The path of an archive's entry that is to be read; nothing for any other, which is said or written down."""
    if len(name) > MAX_NAME:
        found.leave(below + name, "has too long a name; it was not read")
        return ""
    parts = name.replace("\\", "/").split("/")
    if folder or any(SKIPPED.match(part) for part in parts if part not in (".", "..")):
        return ""
    relative = below + "/".join(part for part in parts if part != ".")
    if not wanted(relative):
        found.passed_over.append(relative)
        return ""
    if ".." in parts or parts[0] == "":
        found.leave(below + name, "points out of the zip; it was not read")
        return ""
    return relative


def _zip_time(entry: zipfile.ZipInfo) -> float:
    """When an entry was changed; a zip does not know in which part of the world, and its numbers may be nonsense."""
    try:
        return float(calendar.timegm((*entry.date_time, 0, 0, 0)))
    except (ValueError, OverflowError):
        return 0.0


def _overlap(entries: list[zipfile.ZipInfo]) -> bool:
    """Whether two entries share bytes of the zip: a few kilobytes can then stand for any number of files."""
    places = sorted((entry.header_offset, entry.compress_size) for entry in entries)
    return any(start + _HEADER + size > after for (start, size), (after, _) in itertools.pairwise(places))


def _unpacked(archive: zipfile.ZipFile, entry: zipfile.ZipInfo, most: int) -> tuple[bytes | None, str | None]:
    """(bytes, None), or (None, what is wrong with this entry)."""
    kind = stat.S_IFMT(entry.external_attr >> 16)
    if kind not in (0, stat.S_IFREG):
        return (
            None,
            "points out of the zip; it was not read" if kind == stat.S_IFLNK else "is no ordinary file; it was not read",
        )
    if entry.flag_bits & 1:
        return None, "is locked with a password; it was not read"
    if entry.compress_type not in _PACKED:
        return None, "is packed in an unusual way; it was not read. Make the zip with the system's own program"
    try:
        with archive.open(entry) as file:
            data = file.read(most + 1)
    except Exception as error:  # of many kinds, as above
        return None, f"cannot be unpacked ({display_name(str(error))}). Ask for the zip again"
    return (data, None) if len(data) <= most else (None, f"is larger than {_size(most)}; it was not read")

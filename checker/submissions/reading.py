"""The bytes that a member handed in, out of a folder or a zip.

Each file is opened once and read once, into memory; what was read is what is marked, whatever becomes of the file. No
link is followed, no pipe is waited for, nothing is unpacked to disk. What cannot be read is said in a sentence and left.
"""

import io
import itertools
import os
import re
import stat
import zipfile
from collections.abc import Callable, Iterator

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


def read_files_in_folder(folder: str, wanted: Callable[[str], bool]) -> tuple[dict[str, bytes], list[str]]:
    """The files in a folder whose path is wanted, and a sentence for each that could not be read.

    Parameters
    ----------
    folder : str
    wanted : callable
        Whether a path below the folder, with "/" between names, is of interest; the others are not opened.
    """
    found, problems, seen, left, ahead = {}, [], 0, BUDGET.all_files, {"."}
    for root, folders, names, opened in _walk(folder):
        below = os.path.relpath(root, folder)
        ahead.discard(below)
        folders[:] = sorted(name for name in folders if not SKIPPED.match(name))
        if folders and below.count(os.sep) >= BUDGET.depth:
            folders[:] = []
            problems += [TOO_DEEP] if TOO_DEEP not in problems else []
        ahead.update(os.path.normpath(os.path.join(below, name)) for name in folders)
        for name in sorted(names):
            seen += 1
            if seen > BUDGET.entries:
                return found, [*problems, TOO_MANY]
            relative = os.path.normpath(os.path.join(below, name)).replace(os.sep, "/")
            if not wanted(relative):
                continue
            data, problem = _read_once(name if opened is not None else os.path.join(root, name), BUDGET.file, opened)
            if problem:
                problems.append(f"{display_name(relative)} {problem}.")
            if data is not None:
                left -= len(data)
                if left < 0:
                    return found, [*problems, TOO_MUCH]
                found[relative] = data
    problems += [f"{'The folder' if one == '.' else display_name(one)} {NOT_OPENED}." for one in sorted(ahead)]
    return found, problems


def _walk(folder: str) -> Iterator[tuple[str, list[str], list[str], int | None]]:
    """As `os.fwalk`, which no folder that becomes a link on the way leads astray; as `os.walk` where there is none."""
    try:
        if hasattr(os, "fwalk"):
            yield from os.fwalk(folder)
        else:
            yield from ((*found, None) for found in os.walk(folder))
    except OSError:
        return


def _read_once(path: str, most: int, folder: int | None = None) -> tuple[bytes | None, str | None]:
    """(bytes, what is wrong): either may be None; both are given for a file that changed while it was read."""
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
    return data, None if same else CHANGED


def _size(most: int) -> str:
    return f"{most >> 20} MB" if most >= 1 << 20 else f"{most >> 10} kB"


def read_files_in_zip(path: str, wanted: Callable[[str], bool]) -> tuple[dict[str, bytes], list[str]]:
    """As `read_files_in_folder`, from a zip, which is read as one file and looked into in memory."""
    data, problem = _read_once(path, BUDGET.zip)
    problems = [f"The zip {problem}."] if problem else []
    if data is None:
        return {}, problems
    if data.count(_ENTRY) > BUDGET.entries:
        return {}, [*problems, f"The zip names more than {BUDGET.entries:,} files; it was not unpacked."]
    try:
        with zipfile.ZipFile(io.BytesIO(data)) as archive:
            found, more = _from_archive(archive, wanted)
    except Exception as error:  # the library raises errors of many kinds at what is no zip
        return {}, [*problems, f"The zip cannot be read ({display_name(str(error))}). Ask for it again."]
    return found, [*problems, *more]


def _from_archive(archive: zipfile.ZipFile, wanted: Callable[[str], bool]) -> tuple[dict[str, bytes], list[str]]:
    found, problems, left, unpacked = {}, [], BUDGET.all_files, 0
    if _overlap(archive.infolist()):
        return {}, [f"The zip cannot be read. {OVERLAPPING}"]
    for entry in archive.infolist():
        if len(entry.filename) > MAX_NAME:
            problems.append(f"{display_name(entry.filename)} has too long a name; it was not read.")
            continue
        parts = entry.filename.replace("\\", "/").split("/")
        passed_over = any(SKIPPED.match(part) for part in parts if part not in (".", ".."))
        if entry.is_dir() or passed_over or not wanted("/".join(parts)):
            continue
        shown, relative = display_name(entry.filename), "/".join(part for part in parts if part != ".")
        if unpacked > BUDGET.unpacked:
            return found, [*problems, f"The zip is too large. {TOO_LARGE}"]
        data, problem = _unpacked(archive, entry, parts)
        unpacked += BUDGET.file if data is None else len(data)  # what is thrown away has had its time too
        if problem or data is None:
            problems.append(f"{shown} {problem}.")
            continue
        if relative in found:
            problems.append(f"{shown} is in the zip more than once; the last was taken.")
        left -= len(data)
        if left < 0:
            return found, [*problems, TOO_MUCH]
        found[relative] = data
    return found, problems


def _overlap(entries: list[zipfile.ZipInfo]) -> bool:
    """Whether two entries share bytes of the zip: a few kilobytes can then stand for any number of files."""
    places = sorted((entry.header_offset, entry.compress_size) for entry in entries)
    return any(start + _HEADER + size > after for (start, size), (after, _) in itertools.pairwise(places))


def _unpacked(archive: zipfile.ZipFile, entry: zipfile.ZipInfo, parts: list[str]) -> tuple[bytes | None, str | None]:
    """(bytes, None), or (None, what is wrong with this entry)."""
    if ".." in parts or parts[0] == "" or stat.S_ISLNK(entry.external_attr >> 16):
        return None, "points out of the zip; it was not read"
    if entry.flag_bits & 1:
        return None, "is locked with a password; it was not read"
    if entry.compress_type not in _PACKED:
        return None, "is packed in an unusual way; it was not read. Make the zip with the system's own program"
    try:
        with archive.open(entry) as file:
            data = file.read(BUDGET.file + 1)
    except Exception as error:  # of many kinds, as above
        return None, f"cannot be unpacked ({display_name(str(error))}). Ask for the zip again"
    return (data, None) if len(data) <= BUDGET.file else (None, f"is larger than {_size(BUDGET.file)}; it was not read")

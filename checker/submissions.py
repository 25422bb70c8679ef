"""Reading what members hand in: a folder of folders and zips, by people nobody here knows.

Everything is read once, into memory, and nothing is unpacked to disk or followed out of the folder. What cannot be read
is said in a sentence and left; it never stops the rest.
"""
import io
import os
import re
import stat
import tokenize
import unicodedata
import zipfile
from collections.abc import Mapping
from dataclasses import dataclass, replace

from .course import PATHS

MAX_FILE = 256 << 10
MAX_ENTRIES = 5000
MAX_ZIP = 8 << 20
MAX_DEPTH = 12
_SKIPPED = re.compile(r"\.|__MACOSX$|__pycache__$|node_modules$|venv$|site-packages$")
_BY_NAME = {path.rpartition("/")[2]: path for path in PATHS}


@dataclass(frozen=True)
class Member:
    """One member's submission: exercise files by path, and a sentence for whatever could not be read."""

    name: str
    files: Mapping[str, str]
    problems: tuple[str, ...] = ()


class UnreadableFolder(Exception):
    """The folder of submissions cannot be read at all; the text says why and what to do."""


@dataclass(frozen=True)
class Submission:
    """Where one member's submission lies, not yet read: a folder, a zip, or something that is neither."""

    name: str
    path: str
    kind: str


def find_submissions(folder):
    """Every submission in a folder, in the order of their names.

    Raises
    ------
    UnreadableFolder
        If there is no such folder, or nothing in it looks like a submission.
    """
    shown = display_name(str(folder))
    try:
        entries = sorted(os.scandir(folder), key=lambda entry: entry.name)
    except OSError as error:
        raise UnreadableFolder(f"Cannot read the folder {shown}: {error.strerror or 'no such folder'}.") from None
    folders = {entry.name for entry in entries if entry.is_dir(follow_symlinks=False)}
    found = []
    for entry in entries:
        if _SKIPPED.match(entry.name):
            continue
        if entry.name in folders:
            found.append(Submission(display_name(entry.name), entry.path, "folder"))
        elif entry.is_symlink():
            found.append(Submission(display_name(entry.name), entry.path, "link"))
        elif entry.name.lower().endswith(".zip") and entry.is_file():
            stem = entry.name[:-4]
            found.append(Submission(display_name(entry.name if stem in folders else stem), entry.path, "zip"))
    if not found:
        raise UnreadableFolder(f"{shown} holds no submissions: expected a folder or a zip for each member.")
    return _told_apart(found)


def _told_apart(found):
    """The submissions, with a number to names that look alike once what does not show is left out."""
    seen, apart = set(), []
    for submission in found:
        name, number = submission.name, 1
        while name in seen:
            number += 1
            name = f"{submission.name} ({number})"
        seen.add(name)
        apart.append(replace(submission, name=name))
    return apart


def read_submission(submission):
    """The member's files, read once and now."""
    if submission.kind == "folder":
        return read_member_folder(submission.path, submission.name)
    if submission.kind == "zip":
        return read_member_zip(submission.path, submission.name)
    return Member(submission.name, {}, ("The submission is a link to somewhere else; it was not followed.",))


def read_folder(folder):
    """Every member in a folder, as `find_submissions` finds them."""
    return [read_submission(submission) for submission in find_submissions(folder)]


def display_name(text):
    """A name safe to show: control and direction characters out, one line, not too long."""
    text = text.encode("utf-8", "replace").decode()
    kept = "".join(char for char in text if unicodedata.category(char)[0] != "C")
    return (kept[:80] + "…" if len(kept) > 81 else kept) or "(no name)"


def read_member_folder(folder, name):
    """A member's files from a folder, links not followed."""
    return _member(name, *_walk(folder))


def _walk(folder):
    found, problems, seen = {}, [], 0
    for root, folders, names in os.walk(folder, followlinks=False):
        below = os.path.relpath(root, folder)
        folders[:] = sorted(f for f in folders if not _SKIPPED.match(f)) if below.count(os.sep) < MAX_DEPTH else []
        for name in sorted(names):
            seen += 1
            if seen > MAX_ENTRIES:
                return found, [f"More than {MAX_ENTRIES:,} files: the rest was not looked at."]
            relative = os.path.normpath(os.path.join(below, name)).replace(os.sep, "/")
            if not exercise_of(relative):
                continue
            data, problem = _read_file(os.path.join(root, name))
            if problem:
                problems.append(f"{display_name(relative)} {problem}.")
            else:
                found[relative] = data
    return found, problems


def _read_file(path):
    """(bytes, None), or (None, what is wrong with it). Never waits on a pipe, never follows a link."""
    try:
        descriptor = os.open(path, os.O_RDONLY | getattr(os, "O_NOFOLLOW", 0) | getattr(os, "O_NONBLOCK", 0))
    except OSError:
        return None, "is a link or cannot be opened; it was not read"
    with open(descriptor, "rb") as file:
        status = os.fstat(descriptor)
        if not stat.S_ISREG(status.st_mode):
            return None, "is not an ordinary file; it was not read"
        if status.st_nlink > 1:
            return None, "is a second name (hard link) of another file; it was not read"
        data = file.read(MAX_FILE + 1)
    return (data, None) if len(data) <= MAX_FILE else (None, f"is larger than {MAX_FILE >> 10} kB; it was not read")


def read_member_zip(path, name):
    """A member's files from a zip, read in memory; nothing is unpacked."""
    data, problem = _read_whole_zip(path)
    if problem:
        return Member(name, {}, (problem,))
    try:
        with zipfile.ZipFile(io.BytesIO(data)) as archive:
            return _member(name, *_from_zip(archive))
    except (zipfile.BadZipFile, NotImplementedError, OSError, ValueError, EOFError, RuntimeError) as error:
        return Member(name, {}, (f"The zip cannot be read ({display_name(str(error))}). Ask for it again.",))


def _read_whole_zip(path):
    try:
        with open(path, "rb") as file:
            data = file.read(MAX_ZIP + 1)
    except OSError:
        return None, "The zip cannot be opened."
    return (data, None) if len(data) <= MAX_ZIP else (None, f"The zip is larger than {MAX_ZIP >> 20} MB; it was not read.")


def _from_zip(archive):
    found, problems = {}, []
    for entry in archive.infolist()[:MAX_ENTRIES]:
        parts = entry.filename.replace("\\", "/").split("/")
        if entry.is_dir() or not exercise_of("/".join(parts)) or any(_SKIPPED.match(p) for p in parts if p not in (".", "..")):
            continue
        shown = display_name(entry.filename)
        if ".." in parts or parts[0] == "" or (entry.external_attr >> 16) & 0o170000 == stat.S_IFLNK:
            problems.append(f"{shown} points out of the zip; it was not read.")
        elif entry.flag_bits & 1:
            problems.append(f"{shown} is locked with a password; it was not read.")
        elif entry.file_size > MAX_FILE:
            problems.append(f"{shown} is larger than {MAX_FILE >> 10} kB; it was not read.")
        else:
            with archive.open(entry) as file:
                data = file.read(MAX_FILE + 1)
            if len(data) > MAX_FILE:
                problems.append(f"{shown} is larger than {MAX_FILE >> 10} kB; it was not read.")
            else:
                found["/".join(part for part in parts if part != ".")] = data
    return found, problems


def exercise_of(relative):
    """The exercise that a file is an answer to, by its last two names or, failing that, its last; None if to none."""
    parts = relative.removesuffix(".py").split("/")
    if not relative.endswith(".py"):
        return None
    path = "/".join(parts[-2:])
    if path in PATHS:
        return path
    in_other_unit = len(parts) > 1 and re.match(r"unit\d\d_", parts[-2])
    return None if in_other_unit else _BY_NAME.get(parts[-1])


def _member(name, found, problems):
    """Files by exercise; of two for one exercise, the one in a unit's folder and nearest the top is taken, and said."""
    chosen = {}
    for relative in sorted(found, key=lambda r: ("/".join(r.removesuffix(".py").split("/")[-2:]) not in PATHS, r.count("/"), r)):
        path = exercise_of(relative) + ".py"
        if path in chosen:
            problems.append(f"Two files for {path}: {display_name(chosen[path])} was taken, {display_name(relative)} left.")
        else:
            chosen[path] = relative
    files = {}
    for path, relative in chosen.items():
        try:
            files[path] = _decoded(found[relative])
        except (SyntaxError, UnicodeDecodeError, LookupError):
            problems.append(f"{display_name(relative)} is not text in UTF-8, nor in the encoding that it names; save it as UTF-8.")
    order = {f"{path}.py": place for place, path in enumerate(PATHS)}
    return Member(name, dict(sorted(files.items(), key=lambda item: order[item[0]])), tuple(problems))


def _decoded(data):
    encoding, _ = tokenize.detect_encoding(io.BytesIO(data).readline)
    return io.IncrementalNewlineDecoder(None, translate=True).decode(data.decode(encoding), final=True)

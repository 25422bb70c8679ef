"""What members hand in: a folder of folders and zips, by people nobody here knows, and which file answers which exercise.

What cannot be read is said in a sentence and left; it never stops the rest.
"""

import os
import re
import unicodedata
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace
from pathlib import Path

from ..course import PATHS
from ..faults import Problem, attempt
from ..text import display_name
from .reading import SKIPPED, read_files_in_folder, read_files_in_zip

_CODING = re.compile(rb"[ \t\f]*#[^\n]*?coding[:=][ \t]*([-\w.]+)")
_UTF_8 = {b"utf-8", b"utf8", b"utf-8-sig"}
_LATIN_1 = {b"latin-1", b"iso-8859-1", b"iso-latin-1", b"latin1", b"l1"}
MOST_SAID = 20  # problems named of one member
MOST_HELPERS = 50  # of one member
_HELPER = re.compile(r"(?!test_)[^\W\d]\w*(?<!_check)(?<!__init__)\.py")
_NOT_THEIRS = {"checker", "solutions", "tests", "course", "practice", "site-packages"}  # of a pack handed in whole
_BY_NAME = {path.rpartition("/")[2]: path for path in PATHS}


@dataclass(frozen=True)
class Member:
    """One member's submission: exercise files by path, and a sentence for whatever could not be read.

    `name` is for people to read; `identity` is who it is: see `identity_of`.
    """

    name: str
    files: Mapping[str, str]
    problems: tuple[str, ...] = ()
    identity: str = ""


class UnreadableFolder(Problem):
    """The folder of submissions cannot be read at all; the text says why and what to do."""


@dataclass(frozen=True)
class Submission:
    """Where one member's submission lies, not yet read: a folder, a zip, or something that is neither."""

    name: str
    path: str
    kind: str
    identity: str = ""


def find_submissions(folder: str | Path) -> list[Submission]:
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
        if SKIPPED.match(entry.name):
            continue
        if entry.name in folders:
            found.append(_submission(entry.name, entry.path, "folder"))
        elif entry.is_symlink():
            found.append(_submission(entry.name, entry.path, "link"))
        elif entry.name.lower().endswith(".zip"):
            stem = entry.name[:-4]
            found.append(_submission(entry.name if stem in folders else stem, entry.path, "zip"))
    if not found:
        raise UnreadableFolder(f"{shown} holds no submissions: expected a folder or a zip for each member.")
    return _with_distinct_names(found)


def _submission(name: str, path: str, kind: str) -> Submission:
    return Submission(display_name(name), path, kind, identity_of(name))


def identity_of(name: str) -> str:
    """Who a submission is by, from the name of its folder or zip as it stands on the disk.

    Marks set by hand hang on this, so no two names have one identity. A name that shows as it is written is its own; any
    other is spelt out, behind a line break, which no name that shows has.
    """
    return name if name == display_name(name) else "\n" + name.encode("unicode_escape").decode()


def _with_distinct_names(found: list[Submission]) -> list[Submission]:
    """The submissions, with a number to names that look alike. Who is called just so keeps the name; others stand back."""
    names, seen = {}, set()
    for submission in sorted(found, key=lambda one: (one.identity != one.name, one.name != _look(one.name))):
        name, number = submission.name, 1
        while _look(name) in seen:
            number += 1
            name = f"{submission.name} ({number})"
        seen.add(_look(name))
        names[submission.path] = name
    return [replace(submission, name=names[submission.path]) for submission in found]


def _look(name: str) -> str:
    """What two names have in common that look the same on a page: letters put together or written singly, wide or narrow."""
    return " ".join(unicodedata.normalize("NFKC", name).split())


def read_submission(submission: Submission) -> Member:
    """The member's files, read once and now."""
    member, fault = attempt(_read, submission)
    if member is None:
        problem = f"The submission could not be read: a fault of the checker's ({fault}). Tell whoever looks after it."
        member = Member(submission.name, {}, (problem,))
    return replace(member, identity=submission.identity)


def _read(submission: Submission) -> Member:
    if submission.kind == "folder":
        return read_member_folder(submission.path, submission.name)
    if submission.kind == "zip":
        return member_from(submission.name, *read_files_in_zip(submission.path, may_be_used))
    return Member(submission.name, {}, ("The submission is a link to somewhere else; it was not followed.",))


def read_folder(folder: str | Path) -> list[Member]:
    """Every member in a folder, as `find_submissions` finds them."""
    return [read_submission(submission) for submission in find_submissions(folder)]


def read_member_folder(folder: str | Path, name: str) -> Member:
    """A member's files from a folder."""
    return member_from(name, *read_files_in_folder(os.fspath(folder), may_be_used))


def may_be_used(relative: str) -> bool:
    """Whether a file is an exercise, or may be a helper of the member's own beside one."""
    *folders, name = relative.split("/")
    helper = _HELPER.fullmatch(name) and not _NOT_THEIRS & set(folders)
    return exercise_of(relative) is not None or bool(helper)


def exercise_of(relative: str) -> str | None:
    """The exercise that a file is an answer to, by its last two names or, failing that, its last; None if to none."""
    parts = relative.removesuffix(".py").split("/")
    if not relative.endswith(".py"):
        return None
    path = "/".join(parts[-2:])
    if path in PATHS:
        return path
    in_other_unit = len(parts) > 1 and re.match(r"unit\d\d_", parts[-2])
    return None if in_other_unit else _BY_NAME.get(parts[-1])


def member_from(name: str, found: dict[str, bytes], problems: list[str]) -> Member:
    """Files by exercise; of two for one exercise, the one in a unit's folder and nearest the top is taken, and said."""
    chosen: dict[str, str] = {}
    for relative in sorted(
        filter(exercise_of, found),
        key=lambda r: ("/".join(r.removesuffix(".py").split("/")[-2:]) not in PATHS, r.count("/"), r),
    ):
        path = f"{exercise_of(relative)}.py"
        if path in chosen:
            problems.append(f"Two files for {path}: {display_name(chosen[path])} was taken, {display_name(relative)} left.")
        else:
            chosen[path] = relative
    files = {}
    for path, relative in (chosen | _helpers(found, chosen)).items():
        try:
            files[path] = _decode(found[relative])
        except ValueError:
            problems.append(f"{display_name(relative)} is not text in UTF-8; save it as UTF-8.")
    if len(problems) > MOST_SAID:
        problems = [*problems[:MOST_SAID], f"And {len(problems) - MOST_SAID:,} more like these."]
    order = {f"{path}.py": place for place, path in enumerate(PATHS)}
    return Member(
        name, dict(sorted(files.items(), key=lambda item: (order.get(item[0], len(order)), item[0]))), tuple(problems)
    )


def _helpers(found: Iterable[str], chosen: Mapping[str, str]) -> dict[str, str]:
    """Files of the member's own beside the exercises, by where they are imported from: a unit, or the top for all."""
    places: dict[str, str] = {}
    for path, relative in chosen.items():
        folder, unit = relative.rpartition("/")[0], path.partition("/")[0]
        in_its_unit = folder.rpartition("/")[2] == unit
        places[folder] = f"{unit}/" if in_its_unit else ""
        if in_its_unit:
            places.setdefault(folder.rpartition("/")[0], "")
    beside = sorted((one.count("/"), one) for one in found if exercise_of(one) is None and one.rpartition("/")[0] in places)
    helpers: dict[str, str] = {}
    for _, relative in beside[:MOST_HELPERS]:
        folder, _, name = relative.rpartition("/")
        helpers.setdefault(places[folder] + name, relative)
    return helpers


def _decode(data: bytes) -> str:
    """The text of a source: UTF-8, with or without its mark, or Latin-1 where the first two lines say so (PEP 263).

    Python knows a hundred encodings more; some of them take minutes, and some run code.
    """
    named = [match[1].lower().replace(b"_", b"-") for line in data.split(b"\n", 2)[:2] if (match := _CODING.match(line))]
    if named and named[0] not in _UTF_8 | _LATIN_1:
        raise ValueError
    text = data.decode("latin-1" if named and named[0] in _LATIN_1 else "utf-8-sig")
    return text.replace("\r\n", "\n").replace("\r", "\n")

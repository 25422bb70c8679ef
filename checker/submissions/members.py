"""What members hand in: a folder of folders and zips, by people nobody here knows, and which file answers which exercise.

What cannot be read is said in a sentence and left; it never stops the rest.
"""

import os
import re
import unicodedata
from collections.abc import Container, Iterable, Mapping, Sequence
from dataclasses import dataclass, field, replace
from pathlib import Path

from ..course import PATHS
from ..faults import Problem, attempt
from ..text import display_name
from . import recognised
from .names import member_name
from .reading import ARCHIVES, SKIPPED, File, HandIn, read_files_in_archive, read_files_in_folder

_CODING = re.compile(rb"[ \t\f]*#[^\n]*?coding[:=][ \t]*([-\w.]+)")
_UTF_8 = {b"utf-8", b"utf8", b"utf-8-sig"}
_LATIN_1 = {b"latin-1", b"iso-8859-1", b"iso-latin-1", b"latin1", b"l1"}
MOST_SAID = 20  # problems named of one member
MOST_HELPERS = 50  # of one member
_HELPER = re.compile(r"(?!test_)[^\W\d]\w*(?<!_check)(?<!__init__)\.py")
_NOT_THEIRS = {"checker", "solutions", "tests", "course", "practice", "site-packages"}  # of a pack handed in whole
_HANDED_OUT = {"START.md", "README.md", "LICENSE", "pyproject.toml", "constraints.txt", "py.typed", "progress.json"}
_BY_NAME = {path.rpartition("/")[2]: path for path in PATHS}


@dataclass(frozen=True)
class Member:
    """One member's submission: exercise files by path, and what is to be said of the files.

    `problems` are of what could not be read and may be an answer, `notes` of what was read all the same: under another name, of
    two the newer. `unread` says of an exercise that is not among the files why: its answer may be what was left; under "" what
    goes for every such exercise. `name` is for people to read; `identity` is who it is: see `identity_of`.
    """

    name: str
    files: Mapping[str, str]
    problems: tuple[str, ...] = ()
    identity: str = ""
    notes: tuple[str, ...] = ()
    unread: Mapping[str, str] = field(default_factory=dict)

    @property
    def said(self) -> tuple[str, ...]:
        """All that is to be said of the files."""
        return *self.problems, *self.notes

    def why_unread(self, path: str) -> str:
        """Why the answer to an exercise may have been handed in and not been read; "" where nothing points to that."""
        return "" if f"{path}.py" in self.files else self.unread.get(path) or self.unread.get("", "")


class UnreadableFolder(Problem):
    """The folder of submissions cannot be read at all; the text says why and what to do."""


@dataclass(frozen=True)
class Submission:
    """Where one member's submission lies, not yet read: a folder, a zip, or something that is neither; and what is to be said of its
    name, if anything."""

    name: str
    path: str
    kind: str
    identity: str = ""
    note: str = ""


def find_submissions(folder: str | Path, names: str = "") -> list[Submission]:
    """Every submission in a folder, in the order of their names.

    Parameters
    ----------
    folder : str or Path
    names : str
        The pattern by which members' names are taken out of those of folders and archives, as `member_name` knows it; left out: the
        names as they are. Who a submission is by hangs on the whole name all the same.

    Raises
    ------
    UnreadableFolder
        If there is no such folder, nothing in it looks like a submission, or no name in it fits the pattern.
    WrongPattern
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
        elif ending := next((one for one in ARCHIVES if entry.name.lower().endswith(one)), ""):
            stem = entry.name[: -len(ending)]
            found.append(_submission(entry.name if stem in folders else stem, entry.path, "archive"))
    if not found:
        raise UnreadableFolder(f"{shown} holds no submissions: expected a folder or a zip for each member.")
    return _with_distinct_names(_by_pattern(found, names, shown) if names else found)


def _by_pattern(found: list[Submission], pattern: str, shown: str) -> list[Submission]:
    """The submissions under the members' names; one whose name does not fit keeps it, and that is said."""
    names = [member_name(submission.name, pattern) for submission in found]
    if not any(names):
        raise UnreadableFolder(
            f"Nothing in {shown} fits the pattern for names {display_name(pattern)!r}: the first is called {found[0].name!r}."
        )
    unfit = f"The name does not fit the pattern {display_name(pattern)!r}: it stands as it is."
    return [
        replace(submission, name=name) if name else replace(submission, note=unfit)
        for submission, name in zip(found, names, strict=True)
    ]


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
        member = _unreadable(submission.name, problem)
    return replace(member, identity=submission.identity, notes=(*member.notes, *filter(None, [submission.note])))


def _read(submission: Submission) -> Member:
    if submission.kind == "folder":
        return read_member_folder(submission.path, submission.name)
    if submission.kind == "archive":
        return member_from(submission.name, read_files_in_archive(submission.path, may_be_used))
    return _unreadable(submission.name, "The submission is a link to somewhere else; it was not followed.")


def _unreadable(name: str, problem: str) -> Member:
    return Member(name, {}, (problem,), unread={"": problem})


def read_folder(folder: str | Path, names: str = "") -> list[Member]:
    """Every member in a folder, as `find_submissions` finds them."""
    return [read_submission(submission) for submission in find_submissions(folder, names)]


def read_member_folder(folder: str | Path, name: str, account: bool = True) -> Member:
    """A member's files from a folder; `account` as in `member_from`."""
    return member_from(name, read_files_in_folder(os.fspath(folder), may_be_used), account)


def may_be_used(relative: str) -> bool:
    """Whether a file is, or may be, an answer to an exercise, a helper of the member's own beside one, or holds such."""
    *folders, name = relative.split("/")
    return name.lower().endswith((*recognised.SOURCES, *ARCHIVES)) and (
        exercise_of(relative) is not None or not _is_not_theirs(name, folders)
    )


def _is_not_theirs(name: str, folders: Iterable[str]) -> bool:
    """Whether a file is one of those that were handed out beside the exercises, or belongs to an exercise of another course."""
    return bool(_NOT_THEIRS & set(folders)) or name.startswith("test_") or name.endswith(("_check.py", "__init__.py"))


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


@dataclass(frozen=True)
class Candidate:
    """A file that may answer an exercise. `rank`: 0 by its name, 1 by its name but for what was added, 2 by its functions."""

    path: str
    relative: str
    source: str
    time: float
    rank: int
    said: str = ""

    @property
    def order(self) -> tuple:
        """The one that is taken comes first: no unwritten stub before an answer, a name before what was guessed, the newer before the
        older, the one in a unit's folder and nearest the top before others."""
        in_unit = "/".join(self.relative.removesuffix(".py").split("/")[-2:]) == self.path
        unwritten = recognised.is_unwritten(self.path, self.source)
        return unwritten, self.rank == 2, -self.time, not in_unit, self.relative.count("/"), self.relative


def member_from(name: str, handed_in: HandIn, account: bool = True) -> Member:
    """Files by exercise. Of several for one exercise the first by `Candidate.order` is taken, and said.

    With `account` each file that was handed in is read, or a sentence says why not.
    """
    notes, sources, answers = list(handed_in.notes), {}, []
    for relative, file in sorted(handed_in.files.items()):
        try:
            sources[relative], said = _source(relative, file)
        except ValueError as problem:
            handed_in.leave(relative, str(problem))
            continue
        answers += _candidates(relative, sources[relative], file.time, said)
    chosen: dict[str, Candidate] = {}
    for one in sorted(answers, key=lambda one: one.order):
        taken = chosen.setdefault(f"{one.path}.py", one)
        if taken is one:
            notes += [one.said] if one.said else []
        elif one.rank < 2:
            why = (
                "the newer"
                if taken.time > one.time
                else "the other being unwritten"
                if recognised.is_unwritten(one.path, one.source)
                else ""
            )
            notes.append(
                f"Two files for {one.path}.py: {display_name(taken.relative)} was taken{f', {why}' if why else ''}, "
                f"{display_name(one.relative)} left."
            )
    taken_from = {path: one.relative for path, one in chosen.items()}
    helpers = _helpers(sources.keys() - set(taken_from.values()), taken_from)
    answering = {one.relative for one in answers} | set(helpers.values())
    problems = list(handed_in.problems)
    unread = [(path, says) for relative, says in handed_in.unread for path in ([_meant(relative)] if relative else [""])]
    missing = [path for path in PATHS if f"{path}.py" not in chosen]
    left = [relative for relative in sources if relative not in answering]
    for relative in (*left, *filter(_is_worth_saying, handed_in.passed_over)) if account else ():
        says, paths = _left(relative, sources.get(relative, ""), missing)
        is_code = relative.lower().endswith(recognised.SOURCES)
        (problems if paths or is_code else notes).append(says)
        unread += [(path, says) for path in paths]
    files = {path: one.source for path, one in chosen.items()} | {path: sources[relative] for path, relative in helpers.items()}
    order = {f"{path}.py": place for place, path in enumerate(PATHS)}
    return Member(
        name,
        dict(sorted(files.items(), key=lambda item: (order.get(item[0], len(order)), item[0]))),
        _shortened(problems),
        notes=_shortened(notes),
        unread={path: says for path, says in reversed(unread) if path == "" or path in missing},
    )


def _shortened(sentences: Sequence[str]) -> tuple[str, ...]:
    more = len(sentences) - MOST_SAID
    return (*sentences[:MOST_SAID], *([f"And {more:,} more like these."] if more > 0 else ()))


def _meant(relative: str) -> str | None:
    """The exercise that a file was meant to answer, as far as its name tells."""
    return exercise_of(relative) or recognised.named_like(relative) or recognised.near_in_name(relative)


def _source(relative: str, file: File) -> tuple[str, str]:
    """(the program in a file, what is to be said of it); ValueError says why there is none."""
    try:
        text = _decode(file.data)
    except ValueError:
        raise ValueError("is not text in UTF-8; save it as UTF-8") from None
    if not relative.lower().endswith(".ipynb"):
        return text, ""
    try:
        code, lines = recognised.code_of_notebook(text)
    except ValueError as problem:
        raise ValueError(f"was not read: {problem}") from None
    return code, f", without {lines} line{'s' * (lines != 1)} that only a notebook obeys" if lines else ""


def _candidates(relative: str, source: str, time: float, said: str) -> list[Candidate]:
    """What a file may be an answer to."""
    shown = display_name(relative)
    if exact := exercise_of(relative):
        return [Candidate(exact, relative, source, time, 0)]
    named = recognised.named_like(relative)
    other = _in_other_unit(relative, named) if named else False
    if named and not other:
        same = recognised.stem_of(relative).casefold() == named.rpartition("/")[2]
        if same or recognised.defined_in(source) & recognised.functions_of(named):
            return [Candidate(named, relative, source, time, 1, f"{shown} was read as {named}, by its name{said}.")]
    return [
        Candidate(path, relative, source, time, 2, f"{shown} was read as {path}, by its functions{said}.")
        for path in recognised.answered_by(source)
        if not _in_other_unit(relative, path)
    ]


def _in_other_unit(relative: str, path: str) -> bool:
    """Whether a file lies in the folder of another unit than an exercise's."""
    folder = relative.rpartition("/")[0].rpartition("/")[2]
    return bool(re.match(r"unit\d\d_", folder)) and folder != path.partition("/")[0]


_PACKED_OTHERWISE = (".7z", ".rar", ".tar", ".xz", ".bz2", ".gz")


def _left(relative: str, source: str, missing: Container[str]) -> tuple[str, list[str]]:
    """(why a file was not taken and what to do, the exercises it may have been an answer to: of those `missing`, "" for any)."""
    name, low = display_name(relative), relative.lower()
    if low.endswith(_PACKED_OTHERWISE):
        return f"{name} was not read: it is packed in a way that is not unpacked here. Pack it as a zip.", [""]
    if (named := recognised.named_like(relative)) and _in_other_unit(relative, named):
        return f"{name} was not read: {named.rpartition('/')[2]} is an exercise of {named.partition('/')[0]}.", [named]
    near = named or recognised.near_in_name(relative)
    paths = [near] if near and near in missing else []
    why = "answers are Python files (.py), notebooks (.ipynb), or zips of them."
    if low.endswith(recognised.SOURCES):
        why = "it is called like no exercise and does not hold all functions of one."
        paths = paths or [path for path in recognised.partly_answered_by(source) if path in missing][:1]
    guesses = "".join(f" If it is {short}, call it {short}.py." for short in (path.rpartition("/")[2] for path in paths))
    return f"{name} was not read: {why}{guesses}", paths


def _is_worth_saying(relative: str) -> bool:
    """Whether a file that was passed over is the member's own, and not one that was handed out."""
    *folders, name = relative.split("/")
    return not (_is_not_theirs(name, folders) or name in _HANDED_OUT or name.endswith(".pyc"))


def _helpers(found: Iterable[str], chosen: Mapping[str, str]) -> dict[str, str]:
    """Files of the member's own beside the exercises, by where they are imported from: a unit, or the top for all."""
    places: dict[str, str] = {}
    for path, relative in chosen.items():
        folder, unit = relative.rpartition("/")[0], path.partition("/")[0]
        in_its_unit = folder.rpartition("/")[2] == unit
        places[folder] = f"{unit}/" if in_its_unit else ""
        if in_its_unit:
            places.setdefault(folder.rpartition("/")[0], "")
    beside = sorted(
        (one.count("/"), one)
        for one in found
        if exercise_of(one) is None and one.rpartition("/")[0] in places and _HELPER.fullmatch(one.rpartition("/")[2])
    )
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

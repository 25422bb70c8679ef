"""What can be wrong with a marks store, each in a sentence: what, where, what to do."""

import sqlite3
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from ..faults import Problem

_SHUT = (
    "{path} cannot be written: see that its folder exists and that disk, folder and file are not read-only, "
    "or name another file."
)
_BUSY = "Another run is keeping {path} to itself: let it finish, then run again; nothing is lost."
_SENTENCES = {
    sqlite3.SQLITE_FULL: "The disk is full, so {path} took no more marks: make room and run again; marking goes on "
    "where it stopped.",
    sqlite3.SQLITE_IOERR: "The disk refused to read or write {path} ({text}): see to the disk or its quota, then run "
    "again; marking goes on where it stopped.",
    sqlite3.SQLITE_NOTADB: "{path} is not a marks store, or its beginning is damaged: name another file, or move it "
    "away and run again.",
    **dict.fromkeys((sqlite3.SQLITE_READONLY, sqlite3.SQLITE_CANTOPEN, sqlite3.SQLITE_PERM), _SHUT),
    **dict.fromkeys((sqlite3.SQLITE_BUSY, sqlite3.SQLITE_LOCKED, sqlite3.SQLITE_PROTOCOL), _BUSY),
}


class StoreProblem(Problem):
    """The store cannot be used; the text is one sentence: what, where, what to do."""


@contextmanager
def store_problems(path: Path) -> Iterator[None]:
    """Turn SQLite's errors about the store at `path` into a `StoreProblem`."""
    try:
        yield
    except UnicodeDecodeError:
        raise StoreProblem(damage_sentence(path, "a text in it is not UTF-8")) from None
    except sqlite3.Error as error:
        code = getattr(error, "sqlite_errorcode", sqlite3.SQLITE_ERROR) & 0xFF
        sentence = _SENTENCES.get(code)
        raise StoreProblem(sentence.format(path=path, text=error) if sentence else damage_sentence(path, error)) from error


def damage_sentence(path: Path, what: object) -> str:
    """The sentence for a store that is not as it was written."""
    return (
        f"{path} is damaged ({' '.join(str(what).split())[:100]}): move it away and run again, and every mark is "
        "worked out anew; marks set by hand are in the last marks table, to be entered again."
    )

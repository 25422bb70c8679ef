"""Marks, kept: one SQLite file that can be cut off at any moment and loses nothing that it has acknowledged.

Verdicts are kept by what they were made from, so an unchanged submission under an unchanged check is not judged again.
They survive the end of the program at once, and a power cut at the latest when their run is finished: until then they
can be worked out again. Marks set by hand cannot, and are on the disk when `override` returns.
"""

import json
import os
import sqlite3
import threading
from collections.abc import Iterable, Iterator, Mapping, Sequence
from contextlib import contextmanager, suppress
from dataclasses import dataclass, replace
from datetime import UTC, datetime
from fractions import Fraction
from functools import lru_cache
from hashlib import blake2b
from pathlib import Path
from time import monotonic, sleep
from types import MappingProxyType
from typing import Any

from ..judging.explanations import NO_FILE
from ..judging.fingerprint import VerdictKey
from ..judging.verdict import NOT_ATTEMPTED, NOT_HANDED_IN, OF_ONE_RUN, Verdict, from_data, to_data
from ..submissions.likeness import Alike
from .details import RunDetails, calendar_year, details_from_data, details_to_data
from .schema import APPLICATION_ID, STEPS
from .store_problem import StoreProblem, damage_sentence, store_problems

_KEY = "(submission, judged_by, seed) = (?, ?, ?)"
PATIENCE = 30.0  # seconds to wait for another run's turn at the store


@dataclass(frozen=True)
class Override:
    """A mark set by a person in place of the one worked out. `when` is UTC, ISO 8601."""

    member: str
    exercise: str
    mark: Fraction
    reason: str
    who: str
    when: str


Recorded = tuple[str, tuple[str, ...], tuple[Verdict, ...], str, tuple[str, ...]]


@contextmanager
def open_store(path: str | Path, patience: float = PATIENCE) -> Iterator["Store"]:
    """The store in a file, made if there is none, brought up to date if it is an older one.

    Parameters
    ----------
    path : str or Path
    patience : float, seconds
        How long to wait for another run that is writing.

    Raises
    ------
    StoreProblem
        If it cannot be opened or used, here or in any call of the store's.
    """
    path = Path(os.path.abspath(path))
    with store_problems(path):
        connection = sqlite3.connect(path, timeout=patience, isolation_level=None, check_same_thread=False)
    try:
        store = Store(path, connection, patience)
        store._prepare()
        yield store
    finally:
        with suppress(sqlite3.Error):
            connection.close()


class Store:
    """An open store; made by `open_store`. Any thread may call it."""

    def __init__(self, path: Path, connection: sqlite3.Connection, patience: float) -> None:
        self._path, self._connection, self._patience, self._lock = path, connection, patience, threading.RLock()

    def get(self, key: VerdictKey) -> Verdict | None:
        """The verdict kept under a key, if there is one."""
        row = self._row(f"SELECT verdict, seal FROM verdicts WHERE {_KEY}", key)
        return row and self._verdict(key, *row)

    def put(self, key: VerdictKey, verdict: Verdict) -> Verdict:
        """Keep a verdict; what is returned is the one that counts: another run's, if that was there first.

        Where the checker itself failed there is no verdict to be kept: the next run judges anew. Nor is there where a file could not
        be read: the key, which knows only what was, would tell it of everybody who handed in none.
        """
        if verdict.kind in OF_ONE_RUN:
            return verdict
        text = json.dumps(to_data(verdict), separators=(",", ":"))
        with self._change() as connection:
            kept = connection.execute(
                "INSERT INTO verdicts (submission, judged_by, seed, verdict, seal) VALUES (?, ?, ?, ?, ?) "
                "ON CONFLICT DO NOTHING",
                (*key, text, _seal(*key, text)),
            ).rowcount
        return verdict if kept else self.get(key) or verdict

    def begin_run(self, folder: str | Path, details: RunDetails) -> int:
        """Note that a run over a folder begins; the number returned is the run's."""
        with self._change() as connection:
            run = connection.execute(
                "INSERT INTO runs (folder, seed, started) VALUES (?, ?, ?) RETURNING id",
                (str(folder), str(details.seed), _now()),
            ).fetchone()[0]
            _put_details(connection, run, details)
            return run

    def about_run(self, run: int) -> RunDetails:
        """What a run's marks are published under; of a run of the first form, what was usual then."""
        seed, started, details, seal = self._row("SELECT seed, started, details, seal FROM runs WHERE id = ?", (run,))
        try:
            if details is None and seal is None:
                return RunDetails(int(seed), calendar_year(datetime.fromisoformat(started).date()))
            if seal != _seal(run, seed, details):
                raise ValueError
            return details_from_data(json.loads(details), int(seed))
        except (KeyError, TypeError, ValueError):
            raise StoreProblem(damage_sentence(self._path, "what a run was told is not as it was written")) from None

    def record(
        self,
        run: int,
        member: str,
        problems: Iterable[str],
        verdicts: Iterable[VerdictKey | Verdict],
        identity: str = "",
        notes: Iterable[str] = (),
    ) -> None:
        """Note a member as marked in a run, all at once: for each exercise the key of a verdict kept before, or the verdict, where
        that belongs to this run alone.
        """
        with self._change() as connection:
            kept = [
                (to_data(one), _seal(json.dumps(to_data(one), sort_keys=True)))
                if isinstance(one, Verdict)
                else connection.execute(f"SELECT id, seal FROM verdicts WHERE {_KEY}", one).fetchone()
                for one in verdicts
            ]
            if None in kept:
                raise ValueError(f"{member} cannot be recorded before all verdicts are kept")
            row = run, member, json.dumps(list(problems)), json.dumps([place for place, _ in kept])
            later = identity or member, json.dumps(list(notes))
            seal = _seal(*row[:3], *(seal for _, seal in kept), *later)
            connection.execute(
                "INSERT OR REPLACE INTO members (run, name, problems, verdicts, seal, identity, notes) VALUES (?, ?, ?, ?, ?, ?, ?)",
                (*row, seal, *later),
            )

    def finish_run(self, run: int, alike: Iterable[Alike] = (), not_compared: Mapping[str, str] = MappingProxyType({})) -> None:
        """Note that a run is over, and which of its members are nearly alike. All of its marks are then on the disk."""
        details = replace(self.about_run(run), alike=tuple(alike), not_compared=tuple(not_compared.items()))
        with self._change(durable=True) as connection:
            _put_details(connection, run, details)
            connection.execute("UPDATE runs SET finished = ? WHERE id = ?", (_now(), run))

    def latest_run(self) -> int | None:
        """The newest run that was finished."""
        row = self._row("SELECT max(id) FROM runs WHERE finished IS NOT NULL")
        return row[0]

    def newest_run(self) -> int | None:
        """The newest run, finished or not."""
        return self._row("SELECT max(id) FROM runs")[0]

    def count_members(self, run: int) -> int:
        """How many members are marked in a run."""
        return self._row("SELECT count(*) FROM members WHERE run = ?", (run,))[0]

    def members(self, run: int) -> Iterator[Recorded]:
        """(name, problems, verdicts, identity, notes) of each member marked in a run, in the order in which they were marked."""
        for (place,) in self._rows("SELECT id FROM members WHERE run = ? ORDER BY id", (run,)):
            yield self._member(run, place)

    def _member(self, run: int, place: int) -> Recorded:
        columns = "submission, judged_by, seed, verdict, seal"
        try:
            name, problems, ids, seal, *later = self._row(
                "SELECT name, problems, verdicts, seal, identity, notes FROM members WHERE id = ?", (place,)
            )
            rows = [
                (one, _seal(json.dumps(one, sort_keys=True)))
                if isinstance(one, dict)
                else self._row(f"SELECT {columns} FROM verdicts WHERE id = ?", (one,))
                for one in json.loads(ids)
            ]
            if seal != _seal(run, name, problems, *(row[-1] for row in rows), *(one for one in later if one is not None)):
                raise ValueError
        except (ValueError, TypeError, OverflowError):
            raise StoreProblem(damage_sentence(self._path, "a member's marks are not as they were written")) from None
        verdicts = (
            from_data(row[0]) if isinstance(row[0], dict) else self._verdict(VerdictKey(*row[:3]), *row[3:]) for row in rows
        )
        identity, notes = later
        return name, tuple(json.loads(problems)), tuple(verdicts), identity or name, tuple(json.loads(notes or "[]"))

    def override(self, member: str, exercise: str, mark: Fraction, reason: str, who: str) -> Override:
        """Set a mark by hand. It holds through every remark until another is set or it is withdrawn."""
        made = Override(member, exercise, Fraction(mark), reason, who, _now())
        self._add_override(made, str(made.mark))
        return made

    def withdraw(self, member: str, exercise: str, reason: str, who: str) -> None:
        """Let the mark that is worked out count again. The record of the one set by hand stays in the store."""
        self._add_override(Override(member, exercise, Fraction(0), reason, who, _now()), None)

    def overrides(self) -> dict[tuple[str, str], Override]:
        """The marks set by hand that hold now, by member and exercise."""
        holding = {}
        for *row, seal in self._rows("SELECT member, exercise, mark, reason, who, at, seal FROM overrides ORDER BY id"):
            if seal != _seal(*row):
                raise StoreProblem(damage_sentence(self._path, "a mark set by hand is not as it was written"))
            member, exercise, mark, *rest = row
            holding[member, exercise] = mark and Override(member, exercise, Fraction(mark), *rest)
        return {key: override for key, override in holding.items() if override}

    def _add_override(self, made: Override, mark: str | None) -> None:
        row = (made.member, made.exercise, mark, made.reason, made.who, made.when)
        with self._change(durable=True) as connection:
            connection.execute(
                "INSERT INTO overrides (member, exercise, mark, reason, who, at, seal) VALUES (?, ?, ?, ?, ?, ?, ?)",
                (*row, _seal(*row)),
            )

    def _verdict(self, key: VerdictKey, text: str, seal: str) -> Verdict:
        if seal != _seal(*key, text):
            raise StoreProblem(damage_sentence(self._path, "a verdict is not as it was written"))
        try:
            return _verdict_from(text)
        except (KeyError, TypeError, ValueError):
            raise StoreProblem(
                f"{self._path} holds marks of a run by another version of the checker: run again to mark anew."
            ) from None

    def _row(self, query: str, values: Sequence = ()) -> Any:
        with self._lock, store_problems(self._path):
            return self._connection.execute(query, values).fetchone()

    def _rows(self, query: str, values: Sequence = ()) -> list:
        with self._lock, store_problems(self._path):
            return self._connection.execute(query, values).fetchall()

    @contextmanager
    def _change(self, durable: bool = False) -> Iterator[sqlite3.Connection]:
        """One transaction: all of it or nothing. A durable one is on the disk, with all before it, when it is over."""
        with self._lock, store_problems(self._path):
            self._connection.execute(f"PRAGMA synchronous = {'FULL' if durable else 'NORMAL'}")
            self._connection.execute("BEGIN IMMEDIATE")
            try:
                yield self._connection
                self._connection.execute("COMMIT")
            except BaseException:
                if self._connection.in_transaction:
                    self._connection.execute("ROLLBACK")
                raise

    def _prepare(self) -> None:
        """Make the tables, or bring them up to date, or say why this is no store of ours."""
        with self._lock, store_problems(self._path):
            if self._pragma("application_id") != APPLICATION_ID or self._pragma("user_version") != len(STEPS):
                self._bring_up_to_date()
            self._keep_a_log()
            self._connection.execute("BEGIN IMMEDIATE")  # finds out now, not after an hour, that nothing can be written
            self._connection.execute("ROLLBACK")
            fault = self._pragma("integrity_check(1)")
            if fault != "ok":
                raise StoreProblem(damage_sentence(self._path, fault))

    def _keep_a_log(self) -> None:
        """Write ahead from now on. SQLite does not wait its turn for this one change, so it is asked again."""
        until = monotonic() + self._patience
        while self._pragma("journal_mode") != "wal":
            try:
                self._connection.execute("PRAGMA journal_mode = WAL")
            except sqlite3.OperationalError as error:
                if error.sqlite_errorcode & 0xFF != sqlite3.SQLITE_BUSY or monotonic() > until:
                    raise
                sleep(0.01)

    def _bring_up_to_date(self) -> None:
        with self._change(durable=True) as connection:
            version = self._pragma("user_version")
            is_empty = not connection.execute("SELECT count(*) FROM sqlite_master").fetchone()[0]
            if not is_empty and self._pragma("application_id") != APPLICATION_ID:
                raise StoreProblem(f"{self._path} is not a marks store, so it was left alone: name another file.")
            if version > len(STEPS):
                raise StoreProblem(
                    f"{self._path} was written by a newer checker (form {version} of the store; this one knows "
                    f"{len(STEPS)}), so it was left alone: update the checker, or name another file."
                )
            for statement in (statement for step in STEPS[version:] for statement in step):
                connection.execute(statement)
            connection.execute(f"PRAGMA application_id = {APPLICATION_ID}")
            connection.execute(f"PRAGMA user_version = {len(STEPS)}")

    def _pragma(self, name: str) -> Any:
        return self._connection.execute(f"PRAGMA {name}").fetchone()[0]


@lru_cache(maxsize=4096)
def _verdict_from(text: str) -> Verdict:
    verdict = from_data(json.loads(text))
    if verdict.kind == NOT_ATTEMPTED and any(finding.says == NO_FILE for finding in verdict.findings):
        findings = tuple(replace(finding, kind=NOT_HANDED_IN) for finding in verdict.findings)
        return replace(verdict, kind=NOT_HANDED_IN, findings=findings)  # of a checker to which that was one thing with a stub
    return verdict


def _seal(*columns: object) -> str:
    return blake2b(repr(columns).encode("utf-8", "surrogatepass"), digest_size=12).hexdigest()


def _put_details(connection: sqlite3.Connection, run: int, details: RunDetails) -> None:
    text = json.dumps(details_to_data(details), separators=(",", ":"))
    connection.execute("UPDATE runs SET details = ?, seal = ? WHERE id = ?", (text, _seal(run, str(details.seed), text), run))


def _now() -> str:
    return datetime.now(UTC).isoformat(timespec="seconds")

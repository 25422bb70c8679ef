"""What stands for a class after all of its runs: who was marked once stays, and what is handed in anew is added."""

from collections import defaultdict
from collections.abc import Collection, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from datetime import datetime
from fractions import Fraction
from functools import cache, cached_property
from itertools import chain
from typing import NamedTuple

from ..core import for_the_core
from ..course import PATHS
from ..judging.judge import absent
from ..term.term import LAST, Person, Term, Work
from .attempts import Sighting, WorkMarks, hand_ins, key_of_work
from .details import RunDetails
from .marksheet import Mark, MemberMarks
from .store import Marked, Override, Store


@dataclass(frozen=True)
class _Member:
    """Someone in the class: the name, who it is on the roster, and where in the store what they handed in is."""

    name: str
    identities: tuple[str, ...]
    person: Person | None
    places: tuple[tuple[int, int], ...]


class ClassMarks(Collection[MemberMarks]):
    """The marks that stand, read from the store each time they are gone through, so that a class of any size fits."""

    def __init__(self, store: Store):
        self._store, self._overrides, self.term = store, store.overrides(), store.term()
        self._runs = {run: store.about_run(run) for run in store.runs(finished=True)}

    @cached_property
    def works(self) -> tuple[Work, ...]:
        """The pieces of work that were marked so far, in the term's order; one without a name for what belongs to none."""
        newest = {about.work: about for about in self._runs.values()}
        known = [work.name for work in self.term.works] if self.term else []
        # one that the term has no more comes before those that it has, so that where both have an exercise the term's counts
        names = sorted(newest, key=lambda name: (bool(name), name in known, name in known and known.index(name)))
        return tuple(self._work(name, newest[name]) for name in names)

    def _work(self, name: str, about: RunDetails) -> Work:
        if not name:
            set_so_far = {path for run in self._runs for path in self._paths_of(run) if not self._runs[run].work}
            return Work("", _in_order(set_so_far), about.path, counts=LAST)
        work = self.term.work(name) if self.term else None
        return replace(work or Work(name, ()), paths=about.paths, path=about.path)

    def _paths_of(self, run: int) -> Sequence[str]:
        """The exercises of a run; of one of an earlier form, those that its members have verdicts on."""
        if about := self._runs[run].paths:
            return about
        first = next(iter(self._store.members(run)), None)
        return [verdict.exercise for verdict in first.verdicts] if first else ()

    @cached_property
    def paths(self) -> tuple[str, ...]:
        """The exercises that were set so far, in the course's order."""
        return _in_order({path for work in self.works for path in work.paths})

    @cached_property
    def _entries(self) -> list[_Member]:
        """Everybody, by name: who handed in, and who is on the roster. No two have the same name."""
        term = self.term or Term("", "")
        places: dict[str, list[tuple[int, int]]] = defaultdict(list)
        names: dict[str, str] = {}
        identities: dict[str, dict[str, None]] = defaultdict(dict)
        people: dict[str, Person] = {}
        for identity, name, run, place in self._store.places():
            person = term.person(name, identity)
            who = f"\t{person.id}" if person else identity  # no identity begins so
            if person:
                people[who] = person
            names[who] = person.name if person else name
            places[who].append((run, place))
            identities[who][identity] = None
        for person in term.roster:
            who = f"\t{person.id}"
            people.setdefault(who, person)
            names.setdefault(who, person.name)
            identities[who].setdefault(person.name, None)
        found, taken = [], set[str]()
        for who in sorted(names, key=lambda who: names[who]):
            name, number = names[who], 1
            while name in taken:
                number += 1
                name = f"{names[who]} ({number})"
            taken.add(name)
            found.append(_Member(name, tuple(identities[who]), people.get(who), tuple(places.get(who, ()))))
        return found

    @property
    def identities(self) -> dict[str, str]:
        """Who is meant by each name and by each id of the roster: the identity that marks set by hand hang on."""
        by_id = {entry.person.id: entry.identities[-1] for entry in self._entries if entry.person}
        return by_id | {entry.name: entry.identities[-1] for entry in self._entries}

    def work(self, name: str) -> Work | None:
        """The piece of work of a name that was marked, capitals or not."""
        return next((work for work in self.works if work.name and work.name.casefold() == name.strip().casefold()), None)

    def __iter__(self) -> Iterator[MemberMarks]:
        return map(self._marks_of, self._entries)

    def __len__(self) -> int:
        return len(self._entries)

    def __contains__(self, other: object) -> bool:
        return any(member == other for member in self)

    def _marks_of(self, entry: _Member) -> MemberMarks:
        rows: dict[str, list[Marked]] = defaultdict(list)
        for run, place in entry.places:
            rows[self._runs[run].work].append(self._store.member(run, place))
        overrides = self._overrides_of(entry.identities)
        marks, works = {}, []
        for work in self.works:
            handed_in = hand_ins(work, [self._seen(row) for row in rows[work.name]])
            counting = next((one.verdicts for one in handed_in if one.counts), {})
            if not handed_in and rows[work.name]:
                counting = {verdict.exercise: verdict for verdict in rows[work.name][-1].verdicts}
            own = {path: Mark(counting.get(path) or _missing(path), overrides.get(path)) for path in work.paths}
            by_hand = overrides.get(key_of_work(work.name)) if work.name else None
            any_mark = bool(handed_in) or any(mark.override for mark in own.values())
            amount = sum((mark.amount for mark in own.values()), Fraction(0)) if any_mark else None
            works.append(WorkMarks(work, handed_in, amount, sum(mark.of for mark in own.values()), by_hand))
            marks |= {path: mark for path, mark in own.items() if handed_in or mark.override or path not in marks}
        newest = [row for of_work in rows.values() for row in of_work[-1:]]
        problems, notes = (
            tuple(dict.fromkeys(said))
            for said in (chain(*(row.problems for row in newest)), chain(*(row.notes for row in newest)))
        )
        identity = entry.identities[-1]
        in_order = tuple(marks[path] for path in self.paths)
        return MemberMarks(entry.name, problems, in_order, identity, notes, tuple(works), entry.person)

    def _seen(self, row: Marked) -> Sighting:
        about = self._runs[row.run]
        look = for_the_core if about.path == "core" else lambda verdict: verdict
        when = about.received or row.changed
        return Sighting(
            datetime.fromisoformat(when) if when else None,
            bool(about.received),
            row.content,
            {verdict.exercise: look(verdict) for verdict in row.verdicts},
        )

    def _overrides_of(self, identities: Iterable[str]) -> dict[str, Override]:
        """The marks set by hand of someone who may have handed in under several names; of two for one exercise the newer."""
        found: dict[str, Override] = {}
        for identity in identities:
            for path, override in self._by_member.get(identity, {}).items():
                if path not in found or found[path].when <= override.when:
                    found[path] = override
        return found

    @cached_property
    def _by_member(self) -> dict[str, dict[str, Override]]:
        sorted_out: dict[str, dict[str, Override]] = defaultdict(dict)
        for (member, path), override in self._overrides.items():
            sorted_out[member][path] = override
        return sorted_out

    def about(self) -> RunDetails:
        """What the marks are published under: what the newest run was told, and the pairs nearly alike of each piece's newest."""
        newest = {about.work: about for about in self._runs.values()}
        last = self._runs[max(self._runs)]
        alike = tuple(dict.fromkeys(pair for about in newest.values() for pair in about.alike))
        return replace(last, alike=alike)


_missing = cache(absent)


def _in_order(paths: Collection[str]) -> tuple[str, ...]:
    return tuple(sorted(paths, key=PATHS.index))


class Change(NamedTuple):
    """What a run did to the marks of a member on what had been marked before, and on which exercises."""

    name: str
    before: Fraction
    now: Fraction
    exercises: list[str]


def changes(before: Mapping[str, Mapping[str, Fraction]], after: Iterable[MemberMarks]) -> Iterator[Change]:
    """Each member whose marks on what had been marked before are others now.

    `before` holds the marks on each exercise, by the member's identity.
    """
    for member in after:
        had = before.get(member.identity, {})
        now = {mark.exercise: mark.amount for mark in member.marks if mark.exercise in had}
        others = [path for path, amount in now.items() if amount != had[path]]
        if others:
            yield Change(member.name, sum(had.values(), Fraction(0)), sum(now.values(), Fraction(0)), others)


def set_aside_name(folder_name: str, day: str, taken: Collection[str]) -> str:
    """The name that a folder of marks is kept under when a new one is begun: `marks until 2026-10-05`."""
    name, number = f"{folder_name} until {day}", 1
    while name in taken:
        number += 1
        name = f"{folder_name} until {day} ({number})"
    return name

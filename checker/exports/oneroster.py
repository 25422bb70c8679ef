"""OneRoster 1.2 CSV (1EdTech): marks in the form in which school systems take them from one another.

One zip of CSV files in bulk form: who is in the class, what was set, what each result is. Identifiers are made from
what they name, so a second export speaks of the same things and can be loaded over the first.
"""

import io
import zipfile
from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from datetime import date
from functools import cached_property
from typing import IO, Any
from uuid import UUID, uuid5

from ..checks.exercise import Exercise
from ..course import UNITS, Unit, load_exercise, unit_of
from ..judging.verdict import NOT_ATTEMPTED, NOT_HANDED_IN, NOT_READ, Verdict, marks_text
from ..marks.marksheet import MemberMarks, override_sentence
from .cells import text_cell, write_rows
from .oneroster_fields import ABSENT, FIELDS

_OURS = UUID("6f1f4c1e-3f0b-5f57-9a37-0c0de0846000")
_LONG_AGO = (1980, 1, 1, 0, 0, 0)  # a zip notes a time for each file; a fixed one makes equal marks equal bytes

# A result that is nobody's wrong answer; the words are the standard's.
_STATUS = {NOT_ATTEMPTED: "not submitted", NOT_HANDED_IN: "not submitted", NOT_READ: "submitted"}

Row = dict[str, str]
Rows = Iterator[Row]


@dataclass(frozen=True)
class ClassDetails:
    """What a school system wants to know of a class that the submissions do not say."""

    title: str
    organisation: str
    begins: date
    ends: date
    marked: date

    @cached_property
    def ids(self) -> Mapping[str, str]:
        """Identifiers of what there is one of."""
        kinds = ("org", "course", "class", "schoolYear", "term", "gradingPeriod")
        return {kind: _id(kind, self.organisation, self.title, str(self.begins), str(self.ends)) for kind in kinds}


def write_oneroster(members: Iterable[MemberMarks], paths: Sequence[str], details: ClassDetails, file: IO[bytes]) -> None:
    """Write the zip.

    Parameters
    ----------
    members : iterable of MemberMarks
        Gone through once for each file in the zip.
    paths : sequence of str
        The exercises marked.
    details : ClassDetails
    file : binary file that can seek
    """
    with zipfile.ZipFile(file, "w") as archive:
        for name, rows in _files(members, paths, details).items():
            entry = zipfile.ZipInfo(f"{name}.csv", _LONG_AGO)
            entry.compress_type = zipfile.ZIP_DEFLATED
            with archive.open(entry, "w") as raw, io.TextIOWrapper(raw, "utf-8", "replace", newline="") as text:
                write_rows(text, [FIELDS[name]])
                write_rows(text, ([row.get(field, "") for field in FIELDS[name]] for row in rows))


def member_rows(members: Iterable[MemberMarks], details: ClassDetails) -> Mapping[str, Rows]:
    """The rows of the files that speak of members, by file; a column that a row does not name stays empty."""

    def of_members(row: Callable[[MemberMarks, str, ClassDetails], Any]) -> Iterator:
        return (row(member, _id("user", details.organisation, member.identity), details) for member in members)

    return {
        "users": of_members(_user),
        "roles": of_members(_role),
        "enrollments": of_members(_enrollment),
        "results": (row for rows in of_members(_results) for row in rows),
    }


def _files(members: Iterable[MemberMarks], paths: Sequence[str], details: ClassDetails) -> Mapping[str, Rows]:
    """The rows of each file."""
    of_members = member_rows(members, details)
    return {
        "manifest": _manifest(),
        "academicSessions": _sessions(details),
        "orgs": iter([{"sourcedId": details.ids["org"], "name": text_cell(details.organisation), "type": "school"}]),
        "courses": _courses(details),
        "classes": _classes(details),
        "users": of_members["users"],
        "roles": of_members["roles"],
        "enrollments": of_members["enrollments"],
        "categories": _categories(paths, details),
        "lineItems": (_line_item(load_exercise(path), details) for path in paths),
        "results": of_members["results"],
    }


def _manifest() -> Rows:
    yield {"propertyName": "manifest.version", "value": "1.0"}
    yield {"propertyName": "oneroster.version", "value": "1.2"}
    for name in sorted([*FIELDS, *ABSENT], key=str.lower):
        if name != "manifest":
            yield {"propertyName": f"file.{name}", "value": "absent" if name in ABSENT else "bulk"}
    yield {"propertyName": "source.systemName", "value": "Crystal to Reaction"}
    yield {"propertyName": "source.systemCode", "value": "crystal-to-reaction"}


def _sessions(details: ClassDetails) -> Rows:
    parent = ""
    for kind in ("schoolYear", "term", "gradingPeriod"):
        yield {
            "sourcedId": details.ids[kind],
            "title": text_cell(details.title),
            "type": kind,
            "startDate": details.begins.isoformat(),
            "endDate": details.ends.isoformat(),
            "parentSourcedId": parent,
            "schoolYear": f"{details.ends:%Y}",
        }
        parent = details.ids[kind]


def _courses(details: ClassDetails) -> Rows:
    yield {
        "sourcedId": details.ids["course"],
        "schoolYearSourcedId": details.ids["schoolYear"],
        "title": text_cell(details.title),
        "orgSourcedId": details.ids["org"],
    }


def _classes(details: ClassDetails) -> Rows:
    yield {
        "sourcedId": details.ids["class"],
        "title": text_cell(details.title),
        "courseSourcedId": details.ids["course"],
        "classType": "scheduled",
        "schoolSourcedId": details.ids["org"],
        "termSourcedIds": details.ids["term"],
    }


def _user(member: MemberMarks, user: str, details: ClassDetails) -> Row:
    """A submission has one name, in whatever order its owner writes it: the last word is taken for the family name."""
    given, _, family = (member.name.strip() or "unnamed").rpartition(" ")
    return {
        "sourcedId": user,
        "enabledUser": "true",
        "username": text_cell(member.name),
        "givenName": text_cell(given or family),
        "familyName": text_cell(family),
        "primaryOrgSourcedId": details.ids["org"],
    }


def _role(member: MemberMarks, user: str, details: ClassDetails) -> Row:
    return {
        "sourcedId": _id("role", user),
        "userSourcedId": user,
        "roleType": "primary",
        "role": "student",
        "orgSourcedId": details.ids["org"],
    }


def _enrollment(member: MemberMarks, user: str, details: ClassDetails) -> Row:
    return {
        "sourcedId": _id("enrollment", details.ids["class"], user),
        "classSourcedId": details.ids["class"],
        "schoolSourcedId": details.ids["org"],
        "userSourcedId": user,
        "role": "student",
        "primary": "false",
        "beginDate": details.begins.isoformat(),
        "endDate": details.ends.isoformat(),
    }


def _categories(paths: Sequence[str], details: ClassDetails) -> Rows:
    for unit in UNITS:
        if any(unit_of(path) == unit for path in paths):
            yield {"sourcedId": _category(unit, details), "title": unit.title}


def _line_item(exercise: Exercise, details: ClassDetails) -> Row:
    return {
        "sourcedId": _line(exercise.path, details),
        "title": text_cell(exercise.title),
        "description": exercise.path,
        "assignDate": details.begins.isoformat(),
        "dueDate": details.ends.isoformat(),
        "classSourcedId": details.ids["class"],
        "categorySourcedId": _category(unit_of(exercise.path), details),
        "gradingPeriodSourcedId": details.ids["gradingPeriod"],
        "resultValueMin": "0",
        "resultValueMax": str(exercise.marks),
        "schoolSourcedId": details.ids["org"],
    }


def _results(member: MemberMarks, user: str, details: ClassDetails) -> Rows:
    for mark in member.marks:
        if not mark.is_judged:
            continue  # a result has a score, and there is none yet
        status = "fully graded" if mark.is_counted else _STATUS[mark.verdict.kind]
        yield {
            "sourcedId": _id("result", _line(mark.exercise, details), user),
            "lineItemSourcedId": _line(mark.exercise, details),
            "studentSourcedId": user,
            "scoreStatus": status,
            "score": marks_text(mark.amount),
            "scoreDate": details.marked.isoformat(),
            "comment": text_cell(override_sentence(mark) or _why(mark.verdict)),
            "classSourcedId": details.ids["class"],
            "inProgress": "false",
            "incomplete": "false",
            "late": "false",
            "missing": str(status == "not submitted").lower(),
        }


def _why(verdict: Verdict) -> str:
    """A verdict in a word; with the reason where something was handed in and not read."""
    return f"{verdict.kind}: {verdict.findings[0].says}" if verdict.kind == NOT_READ and verdict.findings else verdict.kind


def _category(unit: Unit, details: ClassDetails) -> str:
    return _id("category", details.ids["class"], unit.folder)


def _line(path: str, details: ClassDetails) -> str:
    return _id("lineItem", details.ids["class"], path)


def _id(*of: str) -> str:
    return str(uuid5(_OURS, repr(of).encode("utf-8", "replace").decode()))

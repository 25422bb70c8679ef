"""Who is in a class: a table with name, id and address, or the roster files of OneRoster 1.2 (1EdTech)."""

import csv
import io
import zipfile
from collections.abc import Callable, Iterator, Mapping
from dataclasses import replace
from pathlib import Path

from ..text import display_name
from .term import Person

LARGEST = 16 * 1024 * 1024  # bytes of one file
ADDRESSES = ("address", "email", "e-mail", "mail")
Row = Mapping[str, str]


def read_roster(path: Path, class_id: str = "") -> tuple[Person, ...]:
    """Everybody on a roster, in its order.

    Parameters
    ----------
    path : Path
        A CSV file with a line of headings: name, id, address, and also, another name of theirs; or a folder or zip with
        users.csv and enrollments.csv.
    class_id : str
        Which class of OneRoster files is meant; may be left out where they hold one alone.

    Raises
    ------
    ValueError
        What is wrong with it, and with which line, in a sentence without its full stop.
    """
    if path.is_dir():
        people = list(_enrolled(lambda name: _bytes_of(path / name), path.name, class_id))
    elif path.suffix.lower() == ".zip":
        people = list(_of_zip(path, class_id))
    else:
        people = list(_listed(_rows(_bytes_of(path), path.name), path.name))
    if not people:
        raise ValueError(f"{path.name} names nobody: give each member a line")
    seen: dict[str, int] = {}
    for number, person in people:
        if person.id.casefold() in seen:
            raise ValueError(
                f"{path.name} has the id {person.id} in lines {seen[person.id.casefold()]} and {number}: no two may share one"
            )
        seen[person.id.casefold()] = number
    return tuple(person for _, person in people)


def table_rows(file: Path) -> list[tuple[int, Row]]:
    """(line, cells by their headings in small letters) of a CSV file; ValueError as `read_roster`."""
    return list(_rows(_bytes_of(file), file.name))


def _bytes_of(file: Path) -> bytes:
    try:
        with open(file, "rb") as opened:
            data = opened.read(LARGEST + 1)
    except OSError as problem:
        raise ValueError(f"{file.name} cannot be read ({problem.strerror}): name a file that lies beside the term's") from None
    if len(data) > LARGEST:
        raise ValueError(f"{file.name} is larger than {LARGEST >> 20} MB: a roster is not")
    return data


def _of_zip(path: Path, class_id: str) -> Iterator[tuple[int, Person]]:
    def read(name: str) -> bytes:
        with archive.open(name) as opened:
            data = opened.read(LARGEST + 1)
        if len(data) > LARGEST:
            raise ValueError(f"{name} in {path.name} is larger than {LARGEST >> 20} MB: a roster is not")
        return data

    try:
        with zipfile.ZipFile(io.BytesIO(_bytes_of(path))) as archive:
            yield from _enrolled(read, path.name, class_id)
    except KeyError as problem:
        raise ValueError(
            f"{path.name} lacks a roster file ({problem.args[0]}): it needs users.csv and enrollments.csv"
        ) from None
    except (zipfile.BadZipFile, NotImplementedError, RuntimeError, EOFError, OSError):
        raise ValueError(f"{path.name} is no zip that can be read: pack it anew") from None


def _rows(data: bytes, name: str) -> Iterator[tuple[int, Row]]:
    """(line, row by lower-case headings) of a CSV file."""
    try:
        text = data.decode("utf-8-sig")
    except UnicodeDecodeError as problem:
        line = data[: problem.start].count(b"\n") + 1
        raise ValueError(f"{name}, line {line} is not UTF-8: save the file as UTF-8 text") from None
    semicolons = text.partition("\n")[0].count(";") > text.partition("\n")[0].count(",")
    reader = csv.reader(io.StringIO(text, newline=""), delimiter=";" if semicolons else ",")
    try:
        headings = [heading.strip().lower() for heading in next(reader, [])]
        for row in reader:
            if any(cell.strip() for cell in row):
                yield reader.line_num, dict(zip(headings, (cell.strip() for cell in row), strict=False))
    except csv.Error as problem:
        raise ValueError(f"{name}, line {reader.line_num} is no row of a table ({problem}): save it as CSV") from None


def _listed(rows: Iterator[tuple[int, Row]], file: str) -> Iterator[tuple[int, Person]]:
    for number, row in rows:
        for heading in ("name", "id"):
            if heading not in row:
                raise ValueError(f"{file} has no column {heading} in its first line: it wants name, id and address")
            if not row[heading]:
                raise ValueError(f"{file}, line {number} has no {heading}: give one to everybody")
        address = next((row[one] for one in ADDRESSES if row.get(one)), "")
        yield number, replace(_person(row["id"], row["name"], address, file, number), also=row.get("also", ""))


def _person(of_id: str, name: str, address: str, file: str, number: int) -> Person:
    if not of_id.isprintable() or len(of_id) > 255:
        raise ValueError(f"{file}, line {number} has an id that cannot be used: write it in letters and figures")
    if address and (address.count("@") != 1 or not address.isprintable() or " " in address):
        raise ValueError(
            f"{file}, line {number} has an address that is none ({display_name(address)}): write such as isla@saltmarsh.example"
        )
    return Person(of_id, display_name(name), address)


def _enrolled(read: Callable[[str], bytes], file: str, class_id: str) -> Iterator[tuple[int, Person]]:
    """The students who are enrolled in a class, from users.csv and enrollments.csv."""
    enrolled = [
        row for _, row in _rows(read("enrollments.csv"), "enrollments.csv") if row.get("role") == "student" and _is_active(row)
    ]
    classes = sorted({row.get("classsourcedid", "") for row in enrolled})
    if not class_id and len(classes) > 1:
        raise ValueError(f'{file} has students of {len(classes)} classes: say which is meant, by class_id = "{classes[0]}"')
    if class_id and class_id not in classes:
        raise ValueError(f"{file} has no students of the class {class_id}: it has {', '.join(classes[:5]) or 'none'}")
    wanted = {row.get("usersourcedid", "") for row in enrolled if not class_id or row.get("classsourcedid") == class_id}
    for number, row in _rows(read("users.csv"), "users.csv"):
        if row.get("sourcedid") in wanted and _is_active(row):
            names = (
                row.get("preferredgivenname") or row.get("givenname", ""),
                row.get("preferredfamilyname") or row.get("familyname", ""),
            )
            yield number, _person(row["sourcedid"], " ".join(filter(None, names)), row.get("email", ""), "users.csv", number)


def _is_active(row: Row) -> bool:
    return row.get("status", "").lower() != "tobedeleted"

"""A builder's file into parts: every value in SI units, and where it was given."""

from collections.abc import Sequence
from dataclasses import dataclass
from difflib import get_close_matches
from pathlib import Path
from typing import Any

from ..toml_source import Source, open_source, source_of
from .fault import SheetFault
from .keys import CRYSTAL, MUST, NEEDED_BY, ROLES, SECTIONS, STATION, TOP, Key
from .values import quoted, value_of


@dataclass(frozen=True)
class Entry:
    """A value, the text it was read from, and whether it stood in the file or is the default."""

    value: object
    text: str
    stated: bool


@dataclass(frozen=True)
class Station:
    """A station of the file. Power and distance are None where the field was given, and the other way about."""

    role: str
    place: int
    name: str
    frequency: float
    power: float | None
    distance: float | None
    ground: str
    field: float | None


@dataclass(frozen=True)
class Parts:
    """All of a file: `parts["former.diameter"]` is a value in SI units."""

    source: Source
    given: dict[str, Entry]
    stations: tuple[Station, ...]

    def __getitem__(self, name: str) -> Any:
        return self.given[name].value

    def fault(self, name: str | tuple, sentence: str) -> SheetFault:
        """A fault at the key "former.diameter"; for a station, at ("wanted", 0, "power")."""
        path = name if isinstance(name, tuple) else tuple(filter(None, name.split(".")))
        return self.source.fault(path, sentence)


def read_parts(file: Path | str | bytes, name: str = "sheet.toml") -> Parts:
    """Parts from a builder's file.

    Parameters
    ----------
    file : Path, or the bytes of one
    name : str
        What bytes are called in a fault.

    Raises
    ------
    SheetFault
        If anything in the file cannot be used; see `SheetFault`.
    """
    source = source_of(file, name) if isinstance(file, bytes) else open_source(Path(file))
    _refuse_strangers(source)
    given = {}
    for section, keys in SECTIONS.items():
        table, path = (source.data, ()) if section == TOP else (source.data.get(section, {}), (section,))
        given |= {".".join((*path, key.name)): _read(source, path, table, key) for key in keys}
    chosen = given["set"].value
    for section, names in NEEDED_BY.items():
        for name in names:
            if chosen != CRYSTAL and not given[f"{section}.{name}"].stated:
                raise _missing(source, (section,), next(key for key in SECTIONS[section] if key.name == name))
    stations = tuple(_station(source, role, place) for role in ROLES for place in range(len(source.data.get(role, ()))))
    if not any(station.role == "wanted" for station in stations):
        raise source.fault(
            ("wanted",), "no station is wanted: add a table [[wanted]] with its name, frequency, power and distance."
        )
    return Parts(source, given, stations)


def _refuse_strangers(source: Source) -> None:
    """Every table and key is one that the sheet knows, and is a table where a table is due."""
    tops = [key.name for key in SECTIONS[TOP]]
    known = [*tops, *(section for section in SECTIONS if section), *ROLES]
    for name, value in source.data.items():
        if name not in known:
            raise source.fault((name,), f"there is no {_kind(value)} {quoted(name)} in a sheet: {_near(name, known)}.")
        if name in SECTIONS and not isinstance(value, dict):
            raise source.fault((name,), f"{name} is a table of its own: write [{name}] on a line, and its keys below it.")
        if name in ROLES and not (isinstance(value, list) and all(isinstance(one, dict) for one in value)):
            raise source.fault(
                (name,), f"{name} stands for a station, of which there may be several: write [[{name}]], in two brackets."
            )
        tables: list[tuple[tuple, dict]] = [((name,), value)] if name in SECTIONS else []
        if name in ROLES:
            tables = [((name, place), one) for place, one in enumerate(value)]
            if len(value) > 12:
                raise source.fault((name, 12), f"there are more than twelve [[{name}]] stations: leave some out.")
        for path, table in tables:
            names = [key.name for key in SECTIONS.get(name, STATION)]
            for key in table:
                if key not in names:
                    raise source.fault((*path, key), f"there is no key {quoted(key)} in [{name}]: {_near(key, names)}.")


def _kind(value: Any) -> str:
    return "table" if isinstance(value, (dict, list)) else "key"


def _near(name: str, known: Sequence[str]) -> str:
    close = get_close_matches(name, known, n=1)
    return f"did you mean {close[0]}" if close else f"it has {', '.join(known)}"


def _missing(source: Source, path: tuple, key: Key) -> SheetFault:
    where = f"[{path[0]}]" if path else "the top of the file"
    example = key.takes.example
    return source.fault(
        (*path, key.name),
        f'{key.name} is missing from {where} ({key.says.replace("`", "")}): add {key.name} = "{example}", with your own value.',
    )


def _read(source: Source, path: tuple, table: dict, key: Key) -> Entry:
    """The value of one key of a table, or its default."""
    if key.name in table:
        text = table[key.name]
        try:
            return Entry(value_of(text, key), text, True)
        except ValueError as problem:
            raise source.fault((*path, key.name), f"{problem}.") from None
    if key.default is MUST and not key.optional:
        raise _missing(source, path, key)
    return Entry(None if key.default is MUST else value_of(key.default, key), key.default or "", False)


def _station(source: Source, role: str, place: int) -> Station:
    table, path = source.data[role][place], (role, place)
    values: dict[str, Any] = {key.name: _read(source, path, table, key).value for key in STATION}
    by_field = values["field"] is not None
    if by_field:
        for other in ("power", "distance", "ground"):
            if other in table:
                raise source.fault(
                    (*path, other), f"the station has a field and a {other}: give either field, or power, distance and ground."
                )
    for name in () if by_field else ("power", "distance"):
        if values[name] is None:
            key = next(key for key in STATION if key.name == name)
            message = f'{name} is missing from this [[{role}]] station: add {name} = "{key.takes.example}" with its own value, '
            raise source.fault((*path, name), message + "or give its field instead.")
    return Station(role, place, **values)

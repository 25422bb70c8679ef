"""Pictures and sounds, made when first asked for and kept until what they are made from changes."""

import importlib
import json
import os
import re
import time
import traceback
from collections.abc import Iterable, Mapping
from concurrent.futures import ProcessPoolExecutor
from concurrent.futures.process import BrokenProcessPool
from contextlib import suppress
from dataclasses import dataclass
from multiprocessing import get_context
from pathlib import Path
from types import ModuleType
from typing import Any

from course.described import about
from course.press.faults import Fault
from course.press.media.sources import MediaSources, parameters_of
from course.settings import Setting, settings_of


@dataclass(frozen=True)
class Kind:
    """What to call a thing, where its functions live, and the module that makes files of what they return."""

    word: str
    package: str
    maker: str
    suffixes: tuple[str, ...]


PROCESSES = 2  # that make many things at once
LIKELY_SECONDS = {"figure": 0.4, "sound": 2.0}
FORM = 2  # of what a record holds beside its files; one more when that changes
FIGURE = Kind("figure", "course.figures", "course.figures.kit.svg", (".svg",))
SOUND = Kind("sound", "course.sounds", "course.sounds.kit.level", (".mp3", ".wav", ".svg"))


@dataclass(frozen=True)
class Stored:
    """What was said about a figure or sound, and its files by suffix."""

    about: dict[str, Any]
    files: dict[str, Path]

    @property
    def svg(self) -> str:
        """Its picture; empty for a sound that has none."""
        return self.files[".svg"].read_text("utf-8")


class MediaStore:
    """The figures and sounds in one folder.

    Parameters
    ----------
    sources : MediaSources
    folder : Path
    site_settings : mapping, optional
        Settings that hold for the whole site, handed to every function that takes one of that name.
    """

    def __init__(self, sources: MediaSources, folder: Path, site_settings: Mapping[str, Any] | None = None) -> None:
        self.sources, self.folder, self.site_settings = sources, folder, dict(site_settings or {})

    def fetch(self, kind: Kind, name: str) -> Stored:
        """A figure or sound, as it is kept if nothing it depends on has changed, else made anew.

        Parameters
        ----------
        kind : Kind
        name : str
            Its address, "unit/file/function".

        Returns
        -------
        Stored

        Raises
        ------
        Fault
            If there is no such function, or it fails.
        """
        order = self.order(kind, name)
        return self.stored(order) or carry_out(order)

    def order(self, kind: Kind, name: str) -> "Order":
        """All that it takes to make a figure or sound; a `Fault` if there is no such function."""
        module, function, takes = locate(kind, name, self.sources)
        given = {setting: value for setting, value in self.site_settings.items() if setting in takes}
        settings = "".join(f" {setting}={given[setting]}" for setting in sorted(given))
        key = f"{FORM} {self.sources.fingerprint(module, function, (kind.maker,))}{settings}"
        return Order(kind, name, module, function, given, key, self.folder / f"{kind.word}s" / name)

    def stored(self, order: "Order") -> Stored | None:
        """What was made by the same order before, or None."""
        kept = read_record(order)
        if kept.get("key") != order.key or not all(path.is_file() for path in order.files.values()):
            return None
        return Stored(kept["about"], order.files)

    def make_ahead(self, wanted: Iterable[tuple[Kind, str]]) -> None:
        """Make those of many figures and sounds that are not stored, in two processes; what fails is left for `fetch` to say."""
        orders = []
        for kind, name in wanted:
            with suppress(Fault):
                orders.append(self.order(kind, name))
        by_module: dict[str, list[Order]] = {}
        for order in orders:
            if self.stored(order) is None:
                by_module.setdefault(order.module, []).append(order)
        if len(by_module) < PROCESSES or (os.cpu_count() or 1) < PROCESSES:
            return
        longest_first = sorted(by_module.values(), key=lambda group: -sum(map(expected_seconds, group)))
        with suppress(BrokenProcessPool), ProcessPoolExecutor(PROCESSES, get_context("spawn")) as pool:
            list(pool.map(carry_out_all, longest_first))


@dataclass(frozen=True)
class Order:
    """A figure or sound to be made: the function, what it is given, all that it follows from as a key, where its files go."""

    kind: Kind
    name: str
    module: str
    function: str
    given: dict[str, Any]
    key: str
    stem: Path

    @property
    def files(self) -> dict[str, Path]:
        """Its files by suffix."""
        return {suffix: self.stem.with_suffix(suffix) for suffix in self.kind.suffixes}

    @property
    def record(self) -> Path:
        """The file that says by which order the others were made."""
        return self.stem.with_suffix(".json")


def read_record(order: Order) -> dict[str, Any]:
    """What was noted when a figure or sound was last made; empty if it never was."""
    try:
        record: dict[str, Any] = json.loads(order.record.read_text("utf-8"))
        return record
    except (OSError, ValueError):
        return {}


def expected_seconds(order: Order) -> float:
    """How long it took last time; where nobody knows, a guess: a sound is long to make."""
    return float(read_record(order).get("seconds", LIKELY_SECONDS[order.kind.word]))


def carry_out(order: Order) -> Stored:
    """Make a figure or sound and store it, the record last; a `Fault` if it fails."""
    begun = time.process_time()
    said, content = produce(order.kind, order.name, order.module, order.function, order.given)
    order.stem.parent.mkdir(parents=True, exist_ok=True)
    order.record.unlink(missing_ok=True)
    for suffix, path in order.files.items():
        path.write_bytes(content[suffix])
    record = {"key": order.key, "about": said, "seconds": round(time.process_time() - begun, 2)}
    order.record.write_text(json.dumps(record, ensure_ascii=False), "utf-8")
    return Stored(said, order.files)


def carry_out_all(orders: list[Order]) -> None:
    """Make what can be made of some orders."""
    for order in orders:
        with suppress(Fault):
            carry_out(order)


def is_address(name: object) -> bool:
    """Whether a text has the form of an address: the path of a file below `figures/` or `sounds/`, and a function in it."""
    return isinstance(name, str) and re.fullmatch(r"([a-z]\w*/)+[a-z]\w*", name) is not None


def locate(kind: Kind, name: str, sources: MediaSources) -> tuple[str, str, list[str]]:
    """Module and function that a name stands for, and the names of what the function takes."""
    if not is_address(name):
        raise Fault(f'a {kind.word} is named "unit/file/function", not {name!r}')
    file, _, function = name.rpartition("/")
    module = f"{kind.package}.{file.replace('/', '.')}"
    place = f"course/{kind.word}s/{file}.py"
    path = sources.path(module)
    if path is None:
        raise Fault(f"there is no {kind.word} {name}: the file {place} does not exist")
    for statement in sources.tree(path).body:
        if getattr(statement, "name", None) == function:
            return module, function, parameters_of(statement)
    raise Fault(f"there is no {kind.word} {name}: {place} has no function {function}")


def produce(
    kind: Kind, name: str, module: str, function: str, given: Mapping[str, Any]
) -> tuple[dict[str, Any], dict[str, bytes]]:
    """Call a function with some settings, and make files of what it returns.

    Returns
    -------
    (dict, dict)
        What is said about it, its settings in words among that; and its files by suffix.

    Raises
    ------
    Fault
        If it is not marked as a figure or sound, or fails.
    """
    try:
        maker: ModuleType = importlib.import_module(kind.maker)
        call = getattr(importlib.import_module(module), function)
        said = about(call)
        if said is None:
            raise Fault(f"{kind.word} {name} is not marked: write @{kind.word}(…) above it")
        settings = {key: describe_setting(setting, usual) for key, (setting, usual) in settings_of(call).items()}
        return said | {"settings": settings}, maker.files_of(call(**given), name, said)
    except Fault:
        raise
    except Exception as error:
        raise Fault(f"{kind.word} {name} failed: {type(error).__name__}: {error}{author_line(error, module)}") from error


def describe_setting(setting: Setting, usual: Any) -> tuple[str, str, str]:
    """A setting in words: its meaning, its usual value, what it may be."""
    return setting.says, setting.show(usual), setting.choice


def author_line(error: Exception, module: str) -> str:
    """The last line of the author's own file that an error passed through."""
    file = module.replace(".", "/") + ".py"
    lines = [frame.lineno for frame in traceback.extract_tb(error.__traceback__) if frame.filename.endswith(file)]
    return f" ({file}, line {lines[-1]})" if lines else ""

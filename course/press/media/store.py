"""Pictures and sounds, made when first asked for and kept until what they are made from changes."""

import importlib
import json
import re
import traceback
from collections.abc import Mapping
from dataclasses import dataclass
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
        module, function, takes = locate(kind, name, self.sources)
        given = {setting: value for setting, value in self.site_settings.items() if setting in takes}
        settings = "".join(f" {setting}={given[setting]}" for setting in sorted(given))
        key = f"{FORM} {self.sources.fingerprint(module, function, (kind.maker,))}{settings}"
        stem = self.folder / f"{kind.word}s" / name
        files = {suffix: stem.with_suffix(suffix) for suffix in kind.suffixes}
        record = stem.with_suffix(".json")
        if record.is_file() and all(path.is_file() for path in files.values()):
            kept = json.loads(record.read_text("utf-8"))
            if kept["key"] == key:
                return Stored(kept["about"], files)
        said, content = produce(kind, name, module, function, given)
        stem.parent.mkdir(parents=True, exist_ok=True)
        record.unlink(missing_ok=True)
        for suffix, path in files.items():
            path.write_bytes(content[suffix])
        record.write_text(json.dumps({"key": key, "about": said}, ensure_ascii=False), "utf-8")
        return Stored(said, files)


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

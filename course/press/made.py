"""Pictures and sounds, made when first asked for and kept until what they are made from changes."""

import importlib
import json
import re
import traceback
from dataclasses import dataclass
from pathlib import Path

from course.press.faults import Fault
from course.press.sources import Sources, parameters
from course.settings import Setting, settings_of


@dataclass(frozen=True)
class Kind:
    """What to call a thing, where its functions live, and the module that makes files of what they return."""

    word: str
    package: str
    maker: str
    suffixes: tuple[str, ...]


FORM = 2  # of what a record holds beside its files; one more when that changes
FIGURE = Kind("figure", "course.figures", "course.figures.svg", (".svg",))
SOUND = Kind("sound", "course.sounds", "course.sounds.level", (".mp3", ".wav", ".svg"))


@dataclass(frozen=True)
class Made:
    """What was said about a figure or sound, and its files by suffix; `anew` if it had to be made."""

    about: dict
    files: dict[str, Path]
    anew: bool


def made(kind: Kind, name: str, sources: Sources, build: Path, site: dict | None = None) -> Made:
    """A figure or sound, from the store if nothing it depends on has changed, else made anew.

    Parameters
    ----------
    kind : Kind
    name : str
        "file/function".
    sources : Sources
    build : Path
        Folder of the store.
    site : dict, optional
        Settings that hold for the whole site, handed to every function that takes one of that name.

    Returns
    -------
    Made

    Raises
    ------
    Fault
        If there is no such function, or it fails.
    """
    module, function = located(kind, name, sources)
    takes = parameters(next(part for part in sources.tree(sources.path(module)).body if getattr(part, "name", "") == function))
    given = {setting: value for setting, value in (site or {}).items() if setting in takes}
    settings = "".join(f" {setting}={given[setting]}" for setting in sorted(given))
    key = f"{FORM} {sources.fingerprint(module, function, (kind.maker,))}{settings}"
    stem = build / f"{kind.word}s" / name
    files = {suffix: stem.with_suffix(suffix) for suffix in kind.suffixes}
    record = stem.with_suffix(".json")
    if record.is_file() and all(path.is_file() for path in files.values()):
        kept = json.loads(record.read_text("utf-8"))
        if kept["key"] == key:
            return Made(kept["about"], files, anew=False)
    about, content = make(kind, name, module, function, given)
    stem.parent.mkdir(parents=True, exist_ok=True)
    record.unlink(missing_ok=True)
    for suffix, path in files.items():
        path.write_bytes(content[suffix])
    record.write_text(json.dumps({"key": key, "about": about}, ensure_ascii=False), "utf-8")
    return Made(about, files, anew=True)


def located(kind: Kind, name: str, sources: Sources) -> tuple[str, str]:
    """Module and function that a name stands for."""
    if not isinstance(name, str) or not re.fullmatch(r"[a-z]\w*/[a-z]\w*", name):
        raise Fault(f'a {kind.word} is named "file/function", not {name!r}')
    file, function = name.split("/")
    module = f"{kind.package}.{file}"
    place = f"course/{kind.word}s/{file}.py"
    path = sources.path(module)
    if path is None:
        raise Fault(f"there is no {kind.word} {name}: the file {place} does not exist")
    if not any(getattr(statement, "name", None) == function for statement in sources.tree(path).body):
        raise Fault(f"there is no {kind.word} {name}: {place} has no function {function}")
    return module, function


def make(kind: Kind, name: str, module: str, function: str, given: dict) -> tuple[dict, dict[str, bytes]]:
    """Call the function with some settings, and make files of what it returns."""
    try:
        maker = importlib.import_module(kind.maker)
        source = importlib.import_module(module)
        call = getattr(source, function)
        if not hasattr(call, "about"):
            raise Fault(f"{kind.word} {name} is not marked: write @{kind.word}(…) above it")
        settings = {key: told(setting, usual) for key, (setting, usual) in settings_of(call).items()}
        return call.about | {"settings": settings}, maker.files_of(call(**given), name, call.about)
    except Fault:
        raise
    except Exception as error:
        raise Fault(f"{kind.word} {name} failed: {type(error).__name__}: {error}{where(error, module)}") from error


def told(setting: Setting, usual) -> tuple[str, str, str]:
    """A setting in words: its meaning, its usual value, what it may be."""
    return setting.says, setting.show(usual), setting.choice


def where(error: Exception, module: str) -> str:
    """The last line of the author's own file that the error passed through."""
    file = module.replace(".", "/") + ".py"
    lines = [frame.lineno for frame in traceback.extract_tb(error.__traceback__) if frame.filename.endswith(file)]
    return f" ({file}, line {lines[-1]})" if lines else ""

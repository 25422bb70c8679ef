"""Figures, moving pictures and sounds made again by hand, with settings of one's own:

    python -m course.make list
    python -m course.make figure unit03_tuned_circuit/curves/ringing --set q=60 --into slides
    python -m course.make sound unit02_coil_and_condenser/coupling/nearer_and_nearer --set gaps="10 mm, 20 mm" --set tone="440 Hz"

Run it at the top of the checkout. Beside each file lies another, .txt, with the caption, the licence and the settings.
"""

import argparse
import difflib
import importlib
import sys
from collections.abc import Callable, Iterator, Sequence
from pathlib import Path
from typing import Any

from course.described import about
from course.press.faults import Fault
from course.press.media.labels import Label, label_for, labelled_png, labelled_wav, plain_text, standalone_svg
from course.press.media.png import draw_png
from course.press.media.store import FIGURE, SOUND, Kind, is_address, produce
from course.press.text import numbers
from course.press.text.calls import answer, replace_calls
from course.settings import settings_of

COURSE = Path(__file__).resolve().parent
KINDS = {"figure": FIGURE, "animation": FIGURE, "sound": SOUND}
MAKERS = numbers.MAKERS | {"by_raster": lambda nine, ten: nine, "term": str}  # what a caption may call for


def makers(kind: Kind, path: str = "**/*") -> Iterator[tuple[str, Callable[..., Any]]]:
    """All makers of one kind, or those in one file, by address and in order."""
    folder = COURSE / f"{kind.word}s"
    for file in sorted(folder.glob(f"{path}.py")):
        steps = file.relative_to(folder).with_suffix("").parts
        if steps[-1] == "__init__":
            continue
        module = importlib.import_module(".".join((kind.package, *steps)))
        for name, function in vars(module).items():
            if about(function) is not None and function.__module__ == module.__name__:
                yield "/".join((*steps, name)), function


def catalogue(word: str) -> str:
    """Every maker whose name holds a word, with its settings, their usual values and what they may be."""
    lines = []
    for kind in (FIGURE, SOUND):
        for name, function in makers(kind):
            if word in name:
                lines.append(f"{'animation' if is_animation(function) else kind.word} {name}")
                for key, (setting, usual) in settings_of(function).items():
                    lines.append(f"    {key} = {setting.show(usual)}: {setting.says}; may be {setting.choice}")
    if not lines:
        raise Fault(f"no figure, animation or sound has {word} in its name: python -m course.make list names them all")
    return "\n".join(lines)


def is_animation(function: Callable[..., Any]) -> bool:
    """Whether a maker's picture moves: its caption then has a box that holds it still."""
    return 'class="hold"' in (about(function) or {})["caption"]


def find_maker(kind: Kind, name: str) -> Callable[..., Any]:
    """The maker of a name; a `Fault` names the nearest."""
    file = name.rpartition("/")[0]
    near_by = dict(makers(kind, file)) if is_address(name) else {}
    if name not in near_by:
        all_of_kind = dict(makers(kind))
        near = difflib.get_close_matches(name, all_of_kind, n=1, cutoff=0.5)
        near = near or [other for other in all_of_kind if other.endswith(f"/{name}")]
        meant = f"did you mean {near[0]}?" if near else f"python -m course.make list names every {kind.word}"
        raise Fault(f"there is no {kind.word} {name}: {meant}")
    return near_by[name]


def read_settings(function: Callable[..., Any], name: str, pairs: Sequence[str]) -> dict[str, Any]:
    """The values of `--set key=value`; a `Fault` says what is wrong with one."""
    known = settings_of(function)
    given = {}
    for pair in pairs:
        key, equals, text = pair.partition("=")
        key = key.strip()
        if not equals:
            raise Fault(f"--set {pair}: write a name, an equals sign and a value, such as --set q=60")
        if key not in known:
            there_are = f"it has {', '.join(known)}" if known else "it has none, and is made as it stands"
            raise Fault(f"{name} has no setting {key}: {there_are}")
        try:
            given[key] = known[key][0].read(text)
        except ValueError as error:
            raise Fault(f"{name}, {key}={text}: {error}") from None
    return given


def labelled_files(kind: Kind, name: str, pairs: Sequence[str]) -> tuple[Label, dict[str, bytes]]:
    """A picture or sound with some settings: its label, and its files by suffix, each with the label in it.

    Parameters
    ----------
    kind : Kind
    name : str
        Its address, "unit/file/function".
    pairs : sequence of str
        Such as "q=60".

    Returns
    -------
    (Label, dict)

    Raises
    ------
    Fault
        One sentence about a wrong name, setting or value.
    """
    function = find_maker(kind, name)
    given = read_settings(function, name, pairs)
    said, files = produce(kind, name, function.__module__, function.__name__, given)
    changed = {key: settings_of(function)[key][0].show(value) for key, value in given.items()}
    caption, words = (
        plain_text(replace_calls(text, lambda call: str(answer(call, MAKERS))))
        for text in (said["caption"], said["alt" if kind is FIGURE else "transcript"])
    )
    if changed:
        usual = ", ".join(f"{key} = {said['settings'][key][1]}" for key in changed)
        caption = f"Made with settings of one's own. These words were written for {usual}: {caption}"
    label = label_for(kind.word, name, said["settings"], caption, words, changed)
    if kind is FIGURE:
        return label, {".svg": standalone_svg(files[".svg"].decode(), label).encode()}
    tells = files[".svg"] and not changed  # the words in it are those of the usual settings
    picture = {".svg": standalone_svg(files[".svg"].decode(), label).encode()} if tells else {}
    return label, {".wav": labelled_wav(files[".wav"], label), ".mp3": files[".mp3"]} | picture


def parser() -> argparse.ArgumentParser:
    """The command's options."""
    command = argparse.ArgumentParser(prog="python -m course.make", description="Make a figure or sound of the course again.")
    actions = command.add_subparsers(dest="action", required=True)
    listing = actions.add_parser("list", help="name every figure, animation and sound, with its settings")
    listing.add_argument("word", nargs="?", default="", help="only names that hold this")
    for word in KINDS:
        one = actions.add_parser(word, help=f"make one {word}")
        one.add_argument("name", help="such as unit03_tuned_circuit/curves/ringing")
        one.add_argument("--set", action="append", default=[], metavar="KEY=VALUE", help="a setting; may be given again")
        one.add_argument("--into", type=Path, default=Path(), metavar="FOLDER", help="where to put the files; made if need be")
        if word != "sound":
            one.add_argument("--png", type=int, metavar="WIDTH", help="a PNG too, so many points wide; needs Chromium")
    return command


def main(arguments: Sequence[str] | None = None) -> int:
    """The command; 0 if all went well, 2 after a sentence about what is wrong."""
    options = parser().parse_args(arguments)
    try:
        if options.action == "list":
            print(catalogue(options.word))
            return 0
        label, files = labelled_files(KINDS[options.action], options.name, options.set)
        if getattr(options, "png", None) is not None:
            files[".png"] = labelled_png(draw_png(files[".svg"].decode(), options.png), label)
        options.into.mkdir(parents=True, exist_ok=True)
        for suffix, content in {**files, ".txt": label.text.encode()}.items():
            place = options.into / f"{options.name.rpartition('/')[2]}{suffix}"
            place.write_bytes(content)
            print(place)
    except (Fault, OSError) as error:
        print(error, file=sys.stderr)
        return 2
    return 0


if __name__ == "__main__":
    sys.exit(main())

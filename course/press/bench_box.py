"""The HTML of a bench: the whole one, and a small one in a lesson that stands at a setting."""

import re
import tomllib
from collections.abc import Callable
from pathlib import Path

from jinja2 import Environment, FileSystemLoader

from course.press.faults import Fault

PANEL = Path(__file__).parents[1] / "bench" / "panel"
PAGE = "bench.html"
SETS = (  # name in a setting, on the button, under the circuit
    ("crystal", "Crystal", "Crystal set"),
    ("valve", "One valve", "One valve"),
    ("reaction", "Reaction", "One valve with reaction"),
    ("isolated", "Isolated", "Isolated aerial with reaction"),
    ("quenched", "Quenched", "Quenched set, on 30 MHz"),
)
WRITTEN = {  # each part of a setting, and what it may say
    "set": "|".join(name for name, *_ in SETS),
    "tuning": r"[\d.]+kHz",
    "coupling": r"[\d.]+(uH|µH)",
    "reaction": r"[\d.]+pF",
    "feed": "gentle|fierce",
    "night": "yes|no",
}
QUENCHED = WRITTEN | {"coupling": r"[\d.]+nH", "reaction": r"[\d.]+", "quench": r"[\d.]+kHz"}
ROWS = (  # of the table that compares settings; the names are those in bench/panel/comparing.js
    ("set", "set"),
    ("dial", "dial at"),
    ("coupling", "coupling"),
    ("throttle", "reaction"),
    ("quench", "quench"),
    ("station", "station"),
    ("band", "band at −3 dB"),
    ("gain", "gain"),
    ("apart", "over the next station"),
    ("above", "above hearing"),
)
EXAMPLE = "set=reaction&tuning=855kHz&coupling=20uH&reaction=80pF"


def bench_html(setting: str, id: str, relative: Callable[[str], str], circuit: Callable[[str], str], whole: bool) -> str:
    """A bench that stands at a setting.

    Parameters
    ----------
    setting : str
        What stands after # in an address of the bench.
    id : str
        Address within the page; the ids inside begin with it.
    relative : function of an address in the site to one from this page
    circuit : function of a set's name to SVG
    whole : bool
        With circuits, comparison and goals; otherwise the small one for a lesson.

    Returns
    -------
    str

    Raises
    ------
    Fault
        If the setting is not one.
    """
    checked(setting)
    page = Environment(loader=FileSystemLoader(PANEL), trim_blocks=True).get_template("bench.html")
    return page.render(
        id=id,
        whole=whole,
        setting=setting,
        sets=SETS,
        rows=ROWS,
        page=f"{relative(PAGE)}#{setting}",
        radiating=f"{relative('safety.html')}#radiating",
        programme=relative("bench/programme.js"),
        circuits={name: lean(circuit(name)) for name, *_ in SETS} if whole else {},
        goals=goals() if whole else [],
    )


def checked(setting: str) -> None:
    """Refuse what is no setting."""
    parts = [part.partition("=")[::2] for part in setting.split("&")]
    if "set" not in dict(parts):
        raise Fault(f'"{setting}" is no setting of the bench: it is like {EXAMPLE}')
    written = QUENCHED if ("set", "quenched") in parts else WRITTEN
    for name, value in parts:
        if name not in written:
            raise Fault(f'the bench has no "{name}": a setting is made of {", ".join(written)}, as in {EXAMPLE}')
        if not re.fullmatch(written[name], value):
            raise Fault(f'"{value}" is no value for {name} on the bench: a setting is like {EXAMPLE}')


def goals() -> list[dict]:
    """What a newcomer is asked to do, in order; each `start` is held to be a setting."""
    found = tomllib.loads((PANEL / "goals.toml").read_text("utf-8"))["goal"]
    for goal in found:
        checked(goal["start"])
    return found


def style_sheet() -> str:
    """The bench's style sheet without what only its writers need."""
    sheet = re.sub(r"/\*.*?\*/", "", (PANEL / "bench.css").read_text("utf-8"), flags=re.S)
    return re.sub(r"\s*([{};,])\s*|\s+", lambda gap: gap[1] or " ", sheet).replace(": ", ":")


COMMON = {  # of nearly all lines of a circuit
    "stroke": "currentColor",
    "fill": "none",
    "stroke-width": "1.7",
    "stroke-linecap": "round",
    "stroke-linejoin": "round",
}
ALIKE = re.compile(r'<path d="[^"]*"(?P<style>(?: style="[^"]*")?) ?/>(?:\s*<path d="[^"]*"(?P=style) ?/>)+')


def lean(svg: str) -> str:
    """A drawing with its commonest style said once, lines alike in one path, and no more figures than a screen can show."""
    svg = re.sub(r"(\d)(?:\.0+|(\.\d)\d+)(?!\d)", r"\1\2", svg)
    head, _, body = svg.partition("</desc>")
    body = ALIKE.sub(one_path, re.sub(r' style="([^"]*)"', uncommon, body))
    common = ";".join(f"{name}:{value}" for name, value in COMMON.items())
    return f'{head}</desc><g style="{common}">{body.replace("</svg>", "</g></svg>")}'


def uncommon(style: re.Match) -> str:
    """What of a style is not common."""
    said = [part.split(":") for part in style[1].replace(": ", ":").split(";") if part.strip()]
    left = ";".join(f"{name.strip()}:{value}" for name, value in said if COMMON.get(name.strip()) != value)
    return f' style="{left}"' if left else ""


def one_path(run: re.Match) -> str:
    """Paths in a row that look alike, as one."""
    strokes = re.sub(r"\s*([A-Za-z,])\s*|\s+", lambda gap: gap[1] or " ", "".join(re.findall(' d="([^"]*)"', run[0])))
    return f'<path d="{strokes}"{run["style"]}/>'

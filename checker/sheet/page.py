"""A sheet as a page: one file, no script, no request, for the screen, the telephone and A4."""

from functools import cache
from pathlib import Path

import jinja2
from markupsafe import Markup

from ..checks.units import in_words
from ..files import open_replacement
from ..templates import environment
from ..text import escape_unseen
from . import keys, physics, pictures, sets, spread, working
from .partslist import parts_list
from .reaction import travel
from .supply import FUSE
from .vocabulary import mark_vocabulary
from .windings import crowding

LOUDNESS = ((0, "not heard"), (15, "barely heard"), (35, "soft"), (60, "clear"), (85, "loud"))
LOUDEST = "very loud"
_STYLES = Path(__file__).parents[1] / "report" / "report.css", Path(__file__).with_name("pages") / "sheet.css"


def write_sheet(sheet: working.Sheet, file: Path) -> Path:
    """Write a sheet's page, in place of an older one.

    Raises
    ------
    OSError
        If it cannot be written.
    """
    with open_replacement(file, newline="\n") as opened:
        opened.write(sheet_html(sheet))
    return file


def sheet_html(sheet: working.Sheet) -> str:
    """The page, whole."""
    parts = sheet.parts
    assumed = [(name, given) for name, given in parts.given.items() if not given.stated and given.text and "." in name]
    page = (
        _templates()
        .get_template("sheet.html")
        .render(
            sheet=sheet,
            parts=parts,
            chosen=parts["set"],
            fuse=FUSE,
            with_valve=parts["set"] != keys.CRYSTAL,
            reacts=parts["set"] in keys.SETS[2:],
            pictures={
                name: Markup(escape_unseen(draw(sheet)))
                for name, draw in (("windings", pictures.windings), ("dial", pictures.dial))
            },
            list_of_parts=parts_list(sheet),
            defaults=[(name, given.text) for name, given in assumed if not name.startswith("spread.")],
            spreads=[(spread.NAMES[key.name], parts.given[f"spread.{key.name}"]) for key in keys.SECTIONS["spread"]],
            five=keys.SETS,
            sets=sets,
            working=working,
            crowding=crowding(),
        )
    )
    return mark_vocabulary(page)


def loudness(level: float) -> str:
    """A level above the faintest tone, in a word or two."""
    return next((word for limit, word in LOUDNESS if level < limit), LOUDEST)


def whole(result: spread.Spread) -> str:
    """A number of turns in words: "between 42 and 46", or the one number."""
    low, high = round(result.low), round(result.high)
    return f"between {low} and {high}" if high > low else f"{high}"


def from_locals(pairs: list[tuple[str, spread.Spread]]) -> str:
    """Where a wanted station's carrier stands beside the locals' behind the tuned circuit, the worst of them."""
    if not pairs:
        return ""
    name, worst = min(pairs, key=lambda pair: pair[1].nominal)
    return name if worst.nominal < 0 else ""


@cache
def _templates() -> jinja2.Environment:
    templates = environment(Path(__file__).with_name("pages"))
    templates.globals.update(style=Markup("\n".join(file.read_text("utf-8") for file in _STYLES)), under=from_locals)
    templates.filters.update(
        spread=spread.text,
        si=spread.in_units,
        engineering=in_words,
        loudness=loudness,
        whole=whole,
        capacitances=physics.triodes.capacitances,
        travel=lambda throttle, parts: f"{100 * travel(parts, throttle):.0f} %",
    )
    return templates

"""The HTML of a bench: the whole one, and a small one in a lesson that stands at a setting."""

import tomllib
from collections.abc import Callable
from pathlib import Path
from typing import Any

from course.press.boxes.bench_setting import check_setting, figures_of_bench
from course.press.boxes.circuits import compact_svg
from course.press.faults import Fault
from course.press.templates import render

PANEL = Path(__file__).parents[2] / "bench" / "panel"
PAGE = "bench.html"
TEMPLATES = {"small": "bench.html", "whole": "bench.html", "opening": "bench_opening.html"}  # by size
SETS = (  # name in a setting, on the button, under the circuit
    ("crystal", "Crystal", "Crystal set"),
    ("valve", "One valve", "One valve"),
    ("reaction", "Reaction", "One valve with reaction"),
    ("isolated", "Isolated", "Isolated aerial with reaction"),
    ("quenched", "Quenched", "Quenched set, on 30 MHz"),
)
CONTROLS = (  # name in a setting, on the button, under the circuit
    ("throttle", "Throttle", "The throttle turns."),
    ("swinging", "Swinging tickler", "The tickler turns; the condenser under it stands at 200 pF."),
    (
        "shunt",
        "Resistor across the tickler",
        "A variable resistor lies across the tickler; the condenser under it stands at 300 pF.",
    ),
)
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


def bench_html(
    setting: str, id: str, relative: Callable[[str], str], circuit: Callable[[str], str], size: str = "small"
) -> str:
    """A bench that stands at a setting.

    Parameters
    ----------
    setting : str
        What stands after # in an address of the bench.
    id : str
        Address within the page; the ids inside begin with it.
    relative : function of an address in the site to one from this page
    circuit : function of a set's name to SVG
    size : str
        "small", for a lesson; "whole", with circuits, comparison and goals; "opening", with one knob and one button.

    Returns
    -------
    str

    Raises
    ------
    Fault
        If the setting is not one, or the size.
    """
    check_setting(setting)
    if size not in TEMPLATES:
        raise Fault(f'a bench is {", ".join(TEMPLATES)} in size, not "{size}"')
    whole = size == "whole"
    return render(
        TEMPLATES[size],
        id=id,
        whole=whole,
        setting=setting,
        sets=SETS,
        controls=CONTROLS,
        four_ways=relative("unit06_reaction/controls.html"),
        rows=ROWS,
        page=f"{relative(PAGE)}#{setting}",
        radiating=f"{relative('safety.html')}#radiating",
        programme=relative("bench/programme.js"),
        circuits={name: compact_svg(circuit(name)) for name, *_ in SETS} if whole else {},
        goals=read_goals() if whole else [],
        first=first_seen(setting),
    )


def first_seen(setting: str) -> dict[str, Any]:
    """What of a bench is there at a setting, as its script has it: a page keeps that room from the first, and nothing moves.

    Parameters
    ----------
    setting : str
        One that `check_setting` lets pass.

    Returns
    -------
    dict
        `set`, `by`; `knobs`, `gauges` and `choices`, the names of those that are seen; `controls`, whether `by` can be chosen.
    """
    figures = figures_of_bench()
    asked = dict(part.partition("=")[::2] for part in setting.split("&"))
    its, by = figures["sets"][asked["set"]], asked.get("by", "throttle")
    turned = {"throttle", *(name for name, *_ in CONTROLS)} - {by}
    reacts = by in its["knobs"]
    stations = its.get("stations", figures["stations"])
    choices = {"fierce": len(its["feeds"]) > 1, "night": any("night" in station for station in stations)}
    gauges = {"ear": True, "edge": reacts, "margin": reacts and "quenched" not in its, "neighbour": reacts}
    return {
        "set": asked["set"],
        "by": by,
        "knobs": {"tuning", "fine"} | set(its["knobs"]) - turned,
        "gauges": {name for name, there in gauges.items() if there},
        "choices": {name for name, there in choices.items() if there},
        "controls": "controls" in its,
    }


def read_goals() -> list[dict[str, Any]]:
    """What a newcomer is asked to do, in order; each `start` is held to be a setting."""
    found: list[dict[str, Any]] = tomllib.loads((PANEL / "goals.toml").read_text("utf-8"))["goal"]
    for goal in found:
        check_setting(goal["start"])
    return found

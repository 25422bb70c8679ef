"""A setting of the bench in a lesson, held to the table by which the bench itself reads it: `bench/panel/setting.json`."""

import json
import re
from functools import cache
from pathlib import Path
from types import ModuleType
from typing import Any

from course.press.faults import Fault

GRAMMAR = json.loads((Path(__file__).parents[2] / "bench" / "panel" / "setting.json").read_text("utf-8"))
EXAMPLE = "set=reaction&tuning=855kHz&coupling=20uH&reaction=80pF"


def check_setting(setting: str) -> None:
    """Refuse what is no setting.

    Parameters
    ----------
    setting : str
        What stands after # in an address of the bench.

    Raises
    ------
    Fault
        The first thing that is wrong with it.
    """
    faults = setting_faults(setting)
    if faults is None:
        raise Fault(f'"{setting}" is no setting of the bench: it is like {EXAMPLE}')
    if faults:
        raise Fault(f'"{setting}": {faults[0]}; a setting is like {EXAMPLE}')


def setting_faults(setting: str) -> list[str] | None:
    """What is wrong with a setting, in the bench's own words and order; None if it names no set.

    Parameters
    ----------
    setting : str

    Returns
    -------
    list of str, or None
    """
    parts = [part.partition("=")[::2] for part in setting.split("&")]
    named = next((text for name, text in parts if name == "set"), None)
    if named is None:
        return None
    figures = figures_of_bench()
    known = named in figures["order"]
    its = figures["sets"][named if known else figures["order"][0]]
    words = {"set": figures["order"], "feed": its["feeds"], "night": GRAMMAR["night"]}
    if "controls" in its:
        words["by"] = list(its["controls"])
    asked = next((text for name, text in parts if name == "by"), "")
    numbers = number_parts(its, its.get("dial", figures["dial"]), asked if asked in words.get("by", ()) else "throttle")
    faults, seen = [], set()
    for name, text in parts:
        if name in seen:
            kind = "twice"
        elif name in numbers:
            kind = number_fault(text, *numbers[name])
        elif name in words:
            kind = "" if text in words[name] else "set" if name == "set" else "value"
        else:
            kind = "name"
        if kind:
            faults.append(GRAMMAR["faults"][kind].format(name=name, text=text))
        seen.add(name)
    return faults


def figures_of_bench() -> dict[str, Any]:
    """All that the bench knows of its sets, worked out once by its code as that was last read."""
    from course.bench import sets  # here, for `mkdocs serve` reads it afresh, and few builds want it

    return figures_of(sets)


@cache
def figures_of(sets: ModuleType) -> dict[str, Any]:
    figures: dict[str, Any] = sets.bench_figures()
    return figures


def number_parts(its: dict[str, Any], dial: dict[str, float], by: str = "throttle") -> dict[str, tuple[str, float, float]]:
    """Of each part of a set's settings that is a number its unit, and between what it lies, reaction being turned up so."""
    names = {name: part["knob"] if part["knob"] != "by" else by for name, part in GRAMMAR["knobs"].items()}
    knobs = {name: its["knobs"].get(knob, {}) for name, knob in names.items()}
    found = {name: (knob["unit"], knob["low"], knob["high"]) for name, knob in knobs.items() if "unit" in knob}
    return {"tuning": (GRAMMAR["tuning"]["unit"], dial["low"], dial["high"])} | found


def number_fault(text: str, unit: str, low: float, high: float) -> str:
    """The kind of fault in a number with its unit; nothing if it is right."""
    sizes = GRAMMAR["units"][unit]
    number = re.fullmatch(rf"({GRAMMAR['number']})({'|'.join(sizes)})", text)
    if number is None:
        return "value"
    value = float(number[1]) * sizes[number[2]]
    return "stop" if abs(min(max(value, low), high) - value) > GRAMMAR["slack"] * value else ""

"""From answers to pictures: which numbers of an answer go into which panel."""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

import numpy as np

from .asking import Own
from .chart import Panel, Trace
from .reading import ordinal
from .views import View, over_decades


@dataclass(frozen=True)
class Column:
    """One number of each answer: what it is called, its unit, and its values (NaN where there is none)."""

    name: str
    unit: str
    values: np.ndarray


def panels_of(view: View, own: Own, judged: Own, with_reference: bool) -> list[Panel]:
    """The pictures of a view: numbers of one unit share one."""
    mine = columns(view, own.answers)
    if not mine:
        return []
    theirs = {column.name: column for column in columns(view, view.reference)} if with_reference else {}
    circles, feet = _judged(view, judged.answers, len(mine) == 1)
    panels = []
    for unit in dict.fromkeys(column.unit for column in mine):
        here = [column for column in mine if column.unit == unit]
        traces = []
        for place, column in enumerate(here):
            whose = f"yours, {column.name}" if column.name else "yours"
            other = theirs.get(column.name)
            if other is not None and other.values.shape == column.values.shape:
                traces.append(Trace(whose.replace("yours", "the reference", 1), "reference", other.values))
            traces.append(Trace(whose, f"yours dash{place}", column.values))
        shown = [trace for trace in traces if np.isfinite(trace.heights).any()]
        if shown:
            title = view.function + (f", {here[0].name}" if len(here) == 1 and here[0].name else "")
            places = _places(view, here[0].values)
            panels.append(Panel(title, *_along(view), unit, places, _by_decades(places), tuple(shown), circles, feet))
    return panels


def columns(view: View, answers: Sequence) -> list[Column]:
    """The numbers of answers, one column for each that an answer holds; of complex ones the size and the phase."""
    if view.along < 0:
        return _of_complex("", _unit(view, 0), np.asarray(_numbers(answers[0] if len(answers) else None)))
    rows = [list(answer) if isinstance(answer, (list, tuple)) else [answer] for answer in answers]
    width = max((len(row) for row in rows), default=0)
    found = []
    for place in range(width):
        values = [_number(row[place]) if len(row) == width else np.nan for row in rows]
        found += _of_complex(f"{ordinal(place + 1)} answer" if width > 1 else "", _unit(view, place), np.array(values))
    return found


def _of_complex(name: str, unit: str, values: np.ndarray) -> list[Column]:
    if not np.iscomplexobj(values) or not np.any(values[np.isfinite(values)].imag):
        return [Column(name, unit, np.real(values).astype(float))] if values.size else []
    lead = f"{name}, " if name else ""
    return [Column(f"{lead}size", unit, np.abs(values)), Column(f"{lead}phase", "°", np.round(np.degrees(np.angle(values)), 6))]


def _number(value: Any) -> Any:
    is_number = isinstance(value, (int, float, complex, np.number)) and not isinstance(value, bool)
    return value if is_number and np.isfinite(value) else np.nan


def _numbers(answer: Any) -> list:
    return [_number(item) for item in answer] if isinstance(answer, (list, tuple, np.ndarray)) and np.ndim(answer) == 1 else []


def _unit(view: View, place: int) -> str:
    if isinstance(view.gives, str):
        return view.gives
    return view.gives[place] if place < len(view.gives) else ""


def _along(view: View) -> tuple[str, str]:
    if view.along < 0:
        return "place in the list", ""
    argument = view.arguments[view.along]
    return (f"size of {argument.name}" if isinstance(argument.example, complex) else argument.name), argument.unit


def _places(view: View, values: np.ndarray) -> np.ndarray:
    if view.along < 0:
        return np.arange(1, values.size + 1)
    return np.array([_place(view, row) for row in view.points])


def _by_decades(places: np.ndarray) -> bool:
    """Whether the places stand evenly over decades: the points were chosen so."""
    steps = np.diff(places)
    return steps.size > 1 and over_decades(places[0], places[-1]) and bool(steps[-1] > 2 * steps[0])


def _place(view: View, row: Sequence) -> float:
    value = row[view.along]
    return float(abs(value)) if isinstance(value, complex) else float(value)


def _judged(view: View, answers: Sequence, one_line: bool) -> tuple[tuple[tuple[float, float], ...], tuple[float, ...]]:
    """Circles for the judged inputs that lie on the one line there is, and the places along it of all the others."""
    circles, feet = [], []
    for row, answer in zip(view.judged, answers, strict=True):
        if view.along < 0:
            break
        others = zip(_without(row, view.along), _without(view.points[0], view.along), strict=True)
        number = _number(answer)
        if one_line and all(repr(one) == repr(other) for one, other in others) and np.isfinite(number):
            circles.append((_place(view, row), float(np.real(number))))
        else:
            feet.append(_place(view, row))
    return tuple(circles), tuple(feet)


def _without(row: Sequence, place: int) -> Sequence:
    return (*row[:place], *row[place + 1 :])

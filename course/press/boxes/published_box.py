"""Every published figure that the course is held to, and how near the course itself comes."""

import importlib
from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any

import numpy as np

from course.press.boxes.exercise_box import KNOWN, breakable, shown
from course.press.templates import render
from course.press.text.printed import printed


@dataclass(frozen=True)
class PublishedFigure:
    """One figure from outside the project, and what the course computes for it.

    `difference` is relative to the figure, or absolute where that is 0; 0 for words that agree, infinite for words that do not.
    """

    unit: str
    function: str
    what: str
    source: str
    known: str
    wanted: str
    got: str
    difference: float
    allowed: str


def published_figures() -> Iterator[PublishedFigure]:
    """All of them, in the course's order, each computed now."""
    course = importlib.import_module("checker.course")  # afresh: see `exercise_box`
    for path in course.PATHS:
        for question in course.load_exercise(path).questions:
            for figure in question.published:
                with np.errstate(all="ignore"):
                    got = question.asks(*figure.given)
                yield PublishedFigure(
                    unit=course.unit_of(path).folder,
                    function=question.name,
                    what=figure.what,
                    source=figure.source,
                    known=figure.known,
                    wanted=shown(figure.wanted, question.gives),
                    got=shown(got, question.gives),
                    difference=relative_difference(got, figure.wanted),
                    allowed=figure.within.text,
                )


def relative_difference(got: Any, wanted: Any) -> float:
    """The largest between two values of the same shape."""
    if isinstance(wanted, (tuple, list)):
        return max(map(relative_difference, got, wanted), default=0.0)
    if isinstance(wanted, (str, bool)):
        return 0.0 if got == wanted else np.inf
    size = np.abs(np.asarray(wanted))
    return float(np.max(np.abs(np.asarray(got) - wanted) / np.where(size > 0, size, 1)))


def published_figures_html() -> str:
    """The counts, and a table for each unit."""
    figures = list(published_figures())
    units = importlib.import_module("checker.course").UNITS
    return render(
        "published_figures.html",
        total=len(figures),
        counts=", ".join(f"{sum(figure.known == known for figure in figures)} {words}" for known, words in KNOWN.items()),
        units=[(unit, [figure for figure in figures if figure.unit == unit.folder]) for unit in units],
        breakable=breakable,
        printed=printed,
        known=KNOWN,
    )

"""Every check of the course against the outside: the figures that answers are held to, and how near the course itself comes."""

import importlib
from collections.abc import Iterator
from dataclasses import dataclass
from html import escape

import numpy as np

from course.press.exercise_box import KNOWN, code_html, tolerance_html, wanted_text


@dataclass(frozen=True)
class OutsideCheck:
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


def outside_checks() -> Iterator[OutsideCheck]:
    """All of them, in the course's order, each computed now."""
    course = importlib.import_module("checker.course")
    for path in course.PATHS:
        for question in course.load_exercise(path).questions:
            for figure in question.published:
                with np.errstate(all="ignore"):
                    got = question.asks(*figure.given)
                yield OutsideCheck(course.unit_of(path).folder, question.name, figure.what, figure.source, figure.known,
                                   wanted_text(figure.wanted, question.gives), wanted_text(got, question.gives),
                                   apart(got, figure.wanted), figure.within.text)


def apart(got, wanted) -> float:
    """The largest relative difference between two values of the same shape."""
    if isinstance(wanted, (tuple, list)):
        return max(map(apart, got, wanted), default=0.0)
    if isinstance(wanted, (str, bool)):
        return 0.0 if got == wanted else np.inf
    size = np.abs(np.asarray(wanted))
    return float(np.max(np.abs(np.asarray(got) - wanted) / np.where(size > 0, size, 1)))


def outside_html() -> str:
    """The counts, and a table for each unit."""
    checks = list(outside_checks())
    units = {unit.folder: unit for unit in importlib.import_module("checker.course").UNITS}
    counts = ", ".join(f"{sum(check.known == known for check in checks)} {words}" for known, words in KNOWN.items())
    tables = "".join(
        f'<h2 id="{folder}">{unit.number} {escape(unit.title)}</h2>\n{table_html([c for c in checks if c.unit == folder])}'
        for folder, unit in units.items()
    )
    return f"<p>There are <b>{len(checks)}</b> of them: {counts}.</p>\n{tables}"


def table_html(checks: list[OutsideCheck]) -> str:
    rows = "".join(
        f'<tr><th scope="row">{escape(check.what)}<br>{code_html(check.function)}</th>'
        f"<td>{tolerance_html(check.wanted)}</td><td>{tolerance_html(check.got)}</td>"
        f"<td>{difference_html(check.difference)}<br>(allowed: {tolerance_html(check.allowed)})</td>"
        f"<td>{escape(check.source)} ({KNOWN[check.known]})</td></tr>"
        for check in checks
    )
    heads = "".join(f'<th scope="col">{head}</th>' for head in ("What", "Wanted", "Got", "Difference", "Source"))
    return f"<table><thead><tr>{heads}</tr></thead><tbody>{rows}</tbody></table>\n"


def difference_html(difference: float) -> str:
    return "none" if difference == 0 else tolerance_html(f"{difference:.1e}")

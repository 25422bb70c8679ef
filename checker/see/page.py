"""What a member's functions do, as a page: pictures, the same in tables, and the points at which they are judged."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from functools import cache
from pathlib import Path

import jinja2
from markupsafe import Markup

from ..course import PRACTICE_SEED
from ..judging.judge import judge
from ..judging.protocols import WorkerLike
from ..templates import environment
from ..text import escape_unseen
from .asking import Own, ask_own
from .chart import Panel, description, draw_panel
from .panels import panels_of
from .reading import answer_lines, as_typed
from .views import View

ROWS = 9  # of the table of a curve
_STYLES = Path(__file__).parents[1] / "report" / "report.css", Path(__file__).with_name("pages") / "see.css"


@dataclass(frozen=True)
class Seen:
    """A view with what a member's function answers to it, and whether it has passed."""

    view: View
    own: Own
    judged: Own
    passed: bool
    panels: tuple[Panel, ...]


def look(path: str, views: Sequence[View], files: Mapping[str, str], worker: WorkerLike) -> list[Seen]:
    """What a member's functions do at the points of some views of one exercise."""
    own = [ask_own(path, view, view.points, view.reference, files, worker) for view in views]
    judged = [
        Own((None,) * len(view.judged)) if answers.trouble else ask_own(path, view, view.judged, (), files, worker)
        for view, answers in zip(views, own, strict=True)
    ]
    passed = _passed(path, files, worker) if any(answers.answers and not answers.trouble for answers in own) else {}
    return [
        Seen(view, mine, there, passed.get(view.function, False), tuple(_panels(view, mine, there, passed)))
        for view, mine, there in zip(views, own, judged, strict=True)
    ]


def _panels(view: View, own: Own, judged: Own, passed: Mapping[str, bool]) -> list[Panel]:
    return [] if view.none else panels_of(view, own, judged, passed.get(view.function, False))


def _passed(path: str, files: Mapping[str, str], worker: WorkerLike) -> dict[str, bool]:
    """Which functions earn all their marks in practice."""
    passed: dict[str, bool] = {}
    for part in judge(path, files, worker, PRACTICE_SEED).parts:
        passed[part.function] = passed.get(part.function, True) and part.earned == part.worth
    return passed


def write_page(file: Path, exercise: str, title: str, seen: Sequence[Seen], called: str) -> None:
    """Write the page, in place of an older one; the folder is made if it is not there.

    Parameters
    ----------
    file : Path
    exercise, title : str
        Its name and its question.
    seen : sequence of Seen
    called : str
        How this command is called here.
    """
    file.parent.mkdir(parents=True, exist_ok=True)
    sections = [_section(place, one) for place, one in enumerate(seen)]
    page = _templates().get_template("see.html").render(exercise=exercise, title=title, sections=sections, called=called)
    file.write_text(page, "utf-8", newline="\n")


def _section(place: int, seen: Seen) -> dict:
    view = seen.view
    return {
        "name": view.function,
        "trouble": seen.own.trouble,
        "line": seen.own.line,
        "none": view.none,
        "formula": seen.own.formula,
        "passed": seen.passed,
        "kept": _kept(view),
        "along": view.arguments[view.along].name if view.along >= 0 else "",
        "pictures": [_picture(panel, f"f{place}p{number}") for number, panel in enumerate(seen.panels)],
        "curve": _table(view, view.points, seen.own.answers, ROWS) if seen.panels and view.along >= 0 else [],
        "judged": [] if seen.own.trouble else _table(view, view.judged, seen.judged.answers, len(view.judged)),
        "arguments": [argument.name for argument in view.arguments],
        "typed": " ".join(as_typed(argument) for argument in view.arguments),
    }


def _picture(panel: Panel, name: str) -> dict:
    return {
        "svg": Markup(escape_unseen(draw_panel(panel, name))),
        "words": " ".join(description(panel)),
        "traces": [(trace.style, trace.name) for trace in panel.traces],
        "circles": bool(panel.circles),
        "feet": bool(panel.feet),
    }


def _kept(view: View) -> str:
    """What stays the same along the line, in words."""
    if not view.points:
        return ""
    kept = [
        f"{argument.name} {argument.show(value)}"
        for place, (argument, value) in enumerate(zip(view.arguments, view.points[0], strict=True))
        if place != view.along
    ]
    return ", ".join(kept)


def _table(view: View, rows: Sequence, answers: Sequence, most: int) -> list[tuple[list[str], list[str]]]:
    """(inputs, answers) in words, of at most so many rows, evenly chosen."""
    chosen = sorted(
        {round(place * (len(rows) - 1) / max(1, min(most, len(rows)) - 1)) for place in range(min(most, len(rows)))}
    )
    return [
        (
            [argument.show(value) for argument, value in zip(view.arguments, rows[place], strict=False)],
            [text for _, text in answer_lines(view, answers[place])],
        )
        for place in chosen
    ]


@cache
def _templates() -> jinja2.Environment:
    templates = environment(Path(__file__).with_name("pages"))
    templates.globals.update(style=Markup("\n".join(file.read_text("utf-8") for file in _STYLES)))
    return templates

"""What a page shows of an exercise: the same data by which it is marked, and nothing that gives the answer away."""

import importlib
import inspect
import re
from html import escape
from typing import Any

from markupsafe import Markup

from course.press.boxes.typed_box import TypedAnswers
from course.press.faults import Fault
from course.press.templates import render
from course.press.text.printed import printed

KNOWN = {"found": "read there", "memory": "from memory", "recomputed": "recomputed"}


def exercise_html(name: str, typed: TypedAnswers, pack: str = "") -> str:
    """The box for one exercise.

    Parameters
    ----------
    name : str
        "unitNN_topic/name".
    typed : TypedAnswers
    pack : str
        Address of the student pack, if the club offers one.

    Returns
    -------
    str

    Raises
    ------
    Fault
        If there is no such exercise, or its data cannot be loaded.
    """
    try:
        # Looked up when it is asked for: `mkdocs serve` reads the checker and the physics afresh for each build.
        exercise = importlib.import_module("checker.course").load_exercise(name)
    except Exception as error:
        raise Fault(f"exercise {name} cannot be shown: {type(error).__name__}: {error}") from error
    short = name.split("/")[-1]
    return render(
        "exercise.html",
        exercise=exercise,
        asked_by_the_core=importlib.import_module("checker.core").core_functions(exercise),
        short=short,
        pack=pack,
        anchor=f"exercise-{short.replace('_', '-')}",
        file=f"exercises/{name}.py",
        says={question.asks: summary(question.asks) for question in exercise.questions},
        typed=typed.of(exercise),
        breakable=breakable,
        printed=printed,
        shown=shown,
        known=KNOWN,
        heard=short in importlib.import_module("checker.hear.pieces").PIECES,
    )


def summary(function: Any) -> str:
    """The first paragraph of a function's docstring, in one line."""
    return (inspect.getdoc(function) or "").split("\n\n")[0].replace("\n", " ")


def breakable(code: str) -> Markup:
    """Code that may be broken after a bracket, a slash or an underscore on a narrow screen."""
    return Markup(re.sub(r"([(/_])", r"\1<wbr>", escape(code)))


def shown(value: Any, unit: Any) -> str:
    """A result with its unit, or several with theirs."""
    given = importlib.import_module("checker.checks.given")
    if isinstance(unit, str):
        return str(given.shown(value, unit, given.tidily))
    return ", ".join(shown(part, of) for part, of in zip(value, unit, strict=True))

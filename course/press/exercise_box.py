"""What a page shows of an exercise: the same data by which it is marked, and nothing that gives the answer away."""

import importlib
import inspect
import re
from html import escape

from course.press.faults import Fault

KNOWN = {"found": "read there", "memory": "from memory", "recomputed": "recomputed"}


def exercise_html(name: str) -> str:
    """The box for one exercise.

    Parameters
    ----------
    name : str
        "unitNN_topic/name".

    Returns
    -------
    str

    Raises
    ------
    Fault
        If there is no such exercise, or its data cannot be loaded.
    """
    try:
        exercise = importlib.import_module("checker.course").load_exercise(name)
    except Exception as error:
        raise Fault(f"exercise {name} cannot be shown: {type(error).__name__}: {error}") from error
    short = escape(name.split("/")[-1])
    anchor = f"exercise-{short.replace('_', '-')}"
    questions = "".join(question_html(question) for question in exercise.questions)
    return (
        f'<section class="exercise" id="{anchor}" aria-labelledby="{anchor}-title">\n'
        f'<p class="exercise-head"><b>Exercise</b> <span>{exercise.marks:g} marks</span></p>\n'
        f'<p class="exercise-title" id="{anchor}-title">{escape(exercise.title)}</p>\n'
        f"<p>Write in {code_html('exercises/' + name + '.py')}, then ask: <code>checker try {short}</code>. "
        f"Stuck: <code>checker hint {short}</code>.</p>\n{questions}</section>"
    )


def question_html(question) -> str:
    """One function asked for: its inputs and ranges, how near to come and why, the published figures."""
    call = f"{question.asks.__name__}({', '.join(question.given)})"
    says = (inspect.getdoc(question.asks) or "").split("\n\n")[0].replace("\n", " ")
    ranges = "".join(
        f'<tr><th scope="row"><code>{escape(argument)}</code></th><td>{escape(given.text)}</td></tr>'
        for argument, given in question.given.items()
    )
    return (
        f'<div class="asked"><p>{code_html(call)}<br>{escape(says)}</p>\n'
        f'<table><thead><tr><th scope="col">Given</th><th scope="col">Range</th></tr></thead>'
        f"<tbody>{ranges}</tbody></table>\n"
        f"{asked_html(question)}</div>\n"
    )


def asked_html(question) -> str:
    """How near to come to the reference and to published figures; or, where it is measured, what is measured and allowed."""
    if not question.measured:
        near = f"{tolerance_html(question.tolerance.text)}: {escape(question.tolerance.because)}"
        return f"<p><b>Must agree</b> {near}.</p>\n{published_html(question)}"
    items = "".join(
        f'<li>{escape(one.what)}: <b>{escape(one.allowed)}</b> <span class="source">({escape(one.because)})</span></li>'
        for one in question.measured
    )
    return f"<p><b>Measured</b> on what it gives, and allowed:</p>\n<ul>{items}</ul>"


def code_html(text: str) -> str:
    """Code that may be broken after a bracket, a slash or an underscore on a narrow screen."""
    return "<code>" + re.sub(r"([(/_])", r"\1<wbr>", escape(text)) + "</code>"


def tolerance_html(text: str) -> str:
    """A tolerance in words, its power of ten as one."""
    space = "\N{NO-BREAK SPACE}"

    def power(number: re.Match) -> str:
        return f"{number[1]}{space}×{space}10<sup>{number[2].replace('-', '−')}{number[3]}</sup>"

    return re.sub(r"(\d)e\+?(-?)0?(\d+)", power, escape(text))


def wanted_text(wanted, unit) -> str:
    """A published result with its unit, or several with theirs."""
    given = importlib.import_module("checker.checks.given")
    if isinstance(unit, str):
        return given.shown(wanted, unit, given.tidily)
    return ", ".join(wanted_text(part, of) for part, of in zip(wanted, unit, strict=True))


def published_html(question) -> str:
    """The figures from outside the course that an answer must meet, each with where it stands."""
    if not question.published:
        return f"<p><b>Published values:</b> none. {escape(question.no_published)}</p>"
    items = "".join(
        f"<li>{escape(value.what)}: <b>{escape(wanted_text(value.wanted, question.gives))}</b>, "
        f"{tolerance_html(value.within.text)} "
        f'<span class="source">({escape(value.source)}; {KNOWN[value.known]})</span></li>'
        for value in question.published
    )
    return f"<p><b>Published values</b> it must meet:</p>\n<ul>{items}</ul>"

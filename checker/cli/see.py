"""`checker see`: what a student's own function does: one answer, or a page of pictures."""

import argparse
import os
from collections.abc import Iterator, Mapping, Sequence
from pathlib import Path

from ..course import SEALED, load_exercise
from ..judging.protocols import WorkerLike
from ..report.text import Line, printed_lines, wrap
from ..sandbox.workers import start_own_worker
from ..see.asking import Own, ask_own, exercise_of
from ..see.names import find_asked
from ..see.page import Seen, look, write_page
from ..see.reading import UnreadableValue, answer_lines, read_values
from ..see.sealed import read_sealed_views
from ..see.views import View, views_of
from ..submissions.members import read_member_folder
from .called import called_as
from .common import DONE, NOT_YET, Command, UsageError, add_folder_argument, exercises_folder, terminal_width
from .terminal import show


def add_arguments(parser: argparse.ArgumentParser) -> None:
    parser.add_argument(
        "name", metavar="NAME", help="an exercise such as resonance, or one function such as resonant_frequency"
    )
    parser.add_argument(
        "values",
        metavar="VALUE",
        nargs="*",
        help='what to give it, each with its unit, such as "200 µH" "177 pF"; none: pictures',
    )
    add_folder_argument(parser)
    parser.add_argument("--into", metavar="DIR", type=Path, default=Path("seen"), help="where the page goes (default: seen)")


def run(options: argparse.Namespace) -> int:
    path, function = find_asked(options.name, called_as())
    member = read_member_folder(exercises_folder(options.folder).resolve(), "you", account=False)
    views = read_sealed_views(path) if SEALED else views_of(load_exercise(path), 0 if options.values else None)
    views = tuple(view for view in views if function in ("", view.function))
    show([Line(f"  {problem}", "yellow") for problem in member.problems])
    with start_own_worker() as worker:
        if options.values:
            return _show_answer(path, views, options.values, member.files, worker)
        seen = look(path, views, member.files, worker)
    page = options.into / f"{options.name.replace('/', '.')}.html"
    exercise = exercise_of(path)
    write_page(page, exercise.name, exercise.title, seen, called_as())
    show([*_what_was_seen(seen), Line(f"Open in a browser:  {os.path.relpath(page)}", "bold")])
    return DONE if any(one.panels for one in seen) or all(one.view.none for one in seen) else NOT_YET


def _show_answer(path: str, views: Sequence[View], texts: Sequence[str], files: Mapping[str, str], worker: WorkerLike) -> int:
    """One answer of the first function that takes such values."""
    problems = []
    for view in views:
        try:
            values = read_values(view, texts)
        except UnreadableValue as problem:
            problems.append(str(problem))
            continue
        own = ask_own(path, view, [values], (), files, worker)
        show(_answer(view, values, own))
        return NOT_YET if own.trouble else DONE
    raise UsageError("\n".join(dict.fromkeys(problems)))


def _answer(view: View, values: tuple, own: Own) -> Iterator[Line]:
    given = [(argument.name, argument.show(value)) for argument, value in zip(view.arguments, values, strict=False)]
    answers = [] if own.trouble else answer_lines(view, own.answers[0])
    column = max(len(name) for name, _ in (*given, *answers)) + 1
    yield Line(view.function, "bold")
    for name, text in given:
        yield Line(f"  {name:<{column}}{text}")
    for name, text in answers:
        yield Line(f"  {name:<{column}}{text}", "bold")
    if own.formula:
        yield from wrap(f"Your formula: {own.formula}", terminal_width())
    yield from _trouble(own)


def _trouble(own: Own) -> Iterator[Line]:
    if own.trouble:
        yield from wrap(own.trouble, terminal_width(), "yellow")
    if own.line:
        yield Line(f"  {own.line[0]}, line {own.line[1]}", "dim")
    yield from printed_lines(own.printed, terminal_width())


def _what_was_seen(seen: Sequence[Seen]) -> Iterator[Line]:
    for one in seen:
        yield Line(f"{one.view.function}: {_state(one)}")
        if one.own.trouble:
            yield from _trouble(one.own)


def _state(seen: Seen) -> str:
    if seen.view.none:
        return f"no picture. {seen.view.none}"
    if not seen.panels:
        return "nothing to draw yet."
    return "drawn, beside the reference." if seen.passed else "drawn."


COMMAND = Command("see", "see what your function answers: one value, or a page of pictures", add_arguments, run)

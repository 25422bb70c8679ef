"""What a student is told around a verdict: where to write, where to read, what comes next, what to do where a file is missing."""

import os
from collections.abc import Iterator
from pathlib import Path

from ..course import unit_of
from ..judging.verdict import UNANSWERED, Verdict
from ..pack.index import index
from ..report.text import Line, wrap
from ..submissions.members import Member
from .called import called_as


def name_of(path: str) -> str:
    return path.rpartition("/")[2]


def lesson_in_words(path: str) -> str:
    """Which lesson teaches an exercise: "Signal, section 2"."""
    heading = index()[path].lesson.heading
    number = heading.partition(".")[0]
    section = f", section {number}" if number.isdigit() else f", “{heading}”" if heading else ""
    return f"{unit_of(path).title}{section}"


def from_here(path: Path) -> str:
    """A path as it is written from the folder that the person is in, if that is shorter."""
    try:
        return min(os.path.relpath(path), str(path), key=len)
    except ValueError:  # on another drive of Windows
        return str(path)


def reading(path: str) -> str:
    """Where an exercise is taught, and the command that opens the page: "Signal, section 2 (checker read sideband_power)"."""
    return f"{lesson_in_words(path)} ({called_as()} read {name_of(path)})"


def guide_lines(verdict: Verdict, folder: Path, width: int, passed: bool, after: str | None = None) -> Iterator[Line]:
    """What to do after a verdict.

    Parameters
    ----------
    verdict : Verdict
    folder : Path
        Of the student's exercises.
    width : int
        The terminal's.
    passed : bool
        Whether that is all that the student's path asks of the exercise.
    after : str, optional
        The path of the exercise that comes next where this one has passed.
    """
    name = name_of(verdict.exercise)
    if passed:
        if after:
            yield from wrap(f"Next: {name_of(after)}. Read: {reading(after)}.", width, "dim")
        return
    if verdict.kind in UNANSWERED:
        yield from wrap(f"Read: {reading(verdict.exercise)}", width, "dim")
        yield Line(f"  Write it in {from_here(folder / f'{verdict.exercise}.py')}", "dim")
        yield Line(f"  then: {called_as()} try {name}", "dim")
    yield Line(f"  A hint: {called_as()} hint {name}", "dim")


def trouble_with_file(path: str, member: Member, folder: Path) -> str:
    """Why there is nothing to be judged, and what to do; "" where the exercise's file was read."""
    file = from_here(folder / f"{path}.py")
    if f"{path}.py" in member.files:
        return ""
    if why := member.why_unread(path):
        return f"{file}{why.removeprefix(f'{path}.py')}" if why.startswith(f"{path}.py ") else why
    return f"{file} is not there: was it deleted, or given another name? {called_as()} restore {name_of(path)} puts it back."

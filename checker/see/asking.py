"""A member's own answers, from the worker: a value where there is one, and a sentence where there is none."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace

from ..checks.exercise import Exercise, Question
from ..course import PRACTICE_SEED, SEALED, load_exercise
from ..judging.compare import difference
from ..judging.explanations import end_finding, trouble_finding
from ..judging.fingerprint import files_used
from ..judging.plan import numeric_call, symbolic_call
from ..judging.plans import plan_for
from ..judging.protocols import Inputs, Reply, WorkerLike
from ..worker.wire import Expression
from .views import View, formula_values

PATIENCE = 4.0  # seconds for one function's picture, or the exercise's own if they are more


@dataclass(frozen=True)
class Own:
    """A member's answers for some inputs, None where there is none; the first formula, where formulas were asked for.

    `trouble` says in a sentence why one is missing or is no number, `line` in which line of the member's.
    """

    answers: tuple
    trouble: str = ""
    line: tuple[str, int] | None = None
    printed: str = ""
    formula: str = ""


def exercise_of(path: str) -> Exercise:
    """An exercise as far as it is here: in a student pack without its reference."""
    return plan_for(path, PRACTICE_SEED).exercise if SEALED else load_exercise(path)


def ask_own(
    path: str, view: View, rows: Sequence[Inputs], wanted: Sequence, files: Mapping[str, str], worker: WorkerLike
) -> Own:
    """A member's answers to one function of an exercise.

    Parameters
    ----------
    path : str
        The exercise's.
    view : View
    rows : sequence of tuple
        What the function is given, each time.
    wanted : sequence
        The reference's answers, where they are known: what is of another kind is trouble.
    files, worker
        As for `judging.judge`.
    """
    nothing = (None,) * len(rows)
    if f"{path}.py" not in files:
        return Own(nothing, f"{path}.py is not among your files.")
    if not rows:
        return Own(())
    exercise = exercise_of(path)
    question = next(question for question in exercise.questions if question.name == view.function)
    used = {name: files[name] for name in files_used(f"{path}.py", files)}
    exercise = replace(exercise, seconds=max(PATIENCE, exercise.seconds))
    with worker.session(path, used, exercise.seconds, view.symbolic) as session:
        calls = [symbolic_call(question, rows)] if view.symbolic else [numeric_call(view.function, row) for row in rows]
        replies = session.ask(calls)
    printed = "".join(reply.get("printed", "") for reply in replies)[:2000]
    finding = next((trouble_finding(question, None, reply, exercise) for reply in replies if "trouble" in reply), None)
    if finding is None and session.ended:
        finding = end_finding(exercise, session)
    answers, formula = _values(view, replies, len(rows))
    trouble = finding.says if finding else _of_another_kind(question, answers, wanted)
    return Own(answers, trouble, finding.line[:2] if finding and finding.line else None, printed, formula)


def _values(view: View, replies: Sequence[Reply], count: int) -> tuple[tuple, str]:
    values = [reply.get("value") for reply in replies]
    if not view.symbolic:
        return (*values, *(None,) * (count - len(values))), ""
    answer = values[0] if values else None
    formulas = answer if isinstance(answer, list) else [answer]
    text = ", ".join(one.text for one in formulas if isinstance(one, Expression))
    return formula_values(answer, count), text


def _of_another_kind(question: Question, answers: Sequence, wanted: Sequence) -> str:
    """What is wrong with the first answer that is of another kind than the reference's: not its value, but what it is."""
    for got, right in zip(answers, wanted, strict=False):
        apart = None if right is None or question.symbolic else difference(got, right, question.agrees_within)
        if apart and apart.says:
            return f"{question.name} {apart.says.rstrip('.?')}{'?' if apart.says.endswith('?') else '.'}"
    return ""

"""Hint three and the lesson suffice: each answer in `from_hints` was written from these two and the stub alone, by someone who
had not seen the reference; the gentle ones of a line or a few, whose hint three is nearly the code, by their own author. Its
docstring is the hint that it was written from.
"""

import ast
from pathlib import Path

from checker.course import load_exercise
from checker.judging.judge import judge
from checker.judging.verdict import PASSED
from tests.exercises.every_mutant import SEED

WRITTEN = Path(__file__).parent / "from_hints"


def test_hint_three_and_the_lesson_suffice(path, worker):
    files = {str(file.relative_to(WRITTEN)): file.read_text("utf-8") for file in WRITTEN.rglob("*.py")}
    verdict = judge(path, files, worker, SEED)
    assert verdict.findings == ()
    assert (verdict.kind, verdict.earned) == (PASSED, verdict.marks)


def test_the_answer_was_written_from_the_hint_as_it_is(path):
    hint = ast.get_docstring(ast.parse((WRITTEN / f"{path}.py").read_text("utf-8")))
    assert hint.split() == load_exercise(path).hints[2].split(), "the hint has changed: write the answer anew, from the new one"

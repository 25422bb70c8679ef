"""Where an exercise wants a formula, its lesson has the lines of sympy that it takes; they run, and print what stands beside them."""

import contextlib
import io
import re

import pytest

from checker.course import PATHS, ROOT, load_exercise

LESSONS = ROOT / "course/lessons"
BLOCK = re.compile(r"```python\n(import sympy\n.*?)```", re.DOTALL)
PRINTED = re.compile(r"^print\(.*\)  # (.*)$", re.MULTILINE)
PAGES = {page: page.read_text("utf-8") for page in sorted(LESSONS.rglob("*.md"))}
BLOCKS = [code for text in PAGES.values() for code in BLOCK.findall(text)]


def test_the_lesson_of_each_exercise_that_wants_a_formula_has_them_before_its_box():
    for path in PATHS:
        if any(question.symbolic for question in load_exercise(path).questions):
            [before] = [text.split("{{ " + box)[0] for text in PAGES.values() for box in [f'exercise("{path}")'] if box in text]
            assert BLOCK.search(before.rpartition("{{ exercise(")[2]), path


@pytest.mark.parametrize("code", BLOCKS)
def test_they_run_and_print_what_stands_beside_them(code):
    out = io.StringIO()
    with contextlib.redirect_stdout(out):
        exec(code, {})  # noqa: S102
    assert out.getvalue().splitlines() == PRINTED.findall(code) != []

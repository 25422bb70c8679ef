"""What a newcomer needs for an answer is said before it is wanted: numpy's names, the command, how many programs a unit has."""

import re

import pytest

from checker.core import CORE
from checker.course import PATHS, ROOT, UNITS
from checker.judging.plans import exercise_at
from checker.pack.index import index
from course.press.boxes.exercise_box import exercise_html
from course.press.boxes.typed_box import TypedAnswers
from course.press.media.sources import MediaSources

LESSONS = ROOT / "course/lessons"
NUMPYS = re.compile(r"np\.\w+")
COUNTS = {"two": 2, "three": 3, "four": 4, "five": 5, "six": 6, "seven": 7, "eight": 8, "nine": 9, "ten": 10}


@pytest.mark.parametrize("path", CORE, ids=lambda path: path.rpartition("/")[2])
def test_what_a_core_hint_takes_from_numpy_the_lessons_have_taught(path):
    said = [LESSONS / "unit00_bench/tools.md", LESSONS / f"{index()[path].lesson.page}.md", ROOT / f"exercises/{path}.py"]
    taught = {name for file in said for name in NUMPYS.findall(file.read_text("utf-8"))}
    assert set(NUMPYS.findall(" ".join(exercise_at(path).hints))) <= taught


@pytest.mark.parametrize("path", PATHS[:2])
def test_each_box_says_what_to_type_on_either_system(path, tmp_path):
    box = exercise_html(path, TypedAnswers(ROOT, MediaSources(ROOT).modules, tmp_path))
    assert (
        r"<code>.venv\Scripts\checker</code> on Windows" in box and "<code>.venv/bin/checker</code> on macOS and Linux" in box
    )


def test_a_unit_promises_as_many_programs_as_it_asks_for():
    promised = {}
    for unit in UNITS:
        text = (LESSONS / unit.folder / "index.md").read_text("utf-8")
        for count in re.findall(r"you have (\w+) small programs", text):
            promised[unit.folder] = COUNTS[count]
    assert promised
    assert promised == {unit.folder: len(unit.exercises) for unit in UNITS if unit.folder in promised}

"""The budget is a student's own as far as it can be, says what is not, and never ends in a traceback."""

import re
import shutil

import numpy as np
import pytest

from course import budget
from course.circle.levels import RATE
from course.circle.programme import TOP, programme
from course.circle.stations import LOCAL, NEXT_CHANNEL, STATIONS
from course.figures.unit04_crystal_set.budget import powers

from .conftest import ROOT


@pytest.fixture
def own(tmp_path):
    """The exercises of a student who has finished them all."""
    folder = tmp_path / "exercises"
    shutil.copytree(ROOT / "solutions", folder, ignore=shutil.ignore_patterns("*_check.py", "__pycache__"))
    for file in folder.rglob("*.py"):
        file.write_text(file.read_text("utf-8").replace("from solutions.", "from exercises."), "utf-8")
    return folder


def change(folder, file, old, new):
    path = folder / file
    text = path.read_text("utf-8")
    assert old in text
    path.write_text(text.replace(old, new), "utf-8")


def test_finished_exercises_need_nothing_from_the_course(own):
    watts, replaced = budget.student_powers(LOCAL, own)
    assert np.allclose(watts, powers(LOCAL), rtol=1e-12, atol=0) and replaced == {}


def test_stubs_are_named_and_the_course_stands_in():
    watts, replaced = budget.student_powers(LOCAL, ROOT / "exercises")
    assert np.allclose(watts, powers(LOCAL), rtol=1e-12, atol=0)
    assert replaced["power_budget"] == replaced["log_i0"] == "it is not written yet"


def test_one_missing_function_leaves_the_others_the_students(own):
    """`power_budget` is missing and `tuned_source` is half what it should be: the course's budget uses theirs."""
    change(own, "unit04_crystal_set/crystal_set.py", "    with_tone = 1 + depth**2 / 2", "    raise NotImplementedError")
    change(own, "unit04_crystal_set/crystal_set.py", "return np.sqrt(2) *", "return np.sqrt(2) / 2 *")
    watts, replaced = budget.student_powers(NEXT_CHANNEL, own)
    assert set(replaced) == {"power_budget"}
    assert np.isclose(watts[3], powers(NEXT_CHANNEL)[3] / 4, atol=0)


def test_a_file_that_cannot_be_read_and_a_function_that_fails_are_named(own):
    (own / "unit04_crystal_set" / "rectified_voltage.py").write_text("def log_i0(:\n", "utf-8")
    change(own, "unit01_signal/aerial_voltage.py", "return field", "return 1 / 0 * field")
    watts, replaced = budget.student_powers(LOCAL, own)
    assert np.allclose(watts, powers(LOCAL), rtol=1e-12, atol=0)
    assert "SyntaxError" in replaced["unit04_crystal_set/rectified_voltage.py"]
    assert replaced["aerial_emf"] == "it stopped with ZeroDivisionError: division by zero"


@pytest.mark.parametrize("answer", ["0", "(1.0, 2.0)", "(1.0,) * 6 + (-1.0,)", "(float('nan'),) * 7", "'loud'"])
def test_no_seven_powers_is_one_sentence(own, answer, capsys, tmp_path):
    change(own, "unit04_crystal_set/crystal_set.py", "    with_tone = 1 + depth**2 / 2", f"    return {answer}")
    assert budget.main(["--exercises", str(own), "--picture", str(tmp_path / "x.png")]) == 2
    said = capsys.readouterr().err
    assert said.startswith("your power_budget gave") and said.count("\n") == 1


@pytest.mark.parametrize(
    ("words", "said"),
    [
        (["--station", "Nowhere"], "there is no station called 'Nowhere'"),
        (["--picture", "x.doc"], "end the picture's name with .png"),
        (["--exercises", "nowhere"], "nowhere holds no unit04_crystal_set"),
        (["--picture", "/nowhere/x.png"], "cannot be written"),
    ],
)
def test_wrong_words_are_one_sentence(words, said, capsys, tmp_path, monkeypatch):
    monkeypatch.chdir(ROOT)
    assert budget.main(words) == 2
    told = capsys.readouterr().err
    assert said in told and "Traceback" not in told and told.count("\n") == 1


@pytest.mark.parametrize("station", STATIONS, ids=lambda station: station.name)
def test_the_picture_is_drawn_and_the_losses_add_up(station, own, capsys, tmp_path):
    picture = tmp_path / "budget.svg"
    assert budget.main(["--exercises", str(own), "--station", station.name, "--picture", str(picture)]) == 0
    said = capsys.readouterr().out
    lost = [float(figures) for figures in re.findall(r"([\d.]+) dB lost", said)]
    sent, *_, tone = powers(station)
    assert "the course" not in said and picture.stat().st_size > 5000
    assert np.isclose(sum(lost), 10 * np.log10(sent / tone), atol=0.3)


def test_the_programme_stays_in_its_channel_and_fills_its_depth():
    sent = programme()
    spectrum = np.abs(np.fft.rfft(sent * np.hanning(sent.size)))
    above = np.fft.rfftfreq(sent.size, 1 / RATE) > TOP + 50
    assert np.isclose(np.abs(sent).max(), 1)
    assert np.sum(spectrum[above] ** 2) < 1e-6 * np.sum(spectrum**2)

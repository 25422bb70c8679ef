"""Where a student stands: what counts is what was passed; the core comes first, and what was set aside comes last."""

import shutil
from dataclasses import replace
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from checker import cli
from checker.cli import try_
from checker.cli.later import FILE, put_aside, set_aside, take_back
from checker.cli.standing import Standing, list_of
from checker.core import CORE, FURTHER, IN_ORDER
from checker.course import PATHS, ROOT, find
from checker.judging.verdict import NOT_ATTEMPTED, PASSED, WRONG, Finding, Part, Verdict
from checker.report.learner import learner_lines

METRES, TONE, AM, PREFIXES = map(find, ("metres", "tone", "am_waveform", "prefixes"))
SOME = st.sets(st.sampled_from(PATHS))


def text(lines):
    return "\n".join(line.text for line in lines)


@given(SOME, SOME)
def test_next_comes_what_is_neither_passed_nor_set_aside_the_core_before_all(passed, later):
    following = Standing(passed, later).next
    waiting = [path for path in IN_ORDER if path not in passed | later]
    assert following == (waiting[0] if waiting else None)
    assert following not in FURTHER or not set(CORE) - passed - later


@given(SOME, SOME)
def test_what_is_said_counts_each_exercise_passed_wherever_it_stands(passed, later):
    said = text(Standing(passed, later).lines(80))
    core, further = len(passed & set(CORE)), len(passed & set(FURTHER))
    numbers = [int(word) for word in said.partition(".")[0].replace(",", " ").split() if word.isdigit()]
    if len(passed) == len(PATHS):
        assert numbers == [len(PATHS)]
    else:
        assert numbers[0] == core and (numbers[-2:] == [further, len(FURTHER)] if further else len(numbers) < 3)
    assert max(map(len, said.splitlines())) <= 80


def test_it_says_what_is_set_aside_and_how_to_take_it_up():
    left = Standing([path for path in PATHS if path != TONE], [TONE, METRES])
    said = text(left.lines(80))
    assert left.next is None
    assert "Set aside for later: tone." in said and "try --now tone" in said and "metres" not in said


def test_what_comes_next_is_found_out_where_nothing_is_kept(monkeypatch):
    passed, judged = {METRES, AM}, []
    monkeypatch.setattr(
        try_,
        "practice_verdict",
        lambda path, files, worker: judged.append(path) or Verdict(path, PASSED if path in passed else WRONG, 10),
    )
    found = try_._as_far_as_the_next({}, [TONE], None)
    assert list(found) == judged == list(IN_ORDER[: IN_ORDER.index(AM) + 2])
    assert {path for path, verdict in found.items() if verdict.kind == PASSED} == passed


def test_beside_the_core_the_further_exercises_of_the_unit_are_offered():
    assert Standing([]).offered(METRES) == "prefixes"
    assert Standing([PREFIXES]).offered(METRES) == Standing([]).offered(PREFIXES) == ""


def test_the_list_tells_core_from_further_in_words():
    verdicts = {path: Verdict(path, NOT_ATTEMPTED, 10) for path in PATHS}
    rows = {line.text.split()[0]: line.text.split()[1] for line in list_of(verdicts, [METRES]) if line.text.startswith("  ")}
    assert rows == {path.rpartition("/")[2]: "core" if path in CORE else "further" for path in PATHS}
    assert "set aside" in text(list_of(verdicts, [METRES])).splitlines()[1]


def test_what_is_set_aside_is_kept_beside_the_exercises_and_may_be_edited_by_hand(tmp_path):
    assert set_aside(tmp_path) == ()
    assert put_aside(tmp_path, TONE) == (TONE,) and put_aside(tmp_path, METRES) == (METRES, TONE)
    (tmp_path / FILE).write_bytes((tmp_path / FILE).read_bytes() + b"\nam_waveform\r\nnot an exercise\n\xff\n")
    assert set_aside(tmp_path) == (METRES, TONE, AM)
    assert take_back(tmp_path, TONE) == set_aside(tmp_path) == (METRES, AM)
    assert take_back(tmp_path, TONE) == (METRES, AM)


ARRAYS = Finding(WRONG, "resonant_frequency", "Only single numbers.")
PARTS = (
    Part("resonant_frequency", "numbers", Fraction(4), Fraction(4)),
    Part("resonant_frequency", "arrays", Fraction(1), Fraction(0)),
    Part("resonance_condition", "numbers", Fraction(5), Fraction(0)),
)
ONLY_THE_CORE = Verdict("unit03_tuned_circuit/resonance", WRONG, 10, PARTS, (ARRAYS,))


def test_what_the_core_asks_is_passed_and_the_rest_is_offered():
    heading, says, *rest = (line.text for line in learner_lines(ONLY_THE_CORE))
    assert heading == "resonance · passed" and says == "  That is all that the core asks. Further, if you like:"
    assert any("Only single numbers." in line for line in rest)


def test_what_the_core_lacks_comes_before_what_is_further():
    wrong = Finding(WRONG, "resonant_frequency", "Not right.")
    stub = Finding(NOT_ATTEMPTED, "resonance_condition", "stub")
    verdict = replace(ONLY_THE_CORE, parts=tuple(replace(part, earned=Fraction(0)) for part in PARTS), findings=(wrong, stub))
    said = text(learner_lines(verdict))
    assert said.startswith("resonance · wrong") and "Not right." in said and "to be written" not in said
    assert said.endswith("The core does not ask for resonance_condition.")


@pytest.mark.parametrize("kind", [PASSED, WRONG])
def test_of_a_further_exercise_nothing_is_said_of_the_core(kind):
    assert "core" not in text(learner_lines(Verdict(PREFIXES, kind, 10)))


def test_one_set_aside_is_passed_over_until_it_is_taken_up(tmp_path, monkeypatch, capsys):
    shutil.copytree(ROOT / "exercises", tmp_path / "exercises")
    monkeypatch.chdir(tmp_path)
    assert cli.main(["try", "--later", "metres"]) == cli.NOT_YET
    out = capsys.readouterr().out
    assert "Set aside for later: metres." in out and "tone · not attempted" in out
    assert cli.main(["try", "--now", "metres"]) == cli.NOT_YET
    assert capsys.readouterr().out.startswith("metres · not attempted") and set_aside(tmp_path / "exercises") == ()

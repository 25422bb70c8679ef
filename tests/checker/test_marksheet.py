"""Marks set by hand: what a person may type, and what then counts."""

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from checker.course import UnknownExercise
from checker.marks.marksheet import Mark, member_marks, override_sentence, set_mark
from checker.marks.store import Override, open_store
from tests.checker import made

RESONANCE = "unit03_tuned_circuit/resonance"


@pytest.fixture
def store(tmp_path):
    with open_store(tmp_path / "marks.db") as store:
        yield store


@pytest.mark.parametrize("typed, mark", [("7", 7), ("7.5", Fraction(15, 2)), ("15/2", Fraction(15, 2)), (" 10 ", 10), ("0", 0)])
def test_a_mark_is_set_exactly(store, typed, mark):
    set_mark(store, "Isla Marrow", "resonance", typed, "Shown on the blackboard.", "Wren Dalby")
    assert store.overrides()["Isla Marrow", RESONANCE].mark == mark


@pytest.mark.parametrize(
    "typed, sentence",
    [
        ("11", "11 is more than this exercise has: 10 marks."),
        ("21/2", "21/2 is more than this exercise has: 10 marks."),
        ("-1", "'-1' is no mark: write a number such as 7, 7.5 or 15/2."),
        ("ten", "'ten' is no mark"),
        ("1/0", "'1/0' is no mark"),
        ("1e400", "'1e400' is no mark"),
        ("nan", "'nan' is no mark"),
        ("٣", "'٣' is no mark"),
        ("", "'' is no mark"),
    ],
)
def test_what_is_no_mark_is_told_in_a_sentence(store, typed, sentence):
    with pytest.raises(ValueError) as problem:
        set_mark(store, "Isla Marrow", "resonance", typed, "Shown.", "Wren Dalby")
    assert str(problem.value).startswith(sentence)
    assert store.overrides() == {}


def test_a_mark_needs_an_exercise_a_reason_and_a_name(store):
    with pytest.raises(UnknownExercise, match="Did you mean resonance"):
        set_mark(store, "Isla Marrow", "resonanse", "7", "Shown.", "Wren Dalby")
    with pytest.raises(ValueError, match="needs a reason"):
        set_mark(store, "Isla Marrow", "resonance", "7", " \n", "Wren Dalby")
    with pytest.raises(ValueError, match="needs the name"):
        set_mark(store, "Isla Marrow", "resonance", "7", "Shown.", "")


@given(st.text(min_size=1), st.text(min_size=1))
def test_no_reason_or_name_breaks_the_store(tmp_path_factory, reason, who):
    with open_store(tmp_path_factory.mktemp("store") / "marks.db") as store:
        try:
            set_mark(store, "Isla Marrow", "resonance", "7", reason + "\ud800", who)
        except ValueError as problem:
            assert "needs" in str(problem)


def test_a_mark_set_by_hand_counts_in_the_total_and_shows_both():
    verdict = made.verdict(1, RESONANCE)
    override = Override(
        "Isla Marrow", RESONANCE, Fraction(9), "Shown on the blackboard.", "Wren Dalby", "2031-05-03T18:20:00+00:00"
    )
    plain = member_marks("Isla Marrow", [], [verdict, made.verdict(2)], {})
    changed = member_marks("Isla Marrow", [], [verdict, made.verdict(2)], {("Isla Marrow", RESONANCE): override})
    other = member_marks("Dot Bittern", [], [verdict, made.verdict(2)], {("Isla Marrow", RESONANCE): override})
    assert plain.amount == other.amount == Fraction(1, 2) + Fraction(2, 3)
    assert changed.amount == 9 + Fraction(2, 3)
    assert changed.of == plain.of == 20
    assert override_sentence(Mark(verdict, override)) == (
        "Set by hand: 9 of 10 (worked out: 0.5). Shown on the blackboard. Wren Dalby, 2031-05-03."
    )

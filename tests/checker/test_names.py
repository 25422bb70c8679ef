"""Names that learning platforms give come down to the member's, by a pattern that is given; who it is does not change by it."""

import time
from contextlib import suppress

import pytest
from hypothesis import given
from hypothesis import strategies as st

from checker.submissions.names import WrongPattern, member_name

NUMBERED, FAMILY_FIRST = "{name}_{number}_submission", "{family}, {given} - {any}"


@pytest.mark.parametrize(
    "raw, pattern, name",
    [
        ("Nell Samphire_40172_submission", NUMBERED, "Nell Samphire"),
        ("Nell_Samphire_40172_SUBMISSION", NUMBERED, "Nell Samphire"),
        ("Kit 3_40172_submission", NUMBERED, "Kit 3"),
        ("40172 submission – Nell Samphire (2)", "{number} submission – {name} ({number})", "Nell Samphire"),
        ("Samphire, Nell - week 3, late", FAMILY_FIRST, "Nell Samphire"),
        ("Samphire, Nell - ", FAMILY_FIRST, "Nell Samphire"),
        ("Nell [a.b]", "{name} [a.b]", "Nell"),
        ("Nell xaxb]", "{name} [a.b]", None),
        ("Nell Samphire", NUMBERED, None),
        ("_40172_submission", NUMBERED, None),
        ("__40172_submission", NUMBERED, None),
    ],
)
def test_a_name_is_taken_out_by_the_pattern_or_not_at_all(raw, pattern, name):
    assert member_name(raw, pattern) == name


@pytest.mark.parametrize(
    "pattern, says",
    [
        ("", "must have {name}, or {given} and {family}"),
        ("{number}_submission", "must have {name}, or {given} and {family}"),
        ("{given}_{number}", "must have {name}, or {given} and {family}"),
        ("{name} {family}", "must have {name}, or {given} and {family}"),
        ("{nmae}_{number}", "has {nmae}, which stands for nothing"),
        ("{name}_{name}", "has {name} more than once"),
        ("{any}_{name}_{any}", "has {any} more than once"),
        ("{name}{number}", "nothing between them"),
        ("{name_{number}", "brace without its other half"),
        ("{name}" + "_" * 300, "is longer than 200 characters"),
    ],
)
def test_a_wrong_pattern_gets_one_sentence(pattern, says):
    with pytest.raises(WrongPattern) as problem:
        member_name("Nell", pattern)
    assert says in str(problem.value) and str(problem.value).endswith(
        ": write one such as {name}_{number}_submission or {family}, {given} {any}."
    )


@given(st.text(), st.text(alphabet="{}nameubrgivfly_ (,"))
def test_no_pattern_and_no_name_gives_anything_but_a_name_or_a_sentence(raw, pattern):
    with suppress(WrongPattern):
        assert member_name(raw, pattern) != ""


def test_the_slowest_name_that_a_system_allows_takes_no_time():
    began = time.perf_counter()
    assert member_name("1_" * 127, "{any}_{name}_{number}_{number}_{number}x") is None
    assert time.perf_counter() - began < 1

"""Names that learning platforms give come down to the member's, by a pattern that is given; who it is does not change by it."""

import time
import zipfile
from contextlib import suppress

import pytest
from hypothesis import given
from hypothesis import strategies as st

from checker.marks.details import details_from_data, details_to_data
from checker.submissions.members import UnreadableFolder, read_folder
from checker.submissions.names import WrongPattern, member_name
from tests.checker import made

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


def class_of(tmp_path, *names):
    for name in names:
        (tmp_path / name).mkdir()
    return tmp_path


def test_the_raw_name_stays_who_it_is_and_clashes_are_told_apart(tmp_path):
    folder = class_of(tmp_path, "Nell_1_submission", "Nell_2_submission", "Kit Harrow")
    kit, *nells = read_folder(folder, NUMBERED)
    assert [(one.name, one.identity, one.notes) for one in nells] == [
        ("Nell", "Nell_1_submission", ()),
        ("Nell (2)", "Nell_2_submission", ()),
    ]
    assert (kit.name, kit.notes) == ("Kit Harrow", (f"The name does not fit the pattern {NUMBERED!r}: it stands as it is.",))
    assert [one.identity for one in read_folder(folder)] == [one.identity for one in (kit, *nells)]


def test_a_zip_has_its_name_without_the_ending(tmp_path):
    with zipfile.ZipFile(tmp_path / "Nell Samphire_40172_submission.zip", "w") as archive:
        archive.writestr("resonance.py", "x = 1\n")
    [nell] = read_folder(tmp_path, NUMBERED)
    assert (nell.name, nell.identity) == ("Nell Samphire", "Nell Samphire_40172_submission")


def test_a_pattern_that_fits_nothing_is_one_sentence(tmp_path):
    with pytest.raises(
        UnreadableFolder, match="fits the pattern for names '{family}, {given} - {any}': the first is called 'Kit'"
    ):
        read_folder(class_of(tmp_path, "Kit", "Nell"), FAMILY_FIRST)


def test_a_run_remembers_the_pattern_until_it_is_told_another():
    details = made.details(1).with_changes(None, None, None, names=NUMBERED)
    kept = details_from_data(details_to_data(details), 1)
    assert kept.names == NUMBERED == kept.with_changes("Form 5", None, None).names
    assert kept.with_changes(None, None, None, names="").names == ""
    before = {key: value for key, value in details_to_data(details).items() if key != "names"}
    assert details_from_data(before, 1).names == ""

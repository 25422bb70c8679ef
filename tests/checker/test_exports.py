"""Marks as other programs read them: the table, OneRoster, JUnit XML."""

import csv
import importlib
import io
import re
import tomllib
import unicodedata
import zipfile
from dataclasses import replace
from datetime import date
from fractions import Fraction
from pathlib import Path

import pytest
from hypothesis import example, given
from hypothesis import strategies as st
from lxml import etree

from checker.exports import ClassDetails, write_exports
from checker.exports.cells import text_cell
from checker.exports.junit import write_junit
from checker.exports.oneroster import write_oneroster
from checker.exports.table import write_table
from checker.judging.verdict import Part, Verdict
from checker.marks.marksheet import member_marks
from tests.checker import made, sample

STANDARDS = Path(__file__).parents[1] / "published" / "standards"
DETAILS = ClassDetails(
    "Crystal to Reaction", "Saltmarsh Point Wireless Circle", date(2031, 1, 10), date(2031, 6, 30), date(2031, 5, 4)
)
FORMULA_STARTS = tuple("=+-@\t\r＝＋－＠")
odd_names = made.names | st.sampled_from(
    ["=1+1", "+1", "-1", "@x", "a;=1+1", 'a,"=1', " =1", "\t=1", "a|@x", "x\r\n=1", "＝1", "Ann =1"]
)
odd_texts = made.any_text | odd_names


# Cells


@example("a\u200b=1")
@given(odd_texts)
def test_no_cell_begins_as_a_formula_does_however_it_is_cut(text):
    cell = text_cell(text)
    assert not cell.lstrip().startswith(FORMULA_STARTS)
    for separator in ",;|":
        assert not any(part.lstrip().startswith(FORMULA_STARTS) for part in cell.split(separator))
    assert not any(unicodedata.category(char)[0] == "C" or char in "\u2028\u2029" for char in cell)


@given(st.text(st.characters(categories=["L", "N", "Zs"])))
def test_a_plain_text_stays_as_it_is(text):
    assert text_cell(text) == text


@given(
    st.lists(
        st.builds(member_marks, odd_names, st.lists(odd_texts, max_size=2), st.lists(made.verdicts, max_size=2), st.just({})),
        max_size=3,
    ),
    st.sampled_from(",;\t|"),
)
def test_no_cell_of_the_table_is_a_formula_in_a_spreadsheet_of_any_separator(members, separator):
    file = io.StringIO(newline="")
    write_table(members, sample.PATHS, file)
    for row in csv.reader(io.StringIO(file.getvalue(), newline=""), delimiter=separator):
        assert not any(cell.lstrip().startswith(FORMULA_STARTS) for cell in row)


# The table


def table(members, paths=sample.PATHS):
    file = io.StringIO(newline="")
    write_table(members, paths, file)
    return list(csv.DictReader(io.StringIO(file.getvalue(), newline="")))


def test_the_table_has_a_row_a_member_and_a_column_an_exercise(sample_class):
    rows = {row["member"]: row for row in table(sample_class)}
    assert len(rows) == len(sample_class)
    assert list(rows["Isla Marrow"]) == [
        "member",
        "marks",
        "out of",
        "solenoid_inductance (further)",
        "resonance (core)",
        "set by hand",
        "with stand-ins",
        "about the files",
    ]
    assert list(rows["Isla Marrow"].values()) == ["Isla Marrow", "20", "20", "10", "10", "", "", ""]
    assert rows["Tobias Fenn"]["marks"] == "17.5"
    assert rows["Tobias Fenn"]["resonance (core)"] == "7.5"
    assert rows["Tobias Fenn"]["set by hand"] == (
        "resonance: Set by hand: 7.5 of 10 (worked out: 6). Derived it rightly on the blackboard. Wren Dalby, 2031-05-03."
    )
    assert rows["Nell Samphire"]["about the files"] == "notes.txt could not be read."
    assert '\'=HYPERLINK("x")' in rows


def test_a_total_is_rounded_once_not_a_sum_of_rounded_marks():
    third = (Part("f", "numbers", Fraction(10), Fraction(10, 3)),)
    thirds = [Verdict(path, "wrong", 10, third) for path in sample.PATHS]
    [row] = table([member_marks("Dot Bittern", [], thirds, {})])
    assert [row[name] for name in ("solenoid_inductance (further)", "resonance (core)", "marks")] == ["3.3", "3.3", "6.7"]


def test_an_exercise_that_was_not_marked_is_an_empty_cell(sample_class):
    [row] = table(sample_class[:1], ["unit00_bench/prefixes", *sample.PATHS])
    assert row["prefixes (further)"] == "" and row["resonance (core)"] == "10"


# OneRoster

STANDARD = tomllib.loads((STANDARDS / "oneroster_1_2_csv.toml").read_text("utf-8"))


def roster(members):
    """File name to rows, from the zip."""
    file = io.BytesIO()
    write_oneroster(members, sample.PATHS, DETAILS, file)
    with zipfile.ZipFile(file) as archive:
        return {
            name.removesuffix(".csv"): list(csv.reader(io.StringIO(archive.read(name).decode("utf-8"), newline="")))
            for name in archive.namelist()
        }


def of_kind(value, kind, ids):
    """Whether a value is what the standard's field wants."""
    if kind == "text":
        return True
    if kind == "blank":
        return value == ""
    if kind == "boolean":
        return value in ("true", "false")
    if kind == "date":
        return date.fromisoformat(value).isoformat() == value
    if kind == "year":
        return re.fullmatch(r"\d{4}", value)
    if kind == "number":
        return re.fullmatch(r"\d+(\.\d+)?", value)
    if kind == "id":
        return re.fullmatch(r"[0-9a-zA-Z.\-_/@]{1,255}", value)
    if kind.startswith(("id:", "ids:")):
        wanted = ids[kind.partition(":")[2]]
        return all(one in wanted for one in (value.split(",") if kind.startswith("ids") else [value]))
    return value in kind.split("|")


def assert_as_published(files):
    for name, (headings, *rows) in files.items():
        if name == "manifest":
            continue
        fields = [field.lstrip("*").split(" ", 1) for field in STANDARD["files"][name]]
        required = {field.lstrip("*").split()[0] for field in STANDARD["files"][name] if field.startswith("*")}
        assert headings == [field for field, _ in fields], name
        ids = {file: {row[0] for row in rows} for file, (_, *rows) in files.items()}
        assert len(ids[name]) == len(rows), f"{name}: an identifier twice"
        for row in rows:
            for value, (field, kind) in zip(row, fields, strict=True):
                assert value or field not in required, f"{name}.{field} is empty"
                assert not value or of_kind(value, kind, ids), f"{name}.{field}: {value!r} is not {kind}"
    manifest = dict(files["manifest"][1:])
    assert files["manifest"][0] == STANDARD["manifest"]["fields"]
    assert set(manifest) == set(STANDARD["manifest"]["properties"])
    assert manifest["oneroster.version"] == "1.2"
    for name, value in manifest.items():
        if name.startswith("file."):
            assert value == ("bulk" if name.removeprefix("file.") in files else "absent")


def test_oneroster_files_are_as_published(sample_class):
    files = roster(sample_class)
    assert_as_published(files)
    assert len(files["users"]) == 1 + len(sample_class)
    assert len(files["results"]) == 1 + 2 * len(sample_class)


@given(
    st.lists(
        st.builds(
            member_marks,
            odd_names,
            st.just(()),
            st.lists(made.verdicts, max_size=3, unique_by=lambda v: v.exercise),
            st.just({}),
        ),
        max_size=4,
        unique_by=lambda member: member.name,
    )
)
def test_oneroster_files_are_as_published_for_any_member(members):
    def of_exercises(member):
        return replace(member, problems=(), marks=tuple(mark for mark in member.marks if mark.exercise in sample.PATHS))

    files = roster([of_exercises(member) for member in members])
    assert_as_published(files)
    cells = [cell for name, rows in files.items() for row in rows for cell in row]
    assert not any(cell.startswith(FORMULA_STARTS) for cell in cells)


@pytest.mark.parametrize(
    "break_it",
    [
        lambda files: files["results"][1].__setitem__(3, "nowhere"),
        lambda files: files["users"].append(files["users"][1]),
        lambda files: files["lineItems"][1].__setitem__(3, ""),
        lambda files: files["lineItems"][0].reverse(),
        lambda files: files["results"][1].__setitem__(5, "good"),
        lambda files: files["users"][1].__setitem__(1, "active"),
        lambda files: files.pop("categories"),
    ],
)
def test_the_check_against_the_published_fields_can_fail(sample_class, break_it):
    files = roster(sample_class)
    break_it(files)
    with pytest.raises((AssertionError, KeyError)):
        assert_as_published(files)


def test_oneroster_results_say_what_the_table_says(sample_class):
    files = roster(sample_class)
    people = {row[0]: row[4] for row in files["users"][1:]}  # username
    lines = {row[0]: row[4] for row in files["lineItems"][1:]}  # description: the exercise's path
    results = {(people[row[4]], lines[row[3]]): row for row in files["results"][1:]}
    assert results["Tobias Fenn", sample.RESONANCE][5:7] == ["fully graded", "7.5"]
    assert "blackboard" in results["Tobias Fenn", sample.RESONANCE][8]
    assert results["Nell Samphire", sample.RESONANCE][5:7] == ["not submitted", "0"]
    assert results["Nell Samphire", sample.RESONANCE][-1] == "true"
    assert results["Isla Marrow", sample.SOLENOID][6] == "10"


def test_the_same_marks_give_the_same_bytes_and_the_same_identifiers(sample_class):
    first, second = io.BytesIO(), io.BytesIO()
    write_oneroster(sample_class, sample.PATHS, DETAILS, first)
    write_oneroster(sample_class, sample.PATHS, DETAILS, second)
    assert first.getvalue() == second.getvalue()
    assert {entry.date_time for entry in zipfile.ZipFile(first).infolist()} == {(1980, 1, 1, 0, 0, 0)}
    fewer = roster(sample_class[:2])
    assert {row[0] for row in fewer["results"]} <= {row[0] for row in roster(sample_class)["results"]}


# JUnit XML

SCHEMA = etree.XMLSchema(etree.parse(STANDARDS / "junit-10.xsd"))


def junit(members):
    file = io.StringIO()
    write_junit(members, file)
    tree = etree.fromstring(file.getvalue().encode("utf-8"))
    SCHEMA.assertValid(tree)
    return tree


def test_junit_is_valid_and_counts_as_the_verdicts_do(sample_class):
    suites = {suite.get("name"): suite for suite in junit(sample_class)}
    assert list(suites) == [member.name for member in sample_class]
    counts = {
        name: tuple(suite.get(count) for count in ("tests", "failures", "errors", "skipped")) for name, suite in suites.items()
    }
    assert counts["Isla Marrow"] == ("2", "0", "0", "0")
    assert counts["Tobias Fenn"] == ("2", "1", "0", "0")
    assert counts["Jasper Thrift"] == ("2", "0", "0", "2")
    assert counts["Kit Harrow"] == counts["Mabel Sedge"] == ("2", "0", "1", "0")
    for suite in suites.values():
        for tag, count in (("failure", "failures"), ("error", "errors"), ("skipped", "skipped")):
            assert len(suite.findall(f"testcase/{tag}")) == int(suite.get(count))
    failure = suites["Tobias Fenn"].find("testcase/failure")
    assert "You may have returned the angular frequency" in " ".join(failure.text.split())
    assert "Derived it rightly" in suites["Tobias Fenn"].findtext("testcase/system-out")


@given(
    st.lists(
        st.builds(member_marks, odd_texts, st.lists(odd_texts, max_size=2), st.lists(made.verdicts, max_size=2), st.just({})),
        max_size=2,
    )
)
def test_junit_is_valid_whatever_a_member_writes(members):
    tree = junit(members)
    assert len(tree) == len(members)


# All together


def test_exports_are_written_whole_and_replace_what_was_there(tmp_path, sample_class):
    (tmp_path / "marks.csv").write_text("old")
    assert not write_exports(sample_class, sample.PATHS, DETAILS, tmp_path)
    assert sorted(path.name for path in tmp_path.iterdir()) == ["junit.xml", "marks.csv", "oneroster.zip", "sums.csv"]
    raw = (tmp_path / "marks.csv").read_bytes()
    assert raw.startswith(b"\xef\xbb\xbf") and raw.count(b"\r\n") == 1 + len(sample_class)


def test_an_export_that_fails_half_way_leaves_the_old_one(tmp_path, sample_class):
    (tmp_path / "marks.csv").write_text("old")

    def breaking():
        yield sample_class[0]
        raise OSError("the disk is full")

    with pytest.raises(OSError):
        write_exports(breaking(), sample.PATHS, DETAILS, tmp_path)
    assert [path.name for path in tmp_path.iterdir()] == ["marks.csv"]
    assert (tmp_path / "marks.csv").read_text() == "old"


@pytest.mark.parametrize("place", ["junit._suite", "oneroster._results", "table._row"])
def test_a_fault_over_one_member_is_said_and_leaves_the_others_their_tables(tmp_path, sample_class, monkeypatch, place):
    """Whichever of the three files it is met in, all three speak of the others alone."""
    module, _, name = place.partition(".")
    whole = getattr(importlib.import_module(f"checker.exports.{module}"), name)

    def breaks(member, *more):
        return whole(member, *more) if member.name != "Tobias Fenn" else 1 / 0

    monkeypatch.setattr(f"checker.exports.{place}", breaks)
    left_out = write_exports(sample_class, sample.PATHS, DETAILS, tmp_path)
    assert list(left_out) == ["Tobias Fenn"] and "ZeroDivisionError" in left_out["Tobias Fenn"]
    text = (tmp_path / "marks.csv").read_text("utf-8-sig")
    [row] = [row for row in csv.reader(io.StringIO(text)) if row[0] == "Tobias Fenn"]
    assert "a fault of the checker's (ZeroDivisionError" in row[-1] and not any(row[1:-1])
    junit = (tmp_path / "junit.xml").read_text("utf-8")
    assert "Tobias Fenn" not in junit and junit.count("<testsuite ") == len(sample_class) - 1
    with zipfile.ZipFile(tmp_path / "oneroster.zip") as archive:
        users, results = archive.read("users.csv").decode(), archive.read("results.csv").decode()
    assert "Tobias" not in users and users.count("\r\n") == len(sample_class) and results.count("\r\n") > 1

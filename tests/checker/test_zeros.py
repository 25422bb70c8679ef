"""Wrong, nothing handed in, handed in but not read, and not set are four things, wherever a mark is shown."""

import csv
import io
import json
import os
import subprocess
import zipfile
from datetime import date
from pathlib import Path

import pytest
from lxml import etree, html

from checker.cli.mark import amend_command, marks_table
from checker.cli.parser import parser
from checker.course import PATHS
from checker.exports import ClassDetails, write_exports
from checker.judging.judge import absent
from checker.judging.verdict import NOT_ATTEMPTED, NOT_HANDED_IN, NOT_READ, Verdict, to_data
from checker.marks.marksheet import marks_to_data, member_marks
from checker.marks.pool import mark
from checker.marks.store import _seal, open_store
from checker.report.feedback import feedback_text
from checker.report.pages import write_reports
from checker.submissions.members import Member
from tests.checker import made

SET = PATHS[:4]
WHY = "tone.py is not text in UTF-8; save it as UTF-8."
KINDS = {
    "wrong": Verdict(SET[0], "wrong", 10),
    "not handed in": absent(SET[1]),
    "not read": absent(SET[2], WHY),
}
NELL = member_marks("Nell Samphire", [WHY], KINDS.values(), {}, notes=["Two files for a.py."])
DETAILS = ClassDetails("Form 4", "Quay School", date(2026, 9, 1), date(2027, 7, 31), date(2026, 12, 1))


@pytest.fixture(scope="module")
def written(tmp_path_factory):
    folder = tmp_path_factory.mktemp("marks")
    write_exports([NELL], SET, DETAILS, folder)
    write_reports([NELL], SET, folder, DETAILS.marked)
    return folder


def test_in_the_table_a_number_is_an_answer_and_nothing_is_not_set(written):
    _, row = csv.reader((written / "marks.csv").read_text("utf-8-sig").splitlines())
    assert row[3:7] == ["0", "not handed in", "not read", ""]
    assert row[-1] == f"{WHY} Two files for a.py."


def test_on_the_class_page_each_has_a_sign_of_its_own_and_the_key_names_it(written):
    page = html.fromstring((written / "index.html").read_text("utf-8"))
    [row] = page.xpath('//table[@class="grid"]/tbody/tr')
    assert [cell.text_content() for cell in row.findall("td")[1:]] == ["0", "○", "⊘", ""]
    key = page.xpath('//ul[@class="key"]')[0].text_content()
    assert all(what in key for what in ("0 wrong", "○ not handed in", "⊘ not read", "nothing: not set"))


def test_a_member_s_page_says_why_it_was_not_read(written):
    page = html.fromstring((written / "members" / "nell-samphire.html").read_text("utf-8"))
    assert "0 of 30 marks, with 1 not read" in page.text_content() and "1 not handed in" in page.text_content()
    card = next(card for card in page.xpath('//article[@class="card"]') if "not read" in card.text_content())
    assert WHY in card.text_content() and "⊘ of 10" in card.text_content()
    assert [cell.text_content().split()[0] for cell in page.xpath('//table[@class="all"]//td[@class="number"]')][:3] == [
        "0",
        "○",
        "⊘",
    ]


def test_as_data_each_is_named_and_counted():
    data = json.loads(json.dumps(marks_to_data(NELL)))
    assert [one["earned"] for one in data["exercises"]] == ["0", None, None]
    assert data["without a mark"] == {"not handed in": 1, "not read": 1, "not set": len(PATHS) - 3}
    assert (data["problems"], data["notes"]) == ([WHY], ["Two files for a.py."])


def test_in_a_terminal_what_was_not_handed_in_is_a_dash_and_what_was_not_read_is_marked():
    none = member_marks("Kit Harrow", [], [absent(path) for path in SET], {})
    unread = member_marks("Dot Bittern", [WHY], [absent(path, WHY) for path in SET], {})
    _, rows = marks_table([NELL, none, unread], SET)
    assert set(rows[2][1:-1]) == {"!"}
    assert rows[0][1] == "0" and rows[0][-1] == "0 of 30!"
    assert set(rows[1][1:-1]) == {"–"} and rows[1][-1] == "– of 40"
    assert rows[2][-1] == "! of 40"


@pytest.mark.parametrize(
    ("verdicts", "word", "sign"),
    [
        ([absent(path) for path in SET], "not handed in", "○"),
        ([absent(SET[0]), absent(SET[1], WHY)], "not read", "⊘"),
        ([absent(SET[0]), Verdict(SET[1], NOT_ATTEMPTED, 10)], "not attempted", "–"),
        ([absent(SET[0]), Verdict(SET[1], "wrong", 10)], "", ""),
    ],
)
def test_a_total_without_an_answer_is_no_0_wherever_it_stands(tmp_path, verdicts, word, sign):
    member = member_marks("Kit Harrow", [], verdicts, {})
    write_exports([member], SET, DETAILS, tmp_path)
    write_reports([member], SET, tmp_path, DETAILS.marked)
    _, row = csv.reader((tmp_path / "marks.csv").read_text("utf-8-sig").splitlines())
    assert row[1] == (word or "0")
    assert marks_to_data(member)["earned"] == (None if word else "0")
    [of_suite] = etree.parse(tmp_path / "junit.xml").xpath("//property[@name='marks']/@value")
    assert of_suite == (word or "0 of 20")
    of_class = html.fromstring((tmp_path / "index.html").read_text("utf-8"))
    assert of_class.xpath('//table[@class="grid"]/tbody/tr/td')[0].text_content() == (sign or "0")
    of_member = html.fromstring((tmp_path / "members/kit-harrow.html").read_text("utf-8"))
    [total] = of_member.xpath('//p[@class="total"]')
    assert total.text_content().startswith(f"{word.capitalize()}: no marks of " if word else "0 of 20 marks")
    assert feedback_text(member, "x").splitlines()[3] == (word or "0 of 20 marks")


def test_school_systems_are_told_what_is_missing_and_what_waits(written):
    with zipfile.ZipFile(written / "oneroster.zip") as archive:
        rows = list(csv.DictReader(io.StringIO(archive.read("results.csv").decode())))
    assert [(row["scoreStatus"], row["missing"]) for row in rows] == [
        ("fully graded", "false"),
        ("not submitted", "true"),
        ("submitted", "false"),
    ]
    assert rows[2]["comment"] == f"not read: {WHY}"


def test_build_servers_skip_what_is_missing_and_err_on_what_was_not_read(written):
    cases = etree.parse(written / "junit.xml").findall(".//testcase")
    assert [[child.tag for child in case] for case in cases] == [["failure"], ["skipped"], ["error"]]
    assert cases[2][0].get("message") == WHY


def test_what_was_not_read_is_one_member_s_alone_and_kept_for_no_other(tmp_path):
    members = [Member("Nell", {}, (WHY,), unread={SET[0]: WHY}), Member("Kit", {}), Member("Isla", {}, unread={"": "The zip."})]
    with open_store(tmp_path / "marks.sqlite") as store:
        for _ in range(2):
            nell, kit, isla = (one.verdicts for one in mark(members, 7, SET[:2], store, jobs=1))
            assert [one.kind for one in (*nell, *kit, *isla)] == [NOT_READ, *[NOT_HANDED_IN] * 3, NOT_READ, NOT_READ]
            assert nell[0].findings[0].says == WHY


def test_a_run_keeps_problems_and_notes_apart(tmp_path):
    with open_store(tmp_path / "marks.sqlite") as store:
        run = store.begin_run(tmp_path, made.details(1))
        store.record(run, "Nell", [WHY], [absent(SET[0], WHY)], "", ["A note."])
        store.finish_run(run)
        [(_, problems, [verdict], _, notes, *_)] = store.members(run)
    assert (problems, notes, verdict.kind) == ((WHY,), ("A note.",), NOT_READ)


def test_marks_kept_before_the_kinds_were_told_apart_are_read_as_what_they_were(tmp_path):
    before, kind = to_data(absent(SET[0])), {"kind": NOT_ATTEMPTED}
    before |= kind | {"findings": [finding | kind for finding in before["findings"]]}
    stub = to_data(Verdict(SET[0], NOT_ATTEMPTED, 10))
    with open_store(tmp_path / "marks.sqlite") as store:
        for number, data in enumerate((before, stub)):
            store._connection.execute(
                "INSERT INTO verdicts (submission, judged_by, seed, verdict, seal) VALUES (?, ?, ?, ?, ?)",
                (*made.key(number), text := json.dumps(data), _seal(*made.key(number), text)),
            )
        assert store.get(made.key(0)) == absent(SET[0])
        assert store.get(made.key(1)).kind == NOT_ATTEMPTED


@pytest.mark.parametrize("member", ["Nell Samphire", "Ann's", 'Kit "K" Harrow', "$HOME `x` !", "-dashed", "Änne; rm *", "--by"])
@pytest.mark.parametrize("into", ["marks", "autumn term/marks"])
@pytest.mark.skipif(os.name == "nt", reason="for the shells of other systems")
def test_the_command_to_set_a_mark_by_hand_works_where_it_is_copied(monkeypatch, member, into):
    monkeypatch.setattr("sys.argv", ["checker"])
    command = amend_command(Path(into), member, "resonance")
    words = subprocess.run(["sh", "-c", f"set -- {command}; printf '%s\\n' \"$@\""], capture_output=True, text=True).stdout
    asked = parser(["amend"]).parse_args(words.splitlines()[1:])
    assert (asked.member, asked.exercise, asked.mark, asked.into) == (member, "resonance", "9", Path(into))

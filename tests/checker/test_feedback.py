"""What goes back to members: to each their own, under the id of the roster, with the instructor's values or without."""

import email
import email.policy
import zipfile
from dataclasses import replace
from datetime import date

import pytest

from checker import cli
from checker.judging.verdict import RAISED
from checker.marks.attempts import WorkMarks
from checker.report.feedback import feedback_for, without_values
from checker.term.term import Work
from tests.checker import sample
from tests.checker.test_term_marks import RIGHT, SLIP, here, put, run, term  # noqa: F401


@pytest.fixture
def marked(term, capsys):  # noqa: F811
    put(term / "first", "Isla Marrow", SLIP, when="2026-10-07T20:00")
    put(term / "first", "Pippa Eider", RIGHT, when="2026-10-03T20:00")
    run("mark", term / "first", "--work", "First", capsys=capsys)
    return term / "marks"


def test_a_page_and_a_text_for_each_under_the_id_of_the_roster(marked, capsys):
    code, out, _ = run("feedback", capsys=capsys)
    assert code == cli.DONE and "Feedback for 2 members:  marks/feedback" in out
    names = sorted(path.name for path in (marked / "feedback").iterdir())
    assert names == ["pippa-eider.html", "pippa-eider.txt", "spwc-01.html", "spwc-01.txt"], "nobody handed in nothing"
    text = (marked / "feedback" / "spwc-01.txt").read_text("utf-8")
    assert "6 of 10 marks" in text and "7 October 2026, 20:00, 2 days late, −20 %: 6 of 10; counts: the only one." in text
    assert "6 of 10, 2 days late, −20 %: 4.8 count." in text and max(map(len, text.splitlines())) <= 80
    for path in (marked / "feedback").iterdir():
        both = path.read_text("utf-8")
        assert ("Isla" in both) != ("Pippa" in both), "a report names nobody else"
    page = (marked / "feedback" / "spwc-01.html").read_text("utf-8")
    assert "src=" not in page and 'href="http' not in page


def test_a_zip_and_drafts_of_letters(marked, capsys):
    code, out, _ = run("feedback", "--zip", "--mail", "wren@saltmarsh.example", "--work", "first", capsys=capsys)
    assert code == cli.NOT_YET and "No letter to Pippa Eider" in out
    with zipfile.ZipFile(marked / "feedback.zip") as archive:
        assert "spwc-01.eml" in archive.namelist() and "pippa-eider.eml" not in archive.namelist()
        letter = email.message_from_bytes(archive.read("spwc-01.eml"), policy=email.policy.default)
    assert (letter["To"], letter["From"]) == ("isla@saltmarsh.example", "wren@saltmarsh.example")
    assert letter["Subject"] == "Wireless, autumn: your marks"
    assert "2 days late" in letter.get_body(("plain",)).get_content()
    [page] = letter.iter_attachments()
    assert page.get_filename() == "spwc-01.html" and "Isla Marrow" in page.get_content()


@pytest.mark.parametrize(
    ("arguments", "says"),
    [(["--work", "Third"], "called Third was marked: there is First."), (["--mail", "wren"], "--mail wants your own address")],
)
def test_wrong_use_is_one_sentence(marked, capsys, arguments, says):
    code, out, err = run("feedback", *arguments, capsys=capsys)
    assert code == cli.USAGE_ERROR and says in err and err.count("\n") == 1 and not out


def test_a_text_says_where_nothing_was_handed_in(marked, capsys):
    run("amend", "Tobias Fenn", "first", "7", "--because", "Shown on the bench", "--by", "Wren Dalby", capsys=capsys)
    run("feedback", "--work", "First", capsys=capsys)
    text = (marked / "feedback" / "spwc-02.txt").read_text("utf-8")
    assert "First, due 5 October 2026, 23:59\n  Nothing was handed in.\n  Set by hand: 7 of 10. Shown on the bench." in text


def test_without_marks_there_is_no_feedback(here, capsys):  # noqa: F811
    assert "There are no marks in marks yet" in run("feedback", capsys=capsys)[2]


def test_hidden_values_are_in_neither_page_nor_text_and_the_words_stay(sample_class):
    members = [replace(one, works=(WorkMarks(Work("", sample.PATHS), (), one.amount, one.of),)) for one in sample_class]
    shown, hidden = (feedback_for(members, "Wireless", date(2026, 10, 5), hide) for hide in (False, True))
    assert [one.file for one in shown] == [one.file for one in hidden] and len(shown) == len(members)
    seen = 0
    for member, with_values, without in zip(members, shown, hidden, strict=True):
        for finding in (finding for mark in member.marks for finding in mark.verdict.findings):
            for value in (finding.wanted, *(value for _, value in finding.inputs)):
                if len(value) > 5:
                    assert value in with_values.text and value in with_values.page
                    assert value not in without.text and value not in without.page
                    seen += 1
        assert ("You may have" in with_values.text) == ("You may have" in without.text)
    assert seen > 3


def test_what_a_program_says_of_itself_goes_with_the_values(sample_class):
    marks = [mark for member in sample_class for mark in member.marks]
    assert any(finding.kind == RAISED for mark in marks for finding in mark.verdict.findings)
    for mark in map(without_values, marks):
        assert not mark.verdict.printed
        for finding in mark.verdict.findings:
            assert "capacitanse" not in finding.says and not finding.inputs

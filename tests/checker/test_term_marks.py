"""A term of marks: what was marked before stays, every hand-in is kept, and late is worked out where it can be seen."""

import csv
import io
import json
import os
import re
import zipfile
from datetime import datetime
from fractions import Fraction

import pytest

from checker import cli
from checker.judging.fingerprint import key_of
from checker.judging.judge import absent
from checker.judging.verdict import PASSED, WRONG, Part, Verdict
from checker.marks.attempts import Sighting, hand_ins
from checker.marks.pool import MemberVerdicts
from checker.marks.run import STORE
from checker.marks.standing import ClassMarks
from checker.marks.store import open_store
from checker.term.term import Work
from tests.checker.test_exports import assert_as_published

RIGHT, SLIP = "earns = 10\n", "earns = 6\n"

TERM = """\
title = "Wireless, autumn"
club = "Saltmarsh Point Wireless Circle"
roster = "roster.csv"
class_id = "autumn"

[[work]]
name = "First"
set = ["metres"]
due = 2026-10-05
late = "10 % a day"

[[work]]
name = "Second"
set = ["tone"]
weight = 3
due = 2026-11-02
late = "not accepted"
counts = "last"
"""
ROSTER = "name,id,address\nIsla Marrow,spwc-01,isla@saltmarsh.example\nTobias Fenn,spwc-02,\n"


@pytest.fixture
def here(tmp_path, monkeypatch):
    """An empty folder to be in; answers earn what stands in them, so that a term of runs takes no time."""
    monkeypatch.chdir(tmp_path)
    monkeypatch.setattr("checker.cli.mark.require_containment", lambda uncontained: None)
    monkeypatch.setattr("checker.marks.run.mark", told_marks)
    return tmp_path


def told_marks(members, seed, paths, store, jobs):
    for member in members:
        keys = [key_of(path, member.files, seed) for path in paths]
        yield MemberVerdicts(member, tuple(map(store.put, keys, (verdict_on(path, member) for path in paths))), tuple(keys))


def verdict_on(path, member):
    text = member.files.get(f"{path}.py")
    return absent(path) if text is None else worth(int(re.search(r"earns = (\d+)", text)[1]), path)


@pytest.fixture
def term(here):
    (here / "term.toml").write_text(TERM)
    (here / "roster.csv").write_text(ROSTER)
    return here


def put(folder, name, text, file="metres.py", when=None):
    path = folder / name / file
    path.parent.mkdir(parents=True, exist_ok=True)
    path.write_text(text)
    if when:
        stamp = datetime.fromisoformat(when).timestamp()
        os.utime(path, (stamp, stamp))


def run(*arguments, capsys):
    code = cli.main([str(argument) for argument in arguments])
    out = capsys.readouterr()
    assert "Traceback" not in out.out + out.err
    return code, out.out, out.err


def standing(here):
    with open_store(here / "marks" / STORE) as store:
        return {member.name: member for member in ClassMarks(store)}


# Which hand-in counts

ONE, TWO = "unit00_bench/metres", "unit00_bench/tone"


def worth(amount, path=ONE):
    """A verdict that earns so many marks of ten."""
    return Verdict(path, PASSED if amount == 10 else WRONG, 10, (Part("f", "numbers", Fraction(10), Fraction(amount)),))


def of_marks(when, amount, content):
    return Sighting(datetime.fromisoformat(when).astimezone(), False, content, {ONE: worth(amount)})


DUE = datetime(2026, 10, 5, 23, 59, 59)


def counted(work, *seen):
    return [(one.earned, one.after_late, one.why) for one in hand_ins(work, seen)]


def test_the_best_is_the_best_after_what_late_costs():
    work = Work("First", (ONE,), due=DUE, late=Fraction(1, 10))
    early, late = of_marks("2026-10-01", 7, "a"), of_marks("2026-10-08", 9, "b")
    assert counted(work, early, late) == [(7, 7, "the best of 2"), (9, Fraction(63, 10), "")]
    assert counted(work, late, early)[0] == (7, 7, "the best of 2"), "in the order in which they came"
    assert counted(Work("First", (ONE,), due=DUE), early, late)[1] == (9, 9, "the best of 2"), "where late costs nothing"


def test_the_last_counts_but_none_that_is_not_accepted():
    work = Work("First", (ONE,), due=DUE, late=None, counts="last")
    first, second, late = of_marks("2026-10-01", 7, "a"), of_marks("2026-10-03", 5, "b"), of_marks("2026-10-08", 9, "c")
    assert [why for *_, why in counted(work, first, second, late)] == ["", "the last of 2 accepted", ""]
    assert counted(work, late) == [(9, 0, "none was accepted")]


def test_the_same_answers_seen_again_are_the_same_hand_in_marked_anew():
    work = Work("First", (ONE,), due=DUE)
    first, again = of_marks("2026-10-01", 7, "a"), of_marks("2026-10-20", 8, "a")
    [one] = hand_ins(work, [first, again])
    assert (one.when, one.earned, one.lateness.says) == (datetime(2026, 10, 1), 8, "in time")
    told = Sighting(datetime(2026, 10, 7).astimezone(), True, "a", again.verdicts)
    assert hand_ins(work, [first, told, again])[0].when == datetime(2026, 10, 7), "what somebody said holds"
    assert len(hand_ins(work, [first, of_marks("2026-10-02", 7, "b"), again])) == 3, "handed in anew after another"


# A second run


def test_a_second_run_adds_and_updates_says_who_changed_and_takes_nobody_away(here, capsys):
    put(here / "one", "Isla Marrow", RIGHT)
    put(here / "one", "Tobias Fenn", SLIP)
    out = run("mark", here / "one", "--only", "metres", "--seed", 5, "--class", "Form 4", capsys=capsys)[1]
    assert "before" not in out
    before = standing(here)
    put(here / "two", "Tobias Fenn", RIGHT)
    put(here / "two", "Orla Quill", RIGHT)
    out = run("mark", here / "two", "--only", "metres", capsys=capsys)[1]
    now = standing(here)
    assert sorted(now) == ["Isla Marrow", "Orla Quill", "Tobias Fenn"]
    assert now["Isla Marrow"].amount == before["Isla Marrow"].amount == now["Tobias Fenn"].amount == now["Orla Quill"].of
    assert before["Tobias Fenn"].amount < now["Tobias Fenn"].amount
    assert re.search(r"Tobias Fenn: \S+ before, \d+ now, by metres\.", out) and "Isla Marrow: " not in out
    with open_store(here / "marks" / STORE) as store:
        assert {(store.about_run(one).seed, store.about_run(one).title) for one in store.runs()} == {(5, "Form 4")}
    out = run("mark", here / "two", "--only", "metres", capsys=capsys)[1]
    assert "Nobody's marks of before have changed." in out


def test_what_a_later_hand_in_leaves_out_stays_and_another_exercise_is_added(here, capsys):
    put(here / "one", "Isla Marrow", RIGHT)
    run("mark", here / "one", "--only", "metres", capsys=capsys)
    put(here / "two", "Isla Marrow", "earns = 1\n", "tone.py")
    out = run("mark", here / "two", "--only", "metres", "tone", capsys=capsys)[1]
    [isla] = standing(here).values()
    assert [mark.amount == mark.of for mark in isla.marks] == [True, False] and "Nobody's marks" in out
    [work] = isla.works
    assert len(work.handed_in) == 2


def test_fresh_begins_anew_and_keeps_the_old_folder_beside_it(here, capsys):
    put(here / "one", "Isla Marrow", RIGHT)
    run("mark", here / "one", "--only", "metres", capsys=capsys)
    old = (here / "marks" / "marks.csv").read_bytes()
    put(here / "two", "Orla Quill", RIGHT)
    for _ in range(2):
        err = run("mark", here / "two", "--only", "metres", "--fresh", capsys=capsys)[2]
        assert "is kept in marks until " in err
    assert list(standing(here)) == ["Orla Quill"]
    kept = sorted(path for path in here.iterdir() if path.name.startswith("marks until"))
    assert len(kept) == 2 and (kept[0] / "marks.csv").read_bytes() == old


def test_a_unit_may_be_named_by_its_number(here, capsys):
    put(here / "one", "Isla Marrow", RIGHT)
    run("mark", here / "one", "--only", "00", capsys=capsys)
    [isla] = standing(here).values()
    assert [mark.exercise.rpartition("/")[2] for mark in isla.marks] == ["metres", "tone", "prefixes", "dropper_resistor"]


# A term


def test_a_term_told(term, here, capsys):
    """Late, corrected, lost and misnamed hand-ins, over two pieces of work."""
    put(here / "first", "Isla Marrow", SLIP, when="2026-10-03T20:00")
    out = run("mark", here / "first", "--work", "first", capsys=capsys)[1]
    assert "Nothing handed in by: Tobias Fenn." in out
    people = standing(here)
    assert people["Tobias Fenn"].works[0].amount is None and people["Isla Marrow"].person.id == "spwc-01"
    assert [mark.exercise for mark in people["Isla Marrow"].marks] == [ONE], "only what was set"

    put(here / "again", "spwc-01", RIGHT, when="2026-10-07T09:00")
    put(here / "again", "tobias fenn", RIGHT, when="2026-10-06T09:00")
    put(here / "again", "Pippa Eider", RIGHT, when="2026-10-01T09:00")
    out = run("mark", here / "again", "--work", "First", capsys=capsys)[1]
    assert "Not on the roster, and marked: Pippa Eider." in out and "Nothing handed in" not in out
    assert "Isla Marrow, First: 2 days late, −20 %." in out and "Tobias Fenn, First: 1 day late, −10 %." in out
    people = standing(here)
    assert sorted(people) == ["Isla Marrow", "Pippa Eider", "Tobias Fenn"]
    [first] = people["Isla Marrow"].works
    assert [(one.when, one.lateness.says, one.why) for one in first.handed_in] == [
        (datetime(2026, 10, 3, 20), "in time", ""),
        (datetime(2026, 10, 7, 9), "2 days late, −20 %", "the best of 2"),
    ]
    assert first.amount == first.of == people["Isla Marrow"].amount, "late is shown, and not hidden in the number"
    assert first.after_late == first.of * Fraction(8, 10)

    put(here / "second", "Isla Marrow", "earns = 1\n", "tone.py", when="2026-10-30T09:00")
    put(here / "second", "Tobias Fenn", "earns = 1\n", "tone.py")
    run("mark", here / "second", "--work", "Second", "--received", "2026-11-04", capsys=capsys)
    people = standing(here)
    second = people["Isla Marrow"].works[1]
    assert second.handed_in[0].is_told and second.lateness.says == "2 days late, not accepted"
    assert [work.work.name for work in people["Tobias Fenn"].works] == ["First", "Second"]
    assert people["Pippa Eider"].works[1].amount is None
    with open_store(here / "marks" / STORE) as store:
        seeds = [store.about_run(one).seed for one in store.runs()]
        assert seeds[0] == seeds[1] != seeds[2] and store.about_run(1).title == "Wireless, autumn"


def test_whoever_hands_in_under_another_name_is_one_once_the_roster_says_so(term, here, capsys):
    put(here / "first", "Isla Marow", RIGHT, when="2026-10-03T20:00")
    out = run("mark", here / "first", "--work", "First", capsys=capsys)[1]
    assert "Not on the roster, and marked: Isla Marow (Isla Marrow?)." in out
    assert "Nothing handed in by: Isla Marrow, Tobias Fenn." in out and "Nobody's" not in out
    (here / "roster.csv").write_text("name,id,also\nIsla Marrow,spwc-01,Isla Marow\nTobias Fenn,spwc-02,\n")
    run("mark", here / "first", "--work", "First", capsys=capsys)
    assert {name: member.amount for name, member in standing(here).items()} == {"Isla Marrow": 10, "Tobias Fenn": 0}
    run("amend", "Tobias Fenn", "first", "7", "--because", "Shown on the bench", "--by", "Wren Dalby", capsys=capsys)
    by_hand = {row["member"]: (row["First"], row["First, counted"]) for row in rows_of(here / "marks" / "sums.csv")}
    assert by_hand == {"Isla Marrow": ("10", "10"), "Tobias Fenn": ("", "7")}


def test_a_piece_of_work_that_has_another_name_now_keeps_its_marks(term, here, capsys):
    put(here / "first", "Isla Marrow", SLIP, when="2026-10-03T20:00")
    run("mark", here / "first", "--work", "First", capsys=capsys)
    (here / "term.toml").write_text(TERM.replace('"First"', '"Metres"'))
    put(here / "again", "Tobias Fenn", RIGHT, when="2026-10-07T20:00")
    out = run("mark", here / "again", "--work", "Metres", "--json", capsys=capsys)[1]
    isla, tobias = json.loads(out)
    assert [work["work"] for work in isla["works"]] == ["First", "Metres"] and isla["earned"] == "6"
    assert tobias["works"][1] == {
        "work": "Metres",
        "earned": "10",
        "counted": "8",
        "marks": 10,
        "set_by_hand": None,
        "handed_in": [
            {
                "when": "2026-10-07T20:00:00",
                "told": False,
                "earned": "10",
                "days_late": 2,
                "counts": True,
                "why": "the only one",
            }
        ],
    }


def shown(page):
    """The text of a page, on one line."""
    return " ".join(re.sub(r"<[^>]*>", " ", page.read_text("utf-8")).split())


def test_the_pages_tell_of_every_hand_in_and_of_the_class_over_time(term, here, capsys):
    put(here / "first", "Isla Marrow", SLIP, when="2026-10-03T20:00")
    put(here / "first", "Tobias Fenn", RIGHT, when="2026-10-04T20:00")
    run("mark", here / "first", "--work", "First", capsys=capsys)
    put(here / "again", "Isla Marrow", RIGHT)
    run("mark", here / "again", "--work", "First", "--received", "2026-10-07T09:00", capsys=capsys)
    page = shown(here / "marks" / "members" / "isla-marrow.html")
    assert "3 October 2026, 20:00, by its files in time no 6 of 10" in page
    assert "7 October 2026, 09:00 2 days late, −20 % the best of 2 10 of 10" in page
    assert "First: 10 of 10, 2 days late, −20 % 8 of 10" in page
    page = shown(here / "marks" / "index.html")
    assert "First 5 October 2026, 23:59 2 of 2 1 1 8 of 10 10 of 10" in page, "mean at first, and now"
    assert "Isla Marrow 8 (10, 2 days late, −20 %) 80 % Tobias Fenn 10 100 %" in page


def rows_of(path):
    return list(csv.DictReader(io.StringIO(path.read_text("utf-8-sig"), newline="")))


def roster_of(path):
    with zipfile.ZipFile(path) as archive:
        return {
            name.removesuffix(".csv"): list(csv.reader(io.StringIO(archive.read(name).decode(), newline="")))
            for name in archive.namelist()
        }


def test_pieces_of_work_are_in_the_tables_with_lateness_and_ids_that_stay(term, here, capsys):
    put(here / "first", "Isla Marrow", RIGHT, when="2026-10-07T20:00")
    put(here / "first", "Pippa Eider", SLIP, when="2026-10-03T20:00")
    run("mark", here / "first", "--work", "First", capsys=capsys)
    isla, pippa, tobias = rows_of(here / "marks" / "sums.csv")
    assert list(isla) == ["member", "id", "unit 00", "First", "First, counted", "First, late"]
    assert list(isla.values()) == ["Isla Marrow", "spwc-01", "10", "10", "8", "2 days late, −20 %"]
    assert list(pippa.values()) == ["Pippa Eider", "", "6", "6", "6", ""]
    assert list(tobias.values()) == ["Tobias Fenn", "spwc-02", "", "", "", ""], "nothing handed in is no 0"
    before = roster_of(here / "marks" / "oneroster.zip")
    assert_as_published(before)
    heading, line = before["lineItems"]
    assert dict(zip(heading, line, strict=True)) | {"title": "First", "dueDate": "2026-10-05", "resultValueMax": "10"} == dict(
        zip(heading, line, strict=True)
    )
    assert [row[0] for row in before["classes"][1:]] == ["autumn"]
    by_user = {row[4]: dict(zip(before["results"][0], row, strict=True)) for row in before["results"][1:]}
    assert (by_user["spwc-01"]["score"], by_user["spwc-01"]["late"], by_user["spwc-01"]["missing"]) == ("8", "true", "false")
    assert (by_user["spwc-02"]["scoreStatus"], by_user["spwc-02"]["missing"]) == ("not submitted", "true")

    put(here / "again", "Tobias Fenn", RIGHT)
    put(here / "again", "Orla Quill", RIGHT)
    run("mark", here / "again", "--work", "First", "--class", "Another title", capsys=capsys)
    after = roster_of(here / "marks" / "oneroster.zip")
    assert_as_published(after)
    for name in ("results", "lineItems"):
        assert {row[0] for row in before[name]} <= {row[0] for row in after[name]}, "the same things under the same ids"


def test_a_mark_set_by_hand_follows_a_person_under_every_name(term, here, capsys):
    put(here / "first", "Isla Marrow", SLIP)
    run("mark", here / "first", "--work", "First", capsys=capsys)
    amend = ["metres", "4", "--because", "Shown", "--by", "Wren Dalby"]
    assert run("amend", "spwc-02", *amend, capsys=capsys)[0] == cli.DONE, "whoever handed in nothing may have a mark too"
    assert run("amend", "Isla Marrow", *amend, capsys=capsys)[0] == cli.DONE
    put(here / "again", "spwc-01", SLIP + "# again\n")
    run("mark", here / "again", "--work", "First", capsys=capsys)
    assert {name: member.amount for name, member in standing(here).items()} == {"Isla Marrow": 4, "Tobias Fenn": 4}


def test_marks_changed_in_a_table_elsewhere_come_back_as_amendments(term, here, capsys):
    put(here / "first", "Isla Marrow", SLIP, when="2026-10-07T20:00")
    put(here / "first", "=Pippa", RIGHT)
    run("mark", here / "first", "--work", "First", capsys=capsys)
    because = ["--because", "As in the school system", "--by", "Wren Dalby"]
    sums = here / "marks" / "sums.csv"
    assert "Nothing in the table is other" in run("amend", "--from", sums, *because, capsys=capsys)[1]
    changed = here / "changed.csv"
    changed.write_text(sums.read_text("utf-8-sig").replace('"4.8"', '"5.5"'), "utf-8")
    code, out, _ = run("amend", "--from", changed, *because, capsys=capsys)
    assert code == cli.DONE and "Isla Marrow, First: 4.8 before, 5.5 now." in out and "Pippa" not in out
    [first] = standing(here)["Isla Marrow"].works
    assert (first.amount, first.after_late, first.override.reason) == (6, Fraction(11, 2), "As in the school system")
    assert "First: Set by hand: 5.5 of 10. As in the school system. Wren Dalby" in shown(
        here / "marks" / "members" / "isla-marrow.html"
    )
    marks = (here / "marks" / "marks.csv").read_text("utf-8-sig")
    changed.write_text(marks.replace('"Isla Marrow","6","10","6"', '"Isla Marrow","6","10","7.50"').replace(",", ";"), "utf-8")
    assert "Isla Marrow, metres: 6 before, 7.5 now." in run("amend", "--from", changed, *because, capsys=capsys)[1]
    run("amend", "Isla Marrow", "first", "withdraw", *because, capsys=capsys)
    assert standing(here)["Isla Marrow"].works[0].after_late == Fraction(15, 2) * Fraction(8, 10)


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("name,mark\nIsla,3\n", "is no table of marks"),
        ("member,metres (core)\nNobody,3\n", "line 2: Nobody is not in the marks"),
        ("member,metres (core)\nIsla Marrow,good\n", "line 2, metres (core): 'good' is no mark"),
        ("member,metres (core)\nTobias Fenn,3\nIsla Marrow,11\n", "11 is more than this exercise has"),
        ("", "is no table of marks"),
    ],
)
def test_a_table_that_cannot_be_merged_changes_nothing(term, here, capsys, text, says):
    put(here / "first", "Isla Marrow", SLIP)
    run("mark", here / "first", "--work", "First", capsys=capsys)
    (here / "changed.csv").write_text(text)
    code, _, err = run("amend", "--from", "changed.csv", "--because", "x", "--by", "y", capsys=capsys)
    assert code == cli.USAGE_ERROR and says in err and err.count("\n") == 1
    assert [member.amount for member in standing(here).values()] == [6, 0]


@pytest.mark.parametrize(
    ("arguments", "says"),
    [
        (["--work", "Third"], "no piece of work called Third: it has First, Second."),
        (["--work", "First", "--only", "metres"], "leave --only and --path out"),
        (["--work", "First", "--term", "nowhere.toml"], "nowhere.toml: No such file or directory"),
    ],
)
def test_wrong_use_of_a_term_is_one_sentence(term, here, capsys, arguments, says):
    put(here / "first", "Isla Marrow", RIGHT)
    code, out, err = run("mark", here / "first", *arguments, capsys=capsys)
    assert code == cli.USAGE_ERROR and says in err and err.count("\n") == 1 and not out and not (here / "marks").exists()


def test_without_a_term_a_piece_of_work_cannot_be_marked(here, capsys):
    put(here / "first", "Isla Marrow", RIGHT)
    assert "no term's file beside" in run("mark", here / "first", "--work", "First", capsys=capsys)[2]

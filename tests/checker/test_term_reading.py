"""A term's file: what it may say, and what is said of one that says something else."""

import zipfile
from datetime import date, datetime
from fractions import Fraction

import pytest

from checker import cli
from checker.core import CORE
from checker.course import PATHS, UNITS
from checker.term.lateness import lateness_of
from checker.term.reading import read_term
from checker.term.roster import read_roster
from checker.term.term import Person, Work, term_from_data, term_to_data
from checker.toml_source import FileFault

TERM = """\
title = "Crystal to Reaction, autumn"
club = "Saltmarsh Point Wireless Circle"
begins = 2026-09-01
ends = 2026-12-18
roster = "roster.csv"
values = "hidden"
names = "{name}_{number}"

[[work]]
name = "Signals"
set = ["1"]
path = "core"
due = 2026-10-05
grace = 0.5
late = "10 % a day"

[[work]]
name = "Crystal set"
set = ["resonance", "unit04_crystal_set/detect_step"]
weight = 2.5
opens = 2026-10-12T18:30:00
counts = "last"
seed = 41
"""
ROSTER = "name,id,address\nIsla Marrow,spwc-01,isla@saltmarsh.example\nTobias Fenn,spwc-02,\n"


@pytest.fixture
def here(tmp_path, monkeypatch):
    monkeypatch.chdir(tmp_path)
    (tmp_path / "roster.csv").write_text(ROSTER)
    return tmp_path


def term_of(here, text=TERM):
    (here / "term.toml").write_text(text)
    return read_term((here / "term.toml").relative_to(here))


def test_a_term_is_what_its_file_says_and_comes_back_from_plain_data(here):
    term = term_of(here)
    signals, crystal = term.works
    unit = tuple(path for path in PATHS if path.startswith(UNITS[1].folder))
    assert signals == Work(
        "Signals",
        tuple(path for path in unit if path in CORE),
        "core",
        due=datetime(2026, 10, 5, 23, 59, 59),
        grace=Fraction(1, 2),
        late=Fraction(1, 10),
    )
    assert crystal.paths == ("unit03_tuned_circuit/resonance", "unit04_crystal_set/detect_step")
    assert (crystal.weight, crystal.opens, crystal.counts, crystal.seed) == (2.5, datetime(2026, 10, 12, 18, 30), "last", 41)
    assert (term.begins, term.ends, term.values) == (date(2026, 9, 1), date(2026, 12, 18), "hidden")
    assert term.person("ISLA  marrow") == term.person("spwc-01") == Person("spwc-01", "Isla Marrow", "isla@saltmarsh.example")
    assert term.person("Nobody") is None and term.work("crystal SET") == crystal
    assert term_from_data(term_to_data(term)) == term


@pytest.mark.parametrize(
    ("old", "new", "line", "says"),
    [
        ('club = "Saltmarsh Point Wireless Circle"\n', "", 22, "club is missing from the top of the file: add club ="),
        ('title = "', 'titel = "', 1, "there is no key “titel” in a term's file: did you mean title"),
        ('name = "Signals"\n', "", 9, "name is missing from [[work]]"),
        ('set = ["1"]', 'set = ["11"]', 11, "no exercise called '11'"),
        ('set = ["1"]', "set = 1", 11, 'set wants a list of units and exercises, each in quotes: write such as set = ["03"'),
        ('"resonance"', '"metres"', None, None),
        ('"resonance", ', '"am_waveform", ', 19, "am_waveform is set in Signals already"),
        ("2026-12-18", "2026-08-18", 4, "the term ends before it begins"),
        ("due = 2026-10-05", 'due = "5 October"', 13, "due wants a day, without quotes: write such as due = 2026-10-05"),
        ("18:30:00", "18:30:00Z", 21, "without a zone"),
        ("10 % a day", "120 % a day", 15, 'late wants "nothing", "not accepted" or a share'),
        ("due = 2026-10-05\n", "", 13, "grace says nothing without a day"),
        ("weight = 2.5", "weight = -1", 20, "weight wants a number from 0 to 1000"),
        ('counts = "last"', 'counts = "mean"', 22, "counts wants one of best, last"),
        ("seed = 41", "seed = true", 23, "seed wants a whole number"),
        ('[[work]]\nname = "Cry', '[work]\nname = "Cry', 17, "this is not TOML"),
        ('name = "Crystal set"', 'name = "signals"', 18, "two pieces of work are called signals"),
        ("{name}_{number}", "{name}{number}", 7, "has two fields with nothing between them"),
        ("roster.csv", "nobody.csv", 5, "nobody.csv cannot be read"),
        (
            'set = ["1"]\npath = "core"',
            'set = ["field_strength"]\npath = "core"',
            11,
            "none of these exercises is on the core path",
        ),
    ],
)
def test_each_fault_is_one_sentence_with_its_line(here, old, new, line, says):
    assert TERM.count(old) >= 1
    text = TERM.replace(old, new, 1)
    if says is None:
        term_of(here, text)
        return
    with pytest.raises(FileFault) as fault:
        term_of(here, text)
    assert str(fault.value).startswith(f"term.toml, line {line}: ") and says in str(fault.value)
    assert str(fault.value).endswith(".") and "\n" not in str(fault.value)


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("name,id\n", "roster.csv names nobody"),
        ("name,address\nIsla,x\n", "roster.csv has no column id"),
        ("name,id\nIsla,\n", "roster.csv, line 2 has no id"),
        ("name,id\nIsla,1\nOrla,1\n", "has the id 1 in lines 2 and 3"),
        ("name,id,address\nIsla,1,isla at home\n", "line 2 has an address that is none"),
        ("name,id\nIsl\xe9,1\n", "line 2 is not UTF-8"),
    ],
)
def test_a_roster_that_cannot_be_used_is_said(tmp_path, text, says):
    (tmp_path / "roster.csv").write_bytes(text.encode("latin-1"))
    with pytest.raises(ValueError, match=says):
        read_roster(tmp_path / "roster.csv")


def test_a_roster_of_another_spreadsheet_is_read_too(tmp_path):
    (tmp_path / "roster.csv").write_text("\ufeffID;Name;E-mail\r\n7;Isla Marrow;isla@saltmarsh.example\r\n", "utf-8")
    assert read_roster(tmp_path / "roster.csv") == (Person("7", "Isla Marrow", "isla@saltmarsh.example"),)


# users.csv and enrollments.csv: columns by their names in the OneRoster 1.2 CSV binding (1EdTech, 2022), from memory.
USERS = (
    "sourcedId,status,enabledUser,username,givenName,familyName,email\n"
    "u1,active,true,isla,Isla,Marrow,isla@saltmarsh.example\nu2,,true,wren,Wren,Dalby,\nu3,tobedeleted,true,kit,Kit,Harrow,\n"
)
ENROLLMENTS = "sourcedId,status,classSourcedId,userSourcedId,role\ne1,,c1,u1,student\ne2,,c1,u2,teacher\ne3,,c1,u3,student\n"


@pytest.mark.parametrize("zipped", [False, True])
def test_the_roster_files_of_oneroster_give_the_students_of_a_class(tmp_path, zipped):
    files = {"users.csv": USERS, "enrollments.csv": ENROLLMENTS}
    folder = tmp_path / ("roster.zip" if zipped else "roster")
    if zipped:
        with zipfile.ZipFile(folder, "w") as archive:
            for name, text in files.items():
                archive.writestr(name, text)
    else:
        folder.mkdir()
        for name, text in files.items():
            (folder / name).write_text(text)
    assert read_roster(folder) == (Person("u1", "Isla Marrow", "isla@saltmarsh.example"),)
    assert read_roster(folder, "c1") == read_roster(folder)
    with pytest.raises(ValueError, match="no students of the class c2: it has c1"):
        read_roster(folder, "c2")


def test_what_was_written_to_begin_with_can_be_read_and_is_never_written_over(tmp_path, monkeypatch, capsys):
    monkeypatch.chdir(tmp_path)
    assert cli.main(["term", "new"]) == cli.DONE and cli.main(["term", "check"]) == cli.DONE
    assert "2 on the roster" in capsys.readouterr().out
    (tmp_path / "term.toml").write_text("mine")
    assert cli.main(["term", "new"]) == cli.USAGE_ERROR
    assert "was left as it is" in capsys.readouterr().err and (tmp_path / "term.toml").read_text() == "mine"
    assert cli.main(["term", "check"]) == cli.USAGE_ERROR
    assert "term.toml, line 1: this is not TOML" in capsys.readouterr().err


@pytest.mark.parametrize(
    ("received", "days", "keeps", "says"),
    [
        ("2026-09-30T08:00", 0, 1, "in time"),
        ("2026-10-05T23:59:59", 0, 1, "in time"),
        ("2026-10-06T11:59:59", 0, 1, "within the grace"),
        ("2026-10-06T12:00", 1, Fraction(9, 10), "1 day late, −10 %"),
        ("2026-10-08T00:00", 2, Fraction(8, 10), "2 days late, −20 %"),
        ("2026-12-24T00:00", 79, 0, "79 days late, −100 %"),
    ],
)
def test_late_costs_its_share_for_each_day_begun_after_the_grace(here, received, days, keeps, says):
    late = lateness_of(term_of(here).works[0], datetime.fromisoformat(received))
    assert (late.days, late.keeps, late.says) == (days, keeps, says)

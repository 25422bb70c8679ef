"""What is put into the marks store comes out again, and only that."""

import json
import re
import shutil
import sqlite3
from dataclasses import replace
from datetime import date
from fractions import Fraction

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from checker.course import PATHS, ROOT
from checker.imports import Sources
from checker.judging import fingerprint
from checker.judging.fingerprint import judged_by, key_of, submission_hash
from checker.judging.verdict import NOT_JUDGED, from_data, to_data
from checker.marks import store as store_module
from checker.marks.details import CLASS, CLUB, RunDetails
from checker.marks.schema import STEPS
from checker.marks.store import StoreProblem, open_store
from checker.submissions.likeness import Alike, AlikeExercise, Side
from tests.checker import made

RESONANCE, RANGE = PATHS[PATHS.index("unit03_tuned_circuit/resonance")], "unit03_tuned_circuit/tuning_range"


@pytest.fixture
def path(tmp_path):
    return tmp_path / "marks.db"


@settings(deadline=None)
@given(made.verdicts)
def test_any_verdict_comes_back_from_json_as_it_was(verdict):
    assert from_data(json.loads(json.dumps(to_data(verdict)))) == verdict


@settings(max_examples=30, deadline=None)
@given(st.lists(made.verdicts.filter(lambda one: one.kind != NOT_JUDGED), max_size=4))
def test_any_verdict_comes_back_from_the_store(tmp_path_factory, verdicts):
    path = tmp_path_factory.mktemp("store") / "marks.db"
    with open_store(path) as store:
        for number, verdict in enumerate(verdicts):
            store.put(made.key(number), verdict)
    with open_store(path) as store:
        assert [store.get(made.key(number)) for number in range(len(verdicts))] == verdicts


def test_of_two_verdicts_for_one_key_the_first_counts(path):
    with open_store(path) as store:
        assert store.put(made.key(1), made.verdict(1)) == made.verdict(1)
        assert store.put(made.key(1), made.verdict(2)) == made.verdict(1)
        assert store.get(made.key(1)) == made.verdict(1)
        assert store.get(made.key(2)) is None


def test_a_run_gives_each_member_once_with_each_exercise_once_in_the_order_given(path):
    exercises = PATHS[:4]
    with open_store(path) as store:
        run = store.begin_run("class", made.details(7))
        for number, exercise in enumerate(exercises):
            store.put(made.key(number), made.verdict(number, exercise))
        keys = [made.key(number) for number in range(4)]
        for name in ("Nell Samphire", "Kit Harrow", "Nell Samphire"):
            store.record(run, name, ["One file could not be read."], keys)
        assert store.latest_run() is None
        store.finish_run(run)
        assert store.latest_run() == run
        members = list(store.members(run))
    assert sorted(name for name, *_ in members) == ["Kit Harrow", "Nell Samphire"]
    assert all(problems == ("One file could not be read.",) for _, problems, *_ in members)
    assert all([verdict.exercise for verdict in verdicts] == list(exercises) for _, _, verdicts, _ in members)


def test_a_member_cannot_be_recorded_with_a_verdict_that_is_not_kept(path):
    with open_store(path) as store:
        run = store.begin_run("class", made.details(7))
        with pytest.raises(ValueError):
            store.record(run, "Kit Harrow", [], [made.key(1)])
        assert list(store.members(run)) == []


def test_an_override_survives_a_remark_and_the_newest_holds(path):
    with open_store(path) as store:
        store.override("Orla Quill", RESONANCE, Fraction(15, 2), "Right idea, shown on the blackboard.", "Wren Dalby")
        store.override("Orla Quill", RESONANCE, Fraction(20, 3), "Read again.", "Wren Dalby")
        store.override("Dot Bittern", RESONANCE, Fraction(0), "Not her own work; she agrees.", "Wren Dalby")
        run = store.begin_run("class", made.details(7))
        store.put(made.key(1), made.verdict(1, RESONANCE))
        store.record(run, "Orla Quill", [], [made.key(1)])
        store.finish_run(run)
    with open_store(path) as store:
        held = store.overrides()
        assert {key: override.mark for key, override in held.items()} == {
            ("Orla Quill", RESONANCE): Fraction(20, 3),
            ("Dot Bittern", RESONANCE): Fraction(0),
        }
        assert held["Orla Quill", RESONANCE].reason == "Read again."
        assert re.fullmatch(r"\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d\+00:00", held["Orla Quill", RESONANCE].when)
        store.withdraw("Orla Quill", RESONANCE, "Handed in anew.", "Wren Dalby")
        assert set(store.overrides()) == {("Dot Bittern", RESONANCE)}


@settings(max_examples=30, deadline=None)
@given(made.names, st.fractions(0, 10), made.names)
def test_any_override_comes_back(tmp_path_factory, member, mark, reason):
    path = tmp_path_factory.mktemp("store") / "marks.db"
    with open_store(path) as store:
        kept = store.override(member, RESONANCE, mark, reason, "Wren Dalby")
    with open_store(path) as store:
        assert store.overrides() == {(member, RESONANCE): kept}
        assert kept.mark == mark


# What a verdict is kept under

FILES = {
    f"{RANGE}.py": "from exercises.unit03_tuned_circuit.resonance import resonant_frequency\n",
    f"{RESONANCE}.py": "def resonant_frequency(): ...\n",
    "unit00_bench/prefixes.py": "def to_engineering(): ...\n",
}


def test_a_key_changes_with_the_file_and_with_those_it_imports_and_with_no_other():
    before = submission_hash(f"{RANGE}.py", FILES)
    assert submission_hash(f"{RANGE}.py", FILES | {"unit00_bench/prefixes.py": "x"}) == before
    assert submission_hash(f"{RANGE}.py", FILES | {f"{RESONANCE}.py": "x"}) != before
    assert submission_hash(f"{RANGE}.py", FILES | {f"{RANGE}.py": FILES[f"{RANGE}.py"] + "#"}) != before
    missing = {path: text for path, text in FILES.items() if RESONANCE not in path}
    assert submission_hash(f"{RANGE}.py", missing) != before
    assert submission_hash(f"{RESONANCE}.py", FILES) == submission_hash(
        f"{RESONANCE}.py", {f"{RESONANCE}.py": FILES[f"{RESONANCE}.py"]}
    )


@pytest.mark.parametrize("across", ["from ..unit00_bench.tone import tone", "from ..unit00_bench import tone", ""])
def test_a_word_that_is_an_exercise_s_name_too_is_no_import_of_it(across):
    files = FILES | {"unit00_bench/tone.py": "", f"{RANGE}.py": f"{FILES[f'{RANGE}.py']}{across}\ntone = 1.0\n"}
    changed = submission_hash(f"{RANGE}.py", files) != submission_hash(f"{RANGE}.py", files | {"unit00_bench/tone.py": "x"})
    assert changed == bool(across)


@pytest.mark.parametrize(
    "statement",
    [
        "from .resonance import resonant_frequency",
        "from . import resonance",
        "from  .resonance import *",
        "from\\\n.resonance import *",
        "import exercises.unit03_tuned_circuit.resonance as r",
    ],
)
def test_every_way_to_import_an_earlier_exercise_is_followed(statement):
    files = FILES | {f"{RANGE}.py": statement}
    assert submission_hash(f"{RANGE}.py", files) != submission_hash(f"{RANGE}.py", files | {f"{RESONANCE}.py": "x"})


def test_imports_are_followed_through_other_files_and_round_in_circles():
    a, b, c = (f"unit01_signal/{name}.py" for name in ("am_waveform", "sideband_power", "field_strength"))
    files = {
        a: "from exercises.unit01_signal import sideband_power",
        b: "from .field_strength import f",
        c: "from .am_waveform import g",
    }
    assert submission_hash(a, files) != submission_hash(a, files | {c: files[c] + "\n"})
    assert submission_hash(a, files) != submission_hash(b, files)


def test_files_that_are_missing_differ_from_files_that_are_empty_and_from_one_another():
    hashes = {
        submission_hash("unit00_bench/prefixes.py", {}),
        submission_hash("unit00_bench/prefixes.py", {"unit00_bench/prefixes.py": ""}),
        submission_hash(f"{RESONANCE}.py", {}),
    }
    assert len(hashes) == 3


def test_the_seed_is_part_of_the_key():
    assert key_of("resonance", FILES, 1) != key_of("resonance", FILES, 2)


def test_what_judges_is_part_of_the_key(monkeypatch, tmp_path):
    """On a copy of the sources: a change of check, reference or engine counts, one of another exercise does not."""

    for package in ("checker", "solutions"):
        shutil.copytree(ROOT / package, tmp_path / package, ignore=shutil.ignore_patterns("__pycache__"))
    monkeypatch.setattr(fingerprint, "SOURCES", Sources(tmp_path, fingerprint.SOURCES.packages))

    def now():
        judged_by.cache_clear()
        return judged_by(RANGE)

    def changes(file):
        before, text = now(), (tmp_path / file).read_text()
        (tmp_path / file).write_text(text + "\n# changed\n")
        after = now()
        (tmp_path / file).write_text(text)
        return before != after

    try:
        for file in (
            f"solutions/{RANGE}_check.py",
            f"solutions/{RANGE}.py",
            f"solutions/{RESONANCE}.py",
            f"solutions/{RESONANCE}_check.py",  # it may stand in
            "checker/judging/judge.py",
            "checker/judging/plan.py",
            "checker/worker/student.py",
            "checker/worker/wire.py",
            "solutions/__init__.py",
        ):
            assert changes(file), file
        for file in (
            "solutions/unit00_bench/prefixes.py",
            "solutions/unit00_bench/prefixes_check.py",
            "checker/course.py",
            "checker/marks/store.py",
        ):
            assert not changes(file), file
    finally:
        judged_by.cache_clear()


# Stores of other times


def test_a_store_of_the_first_form_is_read_by_this_checker(tmp_path, first_form):
    path = tmp_path / "marks.db"
    connection = sqlite3.connect(path)
    connection.executescript(first_form)
    connection.close()
    with open_store(path) as store:
        assert store.get(made.key(1)) == made.verdict(1, RESONANCE)
        assert store.overrides()["Isla Marrow", RESONANCE].mark == Fraction(15, 2)
        assert [name for name, *_ in store.members(store.latest_run())] == ["Isla Marrow"]


def test_a_run_of_the_first_form_goes_by_the_names_that_were_usual_then(tmp_path, first_form):
    path = tmp_path / "marks.db"
    connection = sqlite3.connect(path)
    connection.executescript(first_form)
    connection.close()
    with open_store(path) as store:
        about = store.about_run(store.latest_run())
        assert about == RunDetails(7, (date(2026, 1, 1), date(2026, 12, 31)), CLASS, CLUB, ())
        run = store.begin_run("class", about.with_changes("Form 4", None, None))
        store.finish_run(run)
        assert store.about_run(run) == RunDetails(7, (date(2026, 1, 1), date(2026, 12, 31)), "Form 4", CLUB, ())
        assert store.about_run(1) == about


sides = st.builds(
    Side, made.any_text, st.lists(st.tuples(st.integers(1, 99), made.any_text, st.booleans()), max_size=3).map(tuple)
)
exercises_alike = st.builds(AlikeExercise, made.any_text, made.any_text, *[st.integers(0, 99)] * 3, st.tuples(sides, sides))
pairs_alike = st.builds(Alike, st.tuples(made.any_text, made.any_text), st.lists(exercises_alike, max_size=2).map(tuple))
days = st.dates(date(1990, 1, 1), date(2090, 1, 1))


@settings(max_examples=30, deadline=None)
@given(st.builds(RunDetails, st.integers(0, 10**9), st.tuples(days, days), made.any_text, made.any_text), st.lists(pairs_alike))
def test_whatever_a_run_was_told_comes_back(tmp_path_factory, details, alike):
    path = tmp_path_factory.mktemp("store") / "marks.db"
    with open_store(path) as store:
        run = store.begin_run("class", details)
        store.finish_run(run, alike)
    with open_store(path) as store:
        assert store.about_run(run) == replace(details, alike=tuple(alike))


def test_what_a_run_was_told_is_not_believed_once_it_is_changed(path):
    with open_store(path) as store:
        run = store.begin_run("class", made.details(7))
    connection = sqlite3.connect(path)
    connection.execute("UPDATE runs SET details = replace(details, 'Quay', 'Key')")
    connection.commit()
    connection.close()
    with open_store(path) as store, pytest.raises(StoreProblem, match="what a run was told"):
        store.about_run(run)


def test_an_older_store_is_brought_up_to_date_and_keeps_all(path, monkeypatch):
    with open_store(path) as store:
        store.put(made.key(1), made.verdict(1))
    monkeypatch.setattr(store_module, "STEPS", (*STEPS, ("ALTER TABLE runs ADD COLUMN note TEXT", "UPDATE runs SET note = ''")))
    with open_store(path) as store:
        assert store.get(made.key(1)) == made.verdict(1)
        assert store._pragma("user_version") == len(STEPS) + 1
        assert store._rows("SELECT note FROM runs") == []
    with open_store(path) as store:  # and is not brought up to date twice
        assert store.get(made.key(1)) == made.verdict(1)


def test_a_step_that_fails_leaves_the_older_store_as_it_was(path, monkeypatch):
    with open_store(path) as store:
        store.put(made.key(1), made.verdict(1))
    monkeypatch.setattr(
        store_module, "STEPS", (*STEPS, ("ALTER TABLE runs ADD COLUMN note TEXT", "ALTER TABLE nothing ADD COLUMN x"))
    )
    with pytest.raises(StoreProblem), open_store(path):
        pass
    monkeypatch.undo()
    with open_store(path) as store:
        assert store.get(made.key(1)) == made.verdict(1)
        assert "note" not in [row[1] for row in store._rows("PRAGMA table_info(runs)")]


def test_a_store_of_a_newer_checker_is_refused_and_left_alone(path, monkeypatch):
    monkeypatch.setattr(store_module, "STEPS", (*STEPS, ("CREATE TABLE later (x)",)))
    with open_store(path) as store:
        store.put(made.key(1), made.verdict(1))
    monkeypatch.undo()
    before = path.read_bytes()
    with pytest.raises(StoreProblem, match="newer checker .*update the checker"), open_store(path):
        pass
    assert path.read_bytes() == before

"""A store that is damaged, or no store at all, is never read wrong: right values, or one sentence."""

import os
import shutil
import sqlite3
from fractions import Fraction

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from checker.marks.store import StoreProblem, open_store
from tests.checker import made

MEMBERS = ["Mabel Sedge", "Rufus Tern", "Pippa Eider"]


@pytest.fixture(scope="module")
def sound(tmp_path_factory):
    """A store of three members with twelve verdicts each and an override, closed, in one file."""
    path = tmp_path_factory.mktemp("sound") / "marks.db"
    with open_store(path) as store:
        run = store.begin_run("class", made.details(7))
        for place, name in enumerate(MEMBERS):
            keys = [made.key(12 * place + number) for number in range(12)]
            for number, key in enumerate(keys):
                store.put(key, made.verdict(12 * place + number))
            store.record(run, name, [], keys)
        store.override(
            "Mabel Sedge", "unit03_tuned_circuit/resonance", Fraction(15, 2), "Shown on the blackboard.", "Wren Dalby"
        )
        store.finish_run(run)
    assert os.listdir(path.parent) == ["marks.db"]
    return path


def everything(path):
    """All that can be read from a store."""
    with open_store(path) as store:
        return (
            [store.get(made.key(number)) for number in range(36)],
            list(store.members(1)),
            store.overrides(),
            store.about_run(1),
        )


def one_sentence(problem):
    text = str(problem.value)
    return text.endswith(".") and "\n" not in text and ". " not in text


@settings(max_examples=150, deadline=None)
@given(st.lists(st.tuples(st.floats(0, 1, exclude_max=True), st.integers(1, 255)), min_size=1, max_size=3))
def test_a_store_with_flipped_bits_gives_what_was_put_in_or_a_sentence(tmp_path_factory, sound, flips):
    path = tmp_path_factory.mktemp("flipped") / "marks.db"
    data = bytearray(sound.read_bytes())
    for place, bits in flips:
        data[int(place * len(data))] ^= bits
    path.write_bytes(data)
    try:
        assert everything(path) == everything(sound)
    except StoreProblem as problem:
        assert str(problem).endswith(".")


@settings(max_examples=40, deadline=None)
@given(st.floats(0, 1, exclude_max=True), st.sampled_from([b"\0", b"\xff"]))
def test_a_store_with_a_page_lost_gives_what_was_put_in_or_a_sentence(tmp_path_factory, sound, place, filling):
    path = tmp_path_factory.mktemp("page") / "marks.db"
    data = bytearray(sound.read_bytes())
    start = int(place * len(data)) // 4096 * 4096
    data[start : start + 4096] = filling * 4096
    path.write_bytes(data)
    try:
        assert everything(path) == everything(sound)
    except StoreProblem as problem:
        assert str(problem).endswith(".")


@pytest.mark.parametrize("kept", [0.3, 0.6, 0.95])
def test_a_store_cut_short_is_called_damaged(tmp_path, sound, kept):
    path = tmp_path / "marks.db"
    data = sound.read_bytes()
    path.write_bytes(data[: int(kept * len(data))])
    with pytest.raises(StoreProblem, match="is damaged .*move it away and run again") as problem:
        everything(path)
    assert one_sentence(problem)


def test_a_file_that_is_no_store_is_left_alone(tmp_path):
    path = tmp_path / "notes.txt"
    path.write_text("Aerial: 20 m of wire. " * 100)
    with pytest.raises(StoreProblem, match="not a marks store") as problem, open_store(path):
        pass
    assert one_sentence(problem)
    assert path.read_text() == "Aerial: 20 m of wire. " * 100


def test_another_program_s_database_is_left_alone(tmp_path):
    path = tmp_path / "club.db"
    with sqlite3.connect(path) as connection:
        connection.execute("CREATE TABLE subscriptions (member, paid)")
    before = path.read_bytes()
    with pytest.raises(StoreProblem, match="not a marks store.*name another file") as problem, open_store(path):
        pass
    assert one_sentence(problem)
    assert path.read_bytes() == before


def test_a_folder_in_the_store_s_place_and_a_missing_folder(tmp_path):
    for path in (tmp_path, tmp_path / "nowhere" / "marks.db"):
        with (
            pytest.raises(StoreProblem, match="cannot be written: see that its folder exists") as problem,
            open_store(path),
        ):
            pass
        assert one_sentence(problem)


def test_a_verdict_altered_by_hand_is_found_out(tmp_path, sound):
    path = tmp_path / "marks.db"
    shutil.copy(sound, path)
    with sqlite3.connect(path) as connection:
        changed = connection.execute(
            "UPDATE verdicts SET verdict = replace(verdict, '\"1/2\"', '\"10\"') WHERE id = 2"
        ).rowcount
    assert changed == 1
    with open_store(path) as store:
        assert store.get(made.key(0)) == made.verdict(0)
        with pytest.raises(StoreProblem, match="a verdict is not as it was written"):
            store.get(made.key(1))


def test_an_override_altered_by_hand_is_found_out(tmp_path, sound):
    path = tmp_path / "marks.db"
    shutil.copy(sound, path)
    with sqlite3.connect(path) as connection:
        connection.execute("UPDATE overrides SET mark = '10'")
    with open_store(path) as store, pytest.raises(StoreProblem, match="a mark set by hand is not as it was written"):
        store.overrides()


def test_a_member_given_another_s_verdict_is_found_out(tmp_path, sound):
    path = tmp_path / "marks.db"
    shutil.copy(sound, path)
    with sqlite3.connect(path) as connection:
        connection.execute("UPDATE members SET verdicts = replace(verdicts, '[1,', '[13,')")
    with open_store(path) as store, pytest.raises(StoreProblem, match="a member's marks are not as they were written"):
        list(store.members(1))

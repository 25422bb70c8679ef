"""The demo class gets the marks that were counted by hand; its zips are made from the folders in sight."""

import math
import tomllib
from fractions import Fraction
from pathlib import Path

import pytest

from checker.marks.pool import mark
from checker.submissions.members import read_folder
from tests.checker.demo_zips.make import DEMO_CLASS, HERE, zipped

COUNTED = tomllib.loads(Path(__file__).with_name("demo_marks.toml").read_text("utf-8"))
SEED = 4711  # any will do: the count does not depend on it


def worked_out(terms):
    """A sum of products as it stands in the hand count: "10/4 * 2/10 + 10/4"."""
    return sum(math.prod(map(Fraction, term.split(" * "))) for term in terms.split(" + "))


def members():
    return {member.name: member for member in read_folder(DEMO_CLASS)}


def test_every_member_is_counted():
    assert list(members()) == sorted(COUNTED)


SAID = {"Kit Harrow": ("sorry.txt was not read: answers are Python files (.py), notebooks (.ipynb), or zips of them.",)}


@pytest.mark.parametrize("name", COUNTED)
def test_marks_are_those_counted_by_hand(name):
    member = members()[name]
    assert member.said == SAID.get(name, ())
    paths = sorted(path.removesuffix(".py") for path in member.files)
    [marked] = mark([member], SEED, paths, jobs=1)
    earned = {verdict.exercise: verdict.earned for verdict in marked.verdicts}
    counted = {path: worked_out(terms) for path, terms in COUNTED[name].items() if path != "why"}
    assert {path: marks for path, marks in earned.items() if marks} == counted


def test_zips_hold_the_folders_beside_their_maker():
    folders = {path.name: path for path in HERE.iterdir() if path.is_dir() and path.name != "__pycache__"}
    zips = {path.stem: path for path in DEMO_CLASS.glob("*.zip")}
    assert folders.keys() == zips.keys()
    for name, folder in folders.items():
        assert zips[name].read_bytes() == zipped(folder)

"""The attack corpus: each hostile submission gets the verdict that it states, and changes nothing for the next.

A submission is a file in attacks/, in the form of `resonance`; its first lines say what it tries and what must come of it.
"""

import os
import re
from pathlib import Path

import pytest

from checker.judge import judge
from checker.verdict import KINDS, PASSED
from checker.words import verdict_lines
from checker.workers import Worker

PATH = "unit03_tuned_circuit/resonance.py"
SEED = 20
ATTACKS = {path.stem: path.read_text("utf-8") for path in sorted((Path(__file__).parent / "attacks").glob("*.py"))}
HEADER = re.compile(r"# Tries: (?P<tries>.+)\.\n# Verdict: (?P<verdict>.+)\.\n(?:# Says: (?P<says>.+)\n)?")
HONEST = """import numpy as np
import sympy


def resonant_frequency(inductance, capacitance):
    return 1 / (2 * np.pi * np.sqrt(inductance * capacitance))


def resonance_condition(inductance, capacitance):
    return 1 / sympy.sqrt(inductance * capacitance)
"""
# What a terminal or a page would obey: control characters, and those that turn the direction of writing.
OBEYED = re.compile("[\x00-\x09\x0b-\x1f\x7f-\x9f\u202a-\u202e\u2066-\u2069\ud800-\udfff]")


@pytest.fixture(scope="module")
def worker():
    with Worker() as worker:
        yield worker


@pytest.fixture(scope="module")
def honest(worker):
    verdict = judge(PATH, {PATH: HONEST}, worker, SEED)
    assert (verdict.kind, verdict.earned) == (PASSED, verdict.marks)
    return verdict


def header(name):
    return HEADER.match(ATTACKS[name])


def test_the_corpus_is_large_and_every_item_says_what_it_is():
    assert len(ATTACKS) >= 100
    for name in ATTACKS:
        stated = header(name)
        assert stated, name
        assert set(stated["verdict"].split(" or ")) <= set(KINDS) - {PASSED}, name


@pytest.mark.parametrize("name", ATTACKS)
def test_an_attack_is_contained(name, worker, honest):
    stated, left = header(name), Path("/tmp/left-by-a-submission")
    files = {PATH: ATTACKS[name]}
    verdict = judge(PATH, files, worker, SEED)
    shown = "\n".join(line.text for line in verdict_lines(verdict))
    text = " ".join(shown.split())
    assert verdict.kind in stated["verdict"].split(" or "), text
    assert (stated["says"] or "") in text, text
    assert verdict.earned < verdict.marks / 2, text
    assert not OBEYED.search(shown), repr(shown)
    assert judge(PATH, {PATH: HONEST}, worker, SEED) == honest, "the next submission's marks have changed"
    assert not left.exists() and not left.with_suffix(".db").exists()


def test_an_attack_is_alive_without_walls(tmp_path, monkeypatch):
    """The corpus attacks for real: some of it, run with nothing in the way but in a folder of its own, succeeds."""
    monkeypatch.chdir(tmp_path)
    for name in ("read_passwords", "write_outside", "network_udp", "subprocess", "link_out_of_its_folder", "shell"):
        child = os.fork()
        if child == 0:
            try:
                names = {}
                source = ATTACKS[name].replace("/tmp/left-by-a-submission", str(tmp_path / "left"))
                exec(compile(source.replace("except BaseException", "except ZeroDivisionError"), name, "exec"), names)
                names["resonant_frequency"](1e-4, 1e-10)
                os._exit(0)
            finally:
                os._exit(1)
        assert os.waitpid(child, 0)[1] == 0, name

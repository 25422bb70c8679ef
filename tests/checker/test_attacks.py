"""The attack corpus: each hostile submission gets the verdict that it states, and changes nothing for the next.

A submission is a file in attacks/, in the form of `resonance`; its first lines say what it tries and what must come of it.
"""

import os
from pathlib import Path

import pytest

from checker.judging.judge import judge
from checker.judging.verdict import KINDS, NOT_HANDED_IN, PASSED
from checker.report.text import verdict_lines
from checker.sandbox.workers import start_worker
from tests.checker.corpus import ATTACKS, HONEST, OBEYED, PATH, stated

SEED = 20


@pytest.fixture(scope="module")
def worker():
    with start_worker() as worker:
        yield worker


@pytest.fixture(scope="module")
def honest(worker):
    verdict = judge(PATH, {PATH: HONEST}, worker, SEED)
    assert (verdict.kind, verdict.earned) == (PASSED, verdict.marks)
    return verdict


def test_the_corpus_is_large_and_every_item_says_what_it_is():
    assert len(ATTACKS) >= 100
    for name, text in ATTACKS.items():
        assert stated(text), name
        assert set(stated(text).verdicts) <= set(KINDS) - {PASSED}, name


@pytest.mark.parametrize("name", ATTACKS)
def test_an_attack_is_contained(name, worker, honest):
    says, left = stated(ATTACKS[name]), Path("/tmp/left-by-a-submission")
    files = {PATH: ATTACKS[name]}
    verdict = judge(PATH, files, worker, SEED)
    shown = "\n".join(line.text for line in verdict_lines(verdict))
    text = " ".join(shown.split())
    assert verdict.kind in says.verdicts, text
    assert says.says in text, text
    assert verdict.earned < verdict.marks / 2, text
    assert not OBEYED.search(shown), repr(shown)
    if "tried to" in text:
        path, number, source = verdict.findings[0].line
        assert f"{PATH}, line {number}" in text and ATTACKS[name].split("\n")[number - 1].strip() == source != ""
    assert judge(PATH, {PATH: HONEST}, worker, SEED) == honest, "the next submission's marks have changed"
    assert judge("prefixes", files, worker, SEED).kind == NOT_HANDED_IN
    assert not left.exists() and not left.with_suffix(".db").exists()


def test_a_denial_reads_as_a_sentence_with_its_line(worker):
    verdict = judge(PATH, {PATH: ATTACKS["network_tcp"]}, worker, SEED)
    assert [line.text for line in verdict_lines(verdict)][2:5] == [
        "  The file tried to open a network connection. That is not allowed here.",
        "  unit03_tuned_circuit/resonance.py, line 14",
        '    socket.create_connection(("127.0.0.1", 80), timeout=1).send(b"answers?")',
    ]


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

"""The whole attack corpus once more, for a judge that is an ordinary user: who tests as root has seen one half only."""

import json
import os
import subprocess
import sys
from fractions import Fraction

import pytest

from checker.course import ROOT
from checker.judging.verdict import PASSED
from tests.checker.corpus import ATTACKS, stated

pytestmark = pytest.mark.slow

# Becomes that user, then judges every attack and an honest submission after each, several at a time.
SCRIPT = """
import json, os, sys, threading
from concurrent.futures import ThreadPoolExecutor
from tests.checker.containment.conftest import NOBODY, become
from checker.sandbox import proof
from checker.marks.judges import Workers
from checker.report.text import verdict_lines
from tests.checker.corpus import ATTACKS, HONEST, PATH
EXERCISE = PATH.removesuffix(".py")
become(NOBODY)
assert os.getresuid() == (NOBODY,) * 3 and os.getgroups() == []

own = threading.local()

def one(name):
    workers = own.workers = getattr(own, "workers", None) or Workers()
    verdict = workers.judge(EXERCISE, {PATH: ATTACKS[name]}, 20)
    after = workers.judge(EXERCISE, {PATH: HONEST}, 20)
    text = " ".join(" ".join(line.text for line in verdict_lines(verdict)).split())
    return name, [verdict.kind, str(verdict.earned), text, after.kind, str(after.earned)]

with ThreadPoolExecutor(4) as pool:
    print(json.dumps([str(proof.prove()), dict(pool.map(one, ATTACKS))]))
"""


@pytest.fixture(scope="module")
def told():
    """(how contained, name to verdict, marks, words, and the verdict and marks of the honest submission after it)."""
    if os.getuid() != 0:
        pytest.skip("this is an ordinary user, who has just run the corpus")
    environment = os.environ | {"HOME": "/"}
    done = subprocess.run([sys.executable, "-c", SCRIPT], cwd=ROOT, capture_output=True, text=True, env=environment)
    if "PermissionError" in done.stderr and not done.stdout:
        pytest.skip(f"an ordinary user cannot reach Python or the course here: {done.stderr.splitlines()[-1]}")
    assert done.returncode == 0, done.stderr
    return json.loads(done.stdout)


def test_the_walls_hold_for_a_user(told):
    assert told[0].startswith("Submissions are shut in by Landlock") and told[0].endswith("none got through.")


@pytest.mark.parametrize("name", ATTACKS)
def test_an_attack_on_a_user_is_contained(told, name):
    kind, earned, text, after, marks = told[1][name]
    says = stated(ATTACKS[name])
    assert kind in says.verdicts and says.says in text, text
    assert Fraction(earned) < 5
    assert (after, marks) == (PASSED, "10")

"""Which exercises of one member share a process, and that none is judged otherwise for it."""

import contextlib

import pytest

from checker.course import ROOT
from checker.judging.judge import judge
from checker.sandbox.workers import WarmWorker
from checker.worker.student import all_plain
from tests.checker.corpus import ATTACKS, HONEST, PATH
from tests.checker.sample import as_handed_in

FIRST = "unit03_tuned_circuit/quality_factor"
PLAIN = [
    "import numpy as np\nfrom math import pi\ndef f(x):\n    return 2 * pi * np.linalg.norm(x)",
    "TABLE = {}\ndef f(x):\n    TABLE[x] = [1, 2]\n    return TABLE[x][0]",
    "import re\nNUMBER = re.compile('[0-9]+')",
    "from dataclasses import dataclass\n@dataclass(frozen=True)\nclass Coil:\n    turns: int",
    "from exercises.unit03_tuned_circuit.resonance import resonant_frequency",
]
LEAVES_SOMETHING = [
    "import numpy as np\nnp.pi = 3",
    "import numpy as np\ndel np.pi",
    "import numpy as np\nsetattr(np, 'pi', 3)",
    "import numpy as np\nnp.seterr(all='raise')",
    "import numpy as np\nnp.random.seed(1)",
    "import numpy as np\nnp.sctypeDict['f8'] = int",
    "import numpy as np\nnp.sin.__globals__['x'] = 1",
    "import numpy as np\ndef deep():\n    def deeper():\n        np.pi = 3",
    "from numpy import *",
    "import random",
    "exec('import numpy; numpy.pi = 3')",
    "class Coil:\n    def __init__(self):\n        self.turns = 1",
    "def f(:",
    "\0",
    "x" + "(" * 5000,
]


@pytest.mark.parametrize("source", PLAIN)
def test_plain(source):
    assert all_plain({"answer.py": source})
    assert not all_plain({"answer.py": source, "other.py": LEAVES_SOMETHING[0]})


@pytest.mark.parametrize("source", LEAVES_SOMETHING)
def test_not_plain(source):
    assert not all_plain({"answer.py": source})


class Noting:
    """A worker that notes of each of its sessions whether it began in company."""

    def __init__(self, worker):
        self.worker, self.seen = worker, []

    @contextlib.contextmanager
    def session(self, *asked):
        with self.worker.session(*asked) as session:
            self.seen.append(session.shared)
            yield session


@pytest.fixture(scope="module")
def worker():
    with WarmWorker() as worker:
        yield worker


def after_another(worker, source):
    """(verdict, sessions in company or not) of a `resonance`, just after the same member's first exercise."""
    noting, first = Noting(worker), as_handed_in((ROOT / f"solutions/{FIRST}.py").read_text()) + "\n# not sympy's business\n"
    with worker.one_member():
        assert judge(FIRST, {f"{FIRST}.py": first}, noting, 3).kind == "passed"
        return judge("resonance", {PATH: source}, noting, 3), noting.seen


def test_plain_exercises_of_one_member_share_a_process(worker):
    assert after_another(worker, HONEST)[1] == [False, True]


def test_without_a_word_that_they_are_one_member_s_nobody_shares(worker):
    noting = Noting(worker)
    for _ in range(2):
        judge("resonance", {PATH: HONEST}, noting, 3)
    assert noting.seen == [False, False]


@pytest.mark.parametrize(
    "source, sessions",
    [
        (HONEST.replace("np.pi", "3.0"), [False, True]),
        (HONEST.replace("    return", "    raise KeyError\n    return"), [False, True]),
        (HONEST + "np.pi = 3.0\n", [False, False]),
        (HONEST + "open('x')\n", [False, False]),
        (ATTACKS["recursion"], [False, True, False]),
        (ATTACKS["exit_politely"], [False, True, False]),
        (ATTACKS["read_by_numpy"], [False, True, False]),
        (ATTACKS["memory_flood_at_once"], [False, True, False]),
    ],
    ids=["wrong", "raises", "sets", "opens", "recursion", "exits", "reads", "floods"],
)
def test_sharing_changes_no_verdict(worker, source, sessions):
    alone = judge("resonance", {PATH: source}, worker, 3)
    assert after_another(worker, source) == (alone, sessions)
    assert after_another(worker, HONEST)[0].kind == "passed"

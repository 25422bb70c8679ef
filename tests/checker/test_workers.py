"""The two kinds of worker judge alike; a lost worker is nobody's fault."""

import os
import signal

import pytest

from checker.course import ROOT
from checker.judging.judge import judge
from checker.sandbox.workers import FreshWorker, WarmWorker, WorkerLost

PATH = "unit03_tuned_circuit/resonance.py"
RIGHT = """import numpy as np, sympy
def resonance_condition(inductance, capacitance):
    return 1 / sympy.sqrt(inductance * capacitance)
def resonant_frequency(inductance, capacitance):
    return 1 / (2 * np.pi * np.sqrt(inductance * capacitance))
"""
SUBMISSIONS = {
    "right": RIGHT,
    "slip": RIGHT.replace("2 * np.pi * ", ""),
    "loop": RIGHT + "while True: pass\n",
    "exit": RIGHT + "exit()\n",
    "file": RIGHT + "open('/etc/passwd')\n",
}


@pytest.mark.parametrize("name", SUBMISSIONS)
def test_both_kinds_of_worker_give_the_same_verdict(name):
    verdicts = []
    for kind in (WarmWorker, FreshWorker):
        with kind() as worker:
            verdicts.append(judge("resonance", {PATH: SUBMISSIONS[name]}, worker, 3))
    assert verdicts[0] == verdicts[1]


def test_a_lost_warm_process_is_said_and_not_blamed_on_the_submission():
    with WarmWorker() as worker:
        judge("resonance", {PATH: RIGHT}, worker, 3)
        for warm in worker._started.values():
            os.kill(warm._process.pid, signal.SIGKILL)
            warm._process.wait()
        with pytest.raises(WorkerLost, match="start the run again"):
            judge("resonance", {PATH: RIGHT}, worker, 3)


STAR = """from numpy import *
import math
def resonance_condition(inductance, capacitance):
    return 1 / (inductance * capacitance) ** (1 / math.factorial(2))
def resonant_frequency(inductance, capacitance):
    return 1 / (2 * pi * sqrt(inductance * capacitance))
"""


def test_symbols_are_there_for_a_file_that_does_not_speak_of_them():
    with WarmWorker() as worker:
        verdict = judge("resonance", {PATH: STAR}, worker, 3)
    assert verdict.kind == "passed", verdict.findings


def test_a_file_of_numbers_alone_needs_no_sympy():
    path = "unit00_bench/prefixes"
    with WarmWorker() as worker:
        judge(path, {f"{path}.py": (ROOT / f"solutions/{path}.py").read_text()}, worker, 3)
        assert list(worker._started) == [()]


def test_nothing_is_left_behind():
    before = set(os.listdir("/proc/self/fd")), set(os.listdir("/tmp"))
    with WarmWorker() as worker:
        for name in ("right", "exit", "file"):
            judge("resonance", {PATH: SUBMISSIONS[name]}, worker, 3)
    assert len(set(os.listdir("/proc/self/fd")) - before[0]) <= 1
    assert not [name for name in set(os.listdir("/tmp")) - before[1] if name.startswith("checker-")]

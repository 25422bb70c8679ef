"""A real scheduler and real worker processes on loopback give the marks that one machine gives, and survive losing one."""
import os
import signal
import subprocess
import sys
import time

import pytest

from checker.cluster import ClusterProblem, mark_on_cluster
from checker.engine import mark
from checker.store import open_store
from checker.submissions import Member

distributed = pytest.importorskip("distributed")
PATHS = ("unit03_tuned_circuit/resonance", "unit03_tuned_circuit/quality_factor")
RIGHT = """import numpy as np, sympy
def resonance_condition(inductance, capacitance):
    return 1 / sympy.sqrt(inductance * capacitance)
def resonant_frequency(inductance, capacitance):
    return 1 / (2 * np.pi * np.sqrt(inductance * capacitance))
"""
SOURCES = [RIGHT, RIGHT.replace("2 * np.pi * ", ""), RIGHT + "open('/etc/passwd')\n", "def f(:\n", RIGHT + "exit()\n"]
MEMBERS = [Member(f"member {number}", {f"{PATHS[0]}.py": SOURCES[number % len(SOURCES)] + f"# {number}\n"}) for number in range(20)]


def start(*arguments):
    return subprocess.Popen([sys.executable, "-m", "distributed.cli." + arguments[0], *arguments[1:]],
                            stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL, start_new_session=True)


@pytest.fixture
def cluster(tmp_path):
    """(address of a scheduler, its two worker processes)."""
    note = tmp_path / "scheduler.json"
    scheduler = start("dask_scheduler", "--host", "127.0.0.1", "--port", "0", "--no-dashboard", "--scheduler-file", str(note))
    workers = [start("dask_worker", "--scheduler-file", str(note), "--host", "127.0.0.1", "--nthreads", "1", "--no-dashboard",
                     "--no-nanny", "--local-directory", str(tmp_path / name)) for name in ("one", "two")]
    with distributed.Client(scheduler_file=str(note), timeout=60, set_as_default=False) as client:
        client.wait_for_workers(2, timeout=60)
        address = client.scheduler.address
    yield address, workers
    for process in (*workers, scheduler):
        process.kill()
        process.wait()


def test_same_marks_as_on_one_machine_though_a_worker_is_lost_on_the_way(cluster, tmp_path):
    address, workers = cluster
    here = list(mark(MEMBERS, 7, PATHS))
    with open_store(tmp_path / "marks.db") as store:
        there = []
        for one in mark_on_cluster(address, MEMBERS, 7, PATHS, store):
            there.append(one)
            if len(there) == 2:
                os.kill(workers[0].pid, signal.SIGKILL)
        assert there == here
        started = time.monotonic()
        assert list(mark(MEMBERS, 7, PATHS, store)) == here, "what came back from the cluster is kept here"
        assert time.monotonic() - started < 5


def test_no_scheduler_is_one_sentence(monkeypatch):
    monkeypatch.setattr("checker.cluster.ANSWER_WITHIN", 1)
    with pytest.raises(ClusterProblem, match="No Dask scheduler answers at tcp://127.0.0.1:9"):
        list(mark_on_cluster("tcp://127.0.0.1:9", MEMBERS, 7))


def test_another_version_on_a_machine_is_refused(cluster, monkeypatch):
    monkeypatch.setattr("checker.cluster.judged_by", lambda path: "another version")
    with pytest.raises(ClusterProblem, match="not the same as here"):
        list(mark_on_cluster(cluster[0], MEMBERS, 7, PATHS))

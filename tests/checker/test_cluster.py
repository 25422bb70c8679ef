"""A real scheduler and real worker processes on loopback give the marks that one machine gives, and survive losing one."""

import os
import signal
import subprocess
import sys
import time
from types import SimpleNamespace

import pytest

from checker.judging.fingerprint import files_used, key_of
from checker.judging.verdict import to_data
from checker.marks import cluster as cluster_module
from checker.marks.cluster import ClusterProblem, mark_on_cluster
from checker.marks.pool import mark
from checker.marks.store import open_store
from checker.submissions.members import Member
from tests.checker.made import verdict

distributed = pytest.importorskip("distributed")
PATHS = ("unit03_tuned_circuit/resonance", "unit03_tuned_circuit/quality_factor")
RIGHT = """import numpy as np, sympy
def resonance_condition(inductance, capacitance):
    return 1 / sympy.sqrt(inductance * capacitance)
def resonant_frequency(inductance, capacitance):
    return 1 / (2 * np.pi * np.sqrt(inductance * capacitance))
"""
SOURCES = [RIGHT, RIGHT.replace("2 * np.pi * ", ""), RIGHT + "open('/etc/passwd')\n", "def f(:\n", RIGHT + "exit()\n"]
MEMBERS = [
    Member(f"member {number}", {f"{PATHS[0]}.py": SOURCES[number % len(SOURCES)] + f"# {number}\n"}) for number in range(20)
]


def start(*arguments):
    return subprocess.Popen(
        [sys.executable, "-m", "distributed.cli." + arguments[0], *arguments[1:]],
        stdout=subprocess.DEVNULL,
        stderr=subprocess.DEVNULL,
        start_new_session=True,
    )


@pytest.fixture
def cluster(tmp_path):
    """(address of a scheduler, its two worker processes, itself)."""
    note = tmp_path / "scheduler.json"
    scheduler = start("dask_scheduler", "--host", "127.0.0.1", "--port", "0", "--no-dashboard", "--scheduler-file", str(note))
    workers = [
        start(
            "dask_worker",
            "--scheduler-file",
            str(note),
            "--host",
            "127.0.0.1",
            "--nthreads",
            "1",
            "--no-dashboard",
            "--no-nanny",
            "--local-directory",
            str(tmp_path / name),
        )
        for name in ("one", "two")
    ]
    with distributed.Client(scheduler_file=str(note), timeout=60, set_as_default=False) as client:
        client.wait_for_workers(2, timeout=60)
        address = client.scheduler.address
    yield address, workers, scheduler
    for process in (*workers, scheduler):
        process.kill()
        process.wait()


def test_same_marks_as_on_one_machine_though_a_worker_is_lost_on_the_way(cluster, tmp_path):
    address, workers, _ = cluster
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


def test_a_machine_that_joins_later_is_seen_to_before_it_judges(monkeypatch):
    """What runs there for each exercise refuses by itself, whatever was found when the run began."""
    files = {f"{PATHS[0]}.py": RIGHT}
    monkeypatch.setattr(cluster_module, "_own", SimpleNamespace(judges=SimpleNamespace(judge_one=lambda task: verdict())))
    here = cluster_module.judged_by(PATHS[0])
    cluster_module._missing_layers.cache_clear()
    assert cluster_module._judge_there(PATHS[0], files, 7, here, False) == to_data(verdict())
    with pytest.raises(ClusterProblem, match="not the same as here"):
        cluster_module._judge_there(PATHS[0], files, 7, "another version", False)
    monkeypatch.setattr(cluster_module, "_missing_layers", lambda: ("It could read your files.",))
    with pytest.raises(ClusterProblem, match="It could read your files. Add --uncontained"):
        cluster_module._judge_there(PATHS[0], files, 7, here, False)
    assert cluster_module._judge_there(PATHS[0], files, 7, here, True) == to_data(verdict())


@pytest.mark.parametrize(
    "lost, says", [("workers", "All machines of the cluster are lost"), ("scheduler", "cluster has failed")]
)
def test_a_cluster_lost_altogether_is_one_sentence_and_what_came_back_is_kept(cluster, tmp_path, monkeypatch, lost, says):
    address, workers, scheduler = cluster
    monkeypatch.setattr(cluster_module, "ANSWER_WITHIN", 3)
    with open_store(tmp_path / "marks.db") as store:
        there = []
        with pytest.raises(ClusterProblem, match=says) as problem:
            for one in mark_on_cluster(address, MEMBERS * 20, 7, PATHS, store):
                there.append(one)
                if len(there) == 2:
                    for process in workers if lost == "workers" else [scheduler]:
                        process.kill()
        assert str(problem.value).count("\n") == 0 and len(there) < 20 * len(MEMBERS)
        assert all(
            store.get(key_of(path, files_of(path, one), 7)) == verdict
            for one in there
            for path, verdict in zip(PATHS, one.verdicts, strict=True)
        )


def files_of(path, one):
    return {name: one.member.files[name] for name in files_used(f"{path}.py", one.member.files)}


def test_a_cluster_without_machines_is_one_sentence(cluster, monkeypatch):
    address, workers, _ = cluster
    monkeypatch.setattr(cluster_module, "ANSWER_WITHIN", 2)
    with distributed.Client(address, set_as_default=False) as client:
        for process in workers:
            process.kill()
        while client.nthreads():
            time.sleep(0.1)
        with pytest.raises(ClusterProblem, match="No machine has joined"):
            list(mark_on_cluster(address, MEMBERS, 7, PATHS))


def test_no_scheduler_is_one_sentence(monkeypatch):
    monkeypatch.setattr("checker.marks.cluster.ANSWER_WITHIN", 1)
    with pytest.raises(ClusterProblem, match="No Dask scheduler answers at tcp://127.0.0.1:9"):
        list(mark_on_cluster("tcp://127.0.0.1:9", MEMBERS, 7))


def test_another_version_on_a_machine_is_refused(cluster, monkeypatch):
    monkeypatch.setattr("checker.marks.cluster.judged_by", lambda path: "another version")
    with pytest.raises(ClusterProblem, match="not the same as here"):
        list(mark_on_cluster(cluster[0], MEMBERS, 7, PATHS))

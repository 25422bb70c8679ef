"""What a member hands in costs the judge no more than its budget, in seconds and in memory, and nobody else waits for it."""

import io
import multiprocessing
import os
import time
import zipfile
from unittest.mock import patch

import numpy as np
import pytest

from checker.budgets import BUDGET
from checker.judging.forms import forms_wanted, in_form, may_be_compared
from checker.judging.judge import judge
from checker.judging.plans import plan_for
from checker.judging.verdict import NOT_JUDGED, PASSED
from checker.marks.judges import Judges, Task
from checker.marks.memory import limited_memory
from checker.marks.pool import mark
from checker.sandbox.workers import start_worker
from checker.submissions.likeness import compare_submissions
from checker.submissions.members import Member, exercise_of, may_be_used, member_from
from checker.submissions.reading import File, HandIn, read_files_in_archive
from tests.checker.corpus import HONEST, PATH

RESONANCE = PATH.removesuffix(".py")
SECONDS, MEGABYTES = 10.0, 300.0
_FORKS = multiprocessing.get_context("fork")


def _memory(field):
    with open("/proc/self/status") as status:
        return next(int(line.split()[1]) / 1024 for line in status if line.startswith(field))


def _measure(connection, action, arguments):
    before, began = _memory("VmRSS"), time.process_time()
    result = action(*arguments)
    connection.send((result, time.process_time() - began, _memory("VmHWM") - before))


def cost(action, *arguments):
    """(what the action gives, seconds of processor time, megabytes at most) in a fork of this process."""
    ours, theirs = _FORKS.Pipe()
    process = _FORKS.Process(target=_measure, args=(theirs, action, arguments))
    process.start()
    found = ours.recv()
    process.join()
    return found


def judged(source):
    with start_worker() as worker:
        return judge(RESONANCE, {PATH: source}, worker, 3)


def answer(body):
    head = "import numpy as np, time\ndef resonance_condition(inductance, capacitance):\n    return None\n"
    return head + f"def resonant_frequency(inductance, capacitance):\n    {body}\n"


COSTLY = {
    "sleeps under the limit": answer("time.sleep(0.9)\n    return np.sqrt(inductance)"),
    "sleeps where it is searched": answer(
        "wrong = np.all(inductance > 2e-3)\n    time.sleep(1.5 * wrong)\n"
        "    return (1 + wrong) / (2 * np.pi * np.sqrt(inductance * capacitance))"
    ),
    "a column for one call and a row for the next": answer(
        "n = 90_000\n    resonant_frequency.turn = not getattr(resonant_frequency, 'turn', False)\n"
        "    return np.ones((n, 1) if resonant_frequency.turn else (1, n))"
    ),
    "long lists": answer("return [0.5] * 99_000"),
    "lists of lists": answer("return [[[]] * 3] * 20_000"),
    "complex lists": answer("return [0.5j] * 60_000"),
    "long arrays": answer("return np.zeros(99_000, complex)"),
    "arrays of many axes": answer("return np.zeros((1,) * 32)"),
    "long texts": answer("return 'é' * 9_000"),
    "lists of texts": answer("return ['x' * 30] * 60_000"),
    "huge whole numbers": answer("return [2**1020] * 5_000"),
    "an error with a long text": answer("raise ValueError('x' * 10**6)"),
    "many long names": "".join(f"def {'f' * 90_000}{n}(): pass\n" for n in range(2)),
    "a source of one long line": "x = '" + "a" * 200_000 + "'\n" + answer("raise KeyError"),
}


@pytest.mark.parametrize("name", COSTLY)
def test_an_answer_costs_the_judge_little(name):
    limit = plan_for(RESONANCE, 3).exercise.seconds
    began = time.monotonic()
    verdict, seconds, megabytes = cost(judged, COSTLY[name])
    assert verdict.kind not in (PASSED, NOT_JUDGED), verdict.findings
    assert seconds < SECONDS and megabytes < MEGABYTES, (seconds, megabytes)
    assert "sleeps" not in name or time.monotonic() - began < 2 * limit + 1 + SECONDS + 20  # on a busy machine


def zip_of(entries, path):
    with zipfile.ZipFile(path, "w", zipfile.ZIP_DEFLATED) as archive:
        for name, data in entries:
            archive.writestr(name, data)
    return path


def overlapping(path):
    """One compressed file that hundreds of names stand for."""
    made = io.BytesIO()
    with zipfile.ZipFile(made, "w", zipfile.ZIP_DEFLATED) as archive:
        archive.writestr(PATH, b"#" * BUDGET.file)
        [one] = archive.filelist
        for number in range(4000):
            twin = zipfile.ZipInfo(f"{number:05}/{PATH}")
            for field in ("header_offset", "compress_size", "file_size", "CRC", "compress_type"):
                setattr(twin, field, getattr(one, field))
            archive.filelist.append(twin)
    path.write_bytes(made.getvalue())
    return path


def handed_in(path):
    member = member_from("x", read_files_in_archive(str(path), may_be_used))
    return len(member.files), member.problems


ZIPS = {
    "overlapping": overlapping,
    "many that are too large": lambda path: zip_of(((f"{n}/{PATH}", b"#" * (2 << 20)) for n in range(300)), path),
    "many of the largest": lambda path: zip_of(((f"{n}/{PATH}", b"#" * BUDGET.file) for n in range(300)), path),
    "long names": lambda path: zip_of(((f"{'a/' * 32_000}{n}/{PATH}", b"#") for n in range(60)), path),
    "many names": lambda path: zip_of(((f"{n}/{PATH}", b"") for n in range(20_000)), path),
}


@pytest.mark.parametrize("name", ZIPS)
def test_a_zip_costs_the_judge_little(tmp_path, name):
    path = ZIPS[name](tmp_path / "x.zip")
    (files, problems), seconds, megabytes = cost(handed_in, path)
    assert problems and files <= 1
    assert ("lie over one another" in problems[0]) == (name == "overlapping"), problems
    assert seconds < SECONDS / 2 and megabytes < 100, (seconds, megabytes)


@pytest.mark.parametrize(
    "coding", ["idna", "punycode", "unicode_escape", "utf-7", "utf-16", "cp037", "rot13", "hex", "utf_8_sig_x"]
)
def test_exotic_encodings_are_not_decoded(coding):
    data = f"# coding: {coding}\n".encode() + b"x = 'a-" + b"xn--" * 60_000 + b"'\n"
    member, seconds, _ = cost(member_from, "x", HandIn({PATH: File(data, 0.0)}))
    assert member.files == {} and "save it as UTF-8" in member.problems[0] and seconds < 1


def test_likeness_of_odd_sources_costs_little():
    odd = ["'" * 200_000, '"""' * 60_000, "\\\n" * 100_000, "(" * 200_000, "x = " + "1e" * 90_000, "# " + "é" * 100_000]
    members = [(f"member {n}", {PATH: text}) for n, text in enumerate(odd)]
    (_, faults), seconds, megabytes = cost(compare_submissions, members, [RESONANCE])
    assert not faults and seconds < SECONDS and megabytes < MEGABYTES


def test_forms():
    forms, one, five = forms_wanted(plan_for(RESONANCE, 3)), (1.0, 1.0), (np.ones(5), np.ones(5))
    assert in_form(2.0, "resonant_frequency", one, forms) == 2.0
    assert in_form([1.0] * 5, "resonant_frequency", five, forms) is not None
    for wrong in (np.ones((5, 1)), np.ones((1, 5)), [np.ones((5, 1))], np.ones((5, 5)), np.ones((2, 3), complex)):
        assert in_form(wrong, "resonant_frequency", five, forms) is None, wrong
    assert in_form(np.ones((3, 1)), "other", (1.0,), forms) is None
    assert not may_be_compared(np.ones((9, 1)), np.ones((1, 9)))
    assert may_be_compared(np.ones((3, 9)), np.ones(9)) and may_be_compared(1.0, np.ones(9))


def test_memory_is_limited_while_it_is_judged_and_not_after():
    with pytest.raises(MemoryError), limited_memory(BUDGET.memory):
        np.ones(BUDGET.memory // 4)
    np.ones(BUDGET.memory // 4)


def test_a_judge_that_is_late_or_gone_is_replaced_and_its_task_not_judged():
    def late(name, files, worker, seed):
        if "late" in files[PATH]:
            time.sleep(60)
        if "gone" in files[PATH]:
            os._exit(1)
        return judge(name, files, worker, seed)

    tasks = [Task(RESONANCE, {PATH: f"# {how}\n{HONEST}"}, 3) for how in ("late", "gone", "right")]
    plan_for(RESONANCE, 3)
    with (
        patch("checker.marks.judges.judge", late),
        patch("checker.marks.judges.patience", lambda _: 12 - BUDGET.asking - BUDGET.judging - BUDGET.mending),
        Judges(2) as judges,
    ):
        found, todo = {}, list(tasks)
        while todo or judges.free < 2:
            while todo and judges.free:
                judges.begin(todo.pop(0))
            found |= {task.files[PATH].split("\n")[0]: verdict for task, verdict in judges.finished()}
    assert found["# late"].kind == found["# gone"].kind == NOT_JUDGED
    assert "took too long" in found["# late"].findings[0].says
    assert found["# right"].kind == PASSED


def test_others_do_not_wait_for_one_who_is_slow():
    slow = Member("slow", {PATH: answer("time.sleep(1.9)\n    return np.sqrt(inductance)")})
    quick = [Member(f"quick {n}", {PATH: HONEST}) for n in range(3)]
    began = time.monotonic()
    kinds = [one.verdicts[0].kind for one in mark([slow, *quick], 3, (RESONANCE,), jobs=2)]
    assert kinds[1:] == [PASSED] * 3
    assert time.monotonic() - began < 60


def test_a_name_is_looked_at_no_further_than_it_matters():
    assert exercise_of("/".join(["a"] * 500) + "/" + PATH) == RESONANCE

"""Everything that reads what strangers wrote, each as a function of bytes: it may refuse, in its own way, and no more."""

import io
import os
import re
import tempfile
from contextlib import suppress
from fractions import Fraction
from pathlib import Path

from checker.checks.units import quantity
from checker.judging.sealed import BrokenSeal, unseal_plan
from checker.judging.verdict import from_data
from checker.marks.marksheet import mark_from
from checker.sandbox.replies import read_reply
from checker.submissions.members import may_be_used, member_from
from checker.submissions.reading import File, HandIn, read_files_in_archive
from checker.worker.wire import Malformed, line, parse_line
from course.press.club import read_club
from course.press.faults import Fault

LESSONS = Path(__file__).parents[2] / "course" / "lessons"
_SCRATCH = tempfile.TemporaryDirectory(prefix="fuzz-", dir="/dev/shm" if os.path.isdir("/dev/shm") else None)
_FILE = Path(_SCRATCH.name) / "handed-in"


def a_line_from_the_worker(data: bytes) -> None:
    with suppress(Malformed):
        read_reply(data)
        assert line(parse_line(data)).endswith(b"\n")


def a_zip(data: bytes) -> None:
    _FILE.write_bytes(data)
    found = read_files_in_archive(str(_FILE), may_be_used)
    assert all(isinstance(sentence, str) and sentence for sentence in found.problems)
    member_from("A Member", found)


def an_exercise(data: bytes) -> None:
    member = member_from("A Member", HandIn({"unit03_tuned_circuit/resonance.py": File(data, 0.0)}))
    assert len(member.files) + len(member.problems) == 1


def a_club(data: bytes) -> None:
    _FILE.write_bytes(data)
    with suppress(Fault):
        read_club(_FILE, LESSONS)


def a_mark(data: bytes) -> None:
    try:
        assert 0 <= mark_from(data.decode("utf-8", "replace"), 10) <= Fraction(10)
    except ValueError as refusal:
        assert re.search(r"is no mark|is more than", str(refusal)), refusal


def a_quantity(data: bytes) -> None:
    with suppress(ValueError):
        quantity(data.decode("utf-8", "replace"), "F")


def a_sealed_plan(data: bytes) -> None:
    with suppress(BrokenSeal):
        unseal_plan(data, "unit03_tuned_circuit/resonance", {})


def a_kept_verdict(data: bytes) -> None:
    import json

    with suppress(ValueError, KeyError, TypeError):  # the store takes any of these for a damaged row
        from_data(json.loads(data))


READERS = {
    reader.__name__: reader
    for reader in (a_line_from_the_worker, a_zip, an_exercise, a_club, a_mark, a_quantity, a_sealed_plan, a_kept_verdict)
}
SEEDS = {
    "a_line_from_the_worker": [
        b'{"value":{"array":{"dtype":"f8","shape":[1],"data":"AAAAAAAA8D8="}},"altered":[0]}\n',
        b'{"trouble":"raised","error":"E","text":"t","file":null,"line":3}',
        b'{"value":{"sequence":[1,NaN,{"complex":[1.0,2.0]}]}}',
    ],
    "a_club": [(LESSONS.parent / "club.toml").read_bytes()],
    "a_mark": [b"7.5", b"15/2"],
    "a_quantity": [b"500 pF", "10 µF".encode()],
    "a_kept_verdict": [b'{"exercise":"a","kind":"passed","marks":10,"parts":[],"findings":[],"printed":""}'],
}


def a_small_zip() -> bytes:
    import zipfile

    out = io.BytesIO()
    with zipfile.ZipFile(out, "w") as archive:
        archive.writestr("exercises/unit03_tuned_circuit/resonance.py", "x = 1\n")
    return out.getvalue()


SEEDS["a_zip"] = [a_small_zip()]

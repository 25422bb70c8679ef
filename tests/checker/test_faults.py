"""A fault of the checker's own costs nobody else, is said to be ours, and is gone when it is mended."""

from datetime import date
from unittest.mock import patch

import pytest

from checker.course import ROOT
from checker.faults import Problem, attempt
from checker.judging.judge import judge
from checker.judging.verdict import NOT_JUDGED, PASSED
from checker.marks.run import Request, mark_class
from checker.marks.standing import ClassMarks
from checker.marks.store import open_store
from checker.report import pages
from checker.report.names import report_names
from checker.sandbox.workers import start_worker
from tests.checker.corpus import ATTACKS, HONEST, PATH
from tests.checker.sample import PATHS, SOLENOID

HERE = PATH.removesuffix(".py")
WRONG = HONEST.replace("2 * np.pi", "np.pi")
# Where it breaks, and the source that brings the judge there.
DEPTHS = {
    "the plan": ("checker.judging.judge.plan_for", HONEST),
    "the judge": ("checker.judging.judge._judge_question", HONEST),
    "the comparison": ("checker.judging.judge.difference", HONEST),
    "a number in words": ("checker.judging.compare.in_words", WRONG),
    "the search": (
        "checker.judging.judge.simplest_failure",
        HONEST.replace("return 1 / (2", "return (1 + 0.1 * (inductance > 2e-3)) / (2"),
    ),
    "an explanation": ("checker.judging.explanations.trouble_finding", "import numpy"),
    "the end of a child": ("checker.judging.explanations.end_finding", ATTACKS["leave_at_once"]),
}


@pytest.fixture(scope="module")
def worker():
    with start_worker() as worker:
        yield worker


@pytest.mark.parametrize("error", [TypeError, MemoryError])
@pytest.mark.parametrize("depth", DEPTHS)
def test_a_fault_at_any_depth_is_ours_and_leaves_the_next_alone(worker, depth, error):
    where, source = DEPTHS[depth]
    with patch(where, side_effect=error("xyz")):
        verdict = judge(HERE, {PATH: source}, worker, 3)
    assert (verdict.kind, verdict.earned) == (NOT_JUDGED, 0)
    assert error.__name__ in verdict.findings[0].says and "fault of the checker's" in verdict.findings[0].says
    assert judge(HERE, {PATH: HONEST}, worker, 3).kind == PASSED


def test_the_place_of_a_fault_is_named():
    def broken():
        open_store(7).__enter__()

    assert attempt(broken) == (None, attempt(broken)[1])
    assert attempt(broken)[1].startswith("TypeError in marks/store.py, line ")


def test_what_stops_the_whole_command_goes_through():
    with pytest.raises(Problem):
        attempt(lambda: (_ for _ in ()).throw(Problem("stop")))
    with pytest.raises(KeyboardInterrupt):
        attempt(lambda: (_ for _ in ()).throw(KeyboardInterrupt))


def hand_in(folder):
    """A class of two, one of them with an answer over which something is made to break."""
    for name, source in (("Isla Marrow", HONEST), ("Kit Harrow", "# breaks\n" + WRONG)):
        (folder / name / HERE).parent.mkdir(parents=True)
        (folder / name / PATH).write_text(source)
        (folder / name / f"{SOLENOID}.py").parent.mkdir(parents=True)
        (folder / name / f"{SOLENOID}.py").write_text((ROOT / f"exercises/{SOLENOID}.py").read_text())
    return folder


def marked(folder, store):
    mark_class(Request(folder, (SOLENOID, HERE), seed=3, jobs=1), store, lambda marked, total: marked)
    return {member.name: member for member in ClassMarks(store)}


def test_a_class_ends_with_its_table_and_is_judged_again_when_the_fault_is_mended(tmp_path):
    folder = hand_in(tmp_path / "in")
    with open_store(tmp_path / "marks.sqlite") as store:
        with patch("checker.judging.judge.ratio_in_words", side_effect=TypeError):
            first = marked(folder, store)
        assert [mark.verdict.kind for mark in first["Isla Marrow"].marks] == ["not attempted", PASSED]
        assert [mark.verdict.kind for mark in first["Kit Harrow"].marks] == ["not attempted", NOT_JUDGED]
        assert first["Kit Harrow"].not_judged == 1 and not first["Kit Harrow"].marks[1].is_judged
        then = marked(folder, store)
        assert [mark.verdict.kind for mark in then["Kit Harrow"].marks] == ["not attempted", "wrong"]
        assert then["Isla Marrow"] == first["Isla Marrow"]


def test_a_fault_in_the_comparison_of_members_is_noted_and_the_run_finished(tmp_path):
    with open_store(tmp_path / "marks.sqlite") as store:
        with patch("checker.submissions.likeness.Handout", side_effect=RecursionError):
            marked(hand_in(tmp_path / "in"), store)
        about = store.about_run(store.latest_run())
        assert [path for path, _ in about.not_compared] == [SOLENOID, HERE]
        assert "RecursionError in submissions/likeness.py" in about.not_compared[0][1]


def test_a_fault_in_one_member_s_report_leaves_the_others(tmp_path, sample_class):
    broken = sample_class[1]

    whole = pages._member_page

    def page(common, member):
        return whole(common, member) if member != broken else 1 / 0

    with patch("checker.report.pages._member_page", page):
        pages.write_reports(sample_class, PATHS, tmp_path, date(2026, 5, 3))
    names = report_names([member.name for member in sample_class])
    texts = [(tmp_path / "members" / f"{name}.html").read_text() for name in names]
    assert ["fault of the checker" in text for text in texts] == [member == broken for member in sample_class]
    assert all(member.name in (tmp_path / "index.html").read_text() for member in sample_class if member.name.isalnum())

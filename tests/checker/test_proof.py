"""Before it marks, the checker attacks its own walls: nothing gets through, and each wall left out is missed."""

import os

import pytest

from checker.sandbox import proof
from checker.worker.contain import Containment


def without(*walls):
    """The program of the trial, in which these functions of `contain` do nothing."""
    left_out = "".join(f"worker.contain.{wall} = lambda *a, **k: None; " for wall in walls)
    return proof._TRIAL.replace("from worker.trial", f"import worker.contain; {left_out}from worker.trial")


def test_nothing_gets_through_and_the_level_is_told():
    found = proof.prove()
    assert found.missing == ()
    assert str(found).startswith("Submissions are shut in by Landlock ")
    assert str(found).endswith(". 12 attacks were tried on it, and none got through.")


@pytest.mark.parametrize(
    "walls, achieved",
    [
        (["restrict_files"], "read your files, list your folders, change your files and make files outside its own folder"),
        (["filter_calls", "restrict_files"], "use the network"),
        (["filter_calls", "restrict_files"], "send signals to your programs"),
        (["filter_calls", "limit_resources", "restrict_files"], "start programs"),
        (["filter_calls"], "use the network"),
        (["leave_descriptors"], "read what the checker has open"),
        (["empty_environment"], "read the checker's environment"),
        (["limit_resources"], "use up your memory"),
    ],
)
def test_a_wall_left_out_is_found_out(monkeypatch, walls, achieved):
    monkeypatch.setattr(proof, "_TRIAL", without(*walls))
    [sentence] = proof.prove().missing
    assert achieved in sentence.replace(" and ", ", ") or achieved in sentence, sentence
    assert sentence.startswith("In a trial of the walls here, a submission could ") and sentence.endswith(".")


@pytest.mark.parametrize("program", ["raise SystemExit", "print('[')", "import os; os.abort()"])
def test_a_trial_that_does_not_end_well_is_no_proof(monkeypatch, program):
    monkeypatch.setattr(proof, "_TRIAL", program)
    assert proof.prove().missing == ("The walls around a submission could not be put up, or did not stand a trial.",)


def test_walls_that_do_not_go_up_are_no_proof(monkeypatch):
    monkeypatch.setattr(proof, "_TRIAL", without("prepare"))
    assert proof.prove().missing == ("The walls around a submission could not be put up, or did not stand a trial.",)


def test_what_the_system_itself_says_it_lacks_needs_no_trial(monkeypatch):
    monkeypatch.setattr(proof, "probe", lambda: Containment(seccomp=True, no_new_privileges=True, limits=True))
    monkeypatch.setattr(proof, "_trial", lambda: pytest.fail("tried all the same"))
    assert str(proof.prove()).startswith("Not contained: This system has no Landlock: a submission could read your files")


def test_it_is_cheap():
    """Of the processors' time, which says more than the clock on a busy machine."""
    before = os.times()
    proof.prove()
    after = os.times()
    assert sum(after[:4]) - sum(before[:4]) < 0.3 * 3

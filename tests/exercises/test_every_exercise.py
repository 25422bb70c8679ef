"""What must be true of every exercise: the reference passes, the stub does not, and wrong answers are told from right ones."""

import inspect
import random
from importlib.util import module_from_spec, spec_from_file_location

import numpy as np
import pytest

from checker.course import ROOT, load_exercise
from checker.judging.compare import difference
from checker.judging.judge import judge
from checker.judging.plan import round_trip
from checker.judging.plans import plan_for
from checker.judging.verdict import NOT_ATTEMPTED, PASSED
from tests.exercises.answering import Answering
from tests.exercises.every_mutant import SEED, equivalents, every_mutant, sources, survivors

FEW_MUTANTS, MANY_MUTANTS = 12, 40
FEWEST_MUTANTS = 12  # an answer of one line has not many places to go wrong in


def items(result):
    return result if isinstance(result, tuple) else (result,)


def test_reference_earns_full_marks(path, worker):
    verdict = judge(path, sources("solutions"), worker, SEED)
    assert verdict.findings == ()
    assert (verdict.kind, verdict.earned) == (PASSED, verdict.marks)


def test_another_seed_asks_other_questions(path):
    first, second = plan_for(path, SEED), plan_for(path, SEED + 1)
    assert first.calls[0] == second.calls[0] or any(q.question.symbolic for q in first.questions)
    if any(len(q.cases) > 8 for q in first.questions):
        assert first.calls != second.calls


def test_stub_is_not_attempted(path, worker):
    verdict = judge(path, sources("exercises"), worker, SEED)
    assert (verdict.kind, verdict.earned) == (NOT_ATTEMPTED, 0)


def stub_of(path):
    """The stub's own module, whatever another test has loaded under its name."""
    spec = spec_from_file_location("stub", ROOT / "exercises" / f"{path}.py")
    module = module_from_spec(spec)
    spec.loader.exec_module(module)
    return module


def test_stub_has_the_signature_and_docstring_of_the_reference(path):
    stub = stub_of(path)
    for question in load_exercise(path).questions:
        function = getattr(stub, question.name)
        assert inspect.signature(function) == inspect.signature(question.asks)
        assert tuple(question.given) == tuple(inspect.signature(question.asks).parameters)[: len(question.given)]
        promised = inspect.getdoc(function).splitlines()
        assert {"Parameters", "Returns"} <= set(promised) <= set(inspect.getdoc(question.asks).splitlines())
        assert ("Raises" in promised) == bool(question.refuses)


def test_an_array_beside_single_numbers_is_as_good(path):
    for planned in plan_for(path, SEED).questions:
        asks, inputs = planned.question.asks, planned.cases[0].inputs
        for place, together in enumerate(planned.stacked[0].inputs if planned.stacked else ()):
            if isinstance(together, np.ndarray) and np.ndim(inputs[place]) == 0:
                twice = asks(*inputs[:place], np.array([inputs[place]] * 2), *inputs[place + 1 :])
                for got, wanted in zip(items(twice), items(planned.cases[0].wanted), strict=True):
                    assert np.allclose(got, wanted, rtol=1e-9, atol=0), (asks.__name__, place)


def test_published_figures_are_met_by_the_reference(path):
    for question in load_exercise(path).questions:
        for figure in question.published:
            got = round_trip(question.asks(*figure.given))
            assert difference(got, figure.wanted, figure.within, question.gives) is None, figure.what


def refused_by(asks, given):
    """The parameter whose range the reference refuses in these inputs; "" where its own body does."""
    with pytest.raises(ValueError) as raised:
        asks(*given)
    return next((str(entry.locals["name"]) for entry in raised.traceback if entry.name == "refuse_outside"), "")


def test_what_is_near_is_refused_for_the_reason_that_is_said(path):
    for question in load_exercise(path).questions:
        for refusal in question.refuses:
            by = [refused_by(question.asks, given) for given in (refusal.given, *refusal.near)]
            assert len(set(by)) == 1, (question.name, refusal.what, by)


def test_each_slip_is_rejected_under_its_own_name(path):
    exercise = load_exercise(path)
    right = {question.name: question.asks for question in exercise.questions}
    for question in exercise.questions:
        assert len(question.slips) >= 3, f"{question.name} names only {len(question.slips)} slips"
        for slip in question.slips:
            verdict = judge(path, {f"{path}.py": ""}, Answering(right | {question.name: slip.wrong}), SEED)
            assert verdict.kind != PASSED, slip.says
            assert verdict.earned < verdict.marks, slip.says
            assert [f.slip for f in verdict.findings if f.function == question.name] == [slip.says]


def test_constants_and_nothing_earn_no_marks(path):
    exercise = load_exercise(path)
    for useless in (0.0, 1.0, "", None, float("nan")):
        functions = {question.name: lambda *inputs, value=useless: value for question in exercise.questions}
        verdict = judge(path, {f"{path}.py": ""}, Answering(functions), SEED)
        assert verdict.kind != PASSED
        assert verdict.earned == 0, (useless, verdict)


@pytest.mark.parametrize("most", [FEW_MUTANTS, pytest.param(MANY_MUTANTS, marks=pytest.mark.slow)], ids=["a few", "many"])
def test_mutants_of_the_reference_are_rejected(path, worker, most):
    every, known = every_mutant(path), equivalents(path)
    assert len(every) >= FEWEST_MUTANTS
    assert set(known) <= {mutant.what for mutant in every}
    other = [mutant for mutant in every if mutant.what not in known]
    tried = random.Random(path).sample(other, min(most, len(other)))
    assert [mutant.what for mutant in survivors(path, tried, worker, SEED)] == []

"""What must be true of every exercise: the reference passes, the stub does not, and wrong answers are told from right ones."""
import inspect
import random
from importlib import import_module

import numpy as np

from checker.compare import difference
from checker.course import PATHS, ROOT, load_exercise
from checker.judge import judge
from checker.plan import crossed, plan_for
from checker.verdict import NOT_ATTEMPTED, PASSED
from tests.exercises.answering import Answering
from tests.exercises.mutants import mutants

SEED = 20
MUTANTS_TRIED = 12
# Changes that leave every answer right, and why: no check can reject these.
EQUIVALENT = {
    "21 to 22 in: for odd in range(3, 21, 2):": "the range ends before either",
    "20 to 21 in: return np.abs(np.piecewise(p, [np.abs(p) < 20], [attenuation_near, attenuation_far]))[()]":
        "both series are right between 20 and 21",
    "201 to 402 in: for odd in range(1, 201, 2):": "the terms left out are too small to count",
    "10 to 11 in: ROUNDS = 10  # each round doubles the number of right figures": "nine rounds have given all figures",
    "arguments swapped in: room = np.minimum(-bias, drive(anode_voltage, bias, amplification_factor, offset))":
        "the smaller of two is that of the two",
    "arguments swapped in: mean, gaps = common_mean(1.0, np.sqrt(1 - parameter))": "the mean of two numbers is that of the two",
    "Add to Sub in: carrier, upper, lower = (1 / (1 + 2j * (detuning + offset) / bandwidth) for offset in (0, tone, -tone))":
        "upper and lower change places, and above the peak sounds like below it",
    "40 to 41 in: HALVINGS = 40  # of the interval that holds the answer": "forty have given more figures than are asked for",
    "0 to 1 in: return float(needed[0]), float(np.min(needed))": "the second of the swings tried is next to nothing too",
    "half of the result in: return 0.0": "half of nothing",
    "200.0 to 400.0 in: WIDEST = 200.0  # volt: no battery set swings its grid so far": "the interval only starts wider",
    "720 to 1440 in: ROUND = np.cos(np.pi * (np.arange(720) + 0.5) / 720)  # a swing of 1, at 720 moments of half a cycle":
        "twice the moments, or twice as many in one cycle more",
    "50.0 to 51.0 in: SWINGS = np.geomspace(1e-3, 50.0, 200)  # volt, crest: from next to nothing to more than any battery set does":
        "the curve only goes on a little further",
    "Add to Sub in: around = np.asarray(grid_voltage)[..., None] + np.asarray(swing)[..., None] * CYCLE":
        "half a cycle begun at the trough is half a cycle too",
    "arguments swapped in: return current**2 * radiation_resistance(effective_height, frequency)":
        "height and frequency enter by their product",
    "0.0 to 1.0 in: middle = circuit_voltage(volume * emf, rate, frequency - frame, first_width, first_gain * first_width, 0.0, 0.0)":
        "a volt at the start has died away before anything is measured",
    "arguments swapped in: [solution] = sympy.solve(sympy.Eq(w * inductance, 1 / (w * capacitance)), w)": "an equation reads the same from either side",
}


def sources(folder):
    """All files of exercises/ or solutions/ as a member would hand them in."""
    files = {path: ROOT / folder / f"{path}.py" for path in PATHS}
    return {f"{path}.py": file.read_text().replace("from solutions.", "from exercises.") for path, file in files.items() if file.exists()}


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


def test_stub_has_the_signature_and_docstring_of_the_reference(path):
    stub = import_module(f"exercises.{path.replace('/', '.')}")
    for question in load_exercise(path).questions:
        function = getattr(stub, question.name)
        assert inspect.signature(function) == inspect.signature(question.asks)
        assert tuple(question.given) == tuple(inspect.signature(question.asks).parameters)[: len(question.given)]
        for section in ("Parameters", "Returns"):
            assert section in (function.__doc__ or "")
        assert ("Raises" in function.__doc__) >= bool(question.refuses)


def test_an_array_beside_single_numbers_is_as_good(path):
    for planned in plan_for(path, SEED).questions:
        asks, inputs = planned.question.asks, planned.cases[0].inputs
        for place, together in enumerate(planned.stacked.inputs if planned.stacked else ()):
            if isinstance(together, np.ndarray) and np.ndim(inputs[place]) == 0:
                twice = asks(*inputs[:place], np.array([inputs[place]] * 2), *inputs[place + 1 :])
                for got, wanted in zip(items(twice), items(planned.cases[0].wanted), strict=True):
                    assert np.allclose(got, wanted, rtol=1e-9, atol=0), (asks.__name__, place)


def test_published_figures_are_met_by_the_reference(path):
    for question in load_exercise(path).questions:
        for figure in question.published:
            got = crossed(question.asks(*figure.given))
            assert difference(got, figure.wanted, figure.within, question.gives) is None, figure.what


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


def test_mutants_of_the_reference_are_rejected(path, worker):
    files = sources("solutions")
    every = list(mutants(files[f"{path}.py"]))
    tried = random.Random(path).sample(every, min(MUTANTS_TRIED, len(every)))
    survivors = [what for what, source in tried if what not in EQUIVALENT
                 and judge(path, files | {f"{path}.py": source}, worker, SEED).kind == PASSED]
    assert len(tried) >= 5
    assert "\n".join(survivors) == ""

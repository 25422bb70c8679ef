"""The judge: a plan, a worker's answers, a verdict."""

import contextlib
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import replace
from fractions import Fraction
from typing import Any

import numpy as np

from ..checks.exercise import Exercise, Measurement, Question, Tolerance, equal, relative
from ..checks.given import shown
from ..checks.units import in_words
from ..course import find
from ..faults import attempt
from ..text import clean
from ..worker.wire import Unusable, to_wire
from . import explanations
from .answers import Answers, NoAnswer, simplest_failure
from .compare import Difference, difference, is_rounding, ratio_in_words
from .forms import may_be_compared
from .mends import with_general_slips
from .plan import Case, LawCase, LawFunction, Plan, QuestionPlan
from .plans import exercise_at, plan_for, with_reference
from .protocols import Inputs, WorkerLike
from .second_run import fairest_verdict
from .stand_ins import Lender
from .verdict import NOT_ATTEMPTED, NOT_JUDGED, REFUSED, TOO_BIG, WRONG, Finding, Part, Verdict, kind_of

# What each part of a question is worth, before the parts that it lacks are left out. What is measured shares the numbers'.
WEIGHTS = {"numbers": 5, "arrays": 1, "laws": 2, "published": 2, "refusals": 1}
# What a table of a pack's figures could earn; and what share of answers is most of them, or at least some, and how near.
_SAME_FOR_ALL = {"laws", "published", "refusals"}
_MOST, _SOME, _MOST_DIFFER = Fraction(1, 2), Fraction(1, 3), Fraction(3, 4)
_NEAR = relative(0.1, because="a formula with a slip in it follows the right one; the next entry of a table does not")
LINE_SHOWN = 200

Judged = tuple[tuple[Part, ...], tuple[Finding, ...]]  # of one question


def judge(name: str, files: Mapping[str, str], worker: WorkerLike, seed: int, plan: Plan | None = None) -> Verdict:
    """The verdict on one exercise.

    Parameters
    ----------
    name : str
        The exercise, as `course.find` takes it.
    files : dict of str to str
        The member's exercises: path ("unit03_tuned_circuit/resonance.py") to source text.
    worker : Worker
        A warm process to run them in.
    seed : int
        Draws the inputs; the same seed draws the same inputs.
    plan : Plan, optional
        The exercise's under that seed, where it is at hand.

    Returns
    -------
    Verdict
        Of kind `NOT_JUDGED` where the checker itself failed.
    """
    verdict, fault = attempt(_judge, find(name), files, worker, seed, plan)
    return verdict or not_judged(find(name), fault)


def not_judged(path: str, fault: str) -> Verdict:
    """What stands in a verdict's place where the checker itself failed: it takes nothing from the member for good."""
    exercise = exercise_at(path)
    finding = Finding(NOT_JUDGED, exercise.name, explanations.not_judged_sentence(fault))
    return Verdict(path, NOT_JUDGED, exercise.marks, (), (finding,))


def not_handed_in(path: str) -> Verdict:
    """The verdict on an exercise whose file is not there: nothing is drawn and nothing run for it."""
    exercise = exercise_at(path)
    finding = Finding(NOT_ATTEMPTED, exercise.name, explanations.NOT_HANDED_IN)
    return Verdict(path, NOT_ATTEMPTED, exercise.marks, _no_parts(exercise), (finding,))


def _judge(path: str, files: Mapping[str, str], worker: WorkerLike, seed: int, plan: Plan | None) -> Verdict:
    if f"{path}.py" not in files:
        return not_handed_in(path)
    plan = plan or plan_for(path, seed)
    return with_general_slips(fairest_verdict(plan, files, worker, _judge_once), plan, files, worker)


def _judge_once(plan: Plan, files: Mapping[str, str], worker: WorkerLike, lender: Lender | None = None) -> Verdict:
    """The verdict on an exercise as it was handed in, or with a lender that answers for the earlier ones."""
    exercise = plan.exercise
    symbolic = any(question.symbolic for question in exercise.questions)
    with worker.session(exercise.path, files, exercise.seconds, symbolic, *([lender] if lender else [])) as session:
        replies = session.ask(plan.calls)
        answers = Answers(plan, replies, session)
        judged = [_judge_question(question_plan, answers) for question_plan in plan.questions]
    if session.ended:
        finding = explanations.end_finding(exercise, session)
        judged = [(parts, (finding,) if place == 0 else ()) for place, (parts, _) in enumerate(judged)]
    findings = _without_repeats(_with_source(finding, files) for _, found in judged for finding in found)
    parts = tuple(part for question_parts, _ in judged for part in question_parts)
    printed = "".join(reply.get("printed", "") for reply in replies)[:2000]
    return Verdict(exercise.path, kind_of(parts, findings), exercise.marks, parts, findings, printed)


def _judge_question(plan: QuestionPlan, answers: Answers) -> Judged:
    """(parts, findings) of one question: its marks, and at most the one finding that is most worth reading."""
    question = plan.question
    varies = _varies(plan, answers)
    if question.measured:
        return _judge_measured(plan, answers, varies)
    numbers, number_finding = _judge_numbers(plan, answers)
    earned = {"numbers": Fraction(bool(numbers))}
    findings = [number_finding]
    if plan.stacked:
        array_finding = _judge_stacked(plan, answers) if numbers else None
        earned["arrays"] = Fraction(bool(numbers) and array_finding is None)
        findings.append(array_finding)
    if plan.laws:
        earned["laws"], law_finding = _judge_laws(plan, answers, varies)
        findings.append(law_finding)
    if plan.published:
        earned["published"], published_finding = _judge_published(plan, answers, varies)
        findings.append(published_finding)
    if plan.refusals:
        earned["refusals"], refusal_finding = _judge_refusals(plan, answers, varies)
        findings.append(refusal_finding)
    if not numbers and _is_known_by_heart(plan, answers, earned):
        earned |= dict.fromkeys(earned.keys() & _SAME_FOR_ALL, Fraction(0))
    total = sum(WEIGHTS[what] for what in earned)
    share = _share(answers.plan.exercise, question)
    parts = tuple(
        Part(question.name, what, share * WEIGHTS[what] / total, share * WEIGHTS[what] / total * fraction)
        for what, fraction in earned.items()
    )
    first = next((finding for finding in findings if finding), None)
    if first and first is not number_finding and first.kind == WRONG:
        first = answers.first_stop() or first  # what was not answered in time is not wrong
    return parts, (first,) if first else ()


def _is_known_by_heart(plan: QuestionPlan, answers: Answers, earned: Mapping[str, Fraction]) -> bool:
    """Whether a function is right where every pack asks it, and elsewhere goes in steps or is not even near: so is a table.

    One that goes in no steps and keeps every law, where no pack asks it too, works something out, whatever its numbers are.
    """
    question, fresh = plan.question, [case for case in plan.cases if case.fresh]
    if not fresh:
        return False
    practised = [case for case in plan.cases if not case.fresh]
    right = [answers.difference(question, case, case.wanted, question.agrees_within) is None for case in practised]
    if not (earned.get("published", 0) >= _MOST or practised and sum(right) >= _MOST * len(right)):
        return False
    if len({repr(answers.reply(case.place)) for case in fresh}) < _MOST_DIFFER * len({repr(case.wanted) for case in fresh}):
        return True
    elsewhere = {repr(case.inputs) for case in fresh}
    if earned.get("laws") == 1 and any(law.law.relation is equal and repr(law.inputs) in elsewhere for law in plan.laws):
        return False
    near: dict[str, bool] = {}  # by the answer wanted: one that many inputs have in common counts once
    for case in fresh:
        is_near = answers.difference(question, case, case.wanted, _NEAR) is None
        near[repr(case.wanted)] = near.get(repr(case.wanted), True) and is_near
    return sum(near.values()) < max(_SOME * len(near), Fraction(min(2, len(near))))


def _share(exercise: Exercise, question: Question) -> Fraction:
    """What a question is worth."""
    return Fraction(exercise.marks * question.share, sum(one.share for one in exercise.questions))


def _no_parts(exercise: Exercise) -> tuple[Part, ...]:
    return tuple(Part(question.name, "all", _share(exercise, question), Fraction(0)) for question in exercise.questions)


def _judge_measured(plan: QuestionPlan, answers: Answers, varies: bool) -> Judged:
    """As `_judge_question`, where something is measured: a part for each measurement, one finding for all that failed."""
    question, pairs = plan.question, []
    worth = _share(answers.plan.exercise, question) / len(question.measured)
    lost = tuple(Part(question.name, measured.what, worth, Fraction(0)) for measured in question.measured)
    for case in plan.cases:
        reply = answers.reply(case.place)
        if "value" not in reply:
            return lost, (explanations.trouble_finding(question, case, reply, answers.plan.exercise),)
        if reply.get("altered"):
            return lost, (Finding(WRONG, question.name, explanations.altered_sentence(question, reply["altered"])),)
        with contextlib.suppress(NoAnswer):
            pairs.append((answers.value(reply), case.wanted))
    parts = []
    for measured in question.measured:
        met, says = _measured(question, measured, answers)
        parts.append(Part(question.name, measured.what, worth, worth * (met and varies), says))
    failed = [part.what for part in parts if not part.earned]
    if not failed:
        return tuple(parts), ()
    if stopped := answers.first_stop():
        return tuple(parts), (stopped,)
    slip = _name_slip(plan, pairs[: plan.drawn]) if len(pairs) == len(plan.cases) else ""
    return tuple(parts), (Finding(WRONG, question.name, explanations.measured_sentence(failed), slip=slip),)


def _measured(question: Question, measured: Measurement, answers: Answers) -> tuple[bool, str]:
    """(whether it is as it should be, what was measured and what is allowed in words)."""
    try:
        with np.errstate(all="ignore"):
            value, where = measured.of(LawFunction(question.name, answers.value_for_law), answers.plan.seed)
        value = float(value)
    except Exception:  # an answer of a kind that cannot be measured, or none
        return False, f"could not be measured ({measured.allowed})"
    found = in_words(value, measured.unit, 3) if np.isfinite(value) else "could not be found"
    return measured.meets(value), f"{found}{f' at {where}' if where else ''} ({measured.allowed})"


def _judge_numbers(plan: QuestionPlan, answers: Answers) -> tuple[bool, Finding | None]:
    """Whether every case agrees with the reference, and if not the finding for the simplest that does not."""
    question, failing, pairs, altered = plan.question, [], [], []
    for place, case in enumerate(plan.cases):
        if failing and place >= plan.drawn:
            break
        reply = answers.reply(case.place)
        if "value" not in reply:
            return False, explanations.trouble_finding(question, case, reply, answers.plan.exercise)
        try:
            got = answers.value(reply)
        except NoAnswer:
            return False, Finding(REFUSED, question.name, explanations.FORGED)
        apart = difference(got, case.wanted, question.agrees_within, question.gives)
        pairs.append((got, case.wanted))
        altered += reply.get("altered", ())
        if apart:
            failing.append((place, case, apart))
    if not failing:
        return not altered, Finding(WRONG, question.name, explanations.altered_sentence(question, altered)) if altered else None
    place, case, apart = next((one for one in failing if not is_rounding(one[1].wanted, question.agrees_within)), failing[0])
    remark = (
        ""
        if apart.says or question.symbolic
        else ratio_in_words(_scalar_pairs(pairs), question.gives if isinstance(question.gives, str) else "")
    )
    slip = _name_slip(plan, pairs[: plan.drawn])
    if 0 < place < plan.drawn and not (question.symbolic or apart.says or slip):
        whole = with_reference(question, answers.plan.exercise.path)
        case, apart = (whole and simplest_failure(whole, answers)) or (case, apart)
    return False, _finding(question, case, apart, remark, slip)


def _scalar_pairs(pairs: Iterable[tuple[Any, Any]]) -> Iterator[tuple[Any, Any]]:
    for got, wanted in pairs:
        if isinstance(got, list) and isinstance(wanted, (tuple, list)) and len(got) == len(wanted):
            yield from _scalar_pairs(zip(got, wanted, strict=True))
        else:
            yield (got, wanted.item() if isinstance(wanted, np.generic) else wanted)


def _judge_stacked(plan: QuestionPlan, answers: Answers) -> Finding | None:
    return next((finding for case in plan.stacked if (finding := _stacked_finding(plan.question, case, answers))), None)


def _stacked_finding(question: Question, case: Case, answers: Answers) -> Finding | None:
    reply = answers.reply(case.place)
    if "value" not in reply:
        return replace(
            explanations.trouble_finding(question, case, reply, answers.plan.exercise), remark=explanations.ONLY_ARRAYS
        )
    try:
        apart = difference(answers.value(reply), case.wanted, question.agrees_within, question.gives)
    except NoAnswer:
        return Finding(REFUSED, question.name, explanations.FORGED)
    if apart:
        return _finding(question, case, apart, explanations.ONLY_ARRAYS, "")
    if reply.get("altered"):
        return Finding(WRONG, question.name, explanations.altered_sentence(question, reply["altered"]))
    return None


def _judge_laws(plan: QuestionPlan, answers: Answers, varies: bool) -> tuple[Fraction, Finding | None]:
    """The share of the laws that hold, and the first that does not. An answer that never varies keeps no law."""
    question = plan.question
    if not varies:
        return Fraction(0), None
    broken, first = set(), None
    for law_case in plan.laws:
        if law_case.law.says not in broken and (problem := _law_problem(question, law_case, answers)):
            broken.add(law_case.law.says)
            first = first or problem
    laws = {law_case.law.says for law_case in plan.laws}
    return Fraction(len(laws - broken), len(laws)), first


def _law_problem(question: Question, law_case: LawCase, answers: Answers) -> Finding | None:
    """The finding for a law that does not hold for these inputs; None if it does."""
    law, remark, others, at_fault = law_case.law, "", [], question.name
    asked: list[Inputs] = []

    def ask(function: str, inputs: Inputs) -> Any:
        asked.extend([inputs] * (function == question.name))
        others.extend([function] * (function != question.name))
        return answers.value_for_law(function, inputs)

    try:
        with np.errstate(all="ignore"):
            left, right = law.law(LawFunction(question.name, ask), *law_case.inputs)
            if may_be_compared(left, right) and law.relation(left, right, question.agrees_within):
                return None
        remark = f"{shown(left)} against {shown(right)}"
    except NoAnswer as silent:
        at_fault = str(silent)
    except Exception:  # the law met a value of a kind that it was not made for
        pass
    at_fault = next((name for name in dict.fromkeys(others) if not answers.is_right(name)), at_fault)
    if at_fault != question.name:
        return Finding(WRONG, question.name, explanations.law_not_tried_sentence(law, at_fault))
    given = explanations.inputs_of_law(question, law_case, asked)
    return Finding(WRONG, question.name, explanations.law_broken_sentence(law), given, remark=remark)


def _varies(plan: QuestionPlan, answers: Answers) -> bool:
    """Whether the answers over the batch are finite and not all one and the same."""
    seen = set()
    for case in plan.cases[: plan.drawn]:
        reply = answers.reply(case.place)
        if "value" not in reply or reply["value"] is None:
            return False
        value = reply["value"]
        if isinstance(value, Unusable) or (isinstance(value, float) and value != value):
            return False
        seen.add(repr(to_wire(value)))
    wanted = {repr(case.wanted) for case in plan.cases[: plan.drawn]}
    return len(seen) > 1 or len(wanted) == 1


def _judge_published(plan: QuestionPlan, answers: Answers, varies: bool) -> tuple[Fraction, Finding | None]:
    question, met, first = plan.question, 0, None
    for figure, case in plan.published:
        apart = answers.difference(question, case, figure.wanted, figure.within)
        met += apart is None
        if apart and first is None:
            first = _finding(question, case, apart, f"published: {figure.source}", "")
    return Fraction(met if varies else 0, len(plan.published)), first


def _judge_refusals(plan: QuestionPlan, answers: Answers, varies: bool) -> tuple[Fraction, Finding | None]:
    """The share of unphysical inputs met with the promised ValueError, and the first that is not."""
    question, first, let_in = plan.question, None, set()
    for refusal, case in plan.refusals:
        reply = answers.reply(case.place)
        refused = reply.get("trouble") == "raised" and reply.get("error") == "ValueError"
        if not refused:
            let_in.add(refusal.what)
            first = first or Finding(
                WRONG, question.name, explanations.not_refused_sentence(question, refusal, reply), case.shown
            )
    whats = {refusal.what for refusal, _ in plan.refusals}
    return Fraction(len(whats - let_in) if varies else 0, len(whats)), first


def _name_slip(plan: QuestionPlan, pairs: Sequence[tuple[Any, Any]]) -> str:
    """The sentence of the slip whose wrong answers these are, on every case; "" if there is none."""
    loose = replace(plan.question.agrees_within, relative=max(plan.question.agrees_within.relative, 1e-6))
    for slip, wrongs in plan.slips:
        if all(_same(got, wrong, loose) for (got, _), wrong in zip(pairs, wrongs, strict=True)):
            return slip.says
    return ""


def _same(got: Any, wrong: Any, tolerance: Tolerance) -> bool:
    """Whether an answer is the slip's: numbers alike, nan and infinity too."""
    if isinstance(got, list) or isinstance(wrong, list):
        return (
            isinstance(got, list)
            and isinstance(wrong, list)
            and len(got) == len(wrong)
            and all(_same(one, other, tolerance) for one, other in zip(got, wrong, strict=True))
        )
    if isinstance(wrong, float) and isinstance(got, float) and not np.isfinite(wrong):
        return repr(got) == repr(wrong)
    return difference(got, wrong, tolerance) is None


def _finding(question: Question, case: Case, apart: Difference, remark: str, slip: str) -> Finding:
    says = f"{question.name} {apart.says}" + ("" if apart.says.endswith("?") else ".") if apart.says else ""
    if apart.thought:
        says = f"{says} {apart.thought}".strip()
    kind = TOO_BIG if apart.too_big else WRONG
    inputs = () if question.symbolic and not apart.got else case.shown
    return Finding(kind, question.name, says, inputs, apart.got, apart.wanted, remark, slip)


def _without_repeats(findings: Iterable[Finding]) -> tuple[Finding, ...]:
    """The findings without those that say of a second function what was said of the first: a file that does not load."""
    different = {}
    for finding in findings:
        different.setdefault((finding.kind, finding.says, finding.line, finding.got), finding)
    return tuple(different.values())


def _with_source(finding: Finding, files: Mapping[str, str]) -> Finding:
    if not finding.line:
        return finding
    path, number, _ = finding.line
    lines = files.get(path, "").split("\n")
    text = clean(lines[number - 1].strip(), LINE_SHOWN) if 0 < number <= len(lines) else ""
    return replace(finding, line=(path, number, text))

"""A plan as a sealed file: all that a student's pack knows of an exercise, unreadable at a glance, and no code in it.

The seal keeps a student from reading the answers by accident. It is no lock: the checker in the pack can open it, so
whoever takes the trouble can too. They gain nothing by it: the instructor marks under another seed.
"""

import hashlib
import json
import zlib
from collections.abc import Callable, Iterable, Sequence
from functools import cache, partial
from typing import Any

from ..checks.exercise import Exercise, Given, Invariant, Measurement, Published, Question, Refusal, Slip, Tolerance
from ..course import ROOT
from ..faults import Problem
from ..worker.wire import Expression, from_wire, to_wire
from .plan import Case, LawCase, Plan, QuestionPlan, call_key
from .protocols import Call
from .recorded import earlier_from_data, record_earlier


class BrokenSeal(Problem):
    """A sealed file cannot be opened; the text says what to do."""


def seal_plan(plan: Plan) -> bytes:
    """The plan as bytes to be written to a file; the same plan gives the same bytes."""
    return seal(_plan_to_data(plan), plan.exercise.path)


def seal(data: Any, path: str) -> bytes:
    """Plain data packed small and masked; the same data give the same bytes."""
    text = json.dumps(data, sort_keys=True, ensure_ascii=True, separators=(",", ":"))
    return mask(zlib.compress(text.encode(), 9), path)


def unseal(sealed: bytes, path: str) -> Any:
    """The data in what `seal` made; ValueError if it was altered or sealed under another path."""
    try:
        return json.loads(zlib.decompress(mask(sealed, path)))
    except zlib.error as error:
        raise ValueError(str(error)) from None


def unseal_plan(sealed: bytes, path: str, laws: dict) -> Plan:
    """The plan in the bytes of a sealed file.

    Parameters
    ----------
    sealed : bytes
    path : str
        The exercise's, under which it was sealed.
    laws : dict of str to list of (law, relation), or of functions that measure
        Those of each question, as `laws.laws_source` wrote them; what measures stands after the laws, as (function, None).

    Raises
    ------
    BrokenSeal
        If the file was altered or belongs to another exercise.
    """
    try:
        return _plan_from_data(unseal(sealed, path), laws)
    except (ValueError, KeyError, TypeError, IndexError):
        raise BrokenSeal(f"The practice values of {path} are damaged. Unpack the student pack again.") from None


@cache
def read_sealed_plan(path: str) -> Plan:
    """The plan of an exercise, from the practice/ folder of a student pack."""
    try:
        sealed = (ROOT / "practice" / f"{path}.sealed").read_bytes()
        laws = laws_in((ROOT / "practice" / f"{path}_laws.py").read_text("utf-8"))
    except (OSError, SyntaxError, KeyError, UnicodeDecodeError):
        raise BrokenSeal(f"The practice values of {path} are missing or damaged. Unpack the student pack again.") from None
    return unseal_plan(sealed, path, laws)


def laws_in(source: str) -> dict:
    """What `laws.laws_source` wrote down."""
    names: dict[str, Any] = {"__name__": "laws"}
    exec(compile(source, "laws", "exec", dont_inherit=True), names)
    return names["LAWS"]


def mask(data: bytes, path: str) -> bytes:
    """The data under a mask that depends on the path; masking twice gives it back."""
    cover = hashlib.shake_128(path.encode()).digest(len(data))
    return (int.from_bytes(data, "little") ^ int.from_bytes(cover, "little")).to_bytes(len(data), "little")


def _plan_to_data(plan: Plan) -> dict:
    exercise = plan.exercise
    return {
        "path": exercise.path,
        "title": exercise.title,
        "marks": exercise.marks,
        "seconds": exercise.seconds,
        "hints": list(exercise.hints),
        "seed": plan.seed,
        "calls": list(plan.calls),
        "questions": [_question_to_data(planned) for planned in plan.questions],
        "earlier": record_earlier(plan) if exercise.path else [],
    }


def _plan_from_data(data: dict, laws: dict) -> Plan:
    planned = tuple(_question_from_data(one, laws.get(one["name"], []), data["calls"]) for one in data["questions"])
    exercise = Exercise(
        data["title"], tuple(one.question for one in planned), data["hints"], data["marks"], data["seconds"], path=data["path"]
    )
    return Plan(
        exercise,
        data["seed"],
        tuple(data["calls"]),
        {call_key(call): place for place, call in enumerate(data["calls"])},
        planned,
        earlier_from_data(data["earlier"]),
    )


def _question_to_data(planned: QuestionPlan) -> dict:
    question = planned.question
    numbers = {id(law): number for number, law in enumerate(question.holds)}
    return {
        "name": question.name,
        "arguments": list(question.given),
        "gives": question.gives,
        "symbolic": question.symbolic,
        "tolerance": _tolerance_to_data(question.agrees_within),
        "drawn": planned.drawn,
        "cases": [_case_to_data(case) for case in planned.cases],
        "stacked": [_case_to_data(case) for case in planned.stacked],
        "published": [
            [figure.what, figure.source, figure.known, _tolerance_to_data(figure.within), _case_to_data(case)]
            for figure, case in planned.published
        ],
        "refusals": [[refusal.what, _case_to_data(case)] for refusal, case in planned.refusals],
        "slips": [[slip.says, list(map(_wanted_to_data, wrongs))] for slip, wrongs in planned.slips],
        "share": question.share,
        "further": question.further,
        "measured": [[one.what, one.because, one.unit, one.least, one.most] for one in question.measured],
        "laws": [law.says for law in question.holds],
        "law_cases": [[numbers[id(case.law)], list(map(to_wire, case.inputs)), case.shown] for case in planned.laws],
    }


def _question_from_data(data: dict, laws: list, calls: Sequence[Call]) -> QuestionPlan:
    case_from = partial(_case_from_data, calls)
    tolerance = Tolerance(*data["tolerance"])
    holds = tuple(Invariant(says, *law) for says, law in zip(data["laws"], laws[: len(data["laws"])], strict=True))
    measured = tuple(
        Measurement(what, of, *rest) for (what, *rest), (of, _) in zip(data["measured"], laws[len(holds) :], strict=True)
    )
    published = tuple(
        (Published(what, (), case.wanted, Tolerance(*within), source, known), case)
        for what, source, known, within, case in ((*rest, case_from(case)) for *rest, case in data["published"])
    )
    question = Question(
        asks=_sealed_reference(data["name"]),
        given=dict.fromkeys(data["arguments"], _NO_RANGE),
        gives=_to_tuples(data["gives"]),
        agrees_within=tolerance,
        holds=holds,
        published=tuple(figure for figure, _ in published),
        symbolic=data["symbolic"],
        sealed=True,
        no_published="sealed",
        measured=measured,
        share=data["share"],
        further=data["further"],
    )
    return QuestionPlan(
        question,
        tuple(map(case_from, data["cases"])),
        data["drawn"],
        tuple(map(case_from, data["stacked"])),
        published,
        tuple(
            LawCase(holds[number], tuple(map(from_wire, inputs)), _pairs(shown)) for number, inputs, shown in data["law_cases"]
        ),
        tuple((Refusal(what, ()), case_from(case)) for what, case in data["refusals"]),
        tuple((Slip(says, _sealed_reference("slip")), tuple(map(from_wire, wrongs))) for says, wrongs in data["slips"]),
    )


_NO_RANGE = Given("", str)


def _sealed_reference(name: str) -> Callable:
    def reference(*inputs: Any) -> None:
        raise LookupError(f"the reference for {name} is not in a student pack")

    reference.__name__ = name
    return reference


def _tolerance_to_data(tolerance: Tolerance) -> list:
    return [tolerance.relative, tolerance.absolute, tolerance.because]


def _case_to_data(case: Case) -> list:
    return [case.place, _wanted_to_data(case.wanted), case.shown, case.fresh]


def _case_from_data(calls: Sequence[Call], data: Sequence) -> Case:
    place, wanted, shown, fresh = data
    inputs = tuple(map(from_wire, calls[place].get("arguments", ())))
    return Case(inputs, place, _to_tuples(from_wire(wanted)), _pairs(shown), fresh)


def _wanted_to_data(wanted: Any) -> Any:
    return to_wire(_values_alone(wanted))


def _values_alone(wanted: Any) -> Any:
    """A value without the text of its formulas: of those a pack has what they are worth at some points, and no more."""
    if isinstance(wanted, (tuple, list)):
        return [_values_alone(item) for item in wanted]
    return Expression("", wanted.at) if isinstance(wanted, Expression) else wanted


def _to_tuples(value: Any) -> Any:
    return tuple(map(_to_tuples, value)) if isinstance(value, list) else value


def _pairs(shown: Iterable) -> tuple[tuple[str, str], ...]:
    return tuple(tuple(pair) for pair in shown)

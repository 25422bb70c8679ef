"""Slips that anybody makes in any exercise, known by their mend.

Where an answer is wrong, each of a few changes that would mend such a slip is made to the student's own file, and the
function is asked again. Only if it is right then is the slip named: so nobody is accused of what they did not do.
"""

import ast
import io
import time
import tokenize
from collections.abc import Callable, Iterator, Mapping
from copy import deepcopy
from dataclasses import replace
from typing import NamedTuple

from ..budgets import BUDGET, patience
from .compare import difference
from .plan import Plan, QuestionPlan
from .protocols import WorkerLike
from .verdict import WRONG, Verdict

LONGEST = 20_000  # characters of a file in which slips are looked for
SECONDS = 0.5  # for one try
PLACES = 3  # so many are also mended one at a time, where a slip may have been made in several
TURNED, COUNTS = {"sin", "cos", "tan"}, {"range", "arange"}


class Mend(NamedTuple):
    """What finishes "You may have …", and the node that should have stood in the place of one; None where the slip is not made."""

    says: str
    change: Callable[[ast.AST], ast.AST | None]


def _divide(node: ast.AST) -> ast.AST | None:
    if isinstance(node, ast.BinOp) and isinstance(node.op, ast.FloorDiv):
        return ast.BinOp(node.left, ast.Div(), node.right)
    return None


def _kelvin_already(node: ast.AST) -> ast.AST | None:
    if isinstance(node, ast.BinOp) and isinstance(node.op, ast.Add):
        for one, other in ((node.left, node.right), (node.right, node.left)):
            if isinstance(one, ast.Constant) and one.value in (273, 273.15):
                return other
    return None


def _radians(node: ast.AST) -> ast.AST | None:
    if isinstance(node, ast.Call) and len(node.args) == 1 and _called(node) in TURNED:
        degrees = ast.BinOp(node.args[0], ast.Div(), ast.Constant(57.29577951308232))
        return ast.Call(node.func, [degrees], [])
    return None


def _one_further(node: ast.AST) -> ast.AST | None:
    if isinstance(node, ast.Call) and 1 <= len(node.args) <= 3 and _called(node) in COUNTS:
        place = 0 if len(node.args) == 1 else 1
        end = ast.BinOp(node.args[place], ast.Add(), ast.Constant(1))
        return ast.Call(node.func, [*node.args[:place], end, *node.args[place + 1 :]], [])
    return None


def _below_the_line(node: ast.AST) -> ast.AST | None:
    match node:
        case ast.BinOp(ast.BinOp(above, ast.Div(), below), ast.Mult() | ast.Add() | ast.Sub() as sign, more):
            return ast.BinOp(above, ast.Div(), ast.BinOp(below, sign, more))
    return None


def _exponent(node: ast.AST) -> ast.AST | None:
    match node:
        case ast.BinOp(ast.BinOp(base, ast.Pow(), exponent), ast.Div(), below):
            return ast.BinOp(base, ast.Pow(), ast.BinOp(exponent, ast.Div(), below))
        case ast.BinOp(ast.BinOp(factor, ast.Mult(), ast.BinOp(base, ast.Pow(), exponent)), ast.Div(), below):
            return ast.BinOp(factor, ast.Mult(), ast.BinOp(base, ast.Pow(), ast.BinOp(exponent, ast.Div(), below)))
    return None


def _called(node: ast.Call) -> str:
    return getattr(node.func, "attr", "") or getattr(node.func, "id", "")


POWER = "used ^ for a power: Python writes it **"
MENDS = (
    Mend("used // for /: that throws away what is behind the point", _divide),
    Mend("added 273 to a temperature that comes in kelvin already", _kelvin_already),
    Mend("given a sine, cosine or tangent degrees: it wants radians, and np.radians makes them", _radians),
    Mend("stopped one short: range and np.arange leave their end out, so that range(1, 4) is 1, 2, 3", _one_further),
    Mend(
        "left out brackets round what stands below the line: a / b * c is (a / b) * c, and a / b + c is (a / b) + c",
        _below_the_line,
    ),
    Mend("left out brackets round an exponent: x ** 3 / 2 is (x ** 3) / 2", _exponent),
)


def with_general_slips(verdict: Verdict, plan: Plan, files: Mapping[str, str], worker: WorkerLike) -> Verdict:
    """A verdict in which each wrong answer that has no name yet has that of a general slip, if it is one."""
    wrong = {part.function for part in verdict.parts if part.what == "numbers" and not part.earned}
    asked = {one.question.name: one for one in plan.questions if one.question.name in wrong}
    until = time.monotonic() + BUDGET.mending - patience(SECONDS)
    findings = tuple(
        replace(finding, slip=general_slip(plan, asked[finding.function], files, worker, until))
        if finding.kind == WRONG and not finding.slip and finding.function in asked
        else finding
        for finding in verdict.findings
    )
    return replace(verdict, findings=findings)


def general_slip(plan: Plan, asked: QuestionPlan, files: Mapping[str, str], worker: WorkerLike, until: float) -> str:
    """What finishes "You may have …" of a wrong answer, where mending that alone makes every number right; else ""."""
    file = f"{plan.exercise.path}.py"
    for says, source in mended(files[file]):
        if time.monotonic() > until:
            break
        if _is_right(plan, asked, {**files, file: source}, worker):
            return says
    return ""


def mended(source: str) -> Iterator[tuple[str, str]]:
    """Each slip that a source may hold, with the source mended: everywhere, and if that is in a few places also in each alone."""
    if len(source) > LONGEST:
        return
    try:
        tree = ast.parse(source)
        if any(isinstance(node, ast.BitXor) for node in ast.walk(tree)):
            yield POWER, _with_powers(source)
        for mend in MENDS:
            places = sum(mend.change(node) is not None for node in ast.walk(tree))
            for only in (None, *range(places if 1 < places <= PLACES else 0)) if places else ():
                yield mend.says, ast.unparse(ast.fix_missing_locations(_Mending(mend.change, only).visit(deepcopy(tree))))
    except (SyntaxError, ValueError, RecursionError, MemoryError, tokenize.TokenError):
        return


def _with_powers(source: str) -> str:
    """The source with ** for every ^, which binds otherwise: so it is changed in the text."""
    tokens = tokenize.generate_tokens(io.StringIO(source).readline)
    return tokenize.untokenize((kind, "**" if (kind, text) == (tokenize.OP, "^") else text) for kind, text, *_ in tokens)


class _Mending(ast.NodeTransformer):
    """Makes a change in every place where it can be made, or in the one of that number alone."""

    def __init__(self, change: Callable[[ast.AST], ast.AST | None], only: int | None) -> None:
        self.change, self.only, self.place = change, only, -1

    def visit(self, node: ast.AST) -> ast.AST:
        node = self.generic_visit(node)
        new = self.change(node)
        if new is None:
            return node
        self.place += 1
        return new if self.only in (None, self.place) else node


def _is_right(plan: Plan, asked: QuestionPlan, files: Mapping[str, str], worker: WorkerLike) -> bool:
    question = asked.question
    calls = [plan.calls[case.place] for case in asked.cases]
    with worker.session(plan.exercise.path, files, min(plan.exercise.seconds, SECONDS), question.symbolic) as session:
        replies = session.ask(calls)
    return len(replies) == len(calls) and all(
        "value" in reply and difference(reply["value"], case.wanted, question.agrees_within) is None
        for reply, case in zip(replies, asked.cases, strict=True)
    )

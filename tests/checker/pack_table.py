"""What a table of all that a student pack holds earns under another seed: the attacker's file, and the marks it gets.

    python -m tests.checker.pack_table [NAME …]

prints, question by question, the share of its marks that the table earns, and with what.
"""

import math
import sys
import zlib
from collections import defaultdict
from unittest.mock import patch

import numpy as np
import sympy

from checker.course import PATHS, PRACTICE_SEED, find
from checker.judging.judge import judge
from checker.judging.plans import plan_for
from checker.judging.sealed import seal_plan, unseal_plan
from checker.worker.wire import Expression, from_wire
from tests.exercises.answering import Answering


def other_seed(path):
    """A seed of the exercise's own, which nobody has chosen."""
    return zlib.crc32(path.encode())


def opened(path):
    """The plan of an exercise as whoever has the pack can take it out of the seal; its laws give no values away."""
    plan = plan_for(path, PRACTICE_SEED)
    laws = {
        planned.question.name: [(law.law, law.relation) for law in planned.question.holds]
        + [(measured.of, None) for measured in planned.question.measured]
        for planned in plan.questions
    }
    return unseal_plan(seal_plan(plan), path, laws)


def rows_of(planned, calls):
    """(inputs, answer) of one question, all that are sealed: an array of cases also one by one. Refusals answer ValueError."""
    rows = []
    for case in (*planned.cases, *planned.stacked, *(case for _, case in planned.published)):
        call = calls[case.place]
        inputs = [from_wire(argument) for argument in call.get("arguments", ())]
        rows.append((inputs, case.wanted))
        rows += list(_one_by_one(inputs, case.wanted))
    rows += [([from_wire(argument) for argument in calls[case.place]["arguments"]], ValueError) for _, case in planned.refusals]
    return rows


def _one_by_one(inputs, wanted):
    length = next((len(one) for one in inputs if isinstance(one, np.ndarray) and one.ndim == 1), 0)
    parts = wanted if isinstance(wanted, tuple) else (wanted,)
    if length and all(isinstance(part, np.ndarray) and part.shape == (length,) for part in parts):
        for at in range(length):
            one = tuple(part[at].item() for part in parts)
            yield (
                [item[at].item() if isinstance(item, np.ndarray) and item.shape == (length,) else item for item in inputs],
                one if isinstance(wanted, tuple) else one[0],
            )


def features(value):
    """Structure of a value, and the numbers in it."""
    if isinstance(value, np.ndarray):
        value = value.tolist()
    if isinstance(value, list | tuple):
        found = [features(item) for item in value]
        return tuple(shape for shape, _ in found), [one for _, numbers in found for one in numbers]
    if isinstance(value, complex):
        return "c", [value.real, value.imag]
    if isinstance(value, bool | str) or value is None:
        return value, []
    return "n", [float(value)]


def distance(some, others):
    """How far apart two lists of numbers are: in octaves where they have one sign, and far where they have not."""
    total = 0.0
    for one, other in zip(some, others, strict=True):
        if one == other:
            continue
        alike = one * other > 0 and math.isfinite(one * other)
        total += min(abs(math.log2(one / other)), 50.0) if alike else 25.0 + min(abs(one - other), 25.0)
    return total


def table(rows):
    """The attacker's function: the answer to the nearest inputs that are sealed; arrays one by one, if need be."""
    known = defaultdict(list)
    for inputs, answer in rows:
        shape, numbers = features(inputs)
        known[shape].append((numbers, answer))

    def look_up(*inputs):
        shape, numbers = features(list(inputs))
        if any(isinstance(one, sympy.Basic) for one in inputs):
            return _formula(rows, inputs)
        near = known.get(shape)
        exact = near and [answer for others, answer in near if others == numbers]
        if not exact and (each := _each(inputs)) is not None:
            answers = [look_up(*one) for one in each]
            if isinstance(answers[0], tuple):
                return tuple(np.array(part) for part in zip(*answers, strict=True))
            return np.array(answers)
        if not near:
            near = [row for rows in known.values() for row in rows if len(row[0]) == len(numbers)] or next(iter(known.values()))
            near = [(others if len(others) == len(numbers) else numbers, answer) for others, answer in near]
        answer = exact[0] if exact else min(near, key=lambda row: distance(row[0], numbers))[1]
        if answer is ValueError:
            raise ValueError
        return answer

    return look_up


def _each(inputs):
    lengths = {len(one) for one in inputs if isinstance(one, np.ndarray) and one.ndim == 1}
    if len(lengths) != 1:
        return None
    return [[one[at].item() if isinstance(one, np.ndarray) else one for one in inputs] for at in range(*lengths)]


def _formula(rows, symbols):
    """Of a formula its text, if that is sealed, and if not its first value."""
    names = {symbol.name: symbol for symbol in symbols}

    def one(wanted):
        if isinstance(wanted, tuple | list):
            return tuple(map(one, wanted))
        text = wanted.text if isinstance(wanted, Expression) else ""
        return sympy.sympify(text, locals=names) if text else sympy.sympify(wanted.at[0].real)

    return one(rows[0][1])


def earned_by_table(path, seed):
    """The share of its marks that the table earns in each question, and what with: function → (share, parts)."""
    plan = opened(path)
    functions = {planned.question.name: table(rows_of(planned, plan.calls)) for planned in plan.questions}
    with patch("checker.judging.judge.simplest_failure", lambda *_: None):
        verdict = judge(path, {f"{path}.py": ""}, Answering(functions), seed)
    found = {}
    for name in functions:
        parts = [part for part in verdict.parts if part.function == name]
        whole = sum(part.worth for part in parts)
        found[name] = (
            float(sum(part.earned for part in parts) / whole),
            {part.what: f"{part.earned / part.worth}" for part in parts if part.earned},
        )
    return found


def main():
    total = []
    for path in map(find, sys.argv[1:] or PATHS):
        for name, (share, parts) in earned_by_table(path, other_seed(path)).items():
            total.append(share)
            print(f"{path.rpartition('/')[2]:24} {name:28} {share:6.1%}  {parts or ''}", flush=True)
    print(f"{len(total)} questions, {sum(map(bool, total))} earn something, {sum(total) / len(total):.1%} on the average")


if __name__ == "__main__":
    main()
